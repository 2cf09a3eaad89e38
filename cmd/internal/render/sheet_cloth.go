package render

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// fabrics is what to have on the table and what to buy. Fabrics that need the
// same share a row, so that a hundred of them still read.
func (s *sheet) fabrics() {
	needs := s.plan.Fabrics
	s.heading("Fabrics")
	g := &grid{columns: []column{
		{title: "Fabric", flexible: true}, {title: "Form", flexible: true},
		{title: "Need", right: true}, {title: "On hand", right: true}, {title: "Buy", right: true},
	}}
	rows := make([][]string, len(needs))
	for i, f := range needs {
		rows[i] = s.fabricRow(f)
	}
	var crowds []string
	for _, group := range grouped(len(needs), func(i int) string { return strings.Join(rows[i], "\x00") }) {
		names := picked(group, func(i int) string { return needs[i].Fabric.Name })
		row, name := rows[group[0]], enumerate(names)
		if len(names) > mostRows {
			name = counted(len(names), "fabric")
			crowds = append(crowds, fmt.Sprintf("The %s (%s): %s.", name, row[0], enumerate(names)))
		}
		if len(names) > 1 {
			row[0] += ", each"
		}
		g.add(append([]string{name}, row...)...)
	}
	s.records(1, g)
	for _, c := range crowds {
		s.para(1, c)
	}
	s.notesOnCloth()
}

// notesOnCloth says of fabrics what their row has no room for.
func (s *sheet) notesOnCloth() {
	u := s.plan.Job.Units
	if slices.ContainsFunc(s.plan.Fabrics, func(n planner.FabricNeed) bool { return n.Fabric.Shrinkage != planner.Shrinkage{} }) {
		s.para(1, "Need, stock and what to buy are of cloth before it is washed; pieces are cut after.")
	}
	for _, n := range s.plan.Fabrics {
		var notes []string
		if stock := n.Fabric.OnHand; stock != nil && len(stock.Pieces) > 0 {
			notes = append(notes, fmt.Sprintf("cut from %d of %s on hand first", handUsed(n, "on hand"), counted(len(stock.Pieces), "piece")))
		}
		if handUsed(n, cloth.LengthOnHand) > 0 {
			notes = append(notes, "the length on hand is cut by itself, and what is bought after it")
		}
		if strips := (planner.FabricCut{Need: n, Plan: n.Cutting}).FromHandWords(u); strips != "" {
			notes = append(notes, "from the length on hand cut "+strips+", and the others from what is bought")
		}
		if n.Joint > 0 {
			notes = append(notes, n.Joint.Show(u)+" of what is on hand is left where no strip ends")
		}
		if saved := nestedWords(n, u); saved != "" {
			notes = append(notes, saved+" (cut --nested)")
		}
		if len(notes) > 0 {
			s.hang(1, "", n.Fabric.Name+": "+strings.Join(notes, "; ")+".")
		}
	}
}

// handUsed counts the pieces on hand of a name that a plan cuts.
func handUsed(n planner.FabricNeed, name string) int {
	used := 0
	for _, c := range n.Cutting.Cloths {
		if c.Hand && c.Name == name {
			used++
		}
	}
	return used
}

// fabricRow is a fabric's form, need, stock and what to buy.
func (s *sheet) fabricRow(f planner.FabricNeed) []string {
	u, fabric := s.plan.Job.Units, f.Fabric
	form, measured := string(fabric.Form), fabric.Width
	assumed := ""
	if fabric.Assumed {
		assumed = ", assumed"
	}
	onHand := "not said"
	if fabric.Form.Sheets() {
		if fabric.OnHand != nil {
			onHand = strconv.Itoa(fabric.OnHand.Sheets)
		}
		return []string{form + " " + size(fabric.Size, u) + assumed, strconv.Itoa(f.Sheets), onHand, strconv.Itoa(f.SheetBuy)}
	}
	if fabric.OnHand != nil {
		onHand = fabric.OnHand.Length.ShowYardage(u)
	}
	return []string{form + " " + measured.Show(u) + " usable" + assumed, s.needed(f.Length), onHand, f.LengthBuy.ShowYardage(u)}
}

// needed is a length of cloth as shops sell it: to the next step up, since less
// would not do.
func (s *sheet) needed(l measure.Length) string { return sold(l, s.plan.Job.Units) }

func sold(l measure.Length, u measure.Unit) string {
	up := l.RoundUp(u.ShopStep())
	if up == l {
		return l.ShowYardage(u)
	}
	return "≈ " + up.ShowYardage(u)
}

// cutting lists the pieces of every fabric, longest first.
func (s *sheet) cutting() {
	var cut []planner.FabricNeed
	pieces := 0
	for _, f := range s.plan.Fabrics {
		if len(f.Pieces) > 0 {
			cut = append(cut, f)
		}
		for _, p := range f.Pieces {
			pieces += p.Count
		}
	}
	s.heading(fmt.Sprintf("Cutting list: %s, raw sizes", counted(pieces, "piece")))
	lists := make([]string, len(cut))
	for i, f := range cut {
		lists[i] = s.pieceList(f)
	}
	for _, group := range grouped(len(cut), func(i int) string { return lists[i] }) {
		names := picked(group, func(i int) string { return cut[i].Fabric.Name })
		if len(names) == 1 {
			s.hang(1, s.look.box()+" ", names[0]+": "+lists[group[0]])
			continue
		}
		s.para(1, fmt.Sprintf("From each of these %d fabrics: %s", len(names), lists[group[0]]))
		s.flow(3, ticked(names))
	}
}

// ticked puts a box before each name.
func ticked(names []string) []string {
	out := make([]string, len(names))
	for i, n := range names {
		out[i] = "☐ " + n
	}
	return out
}

// pieceList is what is cut of one fabric. What is not said to be for something
// else is for blocks.
func (s *sheet) pieceList(f planner.FabricNeed) string {
	parts := make([]string, len(f.Pieces))
	for i, p := range f.Pieces {
		parts[i] = fmt.Sprintf("%d of %s", p.Count, size(p.Size, s.plan.Job.Units))
		switch p.For {
		case "", "blocks":
		case "spare":
			parts[i] += " spare"
		default:
			parts[i] += " for " + p.For
		}
	}
	return strings.Join(parts, "; ")
}
