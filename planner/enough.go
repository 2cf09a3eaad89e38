package planner

import (
	"slices"

	"quiltrun/planner/measure"
)

// Enough is how far the cloth that is there goes, and what would make it go far
// enough.
type Enough struct {
	Plan       Plan
	Colourways []EnoughColourway // in file order
	Fabrics    []EnoughFabric    // in file order, those that are not used left out
	Fits       bool              // everything can be cut
	Ways       []EnoughWay       // none where it fits
}

// EnoughColourway is how many of a colourway's blocks can be made, those that are
// cut already counted.
type EnoughColourway struct {
	Name   string
	Blocks int // of the run
	Makes  int
}

// EnoughFabric is how far one fabric goes: blocks first, in file order, then
// borders, binding and the like. What is not said to be there is taken as bought
// as needed.
type EnoughFabric struct {
	Fabric  Fabric
	Said    bool
	Have    Have
	Uses    []EnoughUse  // by colourway
	Wanted  int          // pieces still to be cut for blocks
	Gives   int          // pieces the cloth gives where all are of one size; else 0
	Size    measure.Size // that size
	Over    int          // of those, what the blocks that can be made leave
	Spare   []PieceCount // pieces that are cut and no longer wanted
	Finish  bool         // the rest does for borders, binding, backing and the like
	Need    Amount       // still, for all
	Buy     Amount
	Backing bool // part of the need is a backing
}

// Short reports that the fabric does not do for all.
func (f EnoughFabric) Short() bool { return f.Said && f.Buy > 0 }

// EnoughUse is the blocks of one colourway that use a fabric.
type EnoughUse struct {
	Colourway string
	Blocks    int
	Makes     int
}

// EnoughAsk asks how far cloth goes. Have says what is there of the fabrics of
// which anything is known. Left is what a plan of the job still wants; Begun says
// that some of it is cut.
type EnoughAsk struct {
	Plan  Plan
	Prior Prior
	Have  map[string]Have
	Left  func(Plan) Wanted
	Begun bool
	Whole []string // fabrics of which no sheet that is there is begun
}

// Answer works it out. The error is that of pieces that cannot be planned.
func (a EnoughAsk) Answer() (Enough, error) {
	e, err := a.reach(a.Plan)
	if err != nil || e.Fits {
		return e, err
	}
	e.Ways = slices.Concat(a.buying(e), a.smaller(), a.splits(e), a.replacing(e))
	return e, nil
}

// reach is how far the cloth goes for a plan.
func (a EnoughAsk) reach(plan Plan) (Enough, error) {
	e := Enough{Plan: plan, Fits: true}
	wanted := a.left(plan)
	bought, err := a.shop(wanted)
	if err != nil {
		return e, err
	}
	made := make([]int, len(plan.Blocks)) // fabrics that do for a block, less those it takes
	for _, w := range wanted.Fabrics {
		f, can, err := a.reachOf(plan, w)
		if err != nil {
			return e, err
		}
		for i, b := range plan.Blocks {
			if usesFabric(b, w.Fabric.Name) && !can[i] {
				made[i]--
			}
		}
		at := slices.IndexFunc(bought.Fabrics, func(s ShopFabric) bool { return s.Fabric.Name == w.Fabric.Name })
		if at >= 0 {
			f.Need, f.Buy = bought.Fabrics[at].Need, bought.Fabrics[at].Buy
		}
		if len(f.Uses) > 0 || f.Need > 0 || len(f.Spare) > 0 {
			e.Fits = e.Fits && !f.Short()
			e.Fabrics = append(e.Fabrics, f)
		}
	}
	for _, c := range plan.Colourways {
		own := EnoughColourway{Name: c.Name}
		for i, b := range plan.Blocks {
			if b.Colourway == c.Name {
				own.Blocks++
				own.Makes += oneIf(made[i] == 0)
			}
		}
		e.Colourways = append(e.Colourways, own)
	}
	return e, nil
}

// left is what a plan still wants.
func (a EnoughAsk) left(plan Plan) Wanted {
	w := a.Left(plan)
	w.Fabrics = slices.Clone(w.Fabrics)
	for i := range w.Fabrics {
		if slices.Contains(a.Whole, w.Fabrics[i].Fabric.Name) {
			w.Fabrics[i].Begun = nil
		}
	}
	return w
}

// shop is what would have to be bought.
func (a EnoughAsk) shop(w Wanted) (Shopping, error) {
	w.Fabrics = slices.Clone(w.Fabrics)
	for i := range w.Fabrics {
		w.Fabrics[i].Own = a.Have[w.Fabrics[i].Fabric.Name]
	}
	return Shop([]Wanted{w}, Stocked{})
}

func usesFabric(b Block, fabric string) bool {
	return slices.ContainsFunc(b.Fabrics, func(f RoleFabric) bool { return f.Fabric == fabric })
}

// reachOf is how far one fabric goes, and for which of the plan's blocks it does.
func (a EnoughAsk) reachOf(plan Plan, w WantedFabric) (EnoughFabric, map[int]bool, error) {
	have, said := a.Have[w.Fabric.Name]
	f := EnoughFabric{Fabric: w.Fabric, Said: said, Have: have, Backing: w.Backing != nil}
	q := queueOf(plan, w)
	f.Spare = q.spare()
	n := len(q.blocks)
	if said {
		var err error
		if n, err = q.most(have, n); err != nil {
			return f, nil, err
		}
	}
	can := map[int]bool{}
	for i, at := range q.blocks {
		can[at] = i < n
		f.use(plan.Blocks[at].Colourway, i < n)
	}
	for _, p := range q.still(len(q.blocks)) {
		f.Wanted += p.Count
	}
	if size, ok := q.oneSize(); ok && said {
		f.Size = size
		given, err := q.gives(have, PieceCount{Size: size, Count: 1})
		if err != nil {
			return f, nil, err
		}
		f.Gives = max(0, given-sumPieces(w.Begun))
		f.Over = f.Gives - sumPieces(q.still(n))
	}
	return f, can, nil
}

func sumPieces(ps []PieceCount) int {
	n := 0
	for _, p := range ps {
		n += p.Count
	}
	return n
}

// use counts one block of a colourway.
func (f *EnoughFabric) use(colourway string, can bool) {
	at := slices.IndexFunc(f.Uses, func(u EnoughUse) bool { return u.Colourway == colourway })
	if at < 0 {
		at = len(f.Uses)
		f.Uses = append(f.Uses, EnoughUse{Colourway: colourway})
	}
	f.Uses[at].Blocks++
	f.Uses[at].Makes += oneIf(can)
}
