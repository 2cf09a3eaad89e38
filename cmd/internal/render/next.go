package render

import (
	"fmt"
	"io"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/tracker"
)

// Next writes what can be done now, in the time and at the place that were asked
// for: first where parked things lie, then batch by batch, then what is held up
// and by what.
func Next(w io.Writer, states []tracker.State, r tracker.AgendaRequest, a tracker.Agenda, look Look) error {
	p := &page{look: look}
	if len(states) == 0 {
		p.para(0, "No job is booked.")
		return p.writeTo(w)
	}
	p.prose(strong, 0, "", nextTitle(r))
	p.rule()
	for _, s := range states {
		if ev, parked := s.Parked(); parked {
			p.hang(0, "Parked  ", s.Ledger.Job+": "+parkedWords(ev))
		}
	}
	p.batches(a, r)
	p.longer(a, r)
	p.heldUp(a)
	if len(a.Batches) > 0 {
		p.gap()
		p.para(0, nextMeans)
	}
	return p.writeTo(w)
}

// nextMeans explains order and times.
const nextMeans = "The job that is due first comes first, and what shares its set-up goes along. Times are those of the table of starting times: there is no pace of your own yet."

// nextTitle is what was asked for.
func nextTitle(r tracker.AgendaRequest) string {
	title := "What to do"
	if r.For > 0 {
		title += " in " + spell(r.For)
	}
	if r.At != "" {
		title += " " + atWords(r.At)
	}
	return title + ", on " + day(r.Today)
}

// atWords is a place of work in a sentence.
func atWords(place planner.Place) string {
	if place == planner.Hand {
		return "by hand"
	}
	return "at the " + string(place)
}

// batches are what can go on, one set-up after the other.
func (p *page) batches(a tracker.Agenda, r tracker.AgendaRequest) {
	if len(a.Batches) == 0 {
		p.gap()
		p.para(0, nothingWords(a, r))
		return
	}
	for _, b := range a.Batches {
		p.heading(fmt.Sprintf("%s %s, %s", english.Capital(b.Kind), atWords(b.Place), about(b.Minutes)))
		g := &grid{columns: []column{{title: "Job"}, {title: "Operation", flexible: true}, {title: "Lots", flexible: true}, {title: "Make", right: true}, {title: "Time", right: true}}}
		for _, group := range grouped(len(b.Tasks), func(i int) string { return b.Tasks[i].Job + " " + b.Tasks[i].Key }) {
			g.add(taskRow(b.Tasks, group)...)
		}
		p.records(0, g)
		if b.SetupMinutes > 0 {
			p.para(0, "and "+spell(b.SetupMinutes)+" to set up, once")
		}
	}
}

// nothingWords says why nothing is to be done.
func nothingWords(a tracker.Agenda, r tracker.AgendaRequest) string {
	switch {
	case len(a.Longer) > 0:
		return "Nothing fits into " + spell(r.For) + "."
	case len(a.Held) > 0:
		return "Nothing can go on."
	}
	return "Nothing is left to do."
}

// taskRow is one operation of a job for all its lots in a batch.
func taskRow(tasks []tracker.Task, group []int) []string {
	first := tasks[group[0]]
	count, left, time, part := 0, 0, planner.Minutes(0), false
	for _, at := range group {
		t := tasks[at]
		count, left, time = count+t.Count, left+t.Left, time+t.Minutes
		part = part || t.Count < t.Left
	}
	lots := make([]string, len(group))
	for i, at := range group {
		t := tasks[at]
		lots[i] = t.Lot.Name
		switch {
		case len(t.Tests) > 0:
			lots[i] = fmt.Sprintf("%s (%d for %s)", t.Lot.Name, t.Count, testWords(t.Tests))
		case part && len(group) > 1:
			lots[i] = fmt.Sprintf("%s %d", t.Lot.Name, t.Count)
		}
	}
	amount := counted(count, string(first.CountedIn))
	if count < left {
		amount = fmt.Sprintf("%d of %s", count, counted(left, string(first.CountedIn)))
	}
	return []string{first.Job, first.Doable.Title(), enumerate(lots), amount, spell(time)}
}

// longer is what takes longer than there is time.
func (p *page) longer(a tracker.Agenda, r tracker.AgendaRequest) {
	if len(a.Longer) == 0 {
		return
	}
	p.gap()
	p.para(0, "Longer than "+spell(r.For)+" for one count:")
	for _, t := range a.Longer {
		p.hang(2, "- ", fmt.Sprintf("%s: %s, %s, %s", t.Job, t.Doable.Title(), t.Lot.Name, about(t.Doable.Minutes(1))))
	}
}

// heldUp is what cannot go on, for each job by what it waits for in the end.
func (p *page) heldUp(a tracker.Agenda) {
	if len(a.Held) == 0 {
		return
	}
	p.gap()
	p.para(0, "Held up:")
	for _, j := range a.Held {
		for _, group := range grouped(len(j.Held), func(i int) string { return j.Held[i].Waits.Key }) {
			held := make([]tracker.Held, len(group))
			for i, at := range group {
				held[i] = j.Held[at]
			}
			p.hang(2, "- ", j.Job+": "+heldWords(held))
		}
	}
}

// heldWords is what a group waits for: "90 press pairs of dune, wrack waits for 80
// chain-sew pairs, and 12 operations after it".
func heldWords(group []tracker.Held) string {
	first := group[0]
	for _, h := range group {
		if h.Behind.Key == h.Waits.Key {
			first = h
			break
		}
	}
	var lots []string
	keys := map[string]bool{}
	for _, h := range group {
		keys[h.Key] = true
		if h.Key == first.Key {
			lots = append(lots, h.Lot.Name)
		}
	}
	why := "waits for " + first.Waits.Title()
	if first.By != tracker.ByOrder {
		why = "waits: " + first.Why
	}
	words := fmt.Sprintf("%s of %s %s", first.Title(), fewNames(lots), why)
	if more := len(keys) - 1; more > 0 {
		words += fmt.Sprintf(", and %s after it", counted(more, "operation"))
	}
	return words
}

// fewNames lists a few names and counts the others.
func fewNames(names []string) string {
	const most = 4
	if len(names) <= most {
		return enumerate(names)
	}
	return fmt.Sprintf("%s and %d more", enumerate(names[:most-1]), len(names)-most+1)
}
