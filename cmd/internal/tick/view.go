package tick

import (
	"fmt"
	"slices"
	"strings"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
)

// The least that a screen is laid out for; on a smaller one lines are cut.
const leastWide, leastHigh = 20, 6

// Line is one line of the screen, and how it stands out where that is welcome.
type Line struct {
	Text   string
	Strong bool // bold
	Turned bool // light and dark exchanged
}

// part is lines of the screen that are shown together.
type part struct {
	lines []Line
	apart bool // an empty line goes before it, if there is room
}

// Lines lays the screen out: exactly high lines of at most wide columns.
func (s *Screen) Lines(wide, high int) []Line {
	// Terminals tell 0 × 0 while they come up, and may be dragged to nothing.
	wide, high = max(wide, leastWide), max(high, leastHigh)
	row, ok := s.row()
	if !ok {
		return fill([]part{{lines: s.plain("This row is no longer in the route: n for the next, d when done.", wide)}}, s.foot(row, wide, high), high)
	}
	head := append(s.parked(wide, high), s.title(row, wide)...)
	foot := s.foot(row, wide, high)
	room := high - len(head) - len(foot)
	if s.whole {
		return fill(append([]part{{lines: head}}, s.inFull(row, wide)...), foot, high)
	}
	middle := s.middle(row, wide, room)
	return fill(append([]part{{lines: head}}, middle...), foot, high)
}

// middle is the figures and what is said below them, so much of it as there is
// room for: the instruction goes before very large figures, and figures that
// can be read across a table before everything else.
func (s *Screen) middle(row tracker.Row, wide, room int) []part {
	said := s.below(row, wide)
	// First so large that all that is said fits below; but never smaller than two
	// fifths of the room allow, since the figures are what is looked up for.
	scale := s.largest(row, wide, room-height(said)-len(said)-1)
	if least := s.largest(row, wide, min(room*2/5, room-height(said[:1]))); scale < least {
		scale = least
	}
	parts := []part{{lines: s.figures(row, scale, wide), apart: true}}
	room -= len(parts[0].lines)
	for _, p := range said {
		if room <= 0 {
			break
		}
		if len(p.lines) > room {
			p.lines = append(p.lines[:room-1:room-1], Line{Text: s.goesOn(p.lines[room-1].Text, wide)})
		}
		room -= len(p.lines)
		parts = append(parts, p)
	}
	return parts
}

// goesOn is the last line that there is room for, with the mark that more follows.
func (s *Screen) goesOn(text string, wide int) string {
	// An instruction that breaks off must not look like one that ends.
	mark := s.Look.Text(" …")
	if render.Columns(text+mark) > wide {
		text = strings.TrimSuffix(s.Look.Cut(text, wide-len(mark)), s.Look.Text("…"))
	}
	return strings.TrimRight(text, " ") + mark
}

// below is what is said under the figures, what matters most first.
func (s *Screen) below(row tracker.Row, wide int) []part {
	all := []part{{lines: s.plain(s.instruction(row), wide), apart: true}}
	var facts []Line
	for _, f := range []struct{ name, words string }{
		{"To go", s.restWords(row)}, {"Bobbin", s.bobbinWords(row)}, {"Pace", s.paceWords(row)},
	} {
		if f.words != "" {
			facts = append(facts, s.named(f.name, f.words, wide)...)
		}
	}
	all = append(all, part{lines: facts, apart: true})
	if card := s.guide.press(row.Operation, blockAt(row)); card != "" {
		all = append(all, part{lines: s.plain(card, wide), apart: true})
	}
	// The newest note is as a rule about what is on the table now.
	if note, ok := s.state.NewestNote(); ok {
		all = append(all, part{lines: s.plain("Note of "+note.At.Format("2 Jan")+": "+note.Reason, wide), apart: true})
	}
	return all
}

// inFull is the instruction with everything that belongs to it.
func (s *Screen) inFull(row tracker.Row, wide int) []part {
	counts := fmt.Sprintf("%d of %s made, %d left", row.Done, render.Counted(row.Count, row.CountedIn), row.Left())
	return append([]part{{lines: []Line{{Text: s.Look.Cut(s.Look.Text(counts), wide)}}, apart: true}}, s.below(row, wide)...)
}

// instruction is what to do, in the plan's words; at the kits with the fabrics of the
// block that is next.
func (s *Screen) instruction(row tracker.Row) string {
	d := s.guide.rows[s.at]
	switch {
	case d.doing == "":
		return "The plan has no instruction for " + row.Title() + "."
	case row.Key == "kit":
		return d.doing + s.fabrics(blockAt(row))
	}
	return d.doing
}

// fabrics is what a block is made of: " tide-03: print Kelp, ground Foam."
func (s *Screen) fabrics(block string) string {
	at := slices.IndexFunc(s.state.Ledger.Blocks, func(b tracker.Block) bool { return b.ID == block })
	if at < 0 {
		return ""
	}
	var roles []string
	for _, f := range s.state.Ledger.Blocks[at].Fabrics {
		roles = append(roles, f.Role+" "+f.Fabric)
	}
	return fmt.Sprintf(" %s: %s.", block, strings.Join(roles, ", "))
}

// parked is where things lie since the last time, until work is logged.
func (s *Screen) parked(wide, high int) []Line {
	lies, ok := s.state.Parked()
	if !ok {
		return nil
	}
	lines := s.plain("Parked: "+lies.Reason, wide)
	if most := max(1, high/8); len(lines) > most {
		lines = lines[:most]
	}
	for i := range lines {
		lines[i].Strong = true
	}
	return lines
}

// title is the operation and its lot, on one line where that is wide enough.
func (s *Screen) title(row tracker.Row, wide int) []Line {
	name := s.Look.Text(row.Title())
	lot := s.Look.Text(lotWords(row))
	for _, lot := range []string{lot + ", " + string(row.Place), lot} {
		if room := wide - render.Columns(name) - render.Columns(lot); room >= 2 {
			return []Line{{Text: name + strings.Repeat(" ", room) + lot, Strong: true}}
		}
	}
	return []Line{{Text: s.Look.Cut(name, wide), Strong: true}, {Text: s.Look.Cut(lot, wide), Strong: true}}
}

// lotWords is the lot and the block that the next count is for.
func lotWords(row tracker.Row) string {
	words := row.Lot.Name
	if id := blockAt(row); id != "" {
		words += " at " + id
	}
	return words
}

// blockAt is the block that the next count goes to, "" where counts belong to no
// blocks or all is made.
func blockAt(row tracker.Row) string {
	for _, b := range row.Blocks {
		if b.Count < row.PerBlock {
			return b.Block
		}
	}
	return ""
}

// plain is a paragraph.
func (s *Screen) plain(text string, wide int) []Line {
	var lines []Line
	for _, l := range s.Look.Fit(text, wide) {
		lines = append(lines, Line{Text: l})
	}
	return lines
}

// named is a fact with its name before it.
func (s *Screen) named(name, words string, wide int) []Line {
	const at = 8
	lines := s.plain(words, wide-at)
	for i := range lines {
		lead := ""
		if i == 0 {
			lead = name
		}
		lines[i].Text = lead + strings.Repeat(" ", at-len(lead)) + lines[i].Text
	}
	return lines
}

// height is how many lines parts take.
func height(parts []part) int {
	n := 0
	for _, p := range parts {
		n += len(p.lines)
	}
	return n
}

// fill puts the parts on the screen, the foot at its bottom, and empty lines
// where they part most.
func fill(parts []part, foot []Line, high int) []Line {
	spare := high - len(foot) - height(parts)
	var out []Line
	for _, p := range parts {
		if p.apart && spare > 0 && len(p.lines) > 0 {
			out = append(out, Line{})
			spare--
		}
		out = append(out, p.lines...)
	}
	for len(out) < high-len(foot) {
		out = append(out, Line{})
	}
	out = append(out[:max(0, high-len(foot))], foot...)
	return out[:high]
}
