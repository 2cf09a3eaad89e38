package render

import (
	"fmt"
	"strings"

	"quiltrun/planner"
)

// layout is the map of the top: where each block goes and how it is turned.
func (s *sheet) layout() {
	quilts := s.byQuilt()
	if len(quilts) == 0 {
		return
	}
	s.heading("Layout, " + s.acrossDown())
	m := s.chosenMap(quilts[0])
	m.legend(s)
	for i, blocks := range quilts {
		switch {
		case len(quilts) == 1:
			s.board(blocks, m)
		case i == 0 || !alike(quilts[0], blocks) || !inOrder(blocks):
			s.para(1, fmt.Sprintf("Quilt %d", i+1))
			s.board(blocks, m)
		default:
			s.hang(1, fmt.Sprintf("Quilt %d  ", i+1), "the same places, "+s.idRanges(blocks))
		}
	}
	s.turnLegend()
	s.swaps()
	s.settingNotes()
	for _, j := range s.plan.Joins {
		s.para(1, "Where "+j.Between+" meet: "+pointWords(j.Matches))
	}
	s.pickups(len(quilts))
}

// byQuilt parts the run's blocks, which come quilt by quilt.
func (s *sheet) byQuilt() [][]planner.Block {
	var quilts [][]planner.Block
	for _, b := range s.plan.Blocks {
		for len(quilts) < b.Quilt {
			quilts = append(quilts, nil)
		}
		quilts[b.Quilt-1] = append(quilts[b.Quilt-1], b)
	}
	return quilts
}

// alike reports that two quilts have the same colourways and turns in the same
// places.
func alike(a, b []planner.Block) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].Colourway != b[i].Colourway || a[i].Turn != b[i].Turn || a[i].Row != b[i].Row || a[i].Column != b[i].Column {
			return false
		}
	}
	return true
}

// idRanges lists the blocks of one quilt by colourway.
func (s *sheet) idRanges(blocks []planner.Block) string {
	var parts []string
	for _, c := range s.plan.Colourways {
		var ids []string
		for _, b := range blocks {
			if b.Colourway == c.Name {
				ids = append(ids, b.ID)
			}
		}
		if len(ids) > 0 {
			parts = append(parts, idSpan(ids))
		}
	}
	return strings.Join(parts, "; ")
}

// turnLegend explains the arrows where there are any.
func (s *sheet) turnLegend() {
	for _, b := range s.plan.Blocks {
		if b.Turn != 0 {
			where := "The arrow shows where the block's top goes"
			if s.onPoint() {
				where += " when its row lies level"
			}
			s.para(1, where+": → a quarter turn clockwise, ↓ half a turn, ← three quarters.")
			return
		}
	}
}

// turnMark points where a block's top goes. A block that is not turned has no
// mark.
func turnMark(degrees int) string {
	switch degrees {
	case 90:
		return "→"
	case 180:
		return "↓"
	case 270:
		return "←"
	}
	return ""
}
