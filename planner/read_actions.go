package planner

import (
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// mostCuts is how many cuts a recut may have each way.
const mostCuts = 40

// cutting reads {cut: print, size: 7}.
func (s *stepReader) cutting(keys section, step *patchwork.Step) {
	step.Do, step.Role = patchwork.Cut, s.roleAt(keys.get("cut"))
	if n := s.needed(keys, "size"); n != nil {
		step.Size = s.rawSize(n)
	}
}

// sewing reads a grid of steps, or the step whose pieces are sewn as they lie.
func (s *stepReader) sewing(keys section, step *patchwork.Step) {
	step.Do = patchwork.Sew
	n := keys.get("sew")
	if n.kind == scalar {
		step.Of, step.Whole = s.earlier(n), true
		return
	}
	pieces := 0
	for _, row := range s.items(n, said("sew"), "rows") {
		if row.kind == scalar {
			s.fault(n, `"sew" is a list of rows, each a list of steps`, "write one row as in sew: [[print, ground]]")
			return
		}
		var cells []patchwork.Cell
		for _, cell := range s.items(row, "a row of "+said("sew"), "steps") {
			cells = append(cells, s.cell(cell))
		}
		pieces += len(cells)
		step.Rows = append(step.Rows, cells)
	}
	if pieces == 1 && len(n.items) == 1 {
		s.fault(n, "there is only one piece, so there is nothing to sew", "name two steps or more, or one step twice")
	}
}

// cell reads "pairs" or "pairs@180", degrees clockwise.
func (s *stepReader) cell(n *fileNode) patchwork.Cell {
	text, ok := s.scalarText(n, "the name of a step")
	if !ok {
		return patchwork.Cell{}
	}
	name, turned, isTurned := strings.Cut(text, "@")
	degrees := 0
	if isTurned {
		if degrees, ok = degreesOf(trimmed(turned)); !ok {
			s.fault(n, said(text)+" is not turned by quarter turns", "write the degrees clockwise, 0, 90, 180 or 270, as in "+trimmed(name)+"@90")
		}
	}
	return patchwork.Cell{Of: s.known(n, trimmed(name)), Quarters: degrees / 90}
}

// recutting reads {recut: units, upright: [-1, 1], level: halves}.
func (s *stepReader) recutting(keys section, step *patchwork.Step) {
	step.Do, step.Of = patchwork.Recut, s.earlier(keys.get("recut"))
	step.Upright = s.cuts(keys.get("upright"), "left", "right")
	step.Level = s.cuts(keys.get("level"), "top", "bottom")
	if keys.get("upright") == nil && keys.get("level") == nil {
		s.fault(keys.node, keys.what+" does not say where it is cut", "give it "+s.exampleOf("upright")+", or level likewise")
	}
}

// exampleOf is a key of a step as it may be written.
func (s *stepReader) exampleOf(key string) string { return key + ": " + stepExample(key) }

// cuts reads the places of cuts; near and far are the words for the edges. Halves
// and thirds stand for all cuts of one way.
func (s *stepReader) cuts(n *fileNode, near, far string) []patchwork.From {
	if n == nil {
		return nil
	}
	if n.kind == scalar {
		switch foldWords(n.text) {
		case "halves", "half":
			return patchwork.Halves()
		case "thirds", "third":
			return patchwork.Thirds()
		}
		return []patchwork.From{s.cut(n, near, far)}
	}
	items := s.items(n, said(n.label), "cuts")
	if len(items) > mostCuts {
		s.fault(n, fmt.Sprintf("%s has %d cuts; quiltrun makes at most %d each way", said(n.label), len(items), mostCuts), "")
		return nil
	}
	cuts := make([]patchwork.From, len(items))
	for i, item := range items {
		cuts[i] = s.cut(item, near, far)
	}
	return cuts
}

// cut reads where one cut is made: "1" and "-1" from the centre, "left 2 1/2"
// from an edge.
func (s *stepReader) cut(n *fileNode, near, far string) patchwork.From {
	text, ok := s.scalarText(n, "a measure")
	if !ok {
		return patchwork.From{}
	}
	word, rest, _ := strings.Cut(text, " ")
	from := patchwork.From{}
	switch strings.ToLower(word) {
	case "centre", "center", "middle":
		if trimmed(rest) == "" {
			return from
		}
	case near:
		from.Edge, text = patchwork.Near, rest
	case far:
		from.Edge, text = patchwork.Far, rest
	case "left", "right", "top", "bottom":
		s.fault(n, fmt.Sprintf("%s is no edge for the %s cuts", said(word), n.label), fmt.Sprintf("%s cuts are measured from the centre, the %s or the %s", n.label, near, far))
		return from
	}
	from.Distance = s.distance(n, trimmed(text), from.Edge)
	return from
}

// distance reads how far from the centre or an edge a cut is: from the centre
// either way, from an edge inward.
func (s *stepReader) distance(n *fileNode, text string, edge patchwork.Edge) measure.Length {
	positive := strings.TrimLeft(strings.TrimPrefix(strings.TrimPrefix(text, "-"), "−"), " ")
	isLess := positive != text
	d, err := measure.ParseAllowZero(positive, s.job.Units)
	switch {
	case err != nil:
		s.fault(n, fmt.Sprintf("%s is no place for a cut", said(n.text)), "write it as in "+s.exampleOf(n.label))
	case edge != patchwork.Centre && (isLess || d == 0):
		s.fault(n, fmt.Sprintf("%s is not inside the unit", said(n.text)), "measure inward from the edge, as in "+strings.Fields(n.text)[0]+" 2 1/2")
	case isLess:
		return -d
	}
	return d
}

// turning reads {turn: recut, by: [[0, 180], [180, 0]], exchange: [[1, 4]]}.
func (s *stepReader) turning(keys section, step *patchwork.Step) {
	step.Do, step.Of = patchwork.Turn, s.earlier(keys.get("turn"))
	if n := keys.get("by"); n != nil {
		step.Turns = s.turns(n)
	}
	if n := keys.get("exchange"); n != nil {
		step.Exchange = s.exchanges(n)
	}
	if keys.get("by") == nil && keys.get("exchange") == nil {
		s.fault(keys.node, keys.what+" turns nothing and exchanges nothing", "give it "+s.exampleOf("by")+" or "+s.exampleOf("exchange"))
	}
}

// exchanges reads pairs of pieces, numbered row by row from 1.
func (s *stepReader) exchanges(n *fileNode) [][2]int {
	var pairs [][2]int
	for _, item := range s.items(n, said(n.label), "pairs of pieces") {
		if item.kind == scalar {
			s.fault(n, said(n.label)+" is a list of pairs of pieces", item.hint())
			return nil
		}
		numbers := s.items(item, "an exchange", "two pieces")
		if item.kind == list && len(numbers) != 2 {
			s.fault(item, fmt.Sprintf("an exchange is of two pieces, not %d", len(numbers)), item.hint())
		}
		if len(numbers) == 2 {
			pairs = append(pairs, [2]int{s.count(numbers[0], 1), s.count(numbers[1], 1)})
		}
	}
	return pairs
}

// subcutting reads {subcut: set, every: 2 1/2}.
func (s *stepReader) subcutting(keys section, step *patchwork.Step) {
	step.Do, step.Of = patchwork.Subcut, s.earlier(keys.get("subcut"))
	if n := s.needed(keys, "every"); n != nil {
		step.Every = s.rawLength(n)
	}
}

// halfSquares reads {half-square: [print, ground], at-a-time: 8, trim: 3 1/2}.
func (s *stepReader) halfSquares(keys section, step *patchwork.Step) {
	step.Do, step.AtATime = patchwork.HalfSquare, usualMethod
	if n := keys.get("at-a-time"); n != nil {
		step.AtATime = s.method(n)
	}
	s.triangles(keys, "half-square", step)
}

// quarterSquares reads {quarter-square: [print, ground], trim: 3 1/2}.
func (s *stepReader) quarterSquares(keys section, step *patchwork.Step) {
	step.Do = patchwork.QuarterSquare
	s.triangles(keys, "quarter-square", step)
}

// triangles reads the two roles of triangles, the squares to cut and the size to
// trim to; one of the sizes must be given.
func (s *stepReader) triangles(keys section, name string, step *patchwork.Step) {
	n := keys.get(name)
	roles := s.items(n, said(name), "two roles")
	if n.kind == list && len(roles) != 2 && len(roles) > 0 {
		s.fault(n, fmt.Sprintf("triangles are sewn from two squares, not %d", len(roles)), n.hint())
	}
	for i, role := range roles[:min(len(roles), 2)] {
		step.Roles[i] = s.roleAt(role)
	}
	if step.Roles[0] != "" && step.Roles[0] == step.Roles[1] {
		s.fault(n, "both triangles are "+step.Roles[0], "give two roles; a colourway may give both the same fabric")
	}
	if n := keys.get("size"); n != nil {
		step.Size = s.rawSize(n)
	}
	if n := keys.get("trim"); n != nil {
		step.TrimTo = s.rawLength(n)
	}
	if keys.get("size") == nil && keys.get("trim") == nil {
		s.fault(keys.node, keys.what+" has no size", "give the raw size of a trimmed unit, as in trim: 3 1/2, or of the squares, as in size: 4")
	}
}

// trimming reads {trim: units, size: 12}.
func (s *stepReader) trimming(keys section, step *patchwork.Step) {
	step.Do, step.Of = patchwork.Trim, s.earlier(keys.get("trim"))
	if n := s.needed(keys, "size"); n != nil {
		step.Size = s.rawSize(n)
	}
}

// needed is the value of a key that a step must have; its absence is reported.
func (s *stepReader) needed(keys section, key string) *fileNode {
	n := keys.get(key)
	if n == nil && keys.node != nil && slices.Contains(keys.known, key) {
		s.report(keys.node.at, keys.path(key), fmt.Sprintf("%s has no %s", keys.what, said(key)), "write it as in "+s.exampleOf(key))
	}
	return n
}
