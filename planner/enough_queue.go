package planner

import (
	"slices"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// queue is the blocks that use one fabric, in the order in which they get it:
// colourways in file order, each by its numbers. The first blocks' pieces are
// those that are cut already.
type queue struct {
	job    Job
	fabric Fabric
	blocks []int                // of the plan
	of     []int                // colourway of each block of the queue
	sets   map[int][]PieceCount // what one block takes, by colourway
	pooled map[int][]PieceCount // what all blocks of a colourway take together
	all    map[int]int          // blocks of each colourway in the queue
	cut    []PieceCount         // already, for blocks
	begun  []PieceCount         // of these, from sheets that still count as there
}

// queueOf lines up the blocks of a plan for a fabric of which some is cut.
func queueOf(plan Plan, w WantedFabric) *queue {
	q := &queue{job: plan.Job, fabric: w.Fabric, begun: w.Begun, sets: map[int][]PieceCount{}, pooled: map[int][]PieceCount{}, all: map[int]int{}}
	m := plan.maker()
	for c := range plan.Colourways {
		for i, b := range plan.Blocks {
			if b.Colourway != plan.Colourways[c].Name || !usesFabric(b, w.Fabric.Name) {
				continue
			}
			if q.all[c]++; q.all[c] == 1 {
				q.sets[c] = setOf(plan.Colourways[c], b, w.Fabric.Name)
				q.pooled[c] = m.poolsOf(c).pieces(plan.Colourways[c].Build)[w.Fabric.Name]
			}
			q.blocks, q.of = append(q.blocks, i), append(q.of, c)
		}
	}
	q.cut = q.alreadyCut(plan, w)
	return q
}

// maker is the plan as its maker left it, for what is worked out from a plan.
func (p Plan) maker() *maker {
	m := &maker{job: p.Job, plan: p, own: make([][]*Block, len(p.Colourways))}
	for i := range p.Blocks {
		for c := range p.Colourways {
			if p.Colourways[c].Name == p.Blocks[i].Colourway {
				m.own[c] = append(m.own[c], &p.Blocks[i])
			}
		}
	}
	return m
}

// setOf is the pieces that one block takes of a fabric.
func setOf(c ColourwayPlan, b Block, fabric string) []PieceCount {
	all := map[string][]PieceCount{}
	perBlock := blockPieces(c.Build)
	for _, f := range b.Fabrics {
		if f.Fabric == fabric {
			for _, p := range perBlock[f.Role] {
				addPieces(all, "", p)
			}
		}
	}
	return all[""]
}

// alreadyCut is what the blocks take in all, less what is still wanted for them.
func (q *queue) alreadyCut(plan Plan, w WantedFabric) []PieceCount {
	all := map[string][]PieceCount{}
	for _, n := range plan.Fabrics {
		if n.Fabric.Name != w.Fabric.Name {
			continue
		}
		for _, p := range n.Pieces {
			if p.For == forBlocks {
				addPieces(all, "", PieceCount{Size: p.Size, Count: p.Count, For: p.For})
			}
		}
	}
	for _, p := range w.Pieces {
		if p.For == forBlocks {
			addPieces(all, "", PieceCount{Size: p.Size, Count: -p.Count, For: p.For})
		}
	}
	for i := range w.Over {
		addPieces(all, "", w.Over[i])
	}
	return all[""]
}

// spare is pieces that are cut and that no block takes.
func (q *queue) spare() []PieceCount {
	var spare []PieceCount
	for _, p := range q.less(q.cut, q.pieces(len(q.blocks))) {
		if p.Count > 0 {
			spare = append(spare, p)
		}
	}
	return spare
}

// pieces is what the first n blocks take. Of what is pooled it is their share,
// rounded up.
func (q *queue) pieces(n int) []PieceCount {
	all := map[string][]PieceCount{}
	counts := map[int]int{}
	for _, c := range q.of[:n] {
		counts[c]++
	}
	for c, k := range counts {
		for _, p := range q.sets[c] {
			p.Count *= k
			addPieces(all, "", p)
		}
		for _, p := range q.pooled[c] {
			p.Count = (p.Count*k + q.all[c] - 1) / q.all[c]
			addPieces(all, "", p)
		}
	}
	return sortedPieces(all[""])
}

// still is what the first n blocks take beyond what is cut.
func (q *queue) still(n int) []PieceCount {
	var out []PieceCount
	for _, p := range q.less(q.pieces(n), q.cut) {
		if p.Count > 0 {
			out = append(out, p)
		}
	}
	return out
}

// less is the first pieces without the second, size by size.
func (q *queue) less(a, b []PieceCount) []PieceCount {
	out := slices.Clone(a)
	for i := range out {
		for _, p := range b {
			if p.Size == out[i].Size {
				out[i].Count -= p.Count
			}
		}
	}
	return out
}

// oneSize is the size of all pieces for blocks, false where there are several.
func (q *queue) oneSize() (measure.Size, bool) {
	ps := q.pieces(len(q.blocks))
	if len(ps) != 1 {
		return measure.Size{}, false
	}
	return ps[0].Size, true
}

// gives is how many of a piece the cloth gives in all.
func (q *queue) gives(have Have, p PieceCount) (int, error) {
	return setsFrom(q.job, q.fabric, []PieceCount{p}, have)
}

// setsFrom is how many sets of pieces a fabric gives: whole sets from each length,
// and from the sheets of each size.
func setsFrom(job Job, f Fabric, set []PieceCount, have Have) (int, error) {
	wants := wantsOf(f, set)
	n := 0
	for _, l := range have.Lengths {
		got, _, err := cloth.SetsFromYardage(wants, f.Across(), f.washed(l), cutSettings(job, f, styleOf(job)))
		if err != nil {
			return 0, err
		}
		n += got
	}
	for _, s := range have.Sheets {
		if s.Count == 0 || !holdsAll(f, set, s.Size) {
			continue
		}
		got, _, err := cloth.SetsFromSheets(wants, []cloth.Sheet{{Size: f.shrunk(s.Size), Count: s.Count}}, cutSettings(job, f, styleOf(job)))
		if err != nil {
			return 0, err
		}
		n += max(got, s.Count*mostOfOne(job, f, set, s.Size))
	}
	return n, nil
}

// holdsAll reports that a sheet holds at least one of each piece.
func holdsAll(f Fabric, set []PieceCount, sheet measure.Size) bool {
	return !slices.ContainsFunc(set, func(p PieceCount) bool {
		return !WantedFabric{FabricNeed: FabricNeed{Fabric: f, Pieces: []PieceCount{p}}}.anyIn(f.shrunk(sheet))
	})
}

// mostOfOne is how many of a single piece one sheet gives at most, 0 where the set
// is of several: what a plan for many sheets finds for each may be less.
func mostOfOne(job Job, f Fabric, set []PieceCount, sheet measure.Size) int {
	if len(set) != 1 || set[0].Count == 0 {
		return 0
	}
	one, whole := set[0], f.shrunk(sheet)
	one.Count = measure.FloorDiv(whole.Width, one.Size.Width) * measure.FloorDiv(whole.Height, one.Size.Height)
	if turned := measure.FloorDiv(whole.Width, one.Size.Height) * measure.FloorDiv(whole.Height, one.Size.Width); !f.Directional {
		one.Count = max(one.Count, turned) + min(one.Count, turned)
	}
	one.Count = min(one.Count+1, cloth.MostPieces)
	plan, err := cloth.MostFrom(wantsOf(f, []PieceCount{one}), nil, cloth.Sheet{Size: whole}, cutSettings(job, f, styleOf(job)))
	if err != nil || len(plan.Cloths) == 0 {
		return 0
	}
	return len(plan.Cloths[0].Pieces) / set[0].Count
}

func wantsOf(f Fabric, ps []PieceCount) []cloth.Want {
	wants := make([]cloth.Want, len(ps))
	for i, p := range ps {
		wants[i] = cloth.Want{Name: p.For, Size: p.Size, Count: p.Count, Directional: f.Directional, Long: p.Long}
	}
	return wants
}

// most is how many of the first blocks the cloth does for: as many as the longest
// length gives, then the next, then sheets size by size.
func (q *queue) most(have Have, limit int) (int, error) {
	n := q.covered(limit)
	lengths := slices.Clone(have.Lengths)
	slices.SortFunc(lengths, func(a, b measure.Length) int { return int(max(-1, min(1, b-a))) })
	for _, l := range lengths {
		n = q.further(n, limit, func(ps []PieceCount) bool {
			plan, err := cloth.CutYardage(wantsOf(q.fabric, ps), q.fabric.Across(), cutSettings(q.job, q.fabric, styleOf(q.job)))
			return err == nil && plan.Length <= q.fabric.washed(l)
		})
	}
	begun := q.begun
	for _, s := range have.Sheets {
		n = q.further(n, limit, func(ps []PieceCount) bool {
			if len(begun) == 0 && len(ps) == 1 && ps[0].Count <= s.Count*mostOfOne(q.job, q.fabric, []PieceCount{{Size: ps[0].Size, Count: 1}}, s.Size) {
				return true
			}
			plan, err := cloth.CutSheets(wantsOf(q.fabric, slices.Concat(ps, begun)), []cloth.Sheet{{Size: q.fabric.shrunk(s.Size)}}, cutSettings(q.job, q.fabric, styleOf(q.job)))
			return err == nil && plan.Sheets <= s.Count
		})
		begun = nil // they came from the first
	}
	return n, nil
}

// covered is how many of the first blocks take nothing but what is cut.
func (q *queue) covered(limit int) int {
	n := 0
	for n < limit && len(q.still(n+1)) == 0 {
		n++
	}
	return n
}

// further is the greatest number of blocks that does, built up bit by bit from
// the top as sets are: more cloth never gives fewer.
func (q *queue) further(from, limit int, does func([]PieceCount) bool) int {
	bit := 1
	for bit <= (limit-from)/2 {
		bit *= 2
	}
	n := from
	base := q.still(from)
	for ; bit > 0; bit /= 2 {
		if n+bit > limit {
			continue
		}
		var ps []PieceCount
		for _, p := range q.less(q.still(n+bit), base) {
			if p.Count > 0 {
				ps = append(ps, p)
			}
		}
		if does(ps) {
			n += bit
		}
	}
	return n
}
