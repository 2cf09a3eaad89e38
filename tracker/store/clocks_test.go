package store_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/tracker"
)

// clock is the start or the stop of somebody's clock.
func clock(kind tracker.Kind, by, id string) tracker.Event {
	ev := entry(id)
	ev.Kind, ev.By = kind, by
	return ev
}

func TestClocksThatMayRunAreFoundByWhoStartedThem(t *testing.T) {
	s := openToWrite(t, logPath(t))
	running := func(by string) []string {
		jobs, err := s.Clocks(by)
		require.NoError(t, err)
		return jobs
	}
	assert.Empty(t, running("Runa"), "an empty log")
	add(t, s, job, entry("a"))
	add(t, s, job, clock(tracker.Started, "Runa", "b"))
	add(t, s, job, clock(tracker.Started, "Maren", "c"))
	add(t, s, job, clock(tracker.Stopped, "Maren", "d"))
	add(t, s, other, clock(tracker.Started, "Runa", "e"))
	ticked := clock(tracker.Started, "Runa", "f")
	ticked.Ticked = true
	add(t, s, third, ticked)
	assert.Equal(t, []string{job, other}, running("Runa"))
	assert.Empty(t, running("Maren"))

	misleading := clock(tracker.Logged, `x","kind":"start`, "g")
	misleading.Reason = `"kind":"stop"`
	add(t, s, job, misleading)
	add(t, s, other, clock(tracker.Stopped, "Runa", "h"))
	assert.Equal(t, []string{job}, running("Runa"))
}
