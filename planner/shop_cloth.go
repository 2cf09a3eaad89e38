package planner

import (
	"fmt"
	"slices"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// ShopFabric is one cloth as it is to be bought. Amounts are ticks of length for
// yardage, sheets for every other form. Need is the joined plan's; Apart is what
// the jobs would buy if each were planned, and rounded, by itself, and Together
// the same for all of them, both before anything that is there but the pieces that
// job files say are on hand.
type ShopFabric struct {
	Fabric   Fabric
	Jobs     []string
	Need     Amount
	Own      Amount // that the jobs have by their own files
	Shelf    Amount // free on the shelf
	Buy      Amount
	Apart    Amount
	Together Amount
	Pieces   Amount    // of the need, what pieces that are there save
	Cuts     []ShopCut // what is cut of what, the bought cloth last
}

// ShopCut is the pieces that come from one length, or from sheets of one size.
// Bought is set where it is what the list says to buy.
type ShopCut struct {
	Bought bool
	Length measure.Length // there is; of what is bought, after rounding
	Sheets HaveSheets
	Pieces []PieceCount
}

// Saves is what planning the jobs together saves.
func (f ShopFabric) Saves() Amount { return max(0, f.Apart-f.Together) }

// Tight reports yardage of which too little is left, once it is bought, to straighten
// its ends.
func (f ShopFabric) Tight() bool {
	spare := measure.Length(f.Own + f.Shelf + f.Buy - f.Need)
	return f.Buy > 0 && !f.Fabric.Form.Sheets() && spare < straightening
}

// shopFabric plans one cloth for all jobs that want it.
func shopFabric(j joinedFabric, free Have, u measure.Unit) (ShopFabric, error) {
	f := ShopFabric{Fabric: j.Fabric}
	var own Have
	var doubtful measure.Length
	for i, from := range j.from {
		f.Jobs = append(f.Jobs, j.jobs[i].ID)
		own = own.And(from.Own)
		alone, err := cutTogether([]WantedFabric{from}, j.jobs[i], nil)
		if err != nil {
			return f, fmt.Errorf("%s of %s cannot be planned: %w", j.Fabric.Name, j.jobs[i].ID, err)
		}
		f.Apart += alone.rounded(j.Fabric, u)
		doubtful += measure.Length(max(0, from.Half-alone.amount(j.Fabric)))
	}
	joined, err := cutTogether(j.from, j.jobs[0], nil)
	if err != nil {
		return f, fmt.Errorf("%s cannot be planned: %w", j.Fabric.Name, err)
	}
	f.Need, f.Together = joined.amount(j.Fabric), joined.rounded(j.Fabric, u)
	if j.Fabric.Form.Sheets() {
		f.Own, f.Shelf = Amount(f.Fabric.whole(own).Count()), Amount(f.Fabric.whole(free).Count())
		return f, f.sheetsOf(j, own.And(free))
	}
	if len(j.from) > 1 {
		own, free = own.without(doubtful), free.without(doubtful-min(doubtful, own.Length()))
	}
	f.Own, f.Shelf = Amount(own.Length()), Amount(free.Length())
	f.fromBolt(joined, own.And(free), u)
	all := WantedFabric{FabricNeed: FabricNeed{Fabric: j.Fabric, Pieces: joined.wants}}
	if pieces := all.usefulPieces(own.And(free)); len(free.Sheets) > 0 && len(pieces) > 0 {
		f.withPieces(j, pieces, own.And(free), u)
	}
	return f, nil
}

// fromBolt cuts what a plan has from pieces, then from lengths that are there and
// from what is bought.
func (f *ShopFabric) fromBolt(t taken, there Have, u measure.Unit) {
	f.Buy, f.Cuts = 0, nil
	f.fromPieces(t)
	f.fromLengths(t, there.Lengths, u)
}

// withPieces tries whether pieces that lie there save cloth: where they buy no less
// and take no less of the lengths, they are left alone.
func (f *ShopFabric) withPieces(j joinedFabric, pieces []measure.Size, there Have, u measure.Unit) {
	plan, err := cutTogether(j.from, j.jobs[0], pieces)
	if err != nil {
		return
	}
	other := *f
	if other.fromBolt(plan, there, u); other.Buy > f.Buy || plan.amount(f.Fabric) >= f.Need {
		return
	}
	other.Pieces = f.Need - plan.amount(f.Fabric)
	*f = other
}

// mostPieces bounds how many pieces that lie there a plan looks at, the largest.
const mostPieces = 48

// usefulPieces is the pieces that hold at least one that is wanted, largest first.
func (f WantedFabric) usefulPieces(there Have) []measure.Size {
	var all []measure.Size
	for _, s := range there.Sheets {
		if f.anyIn(f.Fabric.shrunk(s.Size)) {
			all = append(all, slices.Repeat([]measure.Size{s.Size}, min(s.Count, mostPieces))...)
		}
	}
	slices.SortStableFunc(all, func(a, b measure.Size) int {
		return measure.Mul(b.Width, b.Height).Cmp(measure.Mul(a.Width, a.Height))
	})
	return all[:min(len(all), mostPieces)]
}

// anyIn reports that a piece of the fabric holds one that is wanted of it.
func (f WantedFabric) anyIn(s measure.Size) bool {
	return slices.ContainsFunc(f.Pieces, func(p PieceCount) bool {
		return p.Size.Width <= s.Width && p.Size.Height <= s.Height ||
			!f.Fabric.Directional && !p.Long && p.Size.Height <= s.Width && p.Size.Width <= s.Height
	})
}

// taken is how the pieces of one cloth are cut together, and its backing panels.
type taken struct {
	wants []PieceCount
	plan  cloth.Plan
	bands []shopBand
}

// shopBand is a length off the bolt that is not joined of two.
type shopBand struct {
	length measure.Length
	pieces []PieceCount
}

// cutTogether plans all pieces of alike fabrics together, in a job's ways of
// cutting, from pieces that lie there first: those that job files name, where none
// are given.
func cutTogether(from []WantedFabric, job Job, pieces []measure.Size) (taken, error) {
	need := FabricNeed{Fabric: from[0].Fabric}
	need.Fabric.OnHand = piecesOnHand(from)
	if pieces != nil {
		need.Fabric.OnHand = &Stock{Pieces: pieces}
	}
	all := map[string][]PieceCount{}
	for _, f := range from {
		for _, p := range f.Pieces {
			addPieces(all, "", p)
		}
	}
	need.Pieces = sortedPieces(all[""])
	t := taken{wants: need.Pieces}
	var err error
	if len(need.Pieces) > 0 {
		if t.plan, err = CutPlan(job, need, styleOf(job)); err != nil {
			return t, err
		}
	}
	for _, b := range bands(t.plan) {
		one := map[string][]PieceCount{}
		for _, p := range b.pieces {
			want := t.wants[p.Want]
			addPieces(one, "", PieceCount{Size: want.Size, Count: 1, For: want.For, Long: want.Long})
		}
		t.bands = append(t.bands, shopBand{need.Fabric.unwashed(b.to - b.from), one[""]})
	}
	slices.SortStableFunc(t.bands, func(a, b shopBand) int { return int(max(-1, min(1, b.length-a.length))) })
	return t, nil
}

// piecesOnHand is the pieces of other sizes that all jobs have of their own, nil
// where there are none.
func piecesOnHand(from []WantedFabric) *Stock {
	var all []measure.Size
	for _, f := range from {
		if f.Fabric.Form.Sheets() && f.Fabric.OnHand != nil {
			all = append(all, f.Fabric.OnHand.Pieces...)
		} else if !f.Fabric.Form.Sheets() {
			all = append(all, f.usefulPieces(f.Own)...)
		}
	}
	if len(all) == 0 {
		return nil
	}
	return &Stock{Pieces: all}
}

// fromPieces notes what the plan has cut from pieces on hand, before the bolt.
func (f *ShopFabric) fromPieces(t taken) {
	for _, c := range t.plan.Cloths {
		if !c.Hand || len(c.Pieces) == 0 {
			continue
		}
		one := map[string][]PieceCount{}
		for _, p := range c.Pieces {
			addPieces(one, "", PieceCount{Size: t.wants[p.Want].Size, Count: 1, For: t.wants[p.Want].For})
		}
		f.Cuts = append(f.Cuts, ShopCut{Sheets: HaveSheets{c.Size, 1}, Pieces: one[""]})
	}
}

// amount is what is taken of cloth that is bought for it alone.
func (t taken) amount(f Fabric) Amount {
	if f.Form.Sheets() {
		n := 0
		for _, c := range t.plan.Cloths {
			n += oneIf(!c.Hand)
		}
		return Amount(n)
	}
	return Amount(lengthOf(t.bands))
}

// rounded is the same as shops sell it.
func (t taken) rounded(f Fabric, u measure.Unit) Amount {
	if f.Form.Sheets() {
		return t.amount(f)
	}
	return Amount(measure.Length(t.amount(f)).RoundUp(u.ShopStep()))
}

func lengthOf(bands []shopBand) measure.Length {
	var sum measure.Length
	for _, b := range bands {
		sum += b.length
	}
	return sum
}

// fromLengths cuts what can be cut from each length that is there, longest
// first, and buys one length for the rest.
func (f *ShopFabric) fromLengths(t taken, there []measure.Length, u measure.Unit) {
	there = slices.Clone(there)
	slices.SortFunc(there, func(a, b measure.Length) int { return int(max(-1, min(1, b-a))) })
	rest := t.bands
	for _, l := range there {
		var here []shopBand
		if here, rest = fill(l, rest); len(here) > 0 {
			f.Cuts = append(f.Cuts, ShopCut{Length: l, Pieces: piecesOf(here)})
		}
	}
	if len(rest) > 0 {
		bought := lengthOf(rest).RoundUp(u.ShopStep())
		f.Buy = Amount(bought)
		f.Cuts = append(f.Cuts, ShopCut{Bought: true, Length: bought, Pieces: piecesOf(rest)})
	}
}

func piecesOf(bands []shopBand) []PieceCount {
	all := map[string][]PieceCount{}
	for _, b := range bands {
		for _, p := range b.pieces {
			addPieces(all, "", p)
		}
	}
	return sortedPieces(all[""])
}

// mostSums bounds how many sums of lengths are looked at, beyond which lengths
// are filled longest first. Jobs have a handful of different lengths.
const mostSums = 20_000

// fill is the bands that make the most of a length, and those that are left.
func fill(room measure.Length, bands []shopBand) (here, rest []shopBand) {
	if lengthOf(bands) <= room {
		return bands, nil
	}
	picked := fullest(room, bands)
	for i, b := range bands {
		if picked[i] {
			here = append(here, b)
		} else {
			rest = append(rest, b)
		}
	}
	return here, rest
}

// fullest picks bands whose lengths add up to the most that the room holds. Each
// sum remembers the band that reached it and the sum before.
func fullest(room measure.Length, bands []shopBand) map[int]bool {
	type step struct {
		band int
		from measure.Length
	}
	reached := map[measure.Length]step{0: {band: -1}}
	sums := []measure.Length{0}
	var best measure.Length
	for i, b := range bands {
		for _, sum := range sums[:len(sums):len(sums)] {
			next := sum + b.length
			if _, known := reached[next]; known || next > room || len(sums) > mostSums {
				continue
			}
			reached[next] = step{i, sum}
			sums = append(sums, next)
			best = max(best, next)
		}
	}
	picked := map[int]bool{}
	for at := best; reached[at].band >= 0; at = reached[at].from {
		picked[reached[at].band] = true
	}
	return picked
}

// sheetsOf cuts sheets for all jobs together. A job that has begun sheets cuts what it
// still wants by itself, first: where the cuts went is not known, so that the room
// beside them is promised to no other.
func (f *ShopFabric) sheetsOf(j joinedFabric, there Have) error {
	var fresh []WantedFabric
	job := j.jobs[0]
	for i, from := range j.from {
		if len(from.Begun) == 0 || len(j.from) == 1 {
			fresh = append(fresh, from)
			continue
		}
		alone, err := cutTogether([]WantedFabric{from}, j.jobs[i], nil)
		if err != nil {
			return err
		}
		before := len(f.Cuts)
		if err := f.fromSheets(alone, from.Begun, there, j.jobs[i]); err != nil {
			return err
		}
		there = there.lessSheets(f.Fabric, f.Cuts[before:])
	}
	if len(fresh) == 0 {
		return nil
	}
	joined, err := cutTogether(fresh, job, nil)
	if err != nil {
		return err
	}
	return f.fromSheets(joined, begunOf(fresh), there, job)
}

// begunOf is the pieces that are cut from sheets that still count as there.
func begunOf(from []WantedFabric) []PieceCount {
	var all []PieceCount
	for _, f := range from {
		all = append(all, f.Begun...)
	}
	return all
}

// fromSheets cuts sheets that are there first, and buys for the rest. What was cut
// from sheets that are begun has its room in them.
func (f *ShopFabric) fromSheets(t taken, begun []PieceCount, there Have, job Job) error {
	if len(t.wants) == 0 {
		return nil
	}
	if there.Count() == 0 {
		begun = nil
	}
	pieces := slices.Concat(t.wants, begun)
	wants := wantsOf(f.Fabric, pieces)
	var sheets []cloth.Sheet
	for _, h := range there.Sheets {
		if h.Count > 0 { // none would be taken for as many as it takes
			sheets = append(sheets, cloth.Sheet{Name: "there", Size: f.Fabric.shrunk(h.Size), Count: h.Count})
		}
	}
	sheets = append(sheets, cloth.Sheet{Name: "bought", Size: f.Fabric.Sheet()})
	plan, err := cloth.CutSheets(wants, sheets, cutSettings(job, f.Fabric, styleOf(job)))
	if err != nil {
		return fmt.Errorf("%s cannot be planned: %w", f.Fabric.Name, err)
	}
	for _, c := range plan.Cloths {
		one := map[string][]PieceCount{}
		for _, p := range c.Pieces {
			if p.Want < len(t.wants) {
				addPieces(one, "", PieceCount{Size: pieces[p.Want].Size, Count: 1, For: pieces[p.Want].For})
			}
		}
		bought := c.Name == "bought"
		if bought {
			f.Buy++
		}
		f.Cuts = append(f.Cuts, ShopCut{Bought: bought, Sheets: HaveSheets{c.Size, 1}, Pieces: one[""]})
	}
	return nil
}
