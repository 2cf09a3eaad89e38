package render

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/tracker"
)

// SwappedBlocks is an exchange of two blocks as it comes out. Effect is nil where the
// job's seams are not to be had.
type SwappedBlocks struct {
	Event    tracker.Event
	Repeated bool
	After    tracker.State
	Plan     *planner.Plan // after it; nil as Effect is
	Effect   *planner.SwapEffect
}

// Swapped says which blocks changed places, shows the rows that they lie in, and how
// to take these to the machine, and says what clashes now.
func Swapped(w io.Writer, s SwappedBlocks, look Look) error {
	p := &page{look: look}
	swap := s.Event.Amendment.Swap
	p.para(0, s.receipt(*swap))
	rows := s.rows()
	p.gap()
	p.rowsMap(rows, *swap)
	p.gap()
	for _, r := range rows {
		p.hang(2, english.Capital(r.label())+"  ", r.pickUp(look))
	}
	p.para(2, "Pick a row up from its left end, each block under the one before, and pin the label to the first.")
	p.para(2, s.sewn(rows))
	if s.Effect != nil {
		p.gap()
		p.effect(*s.Effect)
	}
	return p.writeTo(w)
}

// receipt says which entry the exchange is.
func (s SwappedBlocks) receipt(swap planner.Swap) string {
	said := fmt.Sprintf("%s: %s and %s have changed places", s.After.Ledger.Job, swap.A, swap.B)
	if s.Repeated {
		return fmt.Sprintf("%s: that was entry %d (%s), which counts once", said, s.Event.Seq, s.Event.ID)
	}
	return fmt.Sprintf("%s, entry %d (%s)", said, s.Event.Seq, s.Event.ID)
}

// effect says what became of the seams round the two places.
func (p *page) effect(e planner.SwapEffect) {
	if words := e.TurnWords(); words != "" {
		p.hang(2, "! ", words+".")
	}
	switch {
	case e.After.Clash+e.After.Nest+e.After.Open == 0:
		p.para(2, "No seams of the two meet others there: nothing has to match.")
	case len(e.Worse) == 0 && e.After.Clash <= e.Before.Clash:
		p.para(2, "Seams there meet as well as before: "+pointWords(e.After)+".")
	default:
		p.para(2, "Careful: seams clash there that did not.")
		for _, j := range e.Worse {
			p.hang(2, "! ", j.Words())
		}
		if help := e.HelpWords(); help != "" {
			p.para(2, help+".")
		} else {
			p.para(2, "No other card helps: pin these joins, or exchange other blocks.")
		}
	}
}

// floorRow is one row of a top, or one strip of a border of blocks, as it lies.
type floorRow struct {
	name   string
	quilt  int
	quilts int // of the run
	blocks []floorBlock
}

// floorBlock is a block as it lies.
type floorBlock struct {
	id                string
	row, column, turn int
}

// rows is the one or two rows in which the exchanged blocks lie.
func (s SwappedBlocks) rows() []floorRow {
	var rows []floorRow
	swap := s.Event.Amendment.Swap
	for quilt := 1; quilt <= s.After.Ledger.Quantity; quilt++ {
		for _, row := range s.rowsOf(quilt) {
			if slices.ContainsFunc(row.blocks, func(b floorBlock) bool { return b.id == swap.A || b.id == swap.B }) {
				rows = append(rows, row)
			}
		}
	}
	return rows
}

// rowsOf is all rows of a quilt: as the plan has them sewn, or where there is no plan
// by the ledger's places.
func (s SwappedBlocks) rowsOf(quilt int) []floorRow {
	var rows []floorRow
	if s.Plan != nil {
		for _, up := range s.Plan.Pickups(quilt) {
			row := floorRow{name: up.Name, quilt: quilt, quilts: s.After.Ledger.Quantity}
			for _, b := range up.Blocks {
				row.blocks = append(row.blocks, floorBlock{b.ID, b.Row, b.Column, b.Turn})
			}
			rows = append(rows, row)
		}
		return rows
	}
	for _, b := range s.After.Ledger.Blocks {
		if b.Retired || b.Quilt != quilt {
			continue
		}
		name := fmt.Sprintf("row %d", b.Row)
		if n := len(rows); n == 0 || rows[n-1].name != name {
			rows = append(rows, floorRow{name: name, quilt: quilt, quilts: s.After.Ledger.Quantity})
		}
		last := &rows[len(rows)-1]
		last.blocks = append(last.blocks, floorBlock{b.ID, b.Row, b.Column, b.Turn})
	}
	return rows
}

// sewn says that joins of a quilt are made already, "" where none are.
func (s SwappedBlocks) sewn(rows []floorRow) string {
	var said []string
	for _, row := range s.After.Rows() {
		for i, r := range rows {
			lies := row.Lot == tracker.Lot{Kind: planner.QuiltLot, Name: fmt.Sprintf("quilt-%d", r.quilt)}
			if again := i > 0 && rows[i-1].quilt == r.quilt; again || !lies || row.Done == 0 || !planner.SewsBlocks(row.Key) {
				continue
			}
			said = append(said, fmt.Sprintf("%d of %s are made in %d%s%s, quilt %d",
				row.Done, counted(row.Count, string(row.CountedIn)), row.Number, tied, row.Name, r.quilt))
		}
	}
	if len(said) == 0 {
		return ""
	}
	return "Careful: " + strings.Join(said, "; ") + ". What is sewn to one of the two has to be ripped first."
}

// label is what is pinned to a row's first block.
func (r floorRow) label() string {
	label := r.place() + ", first at left"
	if strings.HasSuffix(r.name, "left") || strings.HasSuffix(r.name, "right") {
		label = r.place() + ", first at the top"
	}
	return label
}

// place is a row's name on the floor, of which quilt where there are several.
func (r floorRow) place() string {
	if r.quilts > 1 {
		return fmt.Sprintf("quilt %d, %s", r.quilt, r.name)
	}
	return r.name
}

// pickUp is a row's blocks in the order in which they are picked up, as they lie.
func (r floorRow) pickUp(look Look) string {
	return look.text(strings.Join(list(r.blocks, func(b floorBlock) string { return b.id + turnMark(b.turn) }), ", "))
}

func (r floorRow) ids() []string {
	return list(r.blocks, func(b floorBlock) string { return b.id })
}

// rowsMap draws rows one below the other, in strips of as many blocks as fit. A star
// marks what changed places.
func (p *page) rowsMap(rows []floorRow, swap planner.Swap) {
	cell := func(b floorBlock) string {
		star := ""
		if b.id == swap.A || b.id == swap.B {
			star = "*"
		}
		return p.look.text(star + b.id + turnMark(b.turn))
	}
	pitch, across, lead := 0, 0, 0
	for _, r := range rows {
		lead = max(lead, width(r.place())+4)
		across = max(across, len(r.blocks))
		for _, b := range r.blocks {
			pitch = max(pitch, width(cell(b))+2)
		}
	}
	strip := across
	if room := p.look.room(lead); room > 0 {
		strip = max(1, min(across, (room+2)/pitch))
	}
	for first := 0; first < across; first += strip {
		head := strings.Repeat(" ", lead)
		for nth := first; nth < min(first+strip, across); nth++ {
			head += padded(strconv.Itoa(nth+1), pitch)
		}
		p.line(faint, head)
		for _, r := range rows {
			if first >= len(r.blocks) {
				continue
			}
			line := padded("  "+english.Capital(r.place()), lead)
			for _, b := range r.blocks[first:min(first+strip, len(r.blocks))] {
				line += padded(cell(b), pitch)
			}
			p.line(ordinary, line)
		}
	}
	p.para(lead, "* changed places"+turnWords(rows))
}

// turnWords explains the arrows of turned blocks, where there are any.
func turnWords(rows []floorRow) string {
	for _, r := range rows {
		if slices.ContainsFunc(r.blocks, func(b floorBlock) bool { return b.turn != 0 }) {
			return "; an arrow shows where a block's top goes"
		}
	}
	return ""
}
