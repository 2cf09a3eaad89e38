package forecast

import (
	"fmt"
	"testing"

	"quiltrun/planner"
)

// manyJobs is a queue of jobs of 40 tasks; every so many-th has its quilting
// sent out (0: none).
func manyJobs(jobs, sentOut int) []Work {
	var list []Work
	for j := range jobs {
		w := Work{Job: fmt.Sprintf("job-%02d", j), Due: start.AddDays(14 + 12*j)}
		for n := range 40 {
			w.Tasks = append(w.Tasks, Task{Key: fmt.Sprintf("key-%02d", n),
				Setup: planner.Span{Mean: 5, Spread: 0.3}, Unit: planner.Span{Mean: 1.5, Spread: 0.4},
				SetupLeft: true, Left: 12})
		}
		if sentOut > 0 && j%sentOut == 0 {
			w.Tasks[30].Wait = 42
		}
		list = append(list, w)
	}
	return list
}

func BenchmarkWhen(b *testing.B) {
	for _, c := range []struct {
		name          string
		jobs, sentOut int
	}{
		{"one job", 1, 0},
		{"50 jobs", 50, 0},
		{"50 jobs, every fifth sent out", 50, 5},
		{"50 jobs, all sent out", 50, 1},
	} {
		jobs, cal := manyJobs(c.jobs, c.sentOut), NewCalendar(nil)
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				When(start, 0, cal, jobs)
			}
		})
	}
}

func BenchmarkFinish(b *testing.B) {
	cal := NewCalendar(nil)
	for b.Loop() {
		cal.Finish(start, 0, 100000)
	}
}
