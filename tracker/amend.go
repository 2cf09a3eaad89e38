package tracker

import (
	"errors"
	"fmt"
	"time"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// Amendment is one change that the making brings about. One field is set.
type Amendment struct {
	Seam     measure.Length `json:"seam,omitempty"`      // as it was measured at the machine, in ticks
	FileSeam bool           `json:"file_seam,omitempty"` // the job file's seam counts again
	Swap     *planner.Swap  `json:"swap,omitempty"`      // two blocks that changed places
}

// change makes the amendment one of a job's.
func (a Amendment) change(to *planner.Amendments) {
	switch {
	case a.FileSeam:
		to.Seam = 0
	case a.Seam > 0:
		to.Seam = a.Seam
	case a.Swap != nil:
		to.Swaps = append(to.Swaps[:len(to.Swaps):len(to.Swaps)], *a.Swap)
	}
}

// Words is the amendment in a few words.
func (a Amendment) Words() string {
	switch {
	case a.FileSeam:
		return "the job file's seam again"
	case a.Swap != nil:
		return a.Swap.A + " and " + a.Swap.B + " change places"
	}
	return "a seam of " + a.Seam.Decimal(measure.Inches, 3) + " in"
}

// amended takes an amendment in, and the ledger that was planned with it.
func (f *folding) amended(ev *Event) error {
	if ev.Amendment == nil || *ev.Amendment == (Amendment{}) {
		return errors.New("it amends nothing")
	}
	if ev.Amendment.Seam < 0 {
		return errors.New("its seam is below 0")
	}
	if swap := ev.Amendment.Swap; swap != nil {
		if err := f.soundSwap(*swap); err != nil {
			return err
		}
	}
	ev.Amendment.change(&f.amend)
	if ev.Ledger == nil {
		return nil
	}
	return f.adopt(ev)
}

// Amendments is what the making has changed so far; a plan is made with them.
func (s State) Amendments() planner.Amendments { return s.amend }

// Prior is what the planner must keep when the job is planned anew: the
// ledger's numbers and ids, and what was amended.
func (s State) Prior() planner.Prior {
	prior := s.Dealt().Prior()
	prior.Amend = s.amend
	return prior
}

// Planned is the newest event standing that brought a ledger: the booking, a
// revision or an amendment.
func (s State) Planned() Event {
	gone := s.undone()
	for i := len(s.events) - 1; i >= 0; i-- {
		if ev := s.events[i]; ev.Ledger != nil && !gone[ev.ID] {
			return ev
		}
	}
	return Event{}
}

// Amend is the event that plans a job anew with a measured seam: m is the piece
// that was measured, ledger the new plan's, after the present one.
func (s State) Amend(a Amendment, m *Measurement, ledger Ledger, id string, at time.Time, by string) (Event, error) {
	if err := s.ready(id); err != nil {
		return Event{}, err
	}
	ev := s.event(Amended, id, at, by)
	ev.Amendment, ev.Measure, ev.Ledger, ev.Revision = &a, m, &ledger, ledger.Revision
	return ev, nil
}

// restsOn refuses to take an amendment back where the job was planned anew after
// it, or work was logged that only its plan has.
func (s State) restsOn(target Entry) error {
	if target.Kind != Amended || target.Ledger == nil {
		return nil
	}
	gone := s.undone()
	at, _ := s.at(target.ID)
	for _, ev := range s.events[at+1:] {
		if ev.Ledger != nil && !gone[ev.ID] {
			return &Refusal{Kind: BuiltOn, Near: []string{ev.ID},
				What: fmt.Sprintf("the job was planned anew with %s since (entry %d)", target.Amendment.Words(), ev.Seq),
				Hint: "to sew with the job file's seam again: quiltrun revise FILE --file-seam"}
		}
	}
	gone[target.ID] = true
	if _, err := replay(s.events, gone); err != nil {
		return &Refusal{Kind: BuiltOn, What: "work that was logged since rests on " + s.describe(target),
			Hint: "to sew with the job file's seam again: quiltrun revise FILE --file-seam"}
	}
	return nil
}
