package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// testingT is what assertions need, of the testing package or of rapid.
type testingT interface {
	require.TestingT
	Helper()
}

var _ testingT = (*testing.T)(nil)

// assertPatchesFill checks that the areas of a unit's patches add up to its own,
// and that all lie inside it.
func assertPatchesFill(t testingT, u Unit) {
	t.Helper()
	var sum measure.Area
	for _, p := range u.Patches {
		require.Positive(t, p.Area().Sign(), "a patch has area, its corners clockwise")
		sum = sum.Add(p.twiceArea())
		for _, c := range p.Corners {
			inside := c.X >= 0 && c.Y >= 0 && c.X <= u.Size.Width && c.Y <= u.Size.Height
			require.True(t, inside, "corner %v outside %v", c, u.Size)
		}
	}
	assert.Equal(t, measure.Mul(u.Size.Width, u.Size.Height).Times(2), sum)
}

// assertSeamsSeparate checks that each seam has a patch on both sides and goes
// through none, and that its lean is one step square to it.
func assertSeamsSeparate(t testingT, u Unit) {
	t.Helper()
	for _, s := range u.Seams {
		run := Lean{sign(s.B.X - s.A.X), sign(s.B.Y - s.A.Y)}
		require.Zero(t, run.X*s.Lean.X+run.Y*s.Lean.Y, "the lean of %v is not square to it", s)
		require.Equal(t, run.X*run.X+run.Y*run.Y, s.Lean.X*s.Lean.X+s.Lean.Y*s.Lean.Y)
		for at := measure.Length(1); at < 8; at++ {
			on := Point{s.A.X + (s.B.X-s.A.X)*at/8, s.A.Y + (s.B.Y-s.A.Y)*at/8}
			require.NotEmpty(t, u.rolesAt(on.beside(s.Lean)), "no patch under the allowance of %v", s)
			require.NotEmpty(t, u.rolesAt(on.beside(Lean{-s.Lean.X, -s.Lean.Y})), "no patch beside %v", s)
			for _, p := range u.Patches {
				require.False(t, p.holds(on, 4), "the seam %v runs through a patch", s)
			}
		}
	}
}

// beside is a point a few ticks to the leaning side: a new seam can leave next
// to nothing between itself and an old one.
func (p Point) beside(l Lean) Point {
	const step = 16
	return Point{p.X + measure.Length(l.X)*step, p.Y + measure.Length(l.Y)*step}
}

// rolesAt lists the roles of the patches at a point.
func (u Unit) rolesAt(p Point) []string {
	var roles []string
	for _, patch := range u.Patches {
		if patch.holds(p, 0) {
			roles = append(roles, patch.Role)
		}
	}
	return roles
}

// holds reports whether a point lies in the patch, deeper than some ticks.
func (p Patch) holds(at Point, depth measure.Length) bool {
	for i, a := range p.Corners {
		b := p.Corners[(i+1)%len(p.Corners)]
		run := Lean{sign(b.X - a.X), sign(b.Y - a.Y)}
		// Sides run clockwise with Y down, so the inside is on their right: the
		// cross product with the way to the point is the depth.
		if measure.Length(run.X)*(at.Y-a.Y)-measure.Length(run.Y)*(at.X-a.X) < depth {
			return false
		}
	}
	return true
}
