package patchwork

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// forRecipes checks a property of random recipes, sewn with every allowance.
func forRecipes(t *testing.T, check func(t *rapid.T, b *Build)) {
	rapid.Check(t, func(t *rapid.T) {
		seam := rapid.SampledFrom(seams).Draw(t, "seam")
		b, err := Make(drawRecipe(t, seam), seam, measure.Inches)
		require.NoError(t, err)
		check(t, b)
	})
}

// eachUnit is every unit of a build, pieces included.
func eachUnit(b *Build) []Unit {
	var units []Unit
	for _, m := range b.Steps {
		units = append(units, m.Unit)
		for _, row := range m.Pieces {
			units = append(units, row...)
		}
	}
	return units
}

func TestPatchesFillEveryUnitExactly(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		for _, u := range eachUnit(b) {
			assertPatchesFill(t, u)
		}
	})
}

func TestEverySeamHasTwoSides(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		for _, u := range eachUnit(b) {
			assertSeamsSeparate(t, u)
		}
	})
}

func TestFourQuarterTurnsAreNoTurn(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		block := b.Block()
		assert.Equal(t, block, block.Turned(1).Turned(1).Turned(1).Turned(1))
		assert.Equal(t, block.Turned(2), block.Turned(1).Turned(1))
		assert.Equal(t, block.Turned(3), block.Turned(-1))
	})
}

// Areas and spans of recut pieces add up to the unit that was cut.
func TestRecutPiecesAddUpToTheUnit(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		for _, m := range b.Steps {
			if m.Step.Do != Recut {
				continue
			}
			var area measure.Area
			var high measure.Length
			for _, row := range m.Pieces {
				var wide measure.Length
				for _, piece := range row {
					wide += piece.Size.Width
					for _, p := range piece.Patches {
						area = area.Add(p.twiceArea())
					}
				}
				assert.Equal(t, m.Unit.Size.Width, wide)
				high += row[0].Size.Height
			}
			assert.Equal(t, m.Unit.Size.Height, high)
			assert.Equal(t, measure.Mul(m.Unit.Size.Width, m.Unit.Size.Height).Times(2), area)
		}
	})
}

// A unit cut into k + 1 pieces one way and sewn again is 2s smaller that way
// for each of its k seams.
func TestRecutLosesExactlyWhatItsSeamsTake(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		for i, m := range b.Steps {
			if m.Step.Do != Recut {
				continue
			}
			sewn := b.Steps[i+2].Unit.Size
			assert.Equal(t, m.Unit.Size.Width-(2*b.Seam).Times(len(m.Cuts[across])), sewn.Width)
			assert.Equal(t, m.Unit.Size.Height-(2*b.Seam).Times(len(m.Cuts[down])), sewn.Height)
		}
	})
}

// With every piece of cloth a role of its own, a seam's two sides tell where it
// was sewn: whatever was recut and turned since, its allowance still lies under
// the cloth that it was pressed to.
func TestPressingStaysWithTheSeam(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		r := Recipe{Steps: nil}
		for _, s := range b.Steps {
			if s.Step.Name == "pattern" {
				break // the same unit twice would show a seam between two of the same piece
			}
			r.Steps = append(r.Steps, s.Step)
		}
		r = apart(r)
		b, err := Make(r, b.Seam, measure.Inches)
		require.NoError(t, err)
		grid := slices.IndexFunc(b.Steps, func(m Made) bool { return m.Step.Name == "grid" })
		pressed := sidesOfSeams(b.Steps[grid].Unit)
		for pair := range sidesOfSeams(b.Block()) {
			if b.Choices[pair.choice].Step == "grid" {
				assert.Contains(t, pressed, pair)
			}
		}
	})
}

// apart gives every cell of the recipe's first grid a cut of its own.
func apart(r Recipe) Recipe {
	var steps []Step
	size := r.Steps[0].Size
	grid := slices.IndexFunc(r.Steps, func(s Step) bool { return s.Name == "grid" })
	for _, s := range r.Steps[grid:] {
		if s.Name == "grid" {
			rows := gridOf("", len(s.Rows), len(s.Rows[0]))
			for i, row := range s.Rows {
				for j, cell := range row {
					name := fmt.Sprintf("cell-%d-%d", i, j)
					steps = append(steps, Step{Name: name, Do: Cut, Role: name, Size: size})
					rows[i][j] = Cell{name, cell.Quarters}
				}
			}
			s.Rows = rows
		}
		steps = append(steps, s)
	}
	return Recipe{steps}
}

// seamSides is what a seam is pressed to, and what it is pressed away from.
type seamSides struct {
	choice int
	to     string
	away   string
}

func sidesOfSeams(u Unit) map[seamSides]bool {
	found := map[seamSides]bool{}
	for _, s := range u.Seams {
		for at := measure.Length(1); at < 32; at += 2 {
			on := Point{s.A.X + (s.B.X-s.A.X)*at/32, s.A.Y + (s.B.Y-s.A.Y)*at/32}
			to, away := u.rolesAt(on.beside(s.Lean)), u.rolesAt(on.beside(Lean{-s.Lean.X, -s.Lean.Y}))
			if len(to) == 1 && len(away) == 1 {
				found[seamSides{s.Choice, to[0], away[0]}] = true
			}
		}
	}
	return found
}

// Turning a unit half round shows the same crossings from the other end,
// leaning the other way.
func TestCrossingsTurnWithTheUnit(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		block, w := b.Block(), b.Best()
		bottom := Crossings(block, BottomSide, b.Seam, w)
		var other []Crossing
		for _, c := range bottom {
			other = append(other, Crossing{block.Size.Width - c.At, -c.Along})
		}
		assert.ElementsMatch(t, other, Crossings(block.Turned(2), TopSide, b.Seam, w))
		assert.ElementsMatch(t, other, Crossings(block.Turned(3), RightSide, b.Seam, w), "a quarter turn back: the bottom is at the right, its right end up")
		assert.ElementsMatch(t, bottom, Crossings(block.Turned(1), LeftSide, b.Seam, w), "a quarter turn on: the bottom is at the left, its left end up")
	})
}

func TestAreasOfRolesAddUpToTheFinishedUnit(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		var sum measure.Area
		for _, r := range b.Block().AreaByRole(b.Seam) {
			sum = sum.Add(r.Area)
		}
		size := finishedSize(b.Block(), b.Seam)
		// Roles may end on half a square tick, which is rounded down.
		short := measure.Mul(size.Width, size.Height).Sub(sum)
		assert.GreaterOrEqual(t, short.Sign(), 0)
		assert.Negative(t, short.Cmp(measure.Mul(1, 3)))
	})
}

// The same recipe and seam make the same build, and making does not touch the
// recipe's own lists.
func TestMakeIsRepeatable(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		r := Recipe{}
		for _, m := range b.Steps {
			r.Steps = append(r.Steps, m.Step)
		}
		again, err := Make(r, b.Seam, measure.Inches)
		require.NoError(t, err)
		assert.Equal(t, b, again)
	})
}
