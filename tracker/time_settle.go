package tracker

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"quiltrun/planner"
)

// SettleRequest says how long something really took: the sitting or the entry
// that is named by its id, a beginning of it, or its number.
type SettleRequest struct {
	Entry string
	Took  *planner.Minutes // or End
	End   *time.Time       // when work ended
	ID    string           // made by the sender
	At    time.Time
	By    string
}

// Settle is the event that puts a time right: a sitting in doubt or any other, or
// what an entry was said to have taken. Its minutes are shared out as they were
// before. A clock that still runs is stopped so.
func (s State) Settle(r SettleRequest) (Event, error) {
	if err := s.ready(r.ID); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(r.ID); ok {
		return s.again(stored, func(then State) (Event, error) { return then.Settle(r) })
	}
	if r.Took == nil && r.End == nil {
		return Event{}, &Refusal{Kind: BadTime, What: "how long did it take?", Hint: "say a time such as 45m, or when it ended"}
	}
	ev := s.event(Settled, r.ID, r.At, r.By)
	typed := strings.TrimSpace(r.Entry)
	sitting, found, err := s.Sitting(typed)
	if err != nil {
		return Event{}, err
	}
	if found {
		ev.Target, ev.End = sitting.ID, r.End
		ev.Parts, err = s.settledSitting(sitting, r)
		return ev, err
	}
	e, err := s.entry(typed)
	if err != nil {
		return Event{}, noTimeOf(typed, err)
	}
	if err := s.canBeTold(e, r); err != nil {
		return Event{}, err
	}
	ev.Target, ev.Parts = e.ID, retold(e, s.timing.settled[e.ID].parts, *r.Took)
	return ev, nil
}

// noTimeOf words what cannot be put right: what cannot be taken back either, and
// what is not there.
func noTimeOf(typed string, err error) error {
	var r *Refusal
	if !errors.As(err, &r) || r.Kind != NothingToUndo {
		return err
	}
	return &Refusal{Kind: BadTime, Hint: "quiltrun time shows the numbers of those that have",
		What: fmt.Sprintf("%s has no time that could be put right", quoted(typed))}
}

// SetLimits is the event that says what is taken for work from then on.
func (s State) SetLimits(l Limits, id string, at time.Time, by string) (Event, error) {
	ev, err := s.moment(Settled, id, at, by)
	if err != nil || ev.Seq != 0 {
		return ev, err
	}
	ev.Limits = &l
	return ev, nil
}

// Sitting finds a sitting by its id, its number, that of the entry that stopped
// it, or a beginning of its id that no other has.
func (s State) Sitting(typed string) (Sitting, bool, error) {
	number, err := strconv.ParseUint(strings.TrimPrefix(typed, "#"), 10, 64)
	var begin []Sitting
	for _, sitting := range s.timing.sittings {
		switch {
		case sitting.ID == typed, err == nil && (sitting.Seq == number || number > 0 && sitting.Ended == number):
			return sitting, true, nil
		case typed != "" && strings.HasPrefix(sitting.ID, typed):
			begin = append(begin, sitting)
		}
	}
	if len(begin) > 1 {
		return Sitting{}, false, &Refusal{Kind: Ambiguous, What: fmt.Sprintf("%s begins the ids of %d sittings", quoted(typed), len(begin)), Hint: "type more of it, or its number"}
	}
	if len(begin) == 1 {
		return begin[0], true, nil
	}
	return Sitting{}, false, nil
}

// settledSitting is the parts of the word on a sitting.
func (s State) settledSitting(sitting Sitting, r SettleRequest) ([]Part, error) {
	if sitting.Running() {
		s.soFar(&sitting, r.At)
	}
	minutes := planner.Minutes(0)
	if r.End == nil {
		minutes = *r.Took
	} else {
		if err := possibleEnd(*r.End, sitting.From, r.At); err != nil {
			return nil, err
		}
		minutes = sitting.until(*r.End)
	}
	parts := make([]Part, len(sitting.Shares))
	weights := make([]planner.Minutes, len(parts))
	for i, share := range sitting.Shares {
		parts[i] = Part{Operation: share.Operation, Lot: share.Lot}
		weights[i] = share.Minutes
	}
	shareOut(parts, weights, minutes)
	return parts, nil
}

// until is the sitting's minutes up to an end. Of a sitting whose clock was set
// back, it is the time from its beginning.
func (s Sitting) until(end time.Time) planner.Minutes {
	if s.Doubt == ClockSetBack || len(s.Spans) == 0 {
		return Span{s.From, end}.Minutes()
	}
	var sum planner.Minutes
	for i, span := range s.Spans {
		if span.To.After(end) || i == len(s.Spans)-1 {
			span.To = end
		}
		sum += max(0, span.Minutes())
	}
	return sum
}

// canBeTold checks that an entry's time is one that somebody says.
func (s State) canBeTold(e Entry, r SettleRequest) error {
	switch {
	case len(e.Parts) == 0:
		return &Refusal{Kind: BadTime, What: fmt.Sprintf("entry %d took no time that is counted", e.Seq)}
	case e.Ticked && saidMinutes(e.Parts) == 0:
		return &Refusal{Kind: BadTime, What: fmt.Sprintf("the time of entry %d is told by the ticks around it", e.Seq),
			Hint: "put the whole sitting right: quiltrun time shows its number"}
	case r.Took == nil:
		return &Refusal{Kind: BadTime, What: fmt.Sprintf("entry %d has no beginning, so that its end says nothing", e.Seq),
			Hint: "say how long it took, such as 45m"}
	}
	return nil
}

// retold is an entry's parts with other minutes. Those of them that nobody timed,
// since they were logged along, get none.
func retold(e Entry, said []Part, minutes planner.Minutes) []Part {
	parts := e.Parts
	if len(said) != len(parts) {
		said = parts
	}
	timed := slices.ContainsFunc(said, func(p Part) bool { return p.Minutes != nil })
	var put []Part
	var weights []planner.Minutes
	for i, p := range parts {
		put = append(put, Part{Operation: p.Operation, Lot: p.Lot})
		switch {
		case said[i].Minutes != nil:
			weights = append(weights, *said[i].Minutes)
		case timed || e.CatchUp && i < len(parts)-1:
			weights = append(weights, 0)
		default:
			weights = append(weights, planner.Minutes(p.Count))
		}
	}
	shareOut(put, weights, minutes)
	return put
}

// shareOut gives parts their minutes by weight; where none weighs anything the
// last part, which was asked for, has them all. The shares add up.
func shareOut(parts []Part, weights []planner.Minutes, minutes planner.Minutes) {
	var sum, passed, given planner.Minutes
	for _, w := range weights {
		sum += w
	}
	if sum <= 0 {
		weights, sum = make([]planner.Minutes, len(parts)), 1
		weights[len(parts)-1] = 1
	}
	for i := range parts {
		if weights[i] == 0 {
			continue
		}
		passed += weights[i]
		share := minutes*passed/sum - given
		given += share
		parts[i].Minutes = &share
	}
}
