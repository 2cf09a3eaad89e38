package tracker

import (
	"fmt"
	"math"
	"time"

	"quiltrun/planner"
)

// LogRequest is work that somebody says was done.
type LogRequest struct {
	Operation string           // as typed: number, key, a unique beginning of one, or a run a..b of them
	Counts    []CountAsked     // as ParseCounts gives them
	Lot       *Lot             // nil: the one that the counts or blocks name, else the one with work left
	Blocks    []string         // ids as typed; empty: nobody said which blocks
	Took      *planner.Minutes // person-minutes of the whole entry, setup included; nil: not timed
	CatchUp   bool             // log the operations before it along, without times
	Ticked    bool             // checked off at the machine at the moment At, not told afterwards
	Since     *time.Time       // of one that is ticked: when the maker was last seen at the screen before, nil where an entry says so
	ID        string           // made by the sender
	At        time.Time
	By        string
	Reason    string
}

// Log is the event that records what was done, ready for the store to number.
// It is refused with a *Refusal where the work cannot have been done as said:
// more than is left, or before its turn. A request whose id the job has already
// gives the event that is stored, number and all, where it says the same, and
// is refused where it says something else.
func (s State) Log(r LogRequest) (Event, error) {
	if err := s.ready(r.ID); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(r.ID); ok {
		return s.again(stored, func(then State) (Event, error) { return then.Log(r) })
	}
	parts, err := s.parts(r)
	if err != nil {
		return Event{}, err
	}
	ev := s.event(Logged, r.ID, r.At, r.By)
	ev.Parts, ev.CatchUp, ev.Ticked, ev.Reason = parts, r.CatchUp, r.Ticked, r.Reason
	ev.Since = r.Since
	return ev, nil
}

// ready checks what every entry needs.
func (s State) ready(id string) error {
	if !s.Booked() {
		return &Refusal{Kind: UnknownJob, What: "the job is not booked", Hint: "book it first"}
	}
	if id == "" {
		return fmt.Errorf("an entry needs an id")
	}
	return nil
}

// event is an envelope without contents, made against the present ledger.
func (s State) event(kind Kind, id string, at time.Time, by string) Event {
	return Event{Schema: EventSchema, ID: id, At: at, By: by, Kind: kind, Revision: s.Ledger.Revision}
}

// parts works out what a request says of each row.
func (s State) parts(r LogRequest) ([]Part, error) {
	run, err := s.run(r.Operation)
	if err != nil {
		return nil, err
	}
	if len(run) == 1 && r.Lot == nil && len(r.Blocks) == 0 {
		r.Lot = s.lotAtWork(r.By, run[0], r.Counts)
	}
	shares, err := s.shares(run, r)
	if err != nil {
		return nil, err
	}
	if r.Took != nil && !(*r.Took > 0 && !math.IsInf(float64(*r.Took), 0)) {
		return nil, &Refusal{Kind: BadTime, What: "the time taken has to be more than no time", Hint: "leave it out where nobody timed the work"}
	}
	d := &draft{board: s.board.copied(), catchUp: r.CatchUp}
	for _, key := range run {
		for _, share := range shares {
			if err := d.log(key, share, len(run) > 1); err != nil {
				return nil, err
			}
		}
	}
	if len(d.parts) == 0 {
		return nil, s.noneLeft(run, shares)
	}
	return d.timed(r.Took), nil
}
