package tracker

import (
	"fmt"

	"quiltrun/planner"
)

// Limits says what is taken for work where the log alone cannot tell. A nil one
// leaves what was set before.
type Limits struct {
	Gap   *planner.Minutes `json:"gap,omitempty"`   // the longest time between two ticks that is still work
	Quiet *planner.Minutes `json:"quiet,omitempty"` // the longest time that a clock may run with nothing logged
}

// The limits where nobody set any, from memory: no count takes ten minutes, and
// whoever sews for four hours without a word in the log forgot to stop the clock.
const (
	UsualGap   planner.Minutes = 10
	UsualQuiet planner.Minutes = 4 * 60
)

// quickest is the part of the table's time below which nobody makes a count: makers
// differ by a factor of three, and a little is left for who is quicker still. From
// memory.
const quickest = 1.0 / 4

// TooQuick reports that counts of an operation cannot all have been made in a time:
// some lay there before, and the time says nothing of how fast they are made.
func (o Operation) TooQuick(count int, in planner.Minutes) bool {
	return in < planner.Minutes(count)*o.Unit.Mean*quickest
}

// limits are the limits in force.
type limits struct{ gap, quiet planner.Minutes }

// after is the limits once an event has set some.
func (l limits) after(set *Limits) limits {
	if set != nil && set.Gap != nil {
		l.gap = *set.Gap
	}
	if set != nil && set.Quiet != nil {
		l.quiet = *set.Quiet
	}
	return l
}

// sound checks limits by themselves.
func (l *Limits) sound() error {
	if l == nil {
		return nil
	}
	for _, m := range []*planner.Minutes{l.Gap, l.Quiet} {
		if m != nil && !(*m >= 0) {
			return fmt.Errorf("its limit is below 0")
		}
	}
	return nil
}
