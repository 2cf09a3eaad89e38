package planner

import (
	"cmp"
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
	blocks := make([][]stage, 0, len(m.plan.Colourways))
	for i := range m.plan.Colourways {
		blocks = append(blocks, m.blockStages(i))
	}
	m.testStages(&ready, blocks)
	quilts := make([][]stage, 0, m.job.Quantity)
	for q := 1; q <= m.job.Quantity; q++ {
		quilts = append(quilts, m.quiltStages(q))
	}
	first, last := keysOf(ready), merged(quilts)
	m.checkKeys(blocks, slices.Concat(first, last))
	keys := slices.Concat(first, merged(blocks), last)
	m.operations(slices.Concat([][]stage{ready}, blocks, quilts), number(keys, m.prior.Numbers))
	m.threads()
}

// operations makes the stages of all lots operations: by number, then in the lots'
// order.
func (m *maker) operations(lots [][]stage, numbers map[string]int) {
	type numbered struct {
		number int
		*stage
	}
	var order []numbered
	for _, lot := range lots {
		for i := range lot {
			order = append(order, numbered{numbers[lot[i].key], &lot[i]})
		}
	}
	slices.SortStableFunc(order, func(a, b numbered) int { return cmp.Compare(a.number, b.number) })
	m.plan.Operations = make([]Operation, len(order))
	for i, s := range order {
		m.plan.Operations[i] = s.operation(s.number)
	}
}

// checkKeys refuses steps that would give an operation the key of another: keys
// come from steps' names, and one key is one operation.
func (m *maker) checkKeys(blocks [][]stage, taken []string) {
	for i, stages := range blocks {
		c := &m.job.Colourways[i]
		steps := make(map[string]string, len(stages)) // by key
		for j := range stages {
			s := &stages[j]
			other, twice := steps[s.key]
			steps[s.key] = s.step
			if s.step == "" || !twice && s.key != keyKit && s.key != keySquareUp && !slices.Contains(taken, s.key) {
				continue
			}
			by := "is the key of another operation"
			if other != "" {
				by = fmt.Sprintf("the step %s has already", said(other))
			}
			m.refuse(m.cause(*c, &patchwork.Fault{Step: s.step}),
				fmt.Sprintf("%s: the step %s would be logged as %s, which %s", c.Name, said(s.step), s.key, by), "give the step another name")
			break
		}
	}
}

func (s *stage) operation(number int) Operation {
	o := Operation{
		Number: number, Key: s.key, Step: s.step, Name: s.name, Lot: s.lot, CountedIn: s.in, PerBlock: s.per, Count: s.count,
		After: s.after, Place: s.place, SeamLength: s.seam, Setup: s.setup, Unit: s.unit, Wait: s.wait,
		Doing: s.doing, Care: cautions(s.place),
	}
	if s.stitch != (thread.Stitch{}) {
		o.ThreadLength = s.stitch.ForSeam(s.seam)
	}
	return o
}

func keysOf(stages []stage) []string {
	keys := make([]string, 0, len(stages))
	for i := range stages {
		if key := stages[i].key; !slices.Contains(keys, key) {
			keys = append(keys, key)
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
		s.after = slices.Concat(before, s.after)
		before = []Ref{self}
	}
	return stages
}
