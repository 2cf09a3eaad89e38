package shelf

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// allotted is what one item gives to one need: units of the need, and what that
// is of the item.
type allotted struct {
	item   int
	need   *need
	units  planner.Amount
	amount planner.Amount
}

// allot says which item serves which job, in the order of booking: the job's own
// first; then one dye lot that does for all of it, the oldest such, with lots that
// the job has begun before others; then whatever lies there, oldest first. Only
// needs of the same thing as like are looked at, all where it is nil.
func (f *folding) allot(like *need) []allotted {
	free := make([]planner.Amount, len(f.items))
	for i := range f.items {
		free[i] = f.items[i].Lies()
	}
	a := &allotting{folding: f, free: free}
	for _, n := range f.needs {
		if n.now > 0 && n.open && (like == nil || n.thing() == like.thing()) {
			a.serve(n)
		}
	}
	return a.given
}

// thing is what a need wants: needs of one thing may want the same items.
func (n *need) thing() string {
	if n.Material == planner.ClothMaterial {
		return string(n.Material) + "\x00" + strings.ToLower(n.Name)
	}
	return string(n.Material)
}

type allotting struct {
	*folding
	free  []planner.Amount
	given []allotted
}

// serve finds items for one need.
func (a *allotting) serve(n *need) {
	rest := n.segments()
	for _, i := range a.candidates(n, func(i *Item) bool { return i.Own }) {
		rest = a.give(n, i, rest)
	}
	lots := a.lots(n)
	for _, lot := range lots {
		if a.doesForAll(n, lot, rest) {
			lots = [][]int{lot}
			break
		}
	}
	for _, lot := range lots {
		for _, i := range lot {
			rest = a.give(n, i, rest)
		}
	}
}

// candidates is the items that can serve a need, oldest first.
func (a *allotting) candidates(n *need, which func(*Item) bool) []int {
	var found []int
	for i := range a.items {
		if _, ok := a.items[i].serves(n.Job, n.StockNeed); ok && a.free[i] > 0 && which(&a.items[i]) {
			found = append(found, i)
		}
	}
	slices.SortStableFunc(found, func(x, y int) int { return a.items[x].Since.Compare(a.items[y].Since) })
	return found
}

// lots is the shelf's items that can serve a need, those of one dye lot
// together, begun lots first.
func (a *allotting) lots(n *need) [][]int {
	var lots [][]int
	for _, i := range a.candidates(n, func(i *Item) bool { return !i.Own }) {
		at := slices.IndexFunc(lots, func(l []int) bool { return a.items[l[0]].lot() == a.items[i].lot() })
		if at < 0 {
			at = len(lots)
			lots = append(lots, nil)
		}
		lots[at] = append(lots[at], i)
	}
	begun := func(l []int) int {
		if slices.ContainsFunc(l, func(i int) bool { return a.begun(n, i) }) {
			return 0
		}
		return 1
	}
	slices.SortStableFunc(lots, func(x, y []int) int { return begun(x) - begun(y) })
	return lots
}

// begun reports that the job uses an item already, or has it kept.
func (a *allotting) begun(n *need, item int) bool {
	return slices.ContainsFunc(a.items[item].By, func(c Claim) bool { return c.Job == n.Job }) ||
		slices.ContainsFunc(a.given, func(g allotted) bool { return g.item == item && g.need.Job == n.Job })
}

// doesForAll tries whether items hold all that is left of a need.
func (a *allotting) doesForAll(n *need, items []int, rest []segment) bool {
	for _, i := range items {
		per, _ := a.items[i].serves(n.Job, n.StockNeed)
		_, rest = cutFrom(a.free[i], per, rest)
	}
	return len(rest) == 0
}

// give takes of an item what there is room for.
func (a *allotting) give(n *need, item int, rest []segment) []segment {
	per, _ := a.items[item].serves(n.Job, n.StockNeed)
	units, after := cutFrom(a.free[item], per, rest)
	if units > 0 {
		a.free[item] -= units * per
		a.given = append(a.given, allotted{item, n, units, units * per})
	}
	return after
}

// segment is parts of a need that are each taken from one item. A loose one may
// come from several.
type segment struct {
	units planner.Amount
	count int
	loose bool
}

// segments is what a need still takes, in the parts that are cut in one.
func (n *need) segments() []segment {
	switch {
	case n.Material == planner.ThreadMaterial:
		return []segment{{n.now, 1, true}}
	case n.Form.Counted():
		return []segment{{1, int(n.now), false}}
	}
	gone, rest := n.Whole-n.now, []segment(nil)
	if gone < 0 { // more than was planned, for pieces that were lost
		rest = append(rest, segment{-gone, 1, false})
	}
	strips := n.Strips
	if len(strips) == 0 {
		strips = []planner.StockStrip{{Length: measure.Length(n.Whole), Count: 1}}
	}
	for _, s := range strips {
		one := planner.Amount(s.Length)
		whole := min(planner.Amount(s.Count), max(gone, 0)/one)
		gone -= whole * one
		count := s.Count - int(whole)
		if count > 0 && gone > 0 {
			rest = append(rest, segment{one - gone, 1, false})
			count, gone = count-1, 0
		}
		if count > 0 {
			rest = append(rest, segment{one, count, false})
		}
	}
	return rest
}

// cutFrom takes segments from a free amount, longest first, and says how many
// units it gave and what is left to find. Per is what a unit takes.
func cutFrom(free, per planner.Amount, want []segment) (units planner.Amount, rest []segment) {
	for _, s := range want {
		if s.loose {
			part := min(s.units, free/per)
			units += part
			free -= part * per
			if part < s.units {
				rest = append(rest, segment{s.units - part, 1, true})
			}
			continue
		}
		n := min(planner.Amount(s.count), free/(s.units*per))
		units += n * s.units
		free -= n * s.units * per
		if left := s.count - int(n); left > 0 {
			rest = append(rest, segment{s.units, left, false})
		}
	}
	return units, rest
}

// use books what a job has used on the items that were kept for it, then on
// whatever of the kind lies there. What comes from nowhere was never on the
// shelf.
func (f *folding) use(m moment) {
	n, rest := m.need, m.amount
	kept, known := f.asked[n.thing()]
	if !known {
		kept = f.allot(n)
		f.asked[n.thing()] = kept
	}
	from := false
	for k := range kept {
		if a := &kept[k]; a.need == n && rest > 0 {
			taken := f.take(n, a.item, min(rest, a.units))
			rest -= taken
			a.units -= taken // so that what is kept for the others stays as it is
			from = from || taken > 0
		}
	}
	if rest > 0 && f.takeAnywhere(n, rest) {
		from = true
		delete(f.asked, n.thing())
	}
	n.now = max(0, n.now-m.amount)
	if m.last && from {
		f.putBack(n, m.at)
	}
}

// takeAnywhere books units of a need on whatever of the kind lies there.
func (f *folding) takeAnywhere(n *need, rest planner.Amount) bool {
	found := false
	for i := range f.items {
		if per, ok := f.items[i].serves(n.Job, n.StockNeed); ok && rest > 0 {
			taken := f.take(n, i, min(rest, f.items[i].Lies()/per))
			rest -= taken
			found = found || taken > 0
		}
	}
	return found
}

// take books units of a need on an item, and says how many.
func (f *folding) take(n *need, item int, units planner.Amount) planner.Amount {
	i := &f.items[item]
	per, _ := i.serves(n.Job, n.StockNeed)
	units = min(units, i.Lies()/per)
	if units <= 0 {
		return 0
	}
	i.Used += units * per
	last := len(i.By) - 1
	if last >= 0 && i.By[last].Job == n.Job && i.By[last].For == n.purpose() {
		i.By[last].Amount += units * per
	} else {
		i.By = append(i.By, Claim{n.Job, n.purpose(), units * per})
	}
	return units
}

// putBack lays the leftovers of a fabric that is all cut on the shelf, as pieces
// of the dye lot that they came from.
func (f *folding) putBack(n *need, at time.Time) {
	lot, metric := "", false
	for _, i := range f.items {
		if slices.ContainsFunc(i.By, func(c Claim) bool { return c.Job == n.Job && c.For == n.purpose() }) && i.Name == n.Name {
			lot, metric = i.DyeLot, i.Metric
		}
	}
	for k, l := range n.StockNeed.Left {
		id := fmt.Sprintf("%s.%d", n.Job, n.first+k)
		f.items = append(f.items, Item{ID: id, Job: n.Job, Since: at, Put: planner.Amount(l.Count), Shelf: leftover(n, l, lot, metric)})
	}
}
