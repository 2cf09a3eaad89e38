package planner

import (
	"fmt"
	"slices"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
	"quiltrun/planner/thread"
)

// What one count of an operation is.
const (
	inFabrics CountUnit = "fabric"
	inPieces  CountUnit = "piece"
	inPairs   CountUnit = "pair"
	inUnits   CountUnit = "unit"
	inSeams   CountUnit = "seam"
	inCuts    CountUnit = "cut"
	inBlocks  CountUnit = "block"
	inJoins   CountUnit = "join"
	inRows    CountUnit = "row"
	inBorders CountUnit = "border"
	inPanels  CountUnit = "panel"
	inStrips  CountUnit = "strip"
	inQuilts  CountUnit = "quilt"
)

// stage is an operation before it has a number: what one lot goes through.
type stage struct {
	key, name string
	step      string // of the recipe, "" for what belongs to none
	lot       Lot
	in        CountUnit
	per       int // per block, for colourway lots
	count     int
	place     Place
	after     []Ref
	makes     int            // how many of its counts one of the stage before makes, where that differs; 0 elsewhere
	aside     bool           // may be done any time before the next stage
	seam      measure.Length // for the whole count
	stitch    thread.Stitch  // with what it is sewn; zero: not by machine
	setup     Span
	unit      Span
	wait      int
	doing     string
}

// route puts the whole run's operations in order: what readies cloth, each
// colourway's blocks, then each quilt.
func (m *maker) route() {
	ready := m.readyStages()
	var blocks [][]stage
	for _, c := range m.plan.Colourways {
		blocks = append(blocks, m.blockStages(c))
	}
	m.testStages(&ready, blocks)
	var quilts [][]stage
	for q := 1; q <= m.job.Quantity; q++ {
		quilts = append(quilts, m.quiltStages(q))
	}
	m.checkKeys(blocks, keysOf(append(slices.Clone(ready), slices.Concat(quilts...)...)))
	keys := keysOf(ready)
	keys = append(keys, merged(blocks)...)
	keys = append(keys, merged(quilts)...)
	numbers := number(keys, m.prior.Numbers)
	all := ready
	for _, lot := range append(blocks, quilts...) {
		all = append(all, lot...)
	}
	for _, s := range all {
		m.plan.Operations = append(m.plan.Operations, s.operation(numbers[s.key]))
	}
	slices.SortStableFunc(m.plan.Operations, func(a, b Operation) int { return a.Number - b.Number })
	m.threads()
}

// checkKeys refuses steps that would give an operation the key of another: keys
// come from steps' names, and one key is one operation.
func (m *maker) checkKeys(blocks [][]stage, taken []string) {
	for i, stages := range blocks {
		c := m.job.Colourways[i]
		steps := map[string]string{keyKit: "", keySquareUp: ""}
		for _, key := range taken {
			steps[key] = ""
		}
		for _, s := range stages {
			other, twice := steps[s.key]
			steps[s.key] = s.step
			if !twice || s.step == "" {
				continue
			}
			by := "is the key of another operation"
			if other != "" {
				by = fmt.Sprintf("the step %s has already", said(other))
			}
			m.refuse(m.cause(c, &patchwork.Fault{Step: s.step}),
				fmt.Sprintf("%s: the step %s would be logged as %s, which %s", c.Name, said(s.step), s.key, by), "give the step another name")
			break
		}
	}
}

func (s stage) operation(number int) Operation {
	o := Operation{
		Number: number, Key: s.key, Name: s.name, Lot: s.lot, CountedIn: s.in, PerBlock: s.per, Count: s.count,
		After: s.after, Place: s.place, SeamLength: s.seam, Setup: s.setup, Unit: s.unit, Wait: s.wait,
		Doing: s.doing, Care: cautions(s.place),
	}
	if s.stitch != (thread.Stitch{}) {
		o.ThreadLength = s.stitch.ForSeam(s.seam)
	}
	return o
}

func keysOf(stages []stage) []string {
	var keys []string
	for _, s := range stages {
		if !slices.Contains(keys, s.key) {
			keys = append(keys, s.key)
		}
	}
	return keys
}

// merged is the keys of several lots in one order that keeps each lot's own:
// a key that is new goes right behind the one that comes before it in its lot.
func merged(lots [][]stage) []string {
	var keys []string
	for _, lot := range lots {
		at := -1
		for _, k := range keysOf(lot) {
			if i := slices.Index(keys, k); i >= 0 {
				at = max(at, i)
				continue
			}
			at++
			keys = slices.Insert(keys, at, k)
		}
	}
	return keys
}

// chained makes each stage of a lot come after the one before it. A stage
// aside waits for none of them; the next one in the chain waits for it too.
func chained(stages []stage) []stage {
	var before []Ref
	for i := range stages {
		s := &stages[i]
		self := Ref{Key: s.key, Lot: s.lot}
		if s.aside {
			before = append(before, self)
			continue
		}
		s.after = append(slices.Clone(before), s.after...)
		before = []Ref{self}
	}
	return stages
}
