package render

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

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
	numbered.legend = func(s *sheet) { s.numberLegend(letters) }
	lettered := s.mapped(blocks, 1, func(b planner.Block) string { return letters[b.Colourway] + turnMark(b.Turn) })
	lettered.legend = func(s *sheet) {
		s.letterLegend(letters)
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
	widest := len(strconv.Itoa(s.mapColumns()))
	for _, b := range blocks {
		widest = max(widest, width(s.look.text(cell(b))))
	}
	return layoutMap{cell: cell, pitch: widest + gap, gap: gap}
}

// mapFits reports that a whole row of the map has room on the page.
func (s *sheet) mapFits(m layoutMap) bool {
	room := s.look.room(rowLabel)
	pitch := m.pitch
	if s.onPoint() {
		pitch += pitch % 2
	}
	return room == 0 || s.mapColumns()*pitch-m.gap <= room
}

// mapColumns is how many places stand side by side in the map.
func (s *sheet) mapColumns() int {
	if s.onPoint() {
		return s.plan.Quilt.Across
	}
	return s.plan.Quilt.Columns
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

// letterLegend says what the letters mean.
func (s *sheet) letterLegend(letters map[string]string) {
	items := make([]string, len(s.plan.Colourways))
	for i, c := range s.plan.Colourways {
		items[i] = letters[c.Name] + " = " + c.Name
	}
	s.flow(1, items)
}

// numberLegend shows how a letter and a number make a block id, by the first
// block of each colourway. One that was renamed has a further example for each
// further stem, from whose number on ids are written so.
func (s *sheet) numberLegend(letters map[string]string) {
	var items []string
	for _, c := range s.plan.Colourways {
		seen := map[string]bool{}
		for _, id := range s.idsOf(c.Name) {
			if stem := idStem(id); !seen[stem] {
				seen[stem] = true
				items = append(items, letters[c.Name]+idNumber(id)+" = "+id)
			}
		}
	}
	s.flow(1, items)
}

// idsOf is the ids of a colourway's blocks, in order of their numbers.
func (s *sheet) idsOf(colourway string) []string {
	var ids []string
	for _, b := range s.plan.Blocks {
		if b.Colourway == colourway {
			ids = append(ids, b.ID)
		}
	}
	slices.SortStableFunc(ids, func(a, b string) int {
		return cmp.Or(len(idNumber(a))-len(idNumber(b)), strings.Compare(idNumber(a), idNumber(b)))
	})
	return ids
}

// numbering says how to tell one block of a colourway from the next where the
// map has no room for numbers.
func (s *sheet) numbering(blocks []planner.Block) {
	last, stem := map[string]int{}, map[string]string{}
	for _, b := range blocks {
		n, err := strconv.Atoi(idNumber(b.ID))
		first := cmp.Or(stem[b.Colourway], idStem(b.ID))
		if err != nil || n <= last[b.Colourway] || first != idStem(b.ID) {
			s.para(1, "A wider page shows the block numbers.")
			return
		}
		last[b.Colourway], stem[b.Colourway] = n, first
	}
	s.para(1, "The blocks of a colourway are numbered along the rows, from the top left.")
}
