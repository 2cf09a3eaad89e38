package cloth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

func yardage(t testing.TB, wants []Want, width string, s Settings) Plan {
	plan, err := CutYardage(wants, in(t, width), s)
	require.NoError(t, err)
	return plan
}

// Hand-worked: 24 squares of 7 in on 42 in cloth are four strips of six. The
// cloth is squared once and each strip takes a cut; the four lie in one stack,
// squared once and cut six times.
func TestFourStripsInOneStack(t *testing.T) {
	plan := yardage(t, []Want{{Name: "squares", Size: size(t, "7", "7"), Count: 24}}, "42", Settings{})
	assert.Equal(t, []Step{
		{Bolt: true, From: size(t, "42", "28"), Count: 1, Layers: 1, Stacks: 1, Cuts: 5, Makes: []Make{{size(t, "42", "7"), 4, Further, []int{0}}}},
		{Upright: true, From: size(t, "42", "7"), Count: 4, Layers: 4, Stacks: 1, Cuts: 7, Makes: []Make{{size(t, "7", "7"), 24, 0, nil}}},
	}, plan.Steps)
	assert.Equal(t, 12, plan.Cuts)
	assert.Empty(t, plan.Cloths[0].Offcuts)
	assert.True(t, plan.Best())
	assert.Zero(t, plan.Gap())
}

// Hand-worked: 21 squares of 7 in on 40 in cloth are five strips, the last with
// one square. Six cuts for strips; the first four strips are squared and cut
// five times, the last squared and cut once: 14 in all. One layer at a time, as
// a directional fabric is cut, 6 + 4 × 6 + 2. Two layers: 6 + 2 × 6 + 2.
func TestStacksFollowTheLayers(t *testing.T) {
	want := Want{Size: size(t, "7", "7"), Count: 21}
	assert.Equal(t, 14, yardage(t, []Want{want}, "40", Settings{}).Cuts)
	assert.Equal(t, 20, yardage(t, []Want{want}, "40", Settings{Layers: 2}).Cuts)
	want.Directional = true
	plan := yardage(t, []Want{want}, "40", Settings{})
	assert.Equal(t, 32, plan.Cuts)
	assert.Equal(t, 1, plan.Steps[1].Layers)
	assert.Equal(t, 5, plan.Steps[1].Stacks)
}

// As many ruler cuts as plain strips were always said to take.
func TestRulerCutsOfPlainStripsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := measure.Inch / 4 * measure.Length(rapid.IntRange(4, 40).Draw(t, "side"))
		full := measure.FloorDiv(measure.Inch*40, side)
		count := full * rapid.IntRange(1, 12).Draw(t, "strips")
		layers := rapid.IntRange(1, 6).Draw(t, "layers")
		want := Want{Size: measure.Size{Width: side, Height: side}, Count: count}
		plan, err := CutYardage([]Want{want}, measure.Inch*40, Settings{Layers: layers})
		require.NoError(t, err)
		strips := Strips{Strips: count / full, PerFull: full, Pieces: count}
		assert.Equal(t, strips.RulerCuts(layers), plan.Cuts)
	})
}

// Hand-worked: of 40 in, five squares of 7 in leave 5 in. Three corners of
// 2 1/2 in lie there twice side by side: the run of two is cut off, trimmed from
// 7 in to 2 1/2, and cut in two.
func TestALowerRunIsTrimmedOnceAndThenCutUp(t *testing.T) {
	plan := yardage(t, []Want{
		{Name: "squares", Size: size(t, "7", "7"), Count: 5},
		{Name: "corners", Size: size(t, "2 1/2", "2 1/2"), Count: 2},
	}, "40", Settings{})
	assert.Equal(t, in(t, "7"), plan.Length)
	run, low := size(t, "5", "7"), size(t, "5", "2 1/2")
	assert.Equal(t, []Step{
		{Bolt: true, From: size(t, "40", "7"), Count: 1, Layers: 1, Stacks: 1, Cuts: 2, Makes: []Make{{size(t, "40", "7"), 1, Further, []int{0, 1}}}},
		{Upright: true, From: size(t, "40", "7"), Count: 1, Layers: 1, Stacks: 1, Cuts: 7, Makes: []Make{
			{size(t, "7", "7"), 5, 0, nil}, {run, 1, Further, []int{1}},
		}},
		{From: run, Count: 1, Layers: 1, Stacks: 1, Cuts: 1, Makes: []Make{{low, 1, Further, []int{1}}, {size(t, "5", "4 1/2"), 1, Left, nil}}},
		{Upright: true, From: low, Count: 1, Layers: 1, Stacks: 1, Cuts: 1, Makes: []Make{{size(t, "2 1/2", "2 1/2"), 2, 1, nil}}},
	}, plan.Steps)
	assert.Equal(t, []Offcut{{in(t, "35"), in(t, "2 1/2"), size(t, "5", "4 1/2")}}, plan.Cloths[0].Offcuts)
}

// Strips as long as the cloth is wide are not cut up: nine for binding are nine
// cuts and one that squares the cloth.
func TestStripsAcrossTheWholeWidthAreNotCutUp(t *testing.T) {
	plan := yardage(t, []Want{{Name: "binding", Size: size(t, "40", "2 1/2"), Count: 9}}, "40", Settings{})
	require.Len(t, plan.Steps, 1)
	assert.Equal(t, 10, plan.Cuts)
	assert.Equal(t, []Make{{size(t, "40", "2 1/2"), 9, 0, nil}}, plan.Steps[0].Makes)
}

// Pre-cut squares of the size wanted are not cut at all.
func TestPiecesOfTheSheetsOwnSizeAreNotCut(t *testing.T) {
	plan, err := CutSheets([]Want{{Size: size(t, "5", "5"), Count: 42}}, []Sheet{{Name: "Dunes", Size: size(t, "5", "5"), Count: 42}}, Settings{})
	require.NoError(t, err)
	assert.Empty(t, plan.Steps)
	assert.Zero(t, plan.Cuts)
	assert.Equal(t, 42, plan.Sheets)
	assert.Empty(t, plan.Missing)
}

// 42 squares of 5 in from fat quarters of 18 × 22 in, twelve from each: four of
// them (source with FromSheets), the last with room left. With thirty on hand
// and no more, 12 are missing.
func TestSheetsAreCutAlikeAndWhatIsMissingIsSaid(t *testing.T) {
	want := Want{Name: "squares", Size: size(t, "5", "5"), Count: 42}
	plan, err := CutSheets([]Want{want}, []Sheet{{Size: size(t, "18", "22")}}, Settings{})
	require.NoError(t, err)
	assert.Equal(t, 4, plan.Sheets)
	assert.Equal(t, 4, plan.SheetBound)
	assert.True(t, plan.Best())
	assert.Equal(t, 3, plan.Steps[0].Count, "three are cut alike, in one stack")
	assert.Len(t, plan.Cloths[3].Pieces, 6)

	plan, err = CutSheets([]Want{want}, []Sheet{{Name: "Dunes", Size: size(t, "5", "5"), Count: 30}}, Settings{})
	require.NoError(t, err)
	want.Count = 12
	assert.Equal(t, []Want{want}, plan.Missing)
	assert.False(t, plan.Best())
	assert.Zero(t, plan.Gap())
}

// A scrap smaller than any piece is left alone.
func TestScrapsTooSmallForAnythingAreLeftAlone(t *testing.T) {
	want := []Want{{Size: size(t, "5", "5"), Count: 12}}
	for _, style := range []Style{Simple, Nested} {
		plan, err := CutSheets(want, []Sheet{{Size: size(t, "4", "22"), Count: 3}, {Size: size(t, "18", "22")}}, Settings{Style: style})
		require.NoError(t, err)
		sound(t, plan, want, Settings{})
		assert.Equal(t, 1, plan.Sheets)
		assert.Equal(t, 1, plan.SheetBound)
	}
}

func TestLongestPiecesAreCutFirst(t *testing.T) {
	plan := yardage(t, []Want{
		{Name: "squares", Size: size(t, "7", "7"), Count: 30},
		{Name: "border", Size: size(t, "4", "60"), Count: 4, Directional: true},
		{Name: "sashes", Size: size(t, "2 1/2", "12 1/2"), Count: 10},
	}, "40", Settings{})
	assert.Equal(t, in(t, "60"), plan.Steps[0].Makes[0].Size.Height)
	order := []int{}
	for _, p := range plan.Cloths[0].Pieces {
		if len(order) == 0 || order[len(order)-1] != p.Want {
			order = append(order, p.Want)
		}
	}
	assert.Equal(t, 1, order[0])
	assert.Equal(t, 0, order[len(order)-1], "squares last")
}

// Squaring up is taken once off the length and once off the width.
func TestSquaringUpTakesItsShare(t *testing.T) {
	want := []Want{{Size: size(t, "4", "4"), Count: 20}}
	plan := yardage(t, want, "40", Settings{})
	assert.Equal(t, in(t, "8"), plan.Length)
	plan = yardage(t, want, "40", Settings{SquareUp: in(t, "1/2")})
	assert.Equal(t, in(t, "12 1/2"), plan.Length, "nine to a strip")
	assert.Equal(t, in(t, "12 1/2"), plan.StyleBound)
	assert.Equal(t, in(t, "1/2"), plan.Cloths[0].Pieces[0].X)
	sheets, err := CutSheets(want, []Sheet{{Size: size(t, "20", "16")}}, Settings{SquareUp: in(t, "1/2")})
	require.NoError(t, err)
	assert.Equal(t, 2, sheets.Sheets, "four by three")
}

func TestSmallOffcutsAreNotListed(t *testing.T) {
	want := []Want{{Size: size(t, "7", "7"), Count: 8}}
	all := yardage(t, want, "40", Settings{}).Cloths[0].Offcuts
	require.Len(t, all, 2)
	assert.Equal(t, size(t, "19", "7"), all[0].Size, "largest first")
	assert.Equal(t, size(t, "5", "7"), all[1].Size)
	assert.Len(t, yardage(t, want, "40", Settings{Usable: in(t, "6")}).Cloths[0].Offcuts, 1)
}

// What one step sets aside to be cut further, a later one cuts; and the steps
// make every piece that is wanted.
func TestStepsMakeEveryPiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSettings(t)
		wants := wanted(t, measure.Inch*30-s.SquareUp, 20)
		plan, err := CutYardage(wants, measure.Inch*30, s)
		require.NoError(t, err)
		made, open, cuts := make([]int, len(wants)), map[measure.Size]int{}, 0
		for _, step := range plan.Steps {
			cuts += step.Cuts
			open[step.From] -= step.Count
			assert.LessOrEqual(t, step.Layers, max(s.Layers, DefaultLayers))
			assert.GreaterOrEqual(t, step.Stacks*max(s.Layers, DefaultLayers), step.Count)
			for _, m := range step.Makes {
				switch m.Want {
				case Further:
					open[m.Size] += m.Count
				case Left:
				default:
					made[m.Want] += m.Count
				}
			}
		}
		assert.Equal(t, cuts, plan.Cuts)
		whole := measure.Size{}
		if len(plan.Steps) > 0 {
			whole = plan.Steps[0].From
			open[whole]++
		}
		for size, n := range open {
			assert.Zero(t, n, "%v", size)
		}
		if len(plan.Steps) > 0 {
			for k, w := range wants {
				assert.Equal(t, w.Count, made[k])
			}
		}
	})
}
