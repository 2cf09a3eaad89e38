package planner

import (
	"cmp"
	"fmt"
	"slices"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// ShopBatting is batting of one kind: packages of Package, or off a roll as wide as
// Roll. A zero Package and Roll, or a Roll without Length though some is to be bought,
// is batting that nothing holds in one piece.
type ShopBatting struct {
	Package cloth.Package
	Roll    measure.Length
	Length  measure.Length // to buy off the roll, by the shop's step
	Size    measure.Size   // the largest that it is for
	Jobs    []string
	Need    int // quilts
	Shelf   int // quilts that have theirs on the shelf
	Buy     int // packages; off a roll quilts
}

// Together reports that several quilts come from one package.
func (b ShopBatting) Together() bool { return b.Roll == 0 && b.Buy < b.Need-b.Shelf }

// HaveBatting is batting that lies there: packages or pieces of one size, or a
// length off a roll as wide as the size.
type HaveBatting struct {
	Size  measure.Size // of a roll the width, and the length as its height
	Count int          // 0: a roll
}

// quiltBatting is the batting of one quilt.
type quiltBatting struct {
	job  string
	size measure.Size
	here bool // it lies on the shelf
}

// battingGroup is quilts whose batting is bought from the same choice.
type battingGroup struct {
	roll     measure.Length
	packages []cloth.Package
	quilts   []quiltBatting
}

// shopBatting finds each quilt a batting: the first on the shelf that holds it, else
// as its job buys it. What the quilter brings is on no list.
func shopBatting(wanted []Wanted, there []HaveBatting, u measure.Unit) []ShopBatting {
	there = slices.Clone(there)
	var groups []battingGroup
	for _, w := range wanted {
		if w.Batting == nil || w.Battings == 0 || w.Batting.Quilter {
			continue
		}
		g := groupFor(&groups, w)
		for range w.Battings {
			g.quilts = append(g.quilts, quiltBatting{w.Job.ID, w.Batting.Size, takeBatting(there, w.Batting.Size)})
		}
	}
	var all []ShopBatting
	for _, g := range groups {
		if g.roll > 0 {
			all = append(all, g.offRoll(u)...)
		} else {
			all = append(all, g.inPackages()...)
		}
	}
	return all
}

// groupFor is the group of a job's batting, a new one where there is none yet.
func groupFor(groups *[]battingGroup, w Wanted) *battingGroup {
	packages := cloth.Packages
	if w.Job.Batting != nil {
		packages = w.Job.Batting.packages()
	}
	if w.Batting.Roll > 0 {
		packages = nil
	}
	at := slices.IndexFunc(*groups, func(g battingGroup) bool {
		return g.roll == w.Batting.Roll && fmt.Sprint(g.packages) == fmt.Sprint(packages)
	})
	if at < 0 {
		at = len(*groups)
		*groups = append(*groups, battingGroup{roll: w.Batting.Roll, packages: packages})
	}
	return &(*groups)[at]
}

// toBuy is the sizes that do not lie on the shelf, largest first.
func toBuy(quilts []quiltBatting) []measure.Size {
	var sizes []measure.Size
	for _, q := range quilts {
		if !q.here {
			sizes = append(sizes, q.size)
		}
	}
	slices.SortStableFunc(sizes, func(a, b measure.Size) int {
		return cmp.Or(cmp.Compare(b.Width, a.Width), cmp.Compare(b.Height, a.Height))
	})
	return sizes
}

// of makes a line for quilts; Buy is left as one for each.
func (b ShopBatting) of(quilts []quiltBatting) ShopBatting {
	for _, q := range quilts {
		if !slices.Contains(b.Jobs, q.job) {
			b.Jobs = append(b.Jobs, q.job)
		}
		b.Size.Width, b.Size.Height = max(b.Size.Width, q.size.Width), max(b.Size.Height, q.size.Height)
		b.Need++
		b.Shelf += oneIf(q.here)
	}
	b.Buy = b.Need - b.Shelf
	return b
}

// offRoll is one length for all, and a line for those that no width of it holds.
func (g battingGroup) offRoll(u measure.Unit) []ShopBatting {
	var fit, not []quiltBatting
	for _, q := range g.quilts {
		if min(q.size.Width, q.size.Height) <= g.roll {
			fit = append(fit, q)
		} else {
			not = append(not, q)
		}
	}
	var lines []ShopBatting
	if len(fit) > 0 {
		line := ShopBatting{Roll: g.roll}.of(fit)
		length, _ := cloth.RollFor(toBuy(fit), g.roll)
		line.Length = length.RoundUp(u.ShopStep())
		lines = append(lines, line)
	}
	if len(not) > 0 {
		lines = append(lines, ShopBatting{Roll: g.roll}.of(not))
	}
	return lines
}

// inPackages is packages that hold several where that buys less, else the smallest
// for each; those of one size share a line.
func (g battingGroup) inPackages() []ShopBatting {
	if p, n, _, ok := cloth.FewerPackages(toBuy(g.quilts), g.packages); ok {
		line := ShopBatting{Package: p}.of(g.quilts)
		line.Buy = n
		return []ShopBatting{line}
	}
	var lines []ShopBatting
	var members [][]quiltBatting
	for _, q := range g.quilts {
		p, ok := cloth.BattingFor(q.size, g.packages)
		at := slices.IndexFunc(lines, func(b ShopBatting) bool {
			return b.Package == p && (ok || b.Size == q.size)
		})
		if at < 0 {
			at = len(lines)
			lines, members = append(lines, ShopBatting{Package: p, Size: q.size}), append(members, nil)
		}
		members[at] = append(members[at], q)
	}
	for i := range lines {
		lines[i] = lines[i].of(members[i])
	}
	return lines
}

// takeBatting takes a quilt's batting off what is there.
func takeBatting(there []HaveBatting, size measure.Size) bool {
	long, short := max(size.Width, size.Height), min(size.Width, size.Height)
	for i := range there {
		h := &there[i]
		switch roll := h.Count == 0; {
		case roll && h.Size.Width >= long && h.Size.Height >= short:
			h.Size.Height -= short
			return true
		case roll && h.Size.Width >= short && h.Size.Height >= long:
			h.Size.Height -= long
			return true
		case !roll && h.Count > 0 && max(h.Size.Width, h.Size.Height) >= long && min(h.Size.Width, h.Size.Height) >= short:
			if h.Count--; h.Count == 0 {
				h.Size = measure.Size{} // used up, and no roll
			}
			return true
		}
	}
	return false
}
