package render

import (
	"strconv"

	"quiltrun/planner"
)

// layoutMap is what stands in the places of a map, and how wide a place is.
type layoutMap struct {
	cell   func(planner.Block) string
	pitch  int // from one place to the next
	gap    int // of it, between them
	legend func(*sheet)
}

// chosenMap says of each place as much as a row of the map has room for: block
// ids, else a letter for the colourway with the block's number, else the letter
// alone.
func (s *sheet) chosenMap(blocks []planner.Block) layoutMap {
	letters := s.letters()
	ids := s.mapped(blocks, 2, func(b planner.Block) string { return b.ID + turnMark(b.Turn) })
	ids.legend = func(*sheet) {}
	numbered := s.mapped(blocks, 2, func(b planner.Block) string {
		return letters[b.Colourway] + idNumber(b.ID) + turnMark(b.Turn)
	})
	numbered.legend = func(s *sheet) { s.letterLegend(letters, "01") }
	lettered := s.mapped(blocks, 1, func(b planner.Block) string { return letters[b.Colourway] + turnMark(b.Turn) })
	lettered.legend = func(s *sheet) {
		s.letterLegend(letters, "")
		s.numbering(blocks)
	}
	for _, m := range []layoutMap{ids, numbered} {
		if s.mapFits(m) {
			return m
		}
	}
	return lettered
}

// mapped measures a map with a gap between its places.
func (s *sheet) mapped(blocks []planner.Block, gap int, cell func(planner.Block) string) layoutMap {
	widest := len(strconv.Itoa(s.plan.Quilt.Across))
	for _, b := range blocks {
		widest = max(widest, width(s.look.text(cell(b))))
	}
	return layoutMap{cell: cell, pitch: widest + gap, gap: gap}
}

// mapFits reports that a whole row of the map has room on the page.
func (s *sheet) mapFits(m layoutMap) bool {
	room := s.look.room(rowLabel)
	return room == 0 || s.plan.Quilt.Across*m.pitch-m.gap <= room
}

// letters names colourways in file order: A, B … Z, then A2, B2 …
func (s *sheet) letters() map[string]string {
	letters := make(map[string]string, len(s.plan.Colourways))
	for i, c := range s.plan.Colourways {
		letters[c.Name] = string(rune('A' + i%26))
		if i >= 26 {
			letters[c.Name] += strconv.Itoa(i/26+1) + "."
		}
	}
	return letters
}

// letterLegend says what the letters mean. Number is the example that shows how
// a letter and a number make a block id.
func (s *sheet) letterLegend(letters map[string]string, number string) {
	items := make([]string, len(s.plan.Colourways))
	for i, c := range s.plan.Colourways {
		items[i] = letters[c.Name] + number + " = " + c.Name
		if number != "" {
			items[i] += "-" + number
		}
	}
	s.flow(1, items)
}

// numbering says how to tell one block of a colourway from the next where the
// map has no room for numbers.
func (s *sheet) numbering(blocks []planner.Block) {
	last := map[string]int{}
	for _, b := range blocks {
		n, err := strconv.Atoi(idNumber(b.ID))
		if err != nil || n <= last[b.Colourway] {
			s.para(1, "A wider page shows the block numbers.")
			return
		}
		last[b.Colourway] = n
	}
	s.para(1, "The blocks of a colourway are numbered along the rows, from the top left.")
}
