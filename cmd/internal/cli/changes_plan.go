package cli

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// plans are the plan of a job's former file and that of its new one, both worked
// out by this program, and the job after the revision.
type plans struct {
	old, now planner.Plan
	after    tracker.State
}

// difference says what was and what is; nothing where they are alike.
func difference(what, was, is string) []string {
	switch {
	case was == is:
		return nil
	case is == "":
		return []string{fmt.Sprintf("%s: none any more, was %s", what, was)}
	case was == "":
		return []string{fmt.Sprintf("%s: %s, was not given", what, is)}
	}
	return []string{fmt.Sprintf("%s: %s, was %s", what, is, was)}
}

// alike are names with the same difference, which is said of all of them at
// once: a job may have a hundred fabrics.
type alike struct {
	pairs [][2]string // what was and what is, in the order in which they came
	names map[[2]string][]string
}

// add notes a difference; nothing where there is none.
func (a *alike) add(name, was, is string) {
	pair := [2]string{was, is}
	if was == is {
		return
	}
	if a.names == nil {
		a.names = map[[2]string][]string{}
	}
	if a.names[pair] == nil {
		a.pairs = append(a.pairs, pair)
	}
	a.names[pair] = append(a.names[pair], name)
}

// said is one sentence for each difference, the names after what they are about.
func (a *alike) said(about string) []string {
	var said []string
	for _, pair := range a.pairs {
		names, each := a.names[pair], ""
		if len(names) > 1 {
			each = ", each"
		}
		said = append(said, difference(about+shortList(names)+each, pair[0], pair[1])...)
	}
	return said
}

// orNone says that there is nothing.
func orNone(text string) string {
	if text == "" {
		return "none"
	}
	return text
}

// units is what sizes are said in: both plans' in the new one's, so that the
// same size reads the same.
func (p plans) units() measure.Unit { return p.now.Job.Units }

// lead is what a maker looks for first: how large the quilt and its blocks are
// now, how long it takes, what to buy, and what was made to another size.
func (p plans) lead() []string {
	u := p.units()
	said := difference("quilt, flat", p.old.Quilt.Finished.Show(u), p.now.Quilt.Finished.Show(u))
	said = append(said, difference("blocks of a quilt", fmt.Sprint(p.old.Quilt.Blocks), fmt.Sprint(p.now.Quilt.Blocks))...)
	said = append(said, difference("blocks, raw", p.old.Colourways[0].Raw.Words(u), p.now.Colourways[0].Raw.Words(u))...)
	said = append(said, p.measures()...)
	said = append(said, difference("work", render.About(p.old.Minutes), render.About(p.now.Minutes))...)
	said = append(said, p.buying()...)
	return append(said, p.madeBefore()...)
}

// buying is what to buy now, where that is another amount.
func (p plans) buying() []string {
	var all alike
	for _, need := range p.now.Fabrics {
		was, _ := p.oldNeed(need.Fabric.Name)
		all.add(need.Fabric.Name, p.amount(was), p.amount(need))
	}
	for _, need := range p.old.Fabrics {
		if _, goesOn := needOf(p.now, need.Fabric.Name); !goesOn {
			all.add(need.Fabric.Name, p.amount(need), "none")
		}
	}
	return append(all.said("buy "), difference("batting", orNone(p.batting(p.old)), orNone(p.batting(p.now)))...)
}

// amount is how much of a fabric is to be bought.
func (p plans) amount(need planner.FabricNeed) string {
	switch {
	case need.SheetBuy > 0:
		return fmt.Sprintf("%d × %s", need.SheetBuy, need.Fabric.Form)
	case need.LengthBuy > 0:
		return need.LengthBuy.ShowYardage(p.units())
	}
	return "none"
}

func (p plans) batting(plan planner.Plan) string {
	b := plan.Materials.Batting
	if b == nil {
		return ""
	}
	return b.Size.Words(p.units()) + " or more"
}

func (p plans) oldNeed(fabric string) (planner.FabricNeed, bool) { return needOf(p.old, fabric) }

func needOf(plan planner.Plan, fabric string) (planner.FabricNeed, bool) {
	at := slices.IndexFunc(plan.Fabrics, func(n planner.FabricNeed) bool { return n.Fabric.Name == fabric })
	if at < 0 {
		return planner.FabricNeed{}, false
	}
	return plan.Fabrics[at], true
}

// otherwise says that the sheet is another one, where nothing else was found to
// say: other turns, other instructions.
func (p plans) otherwise() []string {
	old, now := p.old, p.now
	old.Job.File, old.Job.At = now.Job.File, now.Job.At
	if reflect.DeepEqual(old, now) {
		return nil
	}
	return []string{"the job sheet says something else: quiltrun plan " + now.Job.ID + " shows it"}
}

// rest is what a plan says beyond that: cuts, borders and layers.
func (p plans) rest() []string {
	said := difference("seam", p.old.Job.SeamShown(), p.now.Job.SeamShown())
	said = append(said, p.cuts()...)
	said = append(said, difference("setting", setting(p.old.Job.Layout), setting(p.now.Job.Layout))...)
	said = append(said, difference("sashing", p.sashing(p.old), p.sashing(p.now))...)
	said = append(said, difference("borders", orNone(p.borders(p.old)), orNone(p.borders(p.now)))...)
	said = append(said, difference("backing", orNone(p.backing(p.old)), orNone(p.backing(p.now)))...)
	said = append(said, difference("binding", orNone(p.binding(p.old)), orNone(p.binding(p.now)))...)
	return append(said, difference("quilting", orNone(quilting(p.old.Job.Quilting)), orNone(quilting(p.now.Job.Quilting)))...)
}

// borders are the borders of a job, from the inside out.
func (p plans) borders(plan planner.Plan) string {
	var each []string
	for i, b := range plan.Job.Borders {
		if len(b.Blocks) > 0 {
			each = append(each, english.Count(plan.Borders[i].Blocks, "block"))
			continue
		}
		each = append(each, b.Width.Show(p.units())+" of "+b.Fabric)
	}
	return strings.Join(each, ", ")
}

// setting is how blocks lie, on point with the fabric of the triangles.
func setting(l planner.Layout) string {
	if l.Setting == planner.OnPoint {
		return fmt.Sprintf("on point with triangles of %s", l.Triangles)
	}
	return string(planner.Straight)
}

// sashing is what lies between blocks.
func (p plans) sashing(plan planner.Plan) string {
	s := plan.Job.Layout.Sashing
	if s == nil {
		return "none"
	}
	text := fmt.Sprintf("%s of %s", s.Width.Show(p.units()), s.Fabric)
	if s.Cornerstones != "" {
		text += " with cornerstones of " + s.Cornerstones
	}
	if s.Edge {
		text += ", all round"
	}
	return text
}

func (p plans) backing(plan planner.Plan) string {
	b := plan.Materials.Backing
	if b == nil {
		return ""
	}
	text := fmt.Sprintf("%s of %s", b.Size.Words(p.units()), b.Fabric)
	if b.Panels > 1 {
		text += fmt.Sprintf(" in %d panels", b.Panels)
	}
	return text
}

func (p plans) binding(plan planner.Plan) string {
	b := plan.Materials.Binding
	if b == nil {
		return ""
	}
	return fmt.Sprintf("%s of %s, %s wide, finished by %s", english.Count(b.Strips, "strip"), b.Fabric, b.Strip.Show(p.units()), plan.Job.Binding.Finish)
}

// quilting is who quilts, how long that takes and how closely.
func quilting(q *planner.Quilting) string {
	switch {
	case q == nil:
		return ""
	case q.SentOut:
		return fmt.Sprintf("sent out for %s, %s", english.Count(q.LeadDays, "day"), q.Density)
	}
	return fmt.Sprintf("by oneself, %s", q.Density)
}
