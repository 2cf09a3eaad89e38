package tick

import (
	"time"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// mark is a moment of the sitting, by the time since the screen was opened: the
// clock on the wall may be set meanwhile. A mark without a count says that a row
// came up or that work went on; one that rests begins a pause.
type mark struct {
	since  time.Duration
	at     time.Time // on the wall, of one that begins
	row    place
	id     string
	count  int
	rests  bool
	begins bool // the maker was seen, and work may have begun then
}

// sitting is the marks since the screen was opened, in order.
type sitting []mark

// pace is how long one count of a row takes by the ticks of this sitting, and how
// many counts say so; 0 before there is one. It goes by the rule of the log: the
// time up to a tick belongs to what it checks off, a pause and a time longer than
// the gap are no work, and a first tick was begun when its maker was last seen,
// unless more is checked off than can have been made since.
func (s sitting) pace(of tracker.Operation, gap planner.Minutes) (perCount planner.Minutes, counts int) {
	row := placeOf(of)
	var worked planner.Minutes
	for i, m := range s {
		if i == 0 || m.row != row || s[i-1].row != row || s[i-1].rests {
			continue
		}
		span := planner.Minutes((m.since - s[i-1].since).Minutes())
		if span < 0 || span > gap || s[i-1].begins && of.TooQuick(m.count, span) {
			continue
		}
		worked += span
		counts += m.count
	}
	if counts == 0 || worked <= 0 {
		return 0, 0
	}
	return worked / planner.Minutes(counts), counts
}

// takeBack empties a tick: its count is gone, the time it took is spent.
func (s sitting) takeBack(id string) {
	for i := range s {
		if s[i].id == id {
			s[i].count = 0
		}
	}
}
