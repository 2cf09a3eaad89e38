package tick

import (
	"time"

	"quiltrun/planner"
)

// mark is a moment of the sitting, by the time since the screen was opened: the
// clock on the wall may be set meanwhile. A mark that opens begins a stretch of
// work: work went on after a pause, or another row came up.
type mark struct {
	since time.Duration
	row   place
	id    string
	count int
	opens bool
}

// sitting is the marks since the screen was opened, in order.
type sitting []mark

// pace is how long one count of a row takes by the ticks of this sitting, and how
// many counts say so; 0 before there is one. The time before a first tick is of
// no use, since nobody knows when that count was begun; a gap longer than the
// limit and a pause are no work.
func (s sitting) pace(row place, gap time.Duration) (perCount planner.Minutes, counts int) {
	var worked time.Duration
	for i, m := range s {
		if i == 0 || m.opens || s[i-1].opens || m.row != row || s[i-1].row != row {
			continue
		}
		if span := m.since - s[i-1].since; span >= 0 && span <= gap {
			worked += span
			counts += m.count
		}
	}
	if counts == 0 || worked <= 0 {
		return 0, 0
	}
	return planner.Minutes(worked.Minutes()) / planner.Minutes(counts), counts
}

// takeBack empties a tick: its count is gone, the time it took is spent.
func (s sitting) takeBack(id string) {
	for i := range s {
		if s[i].id == id {
			s[i].count = 0
		}
	}
}
