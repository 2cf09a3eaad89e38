package cloth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// wanted draws pieces that fit cloth of a width, on the ruler's eighths.
func wanted(t *rapid.T, width measure.Length, most int) []Want {
	side := func(label string) measure.Length {
		return measure.Inch / 8 * measure.Length(rapid.IntRange(8, measure.FloorDiv(width, measure.Inch/8)).Draw(t, label))
	}
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Want {
		return Want{
			Size: measure.Size{Width: side("w"), Height: side("h")}, Count: rapid.IntRange(0, most).Draw(t, "n"),
			Directional: rapid.Bool().Draw(t, "directional"),
		}
	}), 1, 5).Draw(t, "wants")
}

func drawSettings(t *rapid.T) Settings {
	return Settings{
		Style:    rapid.SampledFrom([]Style{Simple, Nested}).Draw(t, "style"),
		SquareUp: measure.Inch / 8 * measure.Length(rapid.IntRange(0, 4).Draw(t, "squaring")),
		Layers:   rapid.IntRange(0, 6).Draw(t, "layers"),
		Effort:   2,
	}
}

// rect is a rectangle to be parted.
type rect struct{ x, y, w, h measure.Length }

func rectOf(p Piece) rect { return rect{p.X, p.Y, p.Size.Width, p.Size.Height} }

// cuttable reports whether straight cuts from edge to edge part rectangles: it
// looks for one that touches none of them, and goes on on both sides. It knows
// nothing of how the plan was made.
func cuttable(all []rect) bool {
	if len(all) < 2 {
		return true
	}
	for _, upright := range []bool{true, false} {
		span := func(r rect) (from, to measure.Length) {
			if upright {
				return r.x, r.x + r.w
			}
			return r.y, r.y + r.h
		}
		for _, at := range all {
			_, cut := span(at)
			var before, behind []rect
			for _, r := range all {
				from, to := span(r)
				switch {
				case to <= cut:
					before = append(before, r)
				case from >= cut:
					behind = append(behind, r)
				}
			}
			if len(behind) > 0 && len(before)+len(behind) == len(all) {
				return cuttable(before) && cuttable(behind)
			}
		}
	}
	return false
}

// sound checks a plan's cloths against the wants.
func sound(t require.TestingT, plan Plan, wants []Want, s Settings) {
	got := make([]int, len(wants))
	for _, m := range plan.Missing {
		for k, w := range wants {
			if w.Size == m.Size && w.Name == m.Name && w.Directional == m.Directional && got[k] == 0 {
				got[k] = m.Count
				break
			}
		}
	}
	for _, c := range plan.Cloths {
		var all []rect
		for _, p := range c.Pieces {
			w := wants[p.Want]
			got[p.Want]++
			size := w.Size
			if p.Turned {
				require.False(t, w.Directional, "a directional piece is turned")
				size = size.Turned()
			}
			require.Equal(t, size, p.Size)
			all = append(all, rectOf(p))
		}
		for _, o := range c.Offcuts {
			all = append(all, rect{o.X, o.Y, o.Size.Width, o.Size.Height})
		}
		inside(t, c, all, s.SquareUp)
		require.True(t, cuttable(all), "no straight cut parts what is left")
	}
	for k, w := range wants {
		require.Equal(t, w.Count, got[k], "pieces of want %d", k)
	}
}

// inside checks that rectangles fill a cloth, squared up, without overlap.
func inside(t require.TestingT, c Cloth, all []rect, squareUp measure.Length) {
	area := measure.Mul(c.Size.Width-squareUp, c.Size.Height-squareUp)
	for i, r := range all {
		require.GreaterOrEqual(t, min(r.x, r.y), squareUp)
		require.LessOrEqual(t, r.x+r.w, c.Size.Width)
		require.LessOrEqual(t, r.y+r.h, c.Size.Height)
		area = area.Sub(measure.Mul(r.w, r.h))
		for _, o := range all[:i] {
			apart := r.x+r.w <= o.x || o.x+o.w <= r.x || r.y+r.h <= o.y || o.y+o.h <= r.y
			require.True(t, apart, "%v overlaps %v", r, o)
		}
	}
	require.Equal(t, measure.Area{}, area, "pieces and offcuts fill the cloth")
}

func TestNoPlanOverlapsLeavesItsClothOrLosesAPiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := measure.Inch * measure.Length(rapid.IntRange(9, 60).Draw(t, "width"))
		s := drawSettings(t)
		wants := wanted(t, width-s.SquareUp, 12)
		plan, err := CutYardage(wants, width, s)
		require.NoError(t, err)
		sound(t, plan, wants, s)
		assert.LessOrEqual(t, plan.Bound, plan.StyleBound)
		assert.LessOrEqual(t, plan.StyleBound, plan.Length)
		again, _ := CutYardage(wants, width, s)
		assert.Equal(t, plan, again, "the same every time")
	})
}

func TestNoSheetPlanOverlapsLeavesItsClothOrLosesAPiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSettings(t)
		wants := wanted(t, measure.Inch*17, 8)
		sheets := []Sheet{
			{Name: "fat quarter", Size: size(t, "18", "22"), Count: rapid.IntRange(0, 3).Draw(t, "on hand")},
			{Name: "half yard", Size: size(t, "18", "40"), Count: rapid.IntRange(0, 2).Draw(t, "halves")},
		}
		plan, err := CutSheets(wants, sheets, s)
		require.NoError(t, err)
		sound(t, plan, wants, s)
		assert.Len(t, plan.Cloths, plan.Sheets)
	})
}

// Strips of each size of its own are the most that a plan may take.
func TestNoPlanTakesMoreThanPlainStrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := measure.Inch * measure.Length(rapid.IntRange(9, 60).Draw(t, "width"))
		wants, turn := wanted(t, width, 200), rapid.Bool().Draw(t, "turned")
		var pieces []Pieces
		for k := range wants {
			wants[k].Directional = !turn
			pieces = append(pieces, Pieces{wants[k].Size, wants[k].Count})
		}
		plain, _, ok := FromYardage(pieces, width, !turn)
		require.True(t, ok)
		simple, err := CutYardage(wants, width, Settings{Effort: 1})
		require.NoError(t, err)
		nested, err := CutYardage(wants, width, Settings{Style: Nested, Effort: 1})
		require.NoError(t, err)
		assert.LessOrEqual(t, simple.Length, plain.Length)
		assert.LessOrEqual(t, nested.Length, simple.Length)
	})
}

func TestMoreClothNeverMakesFewerSets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := measure.Inch * 20
		set := wanted(t, width, 3)
		set[0].Count++
		s := Settings{Style: rapid.SampledFrom([]Style{Simple, Nested}).Draw(t, "style"), Effort: 1}
		length := measure.Inch / 8 * measure.Length(rapid.IntRange(1, 800).Draw(t, "length"))
		longer := length + measure.Inch/8*measure.Length(rapid.IntRange(1, 100).Draw(t, "more"))
		n, plan, err := SetsFromYardage(set, width, length, s)
		require.NoError(t, err)
		assert.LessOrEqual(t, plan.Length, length)
		sound(t, plan, times(set, n), s)
		more, _, err := SetsFromYardage(set, width, longer, s)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, more, n)
	})
}

func TestMoreSheetsNeverMakeFewerSets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		set := wanted(t, measure.Inch*18, 3)
		set[0].Count++
		s := Settings{Style: rapid.SampledFrom([]Style{Simple, Nested}).Draw(t, "style"), Effort: 1}
		sheet := Sheet{Size: size(t, "18", "22"), Count: rapid.IntRange(1, 6).Draw(t, "sheets")}
		n, plan, err := SetsFromSheets(set, []Sheet{sheet}, s)
		require.NoError(t, err)
		assert.LessOrEqual(t, plan.Sheets, sheet.Count)
		sound(t, plan, times(set, n), s)
		sheet.Count += rapid.IntRange(1, 3).Draw(t, "more")
		more, _, err := SetsFromSheets(set, []Sheet{sheet}, s)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, more, n)
	})
}

// What a maker may write in a job file without a common grid: inches, thirds
// and centimetres. No piece may be cut too small for it.
func TestSizesWithoutACommonGridAreCutInFull(t *testing.T) {
	wants := []Want{
		{Size: size(t, "7", "7"), Count: 9},
		{Size: measure.Size{Width: 20*measure.Centimetre + 1, Height: measure.Inch*5/3 + 1}, Count: 20},
		{Size: measure.Size{Width: measure.Inch*11/3 + 7, Height: 9 * measure.Centimetre}, Count: 11},
	}
	for _, style := range []Style{Simple, Nested} {
		s := Settings{Style: style}
		plan, err := CutYardage(wants, in(t, "42"), s)
		require.NoError(t, err)
		sound(t, plan, wants, s)
		assert.LessOrEqual(t, plan.Bound, plan.Length)
		plan, err = CutSheets(wants, []Sheet{{Size: size(t, "18", "22")}}, s)
		require.NoError(t, err)
		sound(t, plan, wants, s)
		assert.LessOrEqual(t, plan.SheetBound, plan.Sheets)
	}
}

// One size for two purposes is one kind of work: the first want is served
// first, and a piece written the other way round is the same piece.
func TestWantsOfOneSizeAreServedInOrder(t *testing.T) {
	wants := []Want{
		{Name: "sashes", Size: size(t, "2 1/2", "8 1/2"), Count: 3},
		{Name: "rails", Size: size(t, "8 1/2", "2 1/2"), Count: 13},
	}
	plan, err := CutYardage(wants, in(t, "40"), Settings{})
	require.NoError(t, err)
	sound(t, plan, wants, Settings{})
	assert.Equal(t, in(t, "8 1/2"), plan.Length, "sixteen in one strip")
	for k, p := range plan.Cloths[0].Pieces {
		assert.Equal(t, k >= 3, p.Want == 1)
		assert.Equal(t, p.Want == 1, p.Turned, "as each is written")
	}
}

func TestWhatCannotBePlannedIsRefusedInWords(t *testing.T) {
	wide := Want{Name: "border", Size: size(t, "44", "3"), Count: 2, Directional: true}
	_, err := CutYardage([]Want{wide}, in(t, "40"), Settings{})
	var large *TooLarge
	require.ErrorAs(t, err, &large)
	assert.Equal(t, wide, large.Want)
	assert.Equal(t, "a piece of 44 in × 3 in does not fit cloth 40 in wide; cut it lengthwise, or join it from shorter pieces", err.Error())
	wide.Directional = false
	plan, err := CutYardage([]Want{wide}, in(t, "40"), Settings{})
	require.NoError(t, err)
	assert.Equal(t, in(t, "44"), plan.Length, "along the cloth it fits")

	_, err = CutSheets([]Want{wide}, []Sheet{{Size: size(t, "18", "22")}}, Settings{})
	require.ErrorAs(t, err, &large)
	assert.Equal(t, "a piece of 44 in × 3 in cannot be cut from cloth of 18 in × 22 in; a larger piece of cloth is needed", err.Error())
	for _, c := range []struct {
		wants  []Want
		sheets []Sheet
		says   string
	}{
		{[]Want{{Name: "nothing", Count: 1}}, nil, "no size"},
		{[]Want{{Name: "less", Size: size(t, "1", "1"), Count: -1}}, nil, "wanted -1 times"},
		{[]Want{{Size: size(t, "1", "1"), Count: MostPieces + 1}}, nil, "more than 100000 pieces"},
		{[]Want{{Size: size(t, "1", "1"), Count: 1}}, nil, "no cloth to cut from"},
		{[]Want{{Size: size(t, "1", "1"), Count: 1}}, []Sheet{{Size: size(t, "1/4", "9")}}, "no size left after squaring up"},
	} {
		_, err := CutSheets(c.wants, c.sheets, Settings{SquareUp: in(t, "1/4")})
		assert.ErrorContains(t, err, c.says)
	}
}

func TestNothingWantedTakesNothing(t *testing.T) {
	plan, err := CutYardage(nil, in(t, "40"), Settings{})
	require.NoError(t, err)
	assert.Equal(t, Plan{Style: Simple}, plan)
	plan, err = CutSheets([]Want{{Size: size(t, "5", "5")}}, []Sheet{{Size: size(t, "18", "22")}}, Settings{Style: Nested})
	require.NoError(t, err)
	assert.Equal(t, Plan{Style: Nested}, plan)
}
