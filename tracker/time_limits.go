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
