package tick

import (
	"slices"
	"time"

	"quiltrun/planner"
)

// Opened says when the screen came up, at the time on the wall. Opening it writes
// nothing: who only looks has no clock running that somebody has to stop. But the
// work up to the first tick may have begun then.
func (s *Screen) Opened(at time.Time) {
	s.marks = append(s.marks, mark{at: at, row: s.at, begins: true})
}

// sign takes in a key that is none of the work itself: the maker is at the screen,
// and what she does next begins after it. Between two ticks that are near enough
// the ticks tell the time, and such keys say nothing of it.
func (s *Screen) sign(p Press) {
	if len(s.marks) == 0 || s.paused { // lines of a pipe come when they come
		return
	}
	now := mark{since: p.Since, at: p.At, row: s.at, begins: true}
	last := &s.marks[len(s.marks)-1]
	gap, _ := s.state.Limits()
	switch {
	case last.begins:
		*last = now
	case planner.Minutes((p.Since - last.since).Minutes()) > gap:
		s.marks = append(s.marks, now)
	}
}

// isPartOfWork reports that a key comes when counts are made already: it checks
// them off, or is part of their number.
func (s *Screen) isPartOfWork(key string) bool {
	return s.checksOff(key) || isDigit(key) || key == "backspace" || key == "esc"
}

// begun is when the work up to a tick began, where no tick or end of a pause says
// it: nil where one does, and in a pause. Ticks that were taken back or refused say
// nothing.
func (s sitting) begun() *time.Time {
	for _, m := range slices.Backward(s) {
		switch {
		case m.begins:
			return &m.at
		case m.id == "" || m.count > 0:
			return nil
		}
	}
	return nil
}
