package planner

import (
	"cmp"
	"fmt"
	"math/bits"
	"slices"

	"quiltrun/planner/patchwork"
)

// BlockJoin is one seam between two blocks of a top as they lie: side by side, or
// the first above the second.
type BlockJoin struct {
	First, Second string // block ids
	Above         bool
	At            Spot // of the first
	Matches       patchwork.Tally
}

// between is the kind of join that it is.
func (j BlockJoin) between() string {
	if j.Above {
		return blockRows
	}
	return blockColumns
}

// Words says where the join is and what becomes of its match points: "tide-03 and
// dune-07, side by side in row 3: 2 of 4 match points clash".
func (j BlockJoin) Words() string {
	where := fmt.Sprintf("side by side in row %d", j.At.Row)
	if j.Above {
		where = fmt.Sprintf("one above the other in rows %d and %d", j.At.Row, j.At.Row+1)
	}
	points := j.Matches.Clash + j.Matches.Nest + j.Matches.Open
	if points == j.Matches.Clash {
		return fmt.Sprintf("%s and %s, %s: all %s clash", j.First, j.Second, where, counted(points, "match point"))
	}
	return fmt.Sprintf("%s and %s, %s: %d of %s clash", j.First, j.Second, where, j.Matches.Clash, counted(points, "match point"))
}

// Repress is a block that is better pressed by another card.
type Repress struct{ Block, Card string }

// SwapEffect is what exchanging blocks does to the seams round their places.
type SwapEffect struct {
	Before, After patchwork.Tally // over all joins of the places
	Worse         []BlockJoin     // that clash more than those that were there, by place
	Repress       []Repress       // what helps most with the fewest blocks pressed again; nil: nothing helps
	Left          patchwork.Tally // the joins then

	was, is []BlockJoin // the same joins before and after
}

// Swapped compares the joins round the places of some blocks before and after they
// changed places. Blocks are pressed as their cards say. Where sashing parts the
// blocks there are no such joins.
func Swapped(before, after Plan, ids ...string) SwapEffect {
	var spots []Spot
	for _, b := range before.Blocks {
		if slices.Contains(ids, b.ID) {
			spots = append(spots, b.Spot())
		}
	}
	was, is := newFloor(before), newFloor(after)
	var e SwapEffect
	e.was, e.is = was.round(spots), is.round(spots)
	for i, j := range e.is {
		e.Before, e.After = e.Before.Plus(e.was[i].Matches), e.After.Plus(j.Matches)
		if j.Matches.Clash > e.was[i].Matches.Clash {
			e.Worse = append(e.Worse, j)
		}
	}
	e.Left = e.After
	if len(e.Worse) > 0 {
		e.Repress, e.Left = is.repressed(spots, e.After)
	}
	return e
}

// HelpWords says which blocks to press by another card, "" where that helps nothing.
func (e SwapEffect) HelpWords() string {
	if len(e.Repress) == 0 {
		return ""
	}
	said := make([]string, len(e.Repress))
	for i, r := range e.Repress {
		said[i] = r.Block + " by card " + r.Card
	}
	then := "then nothing clashes more than before"
	if e.Left.Clash > e.Before.Clash {
		then = fmt.Sprintf("then %s still clash that did not before", counted(e.Left.Clash-e.Before.Clash, "match point"))
	}
	return "Press " + listed(said, "and") + ", anew where that is done: " + then
}

// floor is the blocks of a run as they lie.
type floor struct {
	plan  Plan
	at    map[Spot]Block
	edges *patchwork.Edges
}

func newFloor(p Plan) *floor {
	f := &floor{plan: p, at: make(map[Spot]Block, len(p.Blocks)), edges: patchwork.NewEdges(p.Job.Seam)}
	for _, b := range p.Blocks {
		f.at[b.Spot()] = b
	}
	return f
}

// side is a join by the place of its first block.
type side struct {
	at    Spot
	above bool
}

// second is the place of the join's other block.
func (s side) second() Spot {
	if s.above {
		return Spot{s.at.Quilt, s.at.Row + 1, s.at.Column}
	}
	return Spot{s.at.Quilt, s.at.Row, s.at.Column + 1}
}

// round is the joins round some places, each once, row by row. The same places give
// the same joins, whatever lies there.
func (f *floor) round(spots []Spot) []BlockJoin {
	if f.plan.Job.Layout.Sashing != nil {
		return nil
	}
	var sides []side
	for _, s := range spots {
		for _, j := range [...]side{
			{Spot{s.Quilt, s.Row - 1, s.Column}, true}, {Spot{s.Quilt, s.Row, s.Column - 1}, false}, {s, false}, {s, true},
		} {
			if _, there := f.at[j.at]; !there || slices.Contains(sides, j) {
				continue
			}
			if _, there := f.at[j.second()]; there {
				sides = append(sides, j)
			}
		}
	}
	slices.SortFunc(sides, func(a, b side) int {
		return cmp.Or(cmp.Compare(a.at.Quilt, b.at.Quilt), cmp.Compare(a.at.Row, b.at.Row),
			cmp.Compare(a.at.Column, b.at.Column), cmp.Compare(boolean(a.above), boolean(b.above)))
	})
	joins := make([]BlockJoin, len(sides))
	for i, s := range sides {
		joins[i] = f.join(s)
	}
	return joins
}

// join is how two blocks meet.
func (f *floor) join(s side) BlockJoin {
	first, second := f.at[s.at], f.at[s.second()]
	pressings, ways := make([]patchwork.Pressing, 2), make([]patchwork.Way, 2)
	for i, b := range [...]Block{first, second} {
		c := f.colourway(b)
		pressings[i].Build, ways[i] = c.Build, c.way(b.Press)
	}
	met := f.edges.Count(pressings, []patchwork.Meeting{{
		First:  patchwork.Face{Pressing: 0, Quarters: first.Turn / 90},
		Second: patchwork.Face{Pressing: 1, Quarters: second.Turn / 90},
		Above:  s.above, Count: 1,
	}}, ways)
	return BlockJoin{First: first.ID, Second: second.ID, Above: s.above, At: s.at, Matches: met.Columns.Plus(met.Rows)}
}

func (f *floor) colourway(b Block) ColourwayPlan {
	i := slices.IndexFunc(f.plan.Colourways, func(c ColourwayPlan) bool { return c.Name == b.Colourway })
	return f.plan.Colourways[i]
}

// way is how the blocks of a variant are pressed.
func (c ColourwayPlan) way(variant string) patchwork.Way {
	if variant == variantB && c.PressB != nil {
		return c.PressB
	}
	return c.Press
}

// repressed tries every other card for the blocks in some places, one block and then
// more of them, and keeps what clashes least.
func (f *floor) repressed(spots []Spot, now patchwork.Tally) ([]Repress, patchwork.Tally) {
	var able []Spot
	for _, s := range spots {
		if b, there := f.at[s]; there && f.colourway(b).PressB != nil && len(able) < mostRepressed {
			able = append(able, s)
		}
	}
	best, least := 0, now
	for some := 1; some < 1<<len(able); some++ {
		f.press(able, some)
		var sum patchwork.Tally
		for _, j := range f.round(spots) {
			sum = sum.Plus(j.Matches)
		}
		f.press(able, some)
		if sum.Clash < least.Clash || sum.Clash == least.Clash && best > 0 && bits.OnesCount(uint(some)) < bits.OnesCount(uint(best)) {
			best, least = some, sum
		}
	}
	var again []Repress
	f.press(able, best)
	for i, s := range able {
		if best>>i&1 == 1 {
			again = append(again, Repress{f.at[s].ID, f.at[s].Press})
		}
	}
	return again, least
}

// mostRepressed is for how many blocks other cards are tried together.
const mostRepressed = 8

// press gives some of the blocks the other card.
func (f *floor) press(able []Spot, some int) {
	for i, s := range able {
		if some>>i&1 == 0 {
			continue
		}
		b := f.at[s]
		if b.Press == variantB {
			b.Press = variantA
		} else {
			b.Press = variantB
		}
		f.at[s] = b
	}
}
