package render

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// SwappedBlocks is an exchange of two blocks as it comes out. Effect is nil where the
// job's seams are not to be had.
type SwappedBlocks struct {
	Event    tracker.Event
	Repeated bool
	Before   tracker.Ledger
	After    tracker.State
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
		p.hang(2, capital(r.label())+"  ", r.pickUp())
	}
	p.para(2, "Pick a row up from the left, each block under the last, and pin its label to the first.")
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

// floorRow is one row of a top as it lies.
type floorRow struct {
	quilt, row int
	quilts     int // of the run
	blocks     []tracker.Block
}

// rows is the one or two rows in which the exchanged blocks lie.
func (s SwappedBlocks) rows() []floorRow {
	var rows []floorRow
	swap := s.Event.Amendment.Swap
	for _, b := range s.After.Ledger.Blocks {
		if b.Retired || b.ID != swap.A && b.ID != swap.B {
			continue
		}
		if !slices.ContainsFunc(rows, func(r floorRow) bool { return r.quilt == b.Quilt && r.row == b.Row }) {
			rows = append(rows, floorRow{quilt: b.Quilt, row: b.Row, quilts: s.After.Ledger.Quantity})
		}
	}
	for i := range rows {
		for _, b := range s.After.Ledger.Blocks {
			if !b.Retired && b.Quilt == rows[i].quilt && b.Row == rows[i].row {
				rows[i].blocks = append(rows[i].blocks, b)
			}
		}
	}
	return rows
}

// label is what is pinned to a row's first block.
func (r floorRow) label() string {
	label := fmt.Sprintf("row %d, first at left", r.row)
	if r.quilts > 1 {
		label = fmt.Sprintf("quilt %d, %s", r.quilt, label)
	}
	return label
}

// pickUp is a row's blocks in the order in which they are picked up.
func (r floorRow) pickUp() string { return strings.Join(r.ids(), ", ") }

func (r floorRow) ids() []string {
	return list(r.blocks, func(b tracker.Block) string { return b.ID })
}

// rowsMap draws rows one below the other, in strips of as many columns as fit. A star
// marks what changed places.
func (p *page) rowsMap(rows []floorRow, swap planner.Swap) {
	cell := func(b tracker.Block) string {
		star := ""
		if b.ID == swap.A || b.ID == swap.B {
			star = "*"
		}
		return p.look.text(star + b.ID + turnMark(b.Turn))
	}
	pitch, across := 0, 0
	for _, r := range rows {
		for _, b := range r.blocks {
			pitch, across = max(pitch, width(cell(b))+2), max(across, b.Column)
		}
	}
	strip := across
	if room := p.look.room(rowLabel); room > 0 {
		strip = max(1, min(across, (room+2)/pitch))
	}
	for first := 0; first < across; first += strip {
		head := strings.Repeat(" ", rowLabel)
		for c := first; c < min(first+strip, across); c++ {
			head += padded(strconv.Itoa(c+1), pitch)
		}
		p.line(faint, head)
		for _, r := range rows {
			line := fmt.Sprintf("%4d ", r.row)
			for _, b := range r.blocks {
				if b.Column > first && b.Column <= first+strip {
					line += padded(cell(b), pitch)
				}
			}
			p.line(ordinary, line)
		}
	}
	p.para(rowLabel, "* changed places"+turnWords(rows))
}

// turnWords explains the arrows of turned blocks, where there are any.
func turnWords(rows []floorRow) string {
	for _, r := range rows {
		if slices.ContainsFunc(r.blocks, func(b tracker.Block) bool { return b.Turn != 0 }) {
			return "; an arrow shows where a block's top goes"
		}
	}
	return ""
}
