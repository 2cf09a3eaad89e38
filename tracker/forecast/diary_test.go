package forecast

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Hand-worked: what is booked where, and what stays free.
func TestDiaryTakesTheFirstFreeMinutes(t *testing.T) {
	end := math.Inf(1)
	for _, c := range []struct {
		name  string
		books [][2]float64 // from, minutes
		ends  []float64
		free  []gap
	}{
		{"one after the other", [][2]float64{{0, 10}, {0, 5}}, []float64{10, 15}, []gap{{15, end}}},
		{"a later start leaves a gap", [][2]float64{{20, 10}}, []float64{30}, []gap{{0, 20}, {30, end}}},
		{"the gap is filled", [][2]float64{{20, 10}, {0, 20}, {0, 5}}, []float64{30, 20, 35}, []gap{{35, end}}},
		{"and jumped over", [][2]float64{{20, 10}, {5, 20}}, []float64{30, 35}, []gap{{0, 5}, {35, end}}},
		{"two gaps", [][2]float64{{20, 10}, {40, 10}, {0, 35}}, []float64{30, 50, 55}, []gap{{55, end}}},
		{"starting in what is taken", [][2]float64{{20, 10}, {25, 5}}, []float64{30, 35}, []gap{{0, 20}, {35, end}}},
		{"nothing", [][2]float64{{20, 10}, {25, 0}, {5, 0}}, []float64{30, 30, 5}, []gap{{0, 20}, {30, end}}},
	} {
		var d diary
		d.clear()
		var ends []float64
		for _, b := range c.books {
			ends = append(ends, d.book(b[0], b[1]))
		}
		assert.Equal(t, c.ends, ends, c.name)
		assert.Equal(t, c.free, d.free, c.name)
	}
}

// Against a diary of single minutes that are ticked off.
func TestDiaryAgreesWithSingleMinutes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var d diary
		d.clear()
		taken := map[int]bool{}
		for range rapid.IntRange(1, 8).Draw(t, "bookings") {
			from, minutes := rapid.IntRange(0, 40).Draw(t, "from"), rapid.IntRange(1, 20).Draw(t, "minutes")
			at := from
			for left := minutes; left > 0; at++ {
				if !taken[at] {
					taken[at] = true
					left--
				}
			}
			if got := d.book(float64(from), float64(minutes)); got != float64(at) {
				t.Fatalf("want the end at %d, got %v", at, got)
			}
		}
	})
}
