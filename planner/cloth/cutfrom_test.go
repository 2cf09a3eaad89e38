package cloth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// long draws pieces that run along the cloth, some of them longer than it is wide.
func long(t *rapid.T, width measure.Length) []Want {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Want {
		across := rapid.IntRange(8, measure.FloorDiv(width, measure.Inch/8)).Draw(t, "w")
		return Want{
			Name: "long", Count: rapid.IntRange(0, 3).Draw(t, "n"), Long: true,
			Size: measure.Size{Width: measure.Inch / 8 * measure.Length(across), Height: measure.Inch / 8 * measure.Length(rapid.IntRange(8, 800).Draw(t, "h"))},
		}
	}), 0, 3).Draw(t, "long")
}

// Long pieces, pieces on hand and what lengths leave are one plan with all the
// rest: nothing overlaps, leaves its cloth, is lost or needs a cut that no ruler
// makes, and the bound is never above it.
func TestPlansWithLongPiecesAndPiecesOnHandAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := measure.Inch * measure.Length(rapid.IntRange(9, 60).Draw(t, "width"))
		s := drawSettings(t)
		wants := append(wanted(t, width-s.SquareUp, 8), long(t, width-s.SquareUp)...)
		var hand []Sheet
		for range rapid.IntRange(0, 3).Draw(t, "on hand") {
			side := func(label string) measure.Length {
				return measure.Inch / 4 * measure.Length(rapid.IntRange(4, 120).Draw(t, label))
			}
			hand = append(hand, Sheet{Name: "on hand", Size: measure.Size{Width: side("w"), Height: side("h")}, Count: 1})
		}
		plan, err := CutFrom(wants, hand, width, s)
		require.NoError(t, err)
		sound(t, plan, wants, s)
		for _, c := range plan.Cloths {
			for _, p := range c.Pieces {
				assert.False(t, p.Turned && wants[p.Want].Long, "a long piece lies along the cloth")
			}
		}
		assert.LessOrEqual(t, plan.Bound, plan.StyleBound)
		assert.LessOrEqual(t, plan.StyleBound, plan.Length)
		bare, err := CutFrom(wants, nil, width, s)
		require.NoError(t, err)
		assert.LessOrEqual(t, plan.Length, bare.Length, "what is on hand never costs cloth")
		again, _ := CutFrom(wants, hand, width, s)
		assert.Equal(t, plan, again, "the same every time")
	})
}

// The cuts of a plan are shared out among the wants, each whole, none lost; and a
// want that is not cut has none.
func TestCutsAreSharedOutWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSettings(t)
		width := measure.Inch*42 - s.SquareUp
		wants := append(wanted(t, width, 8), long(t, width)...)
		plan, err := CutYardage(wants, measure.Inch*42, s)
		require.NoError(t, err)
		sum := 0
		for k, n := range plan.CutsOf {
			assert.GreaterOrEqual(t, n, 0)
			if wants[k].Count == 0 {
				assert.Zero(t, n)
			}
			sum += n
		}
		assert.Equal(t, plan.Cuts, sum)
	})
}

// Every line of a step lies in its cloth and names a step that there is.
func TestLinesBelongToSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := measure.Inch * 42
		wants := append(wanted(t, width, 8), long(t, width)...)
		plan, err := CutYardage(wants, width, Settings{Effort: 1})
		require.NoError(t, err)
		for _, c := range plan.Cloths {
			for _, l := range c.Lines {
				require.GreaterOrEqual(t, l.Step, 1)
				require.LessOrEqual(t, l.Step, len(plan.Steps))
				assert.Equal(t, plan.Steps[l.Step-1].Upright, l.Upright)
				end := l.X + l.Length
				if l.Upright {
					end = l.X
					assert.LessOrEqual(t, l.Y+l.Length, c.Size.Height)
				}
				assert.LessOrEqual(t, end, c.Size.Width)
			}
		}
	})
}

// Hand-worked: a backing panel of 35 × 64 in leaves 7 × 64 in of cloth 42 in wide.
// Two binding strips of 42 × 2 1/2 in lie in that, turned; the third takes a strip.
func TestBindingComesFromWhatABackingLeaves(t *testing.T) {
	wants := []Want{
		{Name: "backing", Size: size(t, "35", "64"), Count: 1, Long: true},
		{Name: "binding", Size: size(t, "42", "2 1/2"), Count: 3},
	}
	plan := yardage(t, wants, "42", Settings{})
	sound(t, plan, wants, Settings{})
	assert.Equal(t, in(t, "66 1/2"), plan.Length)
	wants[1].Directional = true
	assert.Equal(t, in(t, "71 1/2"), yardage(t, wants, "42", Settings{}).Length, "a print with a direction is not turned")
}

// Hand-worked: 12 × 20 in on hand gives two squares of 7 in and no more, since 20
// holds two and 12 one; ten are wanted, and the eight others take two strips of 42 in.
// Nine wanted need the piece on hand to save a strip as well.
func TestPiecesOnHandAreUsedWhereTheySaveCloth(t *testing.T) {
	hand := []Sheet{{Name: "on hand", Size: size(t, "12", "20"), Count: 1}}
	cut := func(n int) Plan {
		plan, err := CutFrom([]Want{{Size: size(t, "7", "7"), Count: n}}, hand, in(t, "42"), Settings{})
		require.NoError(t, err)
		return plan
	}
	assert.Equal(t, in(t, "7"), cut(8).Length, "two from the piece, six from one strip")
	assert.True(t, cut(8).Cloths[0].Hand)
	assert.Equal(t, in(t, "14"), cut(10).Length)
	assert.Len(t, cut(10).Cloths, 1, "it would save nothing, and stays whole")
	assert.Zero(t, cut(2).Length, "nothing comes off the bolt")
}

// Hand-worked: strips of 7, 7, 7 and 2 1/2 in from 20 in on hand: 7 + 7 + 2 1/2 =
// 16 1/2 leaves 3 1/2; from 21 in three strips come out even.
func TestLostIsWhatNoStripComesFrom(t *testing.T) {
	p := Plan{Levels: []measure.Length{in(t, "7"), in(t, "7"), in(t, "7"), in(t, "2 1/2")}}
	assert.Equal(t, in(t, "3 1/2"), p.Lost(in(t, "20")))
	assert.Zero(t, p.Lost(in(t, "21")))
	assert.Equal(t, []measure.Length{in(t, "7"), in(t, "7"), in(t, "2 1/2")}, p.First(in(t, "20")))
	assert.Equal(t, in(t, "2"), p.Lost(in(t, "2")), "no strip is so low")
	assert.Zero(t, Plan{}.Lost(in(t, "9")))
	p.Levels = append(p.Levels, in(t, "1")/3+1)
	assert.Equal(t, in(t, "3 1/2")-in(t, "1")/3*1-1, p.Lost(in(t, "20")), "off any grid, the longest first")
}

// Hand-worked: of eleven strips of 3 1/2 in and thirteen of 5 in, 103 1/2 in, 72 in on
// hand come out even only with two of 3 1/2 and all of 5; longest plan order first,
// eleven of 3 1/2 and six of 5, would leave 3 1/2 in, and the rest would not come out of
// the 31 1/2 in that are bought.
func TestFirstStripsAreThoseThatLeaveLeast(t *testing.T) {
	var p Plan
	for range 11 {
		p.Levels = append(p.Levels, in(t, "3 1/2"))
	}
	for range 13 {
		p.Levels = append(p.Levels, in(t, "5"))
	}
	first := p.First(in(t, "72"))
	assert.Len(t, first, 15)
	var sum measure.Length
	for _, level := range first {
		sum += level
	}
	assert.Equal(t, in(t, "72"), sum)
	assert.Zero(t, p.Lost(in(t, "72")))
}
