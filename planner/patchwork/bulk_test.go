package patchwork

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// one checks that a block has one junction, and gives it.
func one(t *testing.T, b *Build, w Way) Junction {
	t.Helper()
	junctions := b.Bulk(w)
	assert.Len(t, junctions, 1)
	return junctions[0]
}

// The layers of a four-patch (hand-worked): folded down, the upper right square
// brings 1 of its own, the seam of the upper pair leaning left 3 at the left.
// Nested: at the right of the join 3 of the lower pair and 3 and 1 of the two
// allowances, 7. Clashing: 3, 3 and 3 on one side, 9. The join pressed open: 3
// and 3 either way. Spun, each half of the join lies on the thin side of its end:
// 1, 1 and 3 where the pairs nest; where they clash one end has all 9.
func TestLayersOfAFourPatch(t *testing.T) {
	nested := made(t, FourPatch(in(t, "3")), quarter)
	clashing := FourPatch(in(t, "3"))
	clashing.Steps[3].Rows[1][0].Quarters = 0
	for _, w := range []Way{{false, false}, {true, false}, {false, true}, {true, true}} {
		middle := Point{in(t, "2 3/4"), in(t, "2 3/4")}
		assert.Equal(t, Junction{At: middle, Layers: NestedLayers, Open: 6, Spun: 5, Choice: 1}, one(t, nested, w))
		assert.Equal(t, Junction{At: middle, Layers: 9, Open: 6, Spun: 9, Choice: 1}, one(t, made(t, clashing, quarter), w))
	}
}

// Where one seam ends on another the side of the seam that ends is thick: 3 and 3
// and 1 toward it, 1 and 1 and 3 away from it (hand-worked).
func TestLayersWhereASeamEndsOnAnother(t *testing.T) {
	b := made(t, Recipe{Steps: []Step{
		cutStep(t, "a", "3", "3"), cutStep(t, "b", "5 1/2", "3"), rowStep("pair", "a", "a"), columnStep("block", "pair", "b"),
	}}, quarter)
	assert.Equal(t, 7, one(t, b, Way{false, false}).Layers, "up, toward the pair")
	assert.Equal(t, 5, one(t, b, Way{false, true}).Layers, "down, away from it")
}

// A patch set in the middle of a row has no junction, and a nine-patch four.
func TestJunctionsAreWhereSeamsOfTwoDirectionsMeet(t *testing.T) {
	rail := made(t, Rail([]string{"a", "b", "c"}, in(t, "2"), in(t, "5")), quarter)
	assert.Empty(t, rail.Bulk(nil))
	nine := made(t, NinePatch(in(t, "2 1/2")), quarter)
	var places []Point
	for _, j := range nine.Bulk(nine.Best()) {
		assert.Equal(t, NestedLayers, j.Layers)
		places = append(places, j.At)
	}
	near, far := in(t, "2 1/4"), in(t, "4 1/4")
	assert.Equal(t, []Point{{near, near}, {far, near}, {near, far}, {far, far}}, places)
	assert.Empty(t, made(t, HalfSquares(in(t, "3"), 2), quarter).Bulk(nil), "a diagonal meets nothing inside")
}

// In the middle of a pinwheel eight seams come together: more cloth than any
// four-patch has, and pressing the last join open helps (by the oracle below; an
// hourglass is a four-patch set on its point).
func TestTrianglesMakeBulk(t *testing.T) {
	pinwheel := made(t, Pinwheel(in(t, "3 1/2"), 2), quarter)
	j := one(t, pinwheel, pinwheel.Best())
	assert.Greater(t, j.Layers, NestedLayers)
	assert.Less(t, j.Open, j.Layers)
	assert.Equal(t, "pinwheel", pinwheel.Choices[j.Choice].Step)
	assert.True(t, pinwheel.Choices[j.Choice].Between)

	hourglass := made(t, Hourglass(in(t, "3 1/2")), quarter)
	assert.Equal(t, NestedLayers, one(t, hourglass, hourglass.Best()).Layers)
}

// The oracle: cloth really folded. Every layer is a patch of a unit; a seam keeps
// both allowances and lays them over, and layers are counted at points close by.
func TestLayersAreThoseOfFoldedCloth(t *testing.T) {
	for name, r := range builtIns() {
		b := made(t, r, quarter)
		for _, w := range []Way{make(Way, len(b.Choices)), b.Best(), opposite(b.Best())} {
			assertFolded(t, b, w, name)
		}
	}
	forRecipes(t, func(t *rapid.T, b *Build) {
		var w Way
		for range b.Choices {
			w = append(w, rapid.Bool().Draw(t, "way"))
		}
		assertFolded(t, b, w, "drawn")
	})
}

func opposite(w Way) Way {
	other := slices.Clone(w)
	for i := range other {
		other[i] = !other[i]
	}
	return other
}

// assertFolded compares the junctions of a block with its cloth folded. It
// passes over those where another seam, seen or folded away, runs so close by
// that its allowance reaches over. A seam is spun where the cloth is folded one way
// along one half of it and the other way along the other half.
func assertFolded(t testingT, b *Build, w Way, name string) {
	t.Helper()
	folded, whole := fold(b, w)
	if !whole {
		return // loose allowances, whose seam was cut away, make layers of their own
	}
	others := map[int]Unit{} // with one choice taken the other way
	for _, j := range b.Bulk(w) {
		if folded.crowded(j.At, b.Seam+4*near) {
			continue
		}
		ahead, behind := folded.thickest(j.At, b.lastRun(j))
		assert.Equal(t, max(ahead, behind), j.Layers, "%s, at %v pressed %v", name, j.At, w)
		if j.Spun == 0 {
			continue
		}
		other, ok := others[j.Choice]
		if !ok {
			way := slices.Clone(w)
			way[j.Choice] = !way[j.Choice]
			other, _ = fold(b, way)
			others[j.Choice] = other
		}
		if !other.crowded(j.At, b.Seam+4*near) {
			otherAhead, otherBehind := other.thickest(j.At, b.lastRun(j))
			assert.Equal(t, min(max(ahead, otherBehind), max(otherAhead, behind)), j.Spun, "%s, at %v spun, pressed %v", name, j.At, w)
		}
	}
}

// near is how far from a junction its layers are counted, along an axis.
const near = measure.Inch / 32

// thickest is the most layers close by a spot, ahead along a direction and behind.
func (u Unit) thickest(spot Point, run Lean) (ahead, behind int) {
	for _, to := range []Point{{2, 1}, {1, 2}, {-1, 2}, {-2, 1}, {-2, -1}, {-1, -2}, {1, -2}, {2, -1}} {
		layers := len(u.rolesAt(spot.plus(Point{to.X * near, to.Y * near})))
		if to.X*measure.Length(run.X)+to.Y*measure.Length(run.Y) > 0 {
			ahead = max(ahead, layers)
		} else {
			behind = max(behind, layers)
		}
	}
	return ahead, behind
}

// lastRun is the direction of the seam that was sewn last at a junction.
func (b *Build) lastRun(j Junction) Lean {
	for _, s := range b.Block().Seams {
		run := s.run()
		off := (j.At.X-s.A.X)*measure.Length(run.Y) - (j.At.Y-s.A.Y)*measure.Length(run.X)
		if s.Choice == j.Choice && off > -together && off < together && run.steps(s.A, j.At) >= -together && run.steps(j.At, s.B) >= -together {
			return run
		}
	}
	return Lean{}
}

// crowded reports whether a seam that is not at the spot runs close to it.
func (u Unit) crowded(spot Point, reach measure.Length) bool {
	near := window{spot.plus(Point{-reach, -reach}), spot.plus(Point{reach, reach})}
	for _, s := range u.Seams {
		if a, b, ok := near.clipLine(s.A, s.B); ok {
			run := s.run()
			off := (spot.X-a.X)*measure.Length(run.Y) - (spot.Y-a.Y)*measure.Length(run.X)
			if off < -64 || off > 64 || run.steps(a, spot) < -64 || run.steps(spot, b) < -64 {
				return true
			}
		}
	}
	return false
}

// fold makes a block again with every layer of its cloth a patch. It is whole
// where no cut leaves allowances loose.
func fold(b *Build, w Way) (block Unit, whole bool) {
	whole = true
	units, pieces := map[string]Unit{}, map[string][][]Unit{}
	for _, m := range b.Steps {
		s := m.Step
		choices := func(c Choice) bool { return w[slices.Index(b.Choices, c)] }
		switch s.Do {
		case HalfSquare:
			units[s.Name] = foldedHalf(s.Roles, m.Unit.Size.Width, choices(Choice{Step: s.Name}))
		case QuarterSquare:
			units[s.Name] = foldedQuarters(s.Roles, m.Unit.Size.Width, choices(Choice{Step: s.Name}), choices(Choice{s.Name, true, 0}))
		case Cut:
			units[s.Name] = m.Unit
		case Subcut:
			units[s.Name] = units[s.Of].segment(s.Every, 0)
		case Trim:
			size := units[s.Of].Size
			left, _ := middle(size.Width, s.Size.Width)
			top, _ := middle(size.Height, s.Size.Height)
			whole = whole && !units[s.Of].loosened(b.Seam, [2][]measure.Length{{left, size.Width - left}, {top, size.Height - top}})
			units[s.Name] = TrimUnit(units[s.Of], s.Size)
		case Recut:
			whole = whole && !units[s.Of].loosened(b.Seam, m.Cuts)
			pieces[s.Name] = RecutUnit(units[s.Of], m.Cuts[across], m.Cuts[down])
		case Turn:
			pieces[s.Name] = foldedTurn(s, pieces[s.Of])
		case Sew:
			grid := pieces[s.Of]
			if !s.Whole {
				grid = nil
				for _, row := range s.Rows {
					var cells []Unit
					for _, cell := range row {
						cells = append(cells, units[cell.Of].Turned(cell.Quarters))
					}
					grid = append(grid, cells)
				}
			}
			units[s.Name] = foldedGrid(grid, b.Seam, s.Name, choices)
		}
	}
	return units[b.Steps[len(b.Steps)-1].Step.Name], whole
}

// loosened reports whether a cut runs along a seam so close that it parts the
// seam from its allowance.
func (u Unit) loosened(seam measure.Length, cuts [2][]measure.Length) bool {
	return len(Made{Step: Step{Do: Recut}, Unit: u, Cuts: cuts}.LooseCuts(seam)) > 0
}

func foldedTurn(s Step, grid [][]Unit) [][]Unit {
	var flat []Unit
	for r, row := range grid {
		for c, piece := range row {
			turn := 0
			if s.Turns != nil {
				turn = s.Turns[r][c] / 90
			}
			flat = append(flat, piece.Turned(turn))
		}
	}
	for _, pair := range s.Exchange {
		flat[pair[0]-1], flat[pair[1]-1] = flat[pair[1]-1], flat[pair[0]-1]
	}
	return slices.Collect(slices.Chunk(flat, len(grid[0])))
}

func foldedGrid(grid [][]Unit, s measure.Length, step string, choices func(Choice) bool) Unit {
	var whole Unit
	for r, row := range grid {
		line := row[0]
		for _, next := range row[1:] {
			line = foldBeside(line, next, s, choices(Choice{Step: step, Row: r}))
		}
		if r == 0 {
			whole = line
			continue
		}
		// A row join is a row turned: up is to the left after three quarter turns.
		down := choices(Choice{step, true, r - 1})
		whole = foldBeside(whole.Turned(3), line.Turned(3), s, down).Turned(1)
	}
	return whole
}

// foldBeside sews two units beside one another and folds both allowances to the
// left, or to the right.
func foldBeside(left, right Unit, s measure.Length, toRight bool) Unit {
	line, high := left.Size.Width-s, max(left.Size.Height, right.Size.Height)
	shift := Point{line - s, 0}
	sewn := Unit{Size: measure.Size{Width: line + right.Size.Width - s, Height: high}}
	beyond := Unit{Size: sewn.Size}
	sewn.add(left, window{max: Point{line, high}}, Point{})
	sewn.add(right, window{Point{s, 0}, Point{right.Size.Width, high}}, shift)
	if toRight {
		sewn.add(left, window{Point{line, 0}, Point{left.Size.Width, high}}, Point{})
		beyond.add(right, window{max: Point{s, high}}, shift)
	} else {
		sewn.add(right, window{max: Point{s, high}}, shift)
		beyond.add(left, window{Point{line, 0}, Point{left.Size.Width, high}}, Point{})
	}
	fold := func(q Point) Point { return Point{2*line - q.X, q.Y} }
	for _, p := range beyond.Patches {
		sewn.Patches = append(sewn.Patches, p.mirrored(fold))
	}
	for _, s := range beyond.Seams {
		sewn.Seams = append(sewn.Seams, Seam{A: fold(s.A), B: fold(s.B)})
	}
	sewn.Seams = append(sewn.Seams, Seam{A: Point{line, 0}, B: Point{line, high}})
	return sewn
}

// mirrored is the patch folded over; its corners are clockwise again.
func (p Patch) mirrored(fold func(Point) Point) Patch {
	corners := make([]Point, len(p.Corners))
	for i, c := range p.Corners {
		corners[len(corners)-1-i] = fold(c)
	}
	return Patch{Role: p.Role, Corners: corners}
}

// foldedHalf is a half-square triangle with both allowances, 3/16 in wide along
// the edges, on one side of its seam.
func foldedHalf(roles [2]string, side measure.Length, toSecond bool) Unit {
	const wide = measure.Inch * 3 / 16
	u := HalfSquareUnit(roles[0], roles[1], side, 0)
	strip := Patch{Role: "allowance", Corners: []Point{{0, side}, {0, side - wide}, {side - wide, 0}, {side, 0}}}
	if toSecond {
		strip = strip.mirrored(func(p Point) Point { return Point{side - p.Y, side - p.X} })
	}
	u.Patches = append(u.Patches, strip, strip)
	return u
}

// foldedQuarters is an hourglass: two halves, each half of a half-square triangle
// whose seam is on the other diagonal, folded over along the first.
func foldedQuarters(roles [2]string, side measure.Length, shortToSecond, longToRight bool) Unit {
	const wide = measure.Inch * 3 / 16
	upper := foldedHalf(roles, side, shortToSecond)
	lower := upper.Turned(2)
	swap := func(p Point) Point { return Point{p.Y, p.X} }
	u := Unit{Size: square(side), Seams: QuarterSquareUnit("", "", side, 0, 0).Seams}
	cut := func(from Unit, low, high measure.Length, fold bool) {
		for _, p := range from.Patches {
			p.Corners = alongDiagonal(p.Corners, low, high)
			if len(p.Corners) < 3 || p.twiceArea().Sign() <= 0 {
				continue
			}
			if fold {
				p = p.mirrored(swap)
			}
			u.Patches = append(u.Patches, p)
		}
	}
	cut(upper, 0, side, false)
	cut(lower, -side, 0, false)
	cut(upper, -wide, 0, longToRight)
	cut(lower, 0, wide, !longToRight)
	return u
}

// alongDiagonal is what of a convex polygon lies where x − y is between low and
// high.
func alongDiagonal(corners []Point, low, high measure.Length) []Point {
	for _, half := range []struct{ sign, limit measure.Length }{{1, high}, {-1, -low}} {
		var kept []Point
		for i, p := range corners {
			q := corners[(i+1)%len(corners)]
			roomP, roomQ := half.limit-half.sign*(p.X-p.Y), half.limit-half.sign*(q.X-q.Y)
			if roomP >= 0 {
				kept = append(kept, p)
			}
			if roomP > 0 && roomQ < 0 || roomP < 0 && roomQ > 0 {
				part := func(a, b measure.Length) measure.Length {
					return a + (b-a).Scale(int64(roomP), int64(roomP-roomQ), measure.Nearest)
				}
				kept = append(kept, Point{part(p.X, q.X), part(p.Y, q.Y)})
			}
		}
		corners = kept
	}
	return corners
}
