package planner

import (
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
	At, To        Spot // where they lie
	Matches       patchwork.Tally

	kind string // as Plan.Joins names it
}

// Words says where the join is and what becomes of its match points: "tide-03 and
// dune-07, side by side in row 3: 2 of 4 match points clash".
func (j BlockJoin) Words() string {
	where := fmt.Sprintf("side by side in row %d", j.At.Row)
	if j.Above {
		where = fmt.Sprintf("one above the other in rows %d and %d", j.At.Row, j.To.Row)
	}
	return fmt.Sprintf("%s and %s, %s: %s", j.First, j.Second, where, clashing(j.Matches))
}

// clashing says how many of a join's match points clash.
func clashing(t patchwork.Tally) string {
	points := t.Clash + t.Nest + t.Open
	switch {
	case points == 1:
		return "their one match point clashes"
	case t.Clash == points:
		return fmt.Sprintf("all %d match points clash", points)
	case t.Clash == 1:
		return fmt.Sprintf("1 of %d match points clashes", points)
	}
	return fmt.Sprintf("%d of %d match points clash", t.Clash, points)
}

// Repress is a block that is better pressed by another card.
type Repress struct{ Block, Card string }

// SwapEffect is what exchanging blocks does to the seams round their places.
type SwapEffect struct {
	Before, After patchwork.Tally // over all joins of the places
	Worse         []BlockJoin     // that clash more than those that were there, by place
	Repress       []Repress       // what helps most with the fewest blocks pressed again; nil: nothing helps
	Left          patchwork.Tally // the joins then
	Overturned    []string        // blocks that take over a half turn and show it: their tops go down

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
	e.Overturned = is.overturned(before.Press.Half, ids)
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
	plan   Plan
	at     map[Spot]Block
	near   neighbourhood
	places map[Spot]int // of the first quilt
	edges  *patchwork.Edges
}

func newFloor(p Plan) *floor {
	frame := frameOf(&p.Job, p.Colourways[0].Finished)
	places := frame.places()
	f := &floor{
		plan: p, at: make(map[Spot]Block, len(p.Blocks)), edges: patchwork.NewEdges(p.Job.Seam),
		near: frame.neighbourhood(places), places: make(map[Spot]int, len(places)),
	}
	for i, place := range places {
		f.places[Spot{1, place.row + 1, place.column + 1}] = i
	}
	for _, b := range p.Blocks {
		f.at[b.Spot()] = b
	}
	return f
}

// side is a seam between two blocks, found from the second of them.
type side struct {
	first, second Spot
	above         bool
	at            seamSort
}

// round is the joins round some places, each once, row by row. The same places give
// the same joins, whatever lies there.
func (f *floor) round(spots []Spot) []BlockJoin {
	all := map[Spot]bool{}
	for _, s := range spots {
		all[s] = true
	}
	var joins []BlockJoin
	for _, b := range f.plan.Blocks { // by place, so that joins come so too
		for _, s := range f.sides(b.Spot()) {
			if all[s.first] || all[s.second] {
				joins = append(joins, f.join(s))
			}
		}
	}
	return joins
}

// overturned is which of some blocks have got a half turn that was meant for another,
// and do not look the same after it.
func (f *floor) overturned(before, ids []string) []string {
	var all []string
	for _, b := range f.plan.Blocks {
		if slices.Contains(ids, b.ID) && slices.Contains(f.plan.Press.Half, b.ID) && !slices.Contains(before, b.ID) && !f.colourway(b).TwoTops {
			all = append(all, b.ID)
		}
	}
	return all
}

// sides is the seams of a block with the one to its left and the one above it.
func (f *floor) sides(second Spot) []side {
	p := f.near.places[f.places[Spot{1, second.Row, second.Column}]]
	var sides []side
	if i, at := f.near.left(p); at != noSeam {
		sides = append(sides, side{f.spot(i, second.Quilt), second, false, at})
	}
	if i, at := f.near.above(p); at != noSeam {
		sides = append(sides, side{f.spot(i, second.Quilt), second, true, at})
	}
	return sides
}

func (f *floor) spot(place, quilt int) Spot {
	p := f.near.places[place]
	return Spot{quilt, p.row + 1, p.column + 1}
}

// joinOf names the sorts of seam as Plan.Joins does.
var joinOf = [...]string{inRow: joinColumns, betweenRows: joinRows, inBorder: joinBorder, ofBorder: joinOnBorder}

// join is how two blocks meet.
func (f *floor) join(s side) BlockJoin {
	first, second := f.at[s.first], f.at[s.second]
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
	return BlockJoin{
		First: first.ID, Second: second.ID, Above: s.above, At: s.first, To: s.second,
		Matches: met.Columns.Plus(met.Rows), kind: joinOf[s.at],
	}
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
