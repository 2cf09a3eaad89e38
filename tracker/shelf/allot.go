package shelf

import (
	"cmp"
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

// candidates is the items that can serve a need, rectangles first, oldest first.
func (a *allotting) candidates(n *need, which func(*Item) bool) []int {
	var found []int
	for i := range a.items {
		_, ok := a.items[i].serves(n.Job, n.StockNeed)
		if (ok || a.items[i].forStrips(n.StockNeed)) && a.free[i] > 0 && which(&a.items[i]) {
			found = append(found, i)
		}
	}
	whole := func(i int) int { return oneIf(a.items[i].Form != planner.Pieces) }
	slices.SortStableFunc(found, func(x, y int) int {
		return cmp.Or(whole(x)-whole(y), a.items[x].Since.Compare(a.items[y].Since))
	})
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
	fresh := func(l []int) int {
		return oneIf(!slices.ContainsFunc(l, func(i int) bool { return a.begun(n, i) }))
	}
	slices.SortStableFunc(lots, func(x, y []int) int { return fresh(x) - fresh(y) })
	return lots
}

// begun reports that the job uses an item already, or has it kept.
func (a *allotting) begun(n *need, item int) bool {
	return slices.ContainsFunc(a.items[item].By, func(c Claim) bool { return c.Job == n.Job }) ||
		slices.ContainsFunc(a.given, func(g allotted) bool { return g.item == item && g.need.Job == n.Job })
}

// doesForAll tries whether items hold all that is left of a need.
func (a *allotting) doesForAll(n *need, items []int, rest []segment) bool {
	try := &allotting{folding: a.folding, free: slices.Clone(a.free)}
	for _, i := range items {
		rest = try.give(n, i, rest)
	}
	return len(rest) == 0
}

func oneIf(is bool) int {
	if is {
		return 1
	}
	return 0
}

// give takes of an item what there is room for.
func (a *allotting) give(n *need, item int, rest []segment) []segment {
	if a.items[item].forStrips(n.StockNeed) {
		return a.giveStrips(n, item, rest)
	}
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
	width measure.Length // of a strip; 0: as wide as a rectangle may be
}

// segments is what a need still takes, in the parts that are cut in one. What a
// rectangle that is begun still gives is not looked for again.
func (n *need) segments() []segment {
	now := n.now - n.begun
	switch {
	case n.Material == planner.ThreadMaterial:
		return []segment{{units: now, count: 1, loose: true}}
	case n.Form.Counted():
		return []segment{{units: 1, count: int(now)}}
	}
	gone, rest := n.Whole-now, []segment(nil)
	if gone < 0 { // more than was planned, for pieces that were lost
		rest = append(rest, segment{units: -gone, count: 1, width: n.Width})
	}
	strips := n.Strips
	if len(strips) == 0 {
		strips = []planner.StockStrip{{Length: measure.Length(n.Whole), Count: 1}}
	}
	for _, s := range strips {
		one, width := planner.Amount(s.Length), cmp.Or(s.Width, n.Width)
		whole := min(planner.Amount(s.Count), max(gone, 0)/one)
		gone -= whole * one
		count := s.Count - int(whole)
		if count > 0 && gone > 0 {
			rest = append(rest, segment{units: one - gone, count: 1, width: width})
			count, gone = count-1, 0
		}
		if count > 0 {
			rest = append(rest, segment{units: one, count: count, width: width})
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
				rest = append(rest, segment{units: s.units - part, count: 1, loose: true})
			}
			continue
		}
		n := min(planner.Amount(s.count), free/(s.units*per))
		units += n * s.units
		free -= n * s.units * per
		if left := s.count - int(n); left > 0 {
			rest = append(rest, segment{units: s.units, count: left, width: s.width})
		}
	}
	return units, rest
}

// use books what a job has used on the items that were kept for it, then on
// whatever of the kind lies there. What comes from nowhere was never on the
// shelf.
func (f *folding) use(m moment) {
	n, rest := m.need, m.amount
	from := n.begun > 0
	begun := min(n.begun, rest)
	n.begun, rest = n.begun-begun, rest-begun
	kept, known := f.asked[n.thing()]
	if !known {
		kept = f.allot(n)
		f.asked[n.thing()] = kept
	}
	for k := range kept {
		if a := &kept[k]; a.need == n && rest > 0 {
			taken := f.takeKept(a, rest)
			rest -= taken
			from = from || taken > 0
		}
	}
	if rest > 0 && f.takeAnywhere(n, rest) {
		from = true
		delete(f.asked, n.thing())
	}
	n.now = max(0, n.now-m.amount)
	n.begun = min(n.begun, n.now)
	if m.last && from {
		f.putBack(n, m.at)
	}
}

// takeKept books units of a need on what was kept for it. What is kept for the others
// stays as it is.
func (f *folding) takeKept(a *allotted, rest planner.Amount) planner.Amount {
	if f.items[a.item].forStrips(a.need.StockNeed) {
		return f.takePiece(a, rest)
	}
	taken := f.take(a.need, a.item, min(rest, a.units))
	a.units -= taken
	return taken
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
	i.claimedBy(n, units*per)
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
