package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

const (
	quarter = measure.Inch / 4
	mm      = measure.Millimetre
)

// in is a length written in inches, such as "8 1/2".
func in(t testing.TB, text string) measure.Length {
	t.Helper()
	if text == "0" {
		return 0
	}
	l, err := measure.Parse(text, measure.Inches)
	require.NoError(t, err)
	return l
}

// sides is a raw size in inches.
func sides(t testing.TB, width, height string) measure.Size {
	t.Helper()
	return measure.Size{Width: in(t, width), Height: in(t, height)}
}

// assertSquare checks a size that is square, given in inches.
func assertSquare(t testing.TB, want string, got measure.Size, what string) {
	t.Helper()
	assert.Equal(t, sides(t, want, want), got, "%s: %s", what, got.Show(measure.Inches))
}

// made makes a recipe that can be made.
func made(t testing.TB, r Recipe, seam measure.Length) *Build {
	t.Helper()
	b, err := Make(r, seam, measure.Inches)
	require.NoError(t, err)
	return b
}

// step is a step of a build by its name.
func (b *Build) step(t testingT, name string) Made {
	t.Helper()
	for _, m := range b.Steps {
		if m.Step.Name == name {
			return m
		}
	}
	require.Fail(t, "no step "+name)
	return Made{}
}

func finishedSize(u Unit, seam measure.Length) measure.Size {
	return measure.Size{Width: u.Size.Width - 2*seam, Height: u.Size.Height - 2*seam}
}

// wayOf is the way in which the choices of one step are taken as given, in
// their order, and all others the first way.
func wayOf(b *Build, step string, second ...bool) Way {
	w := make(Way, len(b.Choices))
	next := 0
	for i, c := range b.Choices {
		if c.Step == step && next < len(second) {
			w[i] = second[next]
			next++
		}
	}
	return w
}
