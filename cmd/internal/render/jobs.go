package render

import (
	"fmt"
	"io"
	"time"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// Jobs writes one row for each booked job, as it is on a day: whose it is, when
// it is due, how far it is, what comes next. Used is the job in use, "" for none.
func Jobs(w io.Writer, states []tracker.State, used string, today planner.Date, look Look) error {
	p := &page{look: look}
	if len(states) == 0 {
		p.para(0, "No job is booked.")
		return p.writeTo(w)
	}
	p.prose(strong, 0, "", "Booked jobs, as of "+day(today))
	p.rule()
	g := &grid{columns: []column{
		{title: "Job"}, {title: "For", flexible: true}, {title: "Due"}, {title: "Made", right: true},
		{title: "Left", right: true}, {title: "Next", flexible: true},
	}}
	for _, s := range states {
		g.add(s.Ledger.Job, orDash(s.Ledger.Client), orDash(s.Ledger.Due.String()),
			fmt.Sprintf("%d/%d", s.FinishedBlocks(tracker.Lot{}), s.Blocks(tracker.Lot{})),
			hoursLeft(remainingMinutes(s)), shortNext(s, today))
	}
	after := func(row int) {
		if ev, parked := states[row].Parked(); parked {
			p.hang(2, "parked: ", parkedWords(ev))
		}
	}
	if !p.columns(0, g, func(int) {}, after) {
		p.jobList(states, today)
	}
	if used != "" {
		p.gap()
		p.para(0, "In use, so that JOB may be left out: "+used)
	}
	return p.writeTo(w)
}

// jobList is the same on a narrow page.
func (p *page) jobList(states []tracker.State, today planner.Date) {
	for _, s := range states {
		l := s.Ledger
		p.prose(strong, 0, "", l.Job)
		if ev, parked := s.Parked(); parked {
			p.hang(2, "parked: ", parkedWords(ev))
		}
		if l.Client != "" {
			p.hang(2, "for ", l.Client)
		}
		if !l.Due.IsZero() {
			p.hang(2, "due ", day(l.Due))
		}
		p.para(2, fmt.Sprintf("%d of %s made, %s left", s.FinishedBlocks(tracker.Lot{}), counted(s.Blocks(tracker.Lot{}), "block"), hoursLeft(remainingMinutes(s))))
		p.hang(2, "next: ", shortNext(s, today))
	}
}

// shortNext is what comes next in a job, without its time and without a list of
// fabrics.
func shortNext(s tracker.State, today planner.Date) string {
	if at, done := s.FinishedAt(); done {
		return "handed over on " + planner.DateOf(at).String()
	}
	next := s.NextDoable(today)
	switch len(next) {
	case 0:
		return nextWords(s, today)
	case 1:
		return taskWords(next)
	}
	return next[0].Name
}

// JobsJSON writes the same for scripts.
func JobsJSON(w io.Writer, states []tracker.State, used string, today planner.Date) error {
	return writeJSON(w, struct {
		Schema int           `json:"schema"`
		AsOf   string        `json:"as_of"`
		InUse  *string       `json:"in_use"`
		Jobs   []jsonBooking `json:"jobs"`
	}{schema, today.String(), known(used), list(states, func(s tracker.State) jsonBooking { return jobOf(s, used, today) })})
}

// jsonBooking is one booked job.
type jsonBooking struct {
	Job            string      `json:"job"`
	Title          string      `json:"title"`
	Client         *string     `json:"client"`
	Received       *string     `json:"received"`
	Due            *string     `json:"due"`
	Blocks         int         `json:"blocks"`
	FinishedBlocks int         `json:"finished_blocks"`
	InHand         int         `json:"in_hand"`
	Quilts         int         `json:"quilts"`
	FinishedQuilts int         `json:"finished_quilts"`
	MinutesLeft    number      `json:"minutes_left"`
	Next           *jsonNext   `json:"next"`
	Parked         *jsonParked `json:"parked"`
	InUse          bool        `json:"in_use"`
}

// jobOf is a job as scripts read it.
func jobOf(s tracker.State, used string, today planner.Date) jsonBooking {
	l := s.Ledger
	return jsonBooking{
		Job: l.Job, Title: l.Title, Client: known(l.Client), Received: date(l.Received), Due: date(l.Due),
		Blocks: s.Blocks(tracker.Lot{}), FinishedBlocks: s.FinishedBlocks(tracker.Lot{}), InHand: s.InHand(tracker.Lot{}),
		Quilts: l.Quantity, FinishedQuilts: s.FinishedQuilts(), MinutesLeft: minutes(remainingMinutes(s)),
		Next: nextOf(s, today), Parked: parkedOf(s), InUse: l.Job == used,
	}
}

// jsonNext is the next sensible thing to do; null where nothing can go on. Ready
// is how many counts can be made now, and minutes are for those.
type jsonNext struct {
	Number    int           `json:"number"`
	Key       string        `json:"key"`
	Name      string        `json:"name"`
	CountedIn string        `json:"counted_in"`
	Place     string        `json:"place"`
	Ready     int           `json:"ready"`
	Left      int           `json:"left"`
	Minutes   number        `json:"minutes"`
	Lots      []jsonNextLot `json:"lots"`
	Words     string        `json:"words"`
}

// jsonNextLot is one lot of the next thing to do.
type jsonNextLot struct {
	Lot     string `json:"lot"`
	LotKind string `json:"lot_kind"`
	Ready   int    `json:"ready"`
	Left    int    `json:"left"`
}

// nextOf is the next thing to do as scripts read it.
func nextOf(s tracker.State, today planner.Date) *jsonNext {
	next := s.NextDoable(today)
	if len(next) == 0 {
		return nil
	}
	o := next[0]
	out := &jsonNext{Number: o.Number, Key: o.Key, Name: o.Name, CountedIn: string(o.CountedIn), Place: string(o.Place),
		Minutes: minutes(minutesOf(next)), Words: untied(nextWords(s, today)),
		Lots: list(next, func(d tracker.Doable) jsonNextLot {
			return jsonNextLot{d.Lot.Name, string(d.Lot.Kind), d.Room, d.Left}
		})}
	for _, d := range next {
		out.Ready, out.Left = out.Ready+d.Room, out.Left+d.Left
	}
	return out
}

// jsonParked is where a job's things lie; null where nothing is parked.
type jsonParked struct {
	Text string `json:"text"`
	By   string `json:"by"`
	At   string `json:"at"`
}

// parkedOf is the same as scripts read it.
func parkedOf(s tracker.State) *jsonParked {
	ev, parked := s.Parked()
	if !parked {
		return nil
	}
	return &jsonParked{ev.Reason, ev.By, ev.At.Format(time.RFC3339)}
}
