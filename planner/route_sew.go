package planner

import (
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
	"quiltrun/planner/thread"
)

// sew adds a sewn step: a strip of two is one chain and one pressing; a larger
// grid goes column by column, is pressed by rows, and joined row by row.
func (w *blockWork) sew(s patchwork.Made) {
	switch len(s.Joins) {
	case 0:
		return
	case 1:
		w.chain(s)
		return
	}
	rows := 1
	pressed := false
	for _, j := range s.Joins {
		if !j.Between {
			rows = len(j.Lengths)
			w.column(s, j)
			continue
		}
		if !pressed && rowsSewn(s) {
			w.pressRows(s, rows)
			pressed = true
		}
		w.rowJoin(s, j)
	}
	if !rowsSewn(s) || pressed {
		w.pressUnit(s)
		return
	}
	w.pressRows(s, rows)
}

func rowsSewn(s patchwork.Made) bool { return !s.Joins[0].Between }

// chain is a step with one seam.
func (w *blockWork) chain(s patchwork.Made) {
	name, in := s.Step.Name, inUnits
	if name == "pairs" {
		in = inPairs
	}
	seam := s.Joins[0].Lengths[0]
	w.add(stage{
		key: "sew-" + name, name: "chain-sew " + name, in: in, per: s.Copies, place: Machine,
		seam: w.all(s, seam), stitch: thread.Piecing,
		setup: span(rateSewSetup, 1), unit: sewing(rateChainInch, seam), doing: w.chainWords(s),
	})
	w.add(stage{
		key: "press-" + name, name: "press " + name, in: in, per: s.Copies, place: Iron,
		setup: span(rateIronSetup, 1), unit: pressing(seam), doing: w.pressOne(s),
	})
}

func (w *blockWork) column(s patchwork.Made, j patchwork.SewnJoin) {
	w.add(stage{
		key: fmt.Sprintf("sew-%s-column-%d", s.Step.Name, j.Index+1), name: columnName(j.Index) + w.ofStep(s),
		in: inSeams, per: len(j.Lengths) * s.Copies, place: Machine,
		seam: w.all(s, sum(j.Lengths)), stitch: thread.Piecing,
		setup: span(rateSewSetup, 1), unit: sewing(rateChainInch, mean(j.Lengths)),
		doing: english.Capital(columnName(j.Index)) + columnWords(s, j) + w.setWords(s, j) + w.meetIfAny(j),
	})
}

func (w *blockWork) rowJoin(s patchwork.Made, j patchwork.SewnJoin) {
	name := fmt.Sprintf("join row %d on", j.Index+1)
	if j.Index == 1 {
		name = "join rows 1 and 2"
	}
	w.add(stage{
		key: fmt.Sprintf("join-%s-row-%d", s.Step.Name, j.Index+1), name: name + w.ofStep(s),
		in: inJoins, per: s.Copies, place: Machine, seam: w.all(s, sum(j.Lengths)), stitch: thread.Piecing,
		setup: span(rateSewSetup, 1), unit: sewing(rateMatchInch, sum(j.Lengths)),
		doing: english.Capital(name) + rowWords(s, j) + ". " + w.meetWords(j) + w.setWords(s, j),
	})
}

// matchWords says what the maker's fingers will find along a join.
func matchWords(t patchwork.Tally) string {
	if t == (patchwork.Tally{}) {
		return "Nothing has to match here."
	}
	var parts []string
	for _, p := range []struct {
		n    int
		text string
	}{{t.Nest, "nest"}, {t.Clash, "lie the same way: pin them"}, {t.Open, "meet open seams: pin them"}} {
		if p.n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", p.n, p.text))
		}
	}
	text := fmt.Sprintf("Seams meet at %s: %s.", counted(t.Nest+t.Clash+t.Open, "point"), strings.Join(parts, ", "))
	switch t.Nest + t.Clash + t.Open {
	case 0:
		text = "No seams meet."
	case 1:
		text = "Seams meet at one point: " + onePoint(t)
	}
	if t.Near > 0 {
		text += fmt.Sprintf(" %d pass close by each other without meeting: leave them.", t.Near)
	}
	return text
}

// onePoint is what becomes of the only match point of a join.
func onePoint(t patchwork.Tally) string {
	switch {
	case t.Nest > 0:
		return "they nest."
	case t.Clash > 0:
		return "they lie the same way, pin them."
	}
	return "one is open, pin it."
}

// meetIfAny says what meets along a column's seams; nothing where nothing does.
func (w *blockWork) meetIfAny(j patchwork.SewnJoin) string {
	if len(j.Matches) == 0 {
		return ""
	}
	return " " + w.meetWords(j)
}

func (w *blockWork) pressRows(s patchwork.Made, rows int) {
	w.add(stage{
		key: "press-" + s.Step.Name + "-rows", name: "press rows" + w.ofStep(s), in: inRows, per: rows * s.Copies, place: Iron,
		setup: span(rateIronSetup, 1), unit: pressing(sumColumns(s) / measure.Length(rows)),
		doing: "Press " + w.directions(s.Step.Name, false) + ".",
	})
}

func (w *blockWork) pressUnit(s patchwork.Made) {
	name, in := "press "+s.Step.Name, inUnits
	if s.Step.Name == w.c.Build.Steps[len(w.c.Build.Steps)-1].Step.Name {
		in = inBlocks
	}
	var seam measure.Length
	for _, j := range s.Joins {
		if j.Between {
			seam += sum(j.Lengths)
		}
	}
	w.add(stage{
		key: "press-" + s.Step.Name, name: name, in: in, per: s.Copies, place: Iron,
		setup: span(rateIronSetup, 1), unit: pressing(seam), doing: "Press " + w.directions(s.Step.Name, true) + ".",
	})
}

// directions lists the way of each row, or of each join between rows.
func (w *blockWork) directions(step string, between bool) string {
	return w.byCard(w.c, func(way patchwork.Way) string {
		var parts []string
		for _, c := range w.c.Build.Choices {
			if c.Step != step || c.Between != between {
				continue
			}
			word := w.c.Build.Direction(c, way)
			if between {
				parts = append(parts, fmt.Sprintf("the join of rows %d and %d %s", c.Row+1, c.Row+2, word))
			} else {
				parts = append(parts, fmt.Sprintf("row %d to the %s", c.Row+1, word))
			}
		}
		return strings.Join(parts, ", ")
	})
}

// meetWords says what meets along a join.
func (w *blockWork) meetWords(j patchwork.SewnJoin) string {
	return english.Capital(w.byCard(w.c, func(way patchwork.Way) string { return matchWords(patchwork.TallyMatches(j.Matches, way)) }))
}

// pressOne is the way of a step with one seam, named by the fabric it leans to
// where two pieces of cloth were sewn.
func (w *blockWork) pressOne(s patchwork.Made) string {
	i := slices.IndexFunc(w.c.Build.Choices, func(c patchwork.Choice) bool { return c.Step == s.Step.Name })
	var cells []patchwork.Cell
	if !s.Step.Whole {
		cells = s.Step.Rows[0]
	}
	cloth := !s.Joins[0].Between && len(cells) == 2 && w.isCloth(cells[0].Of) && w.isCloth(cells[1].Of)
	return fmt.Sprintf("Press every one %s.", w.byCard(w.c, func(way patchwork.Way) string {
		word := w.c.Build.Direction(w.c.Build.Choices[i], way)
		switch {
		case !cloth:
			return word
		case word == "right":
			return fmt.Sprintf("toward the %s (right as sewn)", cells[1].Of)
		default:
			return fmt.Sprintf("toward the %s (left as sewn)", cells[0].Of)
		}
	}))
}

func (w *blockWork) isCloth(step string) bool {
	return slices.ContainsFunc(w.c.Build.Steps, func(s patchwork.Made) bool {
		return s.Step.Name == step && s.Step.Do == patchwork.Cut
	})
}

// all is a seam sewn in every copy of a step of every block of the run.
func (w *blockWork) all(s patchwork.Made, perCopy measure.Length) measure.Length {
	return perCopy.Times(s.Copies * w.blocks)
}

func sewing(rate string, seam measure.Length) Span {
	return span(rate, seam.In(measure.Inches)).plus(span(rateClip, 1))
}

func pressing(seam measure.Length) Span {
	return span(ratePressInch, seam.In(measure.Inches)).plus(span(ratePress, 1))
}

func sum(ls []measure.Length) measure.Length {
	var total measure.Length
	for _, l := range ls {
		total += l
	}
	return total
}

func mean(ls []measure.Length) measure.Length { return sum(ls) / measure.Length(len(ls)) }

func sumColumns(s patchwork.Made) measure.Length {
	var total measure.Length
	for _, j := range s.Joins {
		if !j.Between {
			total += sum(j.Lengths)
		}
	}
	return total
}
