package render

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"time"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// Started says what was begun, and what was stopped by that.
func Started(w io.Writer, before, after tracker.State, ev tracker.Event, repeated bool, look Look) error {
	p := &page{look: look}
	p.receipt(ev, "begun", after.Ledger.Job, repeated)
	part := ev.Parts[0]
	p.para(2, fmt.Sprintf("%s, from %s; stop it with: quiltrun stop", atRow(after, part.Operation, part.Lot), moment(ev.At)))
	if was, ran := before.AtWork(ev.By); ran && !repeated {
		if ended, found, err := after.Sitting(was.ID); found && err == nil && ended.Counted() {
			p.para(2, fmt.Sprintf("%s is stopped so, after %s", spentOn(after, ended), spell(ended.Minutes())))
		}
	}
	return p.writeTo(w)
}

// Stopped says what was stopped and how long it was.
func Stopped(w io.Writer, after tracker.State, ev tracker.Event, sitting *tracker.Sitting, repeated bool, look Look) error {
	p := &page{look: look}
	p.receipt(ev, "stopped", after.Ledger.Job, repeated)
	p.sat(after, sitting)
	return p.writeTo(w)
}

// Settled says what was put right.
func Settled(w io.Writer, after tracker.State, ev tracker.Event, sitting *tracker.Sitting, repeated bool, look Look) error {
	p := &page{look: look}
	what := "put right"
	if ev.Target == "" {
		what = "set"
	}
	p.receipt(ev, what, after.Ledger.Job, repeated)
	switch {
	case ev.Target == "":
		p.para(2, limitWords(after))
	case sitting != nil:
		p.sat(after, sitting)
	default:
		for _, e := range after.Entries {
			if e.ID == ev.Target {
				p.para(2, fmt.Sprintf("entry %d (%s) took %s", e.Seq, partsWords(after, e.Parts), spell(after.Told(e))))
			}
		}
	}
	return p.writeTo(w)
}

// sat is one sitting in a line.
func (p *page) sat(s tracker.State, sitting *tracker.Sitting) {
	if sitting == nil {
		return
	}
	took := spell(sitting.Minutes())
	if !sitting.Counted() {
		took += ", not counted"
	}
	p.para(2, fmt.Sprintf("%s: %s, %s", spentOn(s, *sitting), span(*sitting), took))
}

// limitWords is what is taken for work.
func limitWords(s tracker.State) string {
	gap, quiet := s.Limits()
	return fmt.Sprintf("more than %s between two ticks is no work; a clock that runs %s with nothing logged is asked about", spell(gap), spell(quiet))
}

// timed is a line of the list of times: a sitting, or what was told of an entry.
type timed struct {
	at      time.Time
	seq     uint64
	by      string
	when    string
	what    string
	minutes string
}

// Times writes who was at work on a job, when, at what and how long, what is in
// doubt, and what it comes to.
func Times(w io.Writer, s tracker.State, now time.Time, look Look) error {
	p := &page{look: look}
	p.prose(strong, 0, "", "Time at work on "+s.Ledger.Job)
	p.rule()
	lines := timesOf(s, now)
	if len(lines) == 0 {
		p.para(0, "No time is in the log.")
		return p.writeTo(w)
	}
	p.worked(s, now)
	p.timesTable(lines)
	for _, doubt := range s.Doubts(now) {
		p.gap()
		what, do := DoubtWords(s, doubt)
		p.para(0, what)
		p.para(2, do)
	}
	return p.writeTo(w)
}

// worked is what it comes to, in all, by person and by day.
func (p *page) worked(s tracker.State, now time.Time) {
	sum := s.Worked()
	words := spell(sum.Minutes)
	if people := peopleOf(s, now); len(people) > 1 {
		words += fmt.Sprintf(" of %d people, in %s", len(people), spell(sum.Elapsed))
	}
	p.fact("Worked", factAt, words)
	if sum.Ripping > 0 {
		p.fact("Ripping", factAt, spell(sum.Ripping)+" of it")
	}
	if people := peopleOf(s, now); len(people) > 1 {
		var each []string
		for _, person := range people {
			each = append(each, tie(fmt.Sprintf("%s %s", person.By, spell(person.Minutes))))
		}
		p.fact("People", factAt, enumerate(each))
	}
	var days []string
	for _, d := range daysOf(s, now) {
		days = append(days, tie(fmt.Sprintf("%s %s", shortDay(d.Date), spell(d.Minutes))))
	}
	p.fact("Days", factAt, enumerate(days))
	if gap, quiet := s.Limits(); gap != tracker.UsualGap || quiet != tracker.UsualQuiet {
		p.fact("Limits", factAt, limitWords(s))
	}
	p.gap()
}

func (p *page) timesTable(lines []timed) {
	g := &grid{columns: []column{{title: "No", right: true}, {title: "By"}, {title: "When"}, {title: "What", flexible: true}, {title: "Time", right: true}}}
	for _, l := range lines {
		g.add(fmt.Sprint(l.seq), l.by, l.when, l.what, tie(l.minutes))
	}
	nothing := func(int) {}
	if p.columns(0, g, nothing, nothing) {
		return
	}
	for _, l := range lines {
		p.hang(0, fmt.Sprintf("%3d  ", l.seq), fmt.Sprintf("%s, %s: %s, %s", l.when, l.by, l.what, l.minutes))
	}
}

// timesOf is all times of a job in order.
func timesOf(s tracker.State, now time.Time) []timed {
	var lines []timed
	for _, sitting := range s.Sittings(now) {
		l := timed{at: sitting.From, seq: sitting.Seq, by: sitting.By, when: span(sitting), what: spentOn(s, sitting), minutes: spell(sitting.Minutes())}
		switch {
		case sitting.Doubt != "":
			l.minutes += " in doubt"
		case sitting.Running():
			l.minutes += " so far"
		case sitting.Settled != nil:
			l.minutes += " as said"
		}
		lines = append(lines, l)
	}
	for _, e := range s.Entries {
		if told := s.Told(e); told > 0 {
			what := partsWords(s, timedParts(e))
			if e.Kind == tracker.Ripped {
				what = "ripped: " + what
			}
			lines = append(lines, timed{at: e.At, seq: e.Seq, by: e.By, when: "told" + tied + moment(e.At), what: what, minutes: spell(told)})
		}
	}
	slices.SortStableFunc(lines, func(a, b timed) int { return cmp.Or(a.at.Compare(b.at), cmp.Compare(a.seq, b.seq)) })
	return lines
}

// timedParts is the parts of an entry that its time went into.
func timedParts(e tracker.Entry) []tracker.Part {
	own := slices.DeleteFunc(slices.Clone(e.Parts), func(p tracker.Part) bool { return p.Minutes == nil })
	if len(own) == 0 {
		return e.Parts
	}
	return own
}

// personTime is the minutes of one person.
type personTime struct {
	By      string
	Minutes planner.Minutes
}

// peopleOf is what everybody worked, as far as it is counted, in order of names.
func peopleOf(s tracker.State, now time.Time) []personTime {
	sums := map[string]planner.Minutes{}
	for _, sitting := range s.Sittings(now) {
		if sitting.Counted() {
			sums[sitting.By] += sitting.Minutes()
		}
	}
	for _, e := range s.Entries {
		if told := s.Told(e); told > 0 {
			sums[e.By] += told
		}
	}
	var people []personTime
	for by, minutes := range sums {
		people = append(people, personTime{by, minutes})
	}
	slices.SortFunc(people, func(a, b personTime) int { return cmp.Compare(a.By, b.By) })
	return people
}

// daysOf is what each day had of it, as far as it is counted.
func daysOf(s tracker.State, now time.Time) []tracker.DayMinutes {
	sums := map[planner.Date]planner.Minutes{}
	for _, sitting := range s.Sittings(now) {
		if sitting.Counted() {
			for _, d := range sitting.Days(sitting.From.Location()) {
				sums[d.Date] += d.Minutes
			}
		}
	}
	for _, e := range s.Entries {
		if told := s.Told(e); told > 0 {
			sums[planner.DateOf(e.At)] += told
		}
	}
	var days []tracker.DayMinutes
	for date, minutes := range sums {
		days = append(days, tracker.DayMinutes{Date: date, Minutes: minutes})
	}
	slices.SortFunc(days, func(a, b tracker.DayMinutes) int { return b.Date.DaysUntil(a.Date) })
	return days
}
