package render

import (
	"fmt"
	"strconv"
	"strings"

	"quiltrun/planner"
)

// layout is the map of the top: where each block goes and how it is turned.
// Where the ids are too wide for the page, letters stand for colourways.
func (s *sheet) layout() error {
	quilts := s.byQuilt()
	if len(quilts) == 0 {
		return nil
	}
	s.heading(fmt.Sprintf("Layout, %d across and %d down", s.plan.Quilt.Across, s.plan.Quilt.Down))
	cell := s.cells(quilts[0])
	for i, blocks := range quilts {
		switch {
		case i == 0 && len(quilts) == 1:
			s.board(blocks, cell)
		case i == 0 || !alike(quilts[0], blocks):
			s.para(1, fmt.Sprintf("Quilt %d", i+1))
			s.board(blocks, cell)
		default:
			s.hang(1, fmt.Sprintf("Quilt %d  ", i+1), "the same places, "+s.idRanges(blocks))
		}
	}
	s.turnLegend()
	s.joins()
	return nil
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

// rowLabel is the width of the row numbers beside a map.
const rowLabel = 5

// cells chooses what stands in a place of the map: the block's id where a whole
// row of them fits, else the colourway's letter.
func (s *sheet) cells(blocks []planner.Block) func(planner.Block) string {
	widest := 0
	for _, b := range blocks {
		widest = max(widest, width(s.look.text(b.ID+turnMark(b.Turn))))
	}
	room := s.look.room(rowLabel)
	if room == 0 || s.plan.Quilt.Across*(widest+2) <= room+2 {
		return func(b planner.Block) string { return b.ID + turnMark(b.Turn) }
	}
	letters := s.letters()
	s.letterLegend(letters)
	return func(b planner.Block) string { return letters[b.Colourway] + turnMark(b.Turn) }
}

// letters names colourways in file order: A, B … Z, then A2, B2 …
func (s *sheet) letters() map[string]string {
	letters := make(map[string]string, len(s.plan.Colourways))
	for i, c := range s.plan.Colourways {
		letters[c.Name] = string(rune('A' + i%26))
		if i >= 26 {
			letters[c.Name] += strconv.Itoa(i/26 + 1)
		}
	}
	return letters
}

func (s *sheet) letterLegend(letters map[string]string) {
	items := make([]string, len(s.plan.Colourways))
	for i, c := range s.plan.Colourways {
		items[i] = letters[c.Name] + " = " + c.Name
	}
	s.flow(1, items)
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

func (s *sheet) turnLegend() {
	for _, b := range s.plan.Blocks {
		if b.Turn != 0 {
			s.para(1, "The arrow shows where the block's top goes: → a quarter turn clockwise, ↓ half a turn, ← three quarters.")
			return
		}
	}
}

// board draws the map of one quilt, in strips of as many columns as fit.
func (s *sheet) board(blocks []planner.Block, cell func(planner.Block) string) {
	places := make([][]string, s.plan.Quilt.Down)
	widest := 1
	for r := range places {
		places[r] = make([]string, s.plan.Quilt.Across)
	}
	for _, b := range blocks {
		text := s.look.text(cell(b))
		places[b.Row-1][b.Column-1] = text
		widest = max(widest, width(text))
	}
	widest = max(widest, len(strconv.Itoa(s.plan.Quilt.Across)))
	gap := 2
	if widest <= 2 {
		gap = 1
	}
	across := s.plan.Quilt.Across
	if room := s.look.room(rowLabel); room > 0 {
		across = max(1, min(across, (room+gap)/(widest+gap)))
	}
	for first := 0; first < s.plan.Quilt.Across; first += across {
		s.boardStrip(places, first, min(first+across, s.plan.Quilt.Across), widest+gap)
	}
}

func (s *sheet) boardStrip(places [][]string, first, end, pitch int) {
	head := strings.Repeat(" ", rowLabel)
	for c := first; c < end; c++ {
		head += padded(strconv.Itoa(c+1), pitch)
	}
	s.line(faint, head)
	for r, row := range places {
		line := fmt.Sprintf("%4d ", r+1)
		for c := first; c < end; c++ {
			line += padded(row[c], pitch)
		}
		s.line(ordinary, line)
	}
}

// idRanges lists the blocks of one quilt by colourway.
func (s *sheet) idRanges(blocks []planner.Block) string {
	var parts []string
	for _, c := range s.plan.Colourways {
		var numbers []string
		for _, b := range blocks {
			if b.Colourway == c.Name {
				numbers = append(numbers, b.ID)
			}
		}
		if len(numbers) > 0 {
			parts = append(parts, idSpan(numbers))
		}
	}
	return strings.Join(parts, "; ")
}

// joins says how the blocks' seams meet over the top.
func (s *sheet) joins() {
	for _, j := range s.plan.Joins {
		s.hang(1, "Where "+j.Between+" meet: ", matchWords(j.Matches))
	}
}

// kits says which fabrics go into which blocks, where that differs from block
// to block.
func (s *sheet) kits() error {
	s.heading("Kits: the fabrics of each block")
	for _, c := range s.plan.Colourways {
		var mine []planner.Block
		for _, b := range s.plan.Blocks {
			if b.Colourway == c.Name {
				mine = append(mine, b)
			}
		}
		groups := grouped(len(mine), func(i int) string { return roleWords(mine[i].Fabrics) })
		for _, group := range groups {
			ids := picked(group, func(i int) string { return mine[i].ID })
			s.hang(1, s.look.box()+" ", fmt.Sprintf("%s: %s", idSpan(ids), roleWords(mine[group[0]].Fabrics)))
		}
	}
	return nil
}

func roleWords(roles []planner.RoleFabric) string {
	parts := make([]string, len(roles))
	for i, r := range roles {
		parts[i] = r.Role + " " + r.Fabric
	}
	return enumerate(parts)
}

// idSpan writes block ids of one colourway shortly: "tide-01 to 08, 12".
func idSpan(ids []string) string {
	numbers := make([]string, len(ids))
	for i, id := range ids {
		numbers[i] = idNumber(id)
	}
	stem := ids[0][:len(ids[0])-len(numbers[0])]
	return stem + spans(numbers, " to ")
}
