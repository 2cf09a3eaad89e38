package planner

import (
	"fmt"
	"slices"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// SizeCount is how many blocks measure a raw size.
type SizeCount struct {
	Size  measure.Size
	Count int
}

// Uneven is blocks that came out of different sizes, and both ways out of it.
type Uneven struct {
	Planned   measure.Size // raw
	Sizes     []SizeCount  // what was measured, the smallest first
	Short     int          // blocks smaller than planned, by more than the tolerance allows to ease in
	Tolerance measure.Length
	Trim      TrimAll
	Remake    Remaking
}

// TrimAll is the one way out: every block of the run trimmed to the smallest.
// Where that is no smaller than planned, to the planned size, and nothing is
// lost.
type TrimAll struct {
	To       measure.Size // raw
	Block    measure.Size // finished
	Was, Now Sewn
	Blocks   int // to trim
	Minutes  Minutes
	Problem  error // why it cannot be done; the rest but To is zero
}

// Remaking is the other: the blocks that are too small are made anew, and go
// back to what is left.
type Remaking struct {
	Blocks  int
	Of      []string // colourways, one of the figures below for each block of any
	Pieces  []RemadePieces
	Work    []RemadeWork
	Minutes Minutes
}

// RemadePieces is what is cut again of a fabric.
type RemadePieces struct {
	Fabric string
	Pieces []PieceCount
	Length measure.Length // off yardage, 0 of sheets
	Sheets int
}

// RemadeWork is what goes back to "left" of an operation.
type RemadeWork struct {
	Number    int
	Key, Name string
	Lot       Lot
	CountedIn CountUnit
	Count     int
}

// BlocksOf says both ways out of blocks of several sizes. Short are the ids of
// those that are too small, where they are known; otherwise they are taken to
// be any of the colourway's, or of the first's.
func BlocksOf(p Plan, sizes []SizeCount, short []string, colourway string, tolerance measure.Length) (Uneven, error) {
	u := Uneven{Planned: p.Colourways[0].Raw, Sizes: slices.Clone(sizes), Tolerance: tolerance}
	slices.SortStableFunc(u.Sizes, func(a, b SizeCount) int { return int(sign(smaller(a.Size) - smaller(b.Size))) })
	to := u.Planned
	for _, s := range u.Sizes {
		to.Width, to.Height = min(to.Width, s.Size.Width), min(to.Height, s.Size.Height)
		if s.Size.Width < u.Planned.Width-tolerance || s.Size.Height < u.Planned.Height-tolerance {
			u.Short += s.Count
		}
	}
	u.Trim = trimAll(p, to, u.Sizes)
	if u.Short > 0 {
		u.Remake = remaking(p, u.Short, short, colourway)
	}
	return u, u.Trim.Problem
}

func smaller(s measure.Size) measure.Length { return min(s.Width, s.Height) }

func sign(l measure.Length) int {
	switch {
	case l < 0:
		return -1
	case l > 0:
		return 1
	}
	return 0
}

// trimAll makes the job once more with every block trimmed to a size at its end.
func trimAll(p Plan, to measure.Size, sizes []SizeCount) TrimAll {
	t := TrimAll{To: to}
	if t.Was, t.Problem = sewnWith(p.Job, p.Job.Seam); t.Problem != nil {
		return t
	}
	if t.Now, t.Problem = sewnWith(trimmedJob(p, to), p.Job.Seam); t.Problem != nil {
		return t
	}
	t.Block = t.Now.Block
	t.Blocks = toTrim(len(p.Blocks), to, t.Was.Raw, sizes)
	for _, o := range p.Operations {
		if o.Key == keySquareUp && o.Count > 0 {
			t.Minutes = max(t.Minutes, o.Unit.Mean)
		}
	}
	t.Minutes *= Minutes(t.Blocks)
	return t
}

// toTrim is how many blocks are larger than a size: all of the run but those that
// measure it; of those that were planned so, the ones that were measured larger.
func toTrim(run int, to, planned measure.Size, sizes []SizeCount) int {
	alike, measured := 0, 0
	for _, s := range sizes {
		measured += s.Count
		if s.Size == to {
			alike += s.Count
		}
	}
	if to == planned {
		run = measured
	}
	return run - alike
}

// trimmedJob is a job whose blocks all end with a trim.
func trimmedJob(p Plan, to measure.Size) Job {
	j := p.Job
	j.Colourways = slices.Clone(j.Colourways)
	for i, c := range p.Colourways {
		steps := slices.Clone(c.Recipe.Steps)
		last := steps[len(steps)-1].Name
		steps = append(steps, patchwork.Step{Name: last + "-to-the-smallest", Do: patchwork.Trim, Of: last, Size: to})
		j.Colourways[i].Block = BlockSpec{Steps: patchwork.Recipe{Steps: steps}}
	}
	return j
}

// remaking is what it takes to make blocks anew: by their ids where these are
// known.
func remaking(p Plan, count int, ids []string, colourway string) Remaking {
	r := Remaking{Blocks: count}
	pieces := map[string][]PieceCount{}
	for i, c := range p.Colourways {
		var blocks []Block
		for _, b := range p.Blocks {
			if b.Colourway != c.Name || colourway != "" && colourway != c.Name {
				continue
			}
			if slices.Contains(ids, b.ID) || len(ids) == 0 && len(blocks) < count && (len(r.Of) == 0 || r.Of[0] == c.Name) {
				blocks = append(blocks, b)
			}
		}
		if len(blocks) > 0 {
			r.Of = append(r.Of, c.Name)
			r.add(p, i, blocks, pieces)
		}
	}
	for _, f := range p.Job.Fabrics {
		if cut := sortedPieces(pieces[f.Name]); len(cut) > 0 {
			r.Pieces = append(r.Pieces, remade(f, cut))
		}
	}
	return r
}

// add counts some of a colourway's blocks, their pieces into those by fabric.
func (r *Remaking) add(p Plan, colourway int, blocks []Block, into map[string][]PieceCount) {
	c := p.Colourways[colourway]
	for _, o := range p.Operations {
		if o.Lot != (Lot{ColourwayLot, c.Name}) || o.PerBlock == 0 || o.Key == keyTest {
			continue
		}
		n := o.PerBlock * len(blocks)
		r.Work = append(r.Work, RemadeWork{o.Number, o.Key, o.Name, o.Lot, o.CountedIn, n})
		r.Minutes += o.Setup.Mean + Minutes(n)*o.Unit.Mean
	}
	perBlock := blockPieces(c.Build)
	for _, b := range blocks {
		for _, f := range b.Fabrics {
			for _, piece := range perBlock[f.Role] {
				addPieces(into, f.Fabric, piece)
			}
		}
	}
}

// remade is pieces of a fabric with what they take of it: strips, or sheets, of
// each size of their own.
func remade(f Fabric, pieces []PieceCount) RemadePieces {
	n := FabricNeed{Fabric: f, Pieces: pieces}
	n.plain()
	return RemadePieces{Fabric: f.Name, Pieces: pieces, Sheets: n.PlainSheets, Length: f.unwashed(n.Plain)}
}

// Words is what is cut again, for a sentence: "Kelp: 2 of 7 in square".
func (r RemadePieces) Words(u measure.Unit) string {
	text := r.Fabric + ": "
	for i, p := range r.Pieces {
		if i > 0 {
			text += ", "
		}
		text += fmt.Sprintf("%d of %s", p.Count, p.Size.Words(u))
	}
	return text
}
