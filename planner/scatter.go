package planner

import "slices"

// A scattered layout keeps like blocks apart. Over all pairs of blocks of a quilt it
// makes as small as it can
//
//	Σ 1/d² over pairs of one colourway, plus ½ Σ 1/d² over pairs of one print,
//
// d between the middles of the two blocks. A block's prints are the fabrics of all
// its roles but the ground, each once; a pair that has two prints in common counts
// for each. Neither a ground nor a print that is everywhere changes what is best.
// In a border of blocks the border says which colourway lies where, and only blocks
// of one colourway change places there.

// ground is the role that no block is told apart by.
const ground = "ground"

// places is where every block of one quilt lies.
func (m *maker) places() []place {
	layout := dealtPlaces(&m.job, m.frame)
	if m.job.Layout.Order == Scatter {
		newScatter(m.job, m.frame, layout).lay(layout)
	}
	return layout
}

// scatter is the blocks of a quilt that are to be laid out, and what it costs that
// two like ones lie near.
//
// Costs are whole numbers, the same on every machine: 1/d² is in 2⁻⁴⁰ of what it is
// between the nearest neighbours, rounded to the nearest, and a pair of one print
// counts once, a pair of one colourway twice.
type scatter struct {
	kinds      []blockKind
	colourways int
	distances
	fixed []int   // by place: the colourway that a border of blocks has there, -1 inside all borders
	dealt [][]int // the kinds of all places as other orders deal them
}

// blockKind is blocks of one quilt that are alike in colourway and fabrics.
type blockKind struct {
	colourway int
	nth       []int // as they are dealt
	classes   []int // the colourway, then its prints, each numbered over the job
}

// colourwayWeight is how much more a pair of one colourway counts than one of one print.
const colourwayWeight = 2

// otherOrders are the orders that a scattered layout is never worse than.
var otherOrders = [...]Order{DealDiagonal, DealRows, FillDiagonal, FillRows}

// newScatter is the blocks of a job, and its layout as every other order deals it.
func newScatter(j Job, f frame, layout []place) *scatter {
	s := &scatter{colourways: len(j.Colourways), distances: f.distances(layout), fixed: make([]int, len(layout))}
	for i, p := range layout {
		s.fixed[i] = -1
		if p.ring > 0 {
			s.fixed[i] = p.colourway
		}
	}
	of := s.sort(j)
	for _, order := range otherOrders {
		j.Layout.Order = order
		f.layout = &j.Layout
		kindAt := make([]int, len(layout))
		for i, p := range dealtPlaces(&j, f) {
			kindAt[i] = of[p.colourway][p.dealt]
		}
		s.dealt = append(s.dealt, kindAt)
	}
	return s
}

// sort puts blocks that are alike together, and gives each dealt block its kind.
func (s *scatter) sort(j Job) (of [][]int) {
	prints := map[string]int{}
	for c, blocks := range dealtRoles(j) {
		of = append(of, make([]int, len(blocks)))
		first := len(s.kinds)
		for n, fabrics := range blocks {
			classes := append([]int{c}, printsOf(fabrics, prints, len(j.Colourways))...)
			k := slices.IndexFunc(s.kinds[first:], func(o blockKind) bool { return slices.Equal(o.classes, classes) }) + first
			if k < first {
				k = len(s.kinds)
				s.kinds = append(s.kinds, blockKind{colourway: c, classes: classes})
			}
			s.kinds[k].nth = append(s.kinds[k].nth, n)
			of[c][n] = k
		}
	}
	return of
}

// printsOf is the numbers of a block's prints. Known are those of blocks before it.
func printsOf(fabrics []RoleFabric, known map[string]int, colourways int) []int {
	var all []int
	for _, f := range fabrics {
		if f.Role == ground {
			continue
		}
		n, ok := known[f.Fabric]
		if !ok {
			n = colourways + len(known)
			known[f.Fabric] = n
		}
		if !slices.Contains(all, n) {
			all = append(all, n)
		}
	}
	slices.Sort(all)
	return all
}

// alike is how much a pair of two kinds counts.
func (s *scatter) alike(a, b int) int64 {
	var n int64
	for _, class := range s.kinds[a].classes {
		if slices.Contains(s.kinds[b].classes, class) {
			n += s.weight(class)
		}
	}
	return n
}

// weight is how much a pair of one class counts.
func (s *scatter) weight(class int) int64 {
	if class < s.colourways {
		return colourwayWeight
	}
	return 1
}

// cost is what a layout comes to.
func (s *scatter) cost(kindAt []int) int64 {
	members := make([][]int, s.classes())
	for p, k := range kindAt {
		for _, class := range s.kinds[k].classes {
			members[class] = append(members[class], p)
		}
	}
	var sum int64
	for class, places := range members {
		var pairs int64
		for i, p := range places {
			for _, q := range places[:i] {
				pairs += s.between(p, q)
			}
		}
		sum += s.weight(class) * pairs
	}
	return sum
}

// classes is how many colourways and prints there are.
func (s *scatter) classes() int {
	most := 0
	for _, k := range s.kinds {
		most = max(most, k.classes[len(k.classes)-1])
	}
	return most + 1
}

// lay gives the places of a dealt layout their blocks anew. Blocks that are alike
// lie in the order in which they are dealt, row by row.
func (s *scatter) lay(layout []place) {
	next := make([]int, len(s.kinds))
	for p, k := range s.best() {
		layout[p].colourway, layout[p].dealt = s.kinds[k].colourway, s.kinds[k].nth[next[k]]
		next[k]++
	}
}
