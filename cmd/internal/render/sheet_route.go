package render

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"quiltrun/planner"
	"quiltrun/planner/english"
)

// Above this many lots an operation lists them side by side instead of one a
// line: the cutting of a hundred fabrics stays one item of the route.
const mostRows = 8

// route lists the operations: the number that is on the wall, what to do in
// plain words, and a box to tick for every lot.
func (s *sheet) route() {
	ops := s.plan.Operations
	s.heading("Operations")
	s.routeLead()
	rows, g := s.routeTable()
	fits := s.columns(1, g, func(int) {}, func(i int) {
		if r := rows[i]; r.last {
			s.stepNotes(r.stage, routeNotes)
		}
	})
	if fits {
		return
	}
	for _, stage := range stages(ops) {
		s.narrowStage(stage)
	}
}

// routeLead says what the times are worth, and how work is checked off.
func (s *sheet) routeLead() {
	s.para(1, fmt.Sprintf("Times are means of the table of starting times, with %.0f %% for personal needs, fatigue and contingencies; makers differ by a factor of three.",
		100*planner.Allowance))
	if o, ok := sampleEntry(s.plan.Operations); ok {
		s.para(1, fmt.Sprintf("Log with the number, e.g. quiltrun log %s %d %d --colourway %s", s.plan.Job.ID, o.Number, min(o.Count, 4), shellWord(o.Lot.Name)))
	}
}

// sampleEntry is an operation to show logging with: one of a colourway, at the
// machine where there is one, and with something left after the first few.
func sampleEntry(ops []planner.Operation) (planner.Operation, bool) {
	for _, good := range []func(planner.Operation) bool{
		func(o planner.Operation) bool { return o.Place == planner.Machine && o.Count > 4 },
		func(o planner.Operation) bool { return o.Count > 1 },
		func(planner.Operation) bool { return true },
	} {
		for _, o := range ops {
			if o.Lot.Kind == planner.ColourwayLot && good(o) {
				return o, true
			}
		}
	}
	return planner.Operation{}, false
}

// shellWord is a name as a command line takes it: in quotes where a shell would
// read more into it.
func shellWord(name string) string {
	plain := func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune("-_.", r) }
	if !strings.ContainsFunc(name, func(r rune) bool { return !plain(r) }) {
		return name
	}
	return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
}

// stage is the rows of one operation that have the same instruction.
type stage []planner.Operation

// stages parts the route by number and instruction.
func stages(ops []planner.Operation) []stage {
	var out []stage
	for _, group := range grouped(len(ops), func(i int) string { return ops[i].Key + "\x00" + ops[i].Doing }) {
		st := make(stage, len(group))
		for i, index := range group {
			st[i] = ops[index]
		}
		out = append(out, st)
	}
	// One number's instructions stay together even where its lots take turns.
	slices.SortStableFunc(out, func(a, b stage) int { return a[0].Number - b[0].Number })
	return out
}

// crowded reports that the lots are too many for a line each.
func (st stage) crowded() bool { return len(st) > mostRows }

// total is the counts and the expected time of all lots.
func (st stage) total() (count int, minutes planner.Minutes) {
	for _, o := range st {
		count += o.Count
		minutes += o.Minutes()
	}
	return count, minutes
}

// routeRow is a row of the table and the stage that it belongs to.
type routeRow struct {
	stage stage
	last  bool
}

// routeNotes is where instructions stand under the rows: below the names.
const routeNotes = 7

// routeTable has a row for each lot; number and name stand in the first one of
// a stage.
func (s *sheet) routeTable() ([]routeRow, *grid) {
	var rows []routeRow
	g := &grid{columns: []column{
		{title: "No", right: true}, {title: "Operation", flexible: true}, {}, {title: "Lot", flexible: true},
		{title: "Count", right: true}, {title: "Time", right: true},
	}}
	for _, st := range stages(s.plan.Operations) {
		first := st[0]
		if st.crowded() {
			count, minutes := st.total()
			g.add(fmt.Sprint(first.Number), first.Name, "", counted(len(st), string(first.Lot.Kind)),
				counted(count, string(first.CountedIn)), spell(minutes))
			rows = append(rows, routeRow{st, true})
			continue
		}
		for i, o := range st {
			cells := []string{fmt.Sprint(o.Number), o.Name, "☐", o.Lot.Name, counted(o.Count, string(o.CountedIn)), spell(o.Minutes())}
			if i > 0 {
				cells[0], cells[1] = "", ""
			}
			g.add(cells...)
			rows = append(rows, routeRow{st, i == len(st)-1})
		}
	}
	return rows, g
}

// stepNotes adds what is said of a stage under its rows.
func (s *sheet) stepNotes(st stage, indent int) {
	first := st[0]
	if st.crowded() {
		s.flow(indent, lotCounts(st))
	}
	s.para(indent, strings.TrimSpace(english.Capital(string(first.Place))+": "+first.Doing))
	if first.Wait > 0 {
		s.para(indent, fmt.Sprintf("Then %s go by without work on it.", counted(first.Wait, "day")))
	}
}

// lotCounts are boxes with names and counts.
func lotCounts(st stage) []string {
	out := make([]string, len(st))
	for i, o := range st {
		out[i] = fmt.Sprintf("☐ %s: %d", o.Lot.Name, o.Count)
	}
	return out
}

// narrowStage is a stage on a page too narrow for the table.
func (s *sheet) narrowStage(st stage) {
	first := st[0]
	s.hang(0, fmt.Sprintf("%4d  ", first.Number), first.Name)
	const indent = 6
	if !st.crowded() {
		for _, o := range st {
			s.hang(indent, s.look.box()+" ", fmt.Sprintf("%s: %s, %s", o.Lot.Name, counted(o.Count, string(o.CountedIn)), spell(o.Minutes())))
		}
	}
	s.stepNotes(st, indent)
}
