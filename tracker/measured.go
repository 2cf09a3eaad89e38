package tracker

import (
	"errors"
	"time"

	"quiltrun/planner/measure"
)

// Measurement is a piece that was laid to the ruler, and what it said then: a
// newer program changes no measurement.
type Measurement struct {
	Step       string         `json:"step"`                // a test's name, a recipe's step or an operation's key
	Operation  string         `json:"operation,omitempty"` // whose work was measured
	Name       string         `json:"name"`                // the piece in words
	Colourways []string       `json:"colourways,omitempty"`
	Machine    string         `json:"machine,omitempty"` // the maker's own name for it
	Unit       string         `json:"unit"`              // "in" or "cm": how finely the ruler was read
	Moved      bool           `json:"moved,omitempty"`   // needle or guide were moved since the last measure
	Should     measure.Size   `json:"should"`            // raw, in ticks
	Sizes      []MeasuredSize `json:"sizes"`
	Seams      float64        `json:"seams"`             // over how many seams, the way that was measured; 0: none
	Seam       measure.Length `json:"seam,omitempty"`    // the allowance that it implied
	Planned    measure.Length `json:"planned,omitempty"` // the allowance that was asked for
}

// MeasuredSize is how many pieces measured so much. A height of 0 was not
// measured.
type MeasuredSize struct {
	Size   measure.Size `json:"size"`
	Count  int          `json:"count"`
	Blocks []string     `json:"blocks,omitempty"` // whose it was, where that was said
}

// Pieces is how many pieces were measured.
func (m Measurement) Pieces() int {
	n := 0
	for _, s := range m.Sizes {
		n += s.Count
	}
	return n
}

// sound checks a stored measurement.
func (m *Measurement) sound() error {
	if m == nil || m.Step == "" || len(m.Sizes) == 0 {
		return errors.New("it says of no piece what it measured")
	}
	for _, s := range m.Sizes {
		if s.Count < 1 || s.Size.Width <= 0 || s.Size.Height < 0 {
			return errors.New("it has a size that cannot be measured")
		}
	}
	return nil
}

// Measure is the event that keeps a measured piece.
func (s State) Measure(m Measurement, id string, at time.Time, by string) (Event, error) {
	if err := s.ready(id); err != nil {
		return Event{}, err
	}
	ev := s.event(Measured, id, at, by)
	ev.Measure = &m
	return ev, nil
}

// Measurements is every entry standing that has a measured piece, in order.
func (s State) Measurements() []Entry {
	var all []Entry
	for _, e := range s.Entries {
		if e.Standing() && e.Measure != nil {
			all = append(all, e)
		}
	}
	return all
}

// LastMachine is the machine on which somebody measured last in this job, ""
// where none was named.
func (s State) LastMachine(by string) string {
	all := s.Measurements()
	for i := len(all) - 1; i >= 0; i-- {
		if all[i].By == by {
			return all[i].Measure.Machine
		}
	}
	return ""
}

// OperationTyped finds an operation of the job by its number, its key, its name
// on the wall or a beginning that only one has, as Log does.
func (s State) OperationTyped(typed string) (string, error) { return s.operation(typed) }

// BlockTyped finds a block of the job by its id as somebody types it: tide-3 is
// tide-03.
func (s State) BlockTyped(typed string) (string, error) { return s.block(typed) }
