package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/measure"
)

const (
	left  = false
	right = true
)

// From an independent exact computation: four-patch recut, squares of 8 in cut
// 1 in either side of the centre, pairs pressed to the print.
func TestFourPatchRecutHasEightMatchPointsAndAllNestWithRowsRightLeftRight(t *testing.T) {
	b := made(t, FourPatchRecut(8*measure.Inch, measure.Inch, nil), quarter)
	joins := b.step(t, "block").Joins
	assert.Equal(t, Tally{Nest: 8}, b.Tally(joins, wayOf(b, "block", right, left, right)))
	assert.Equal(t, Tally{Nest: 4, Clash: 4}, b.Tally(joins, wayOf(b, "block", right, right, right)), "rows alike clash at the four new crossings")
}

// From the same computation: a top of 5 x 6 such blocks has 147 match points
// between blocks, 72 at block columns and 75 at block rows. All alike 122
// clash; with every other row given half a turn 72, every other column 50,
// chequered none.
func TestTopOfRecutFourPatchesNestsWithEveryOtherBlockTurned(t *testing.T) {
	b := made(t, FourPatchRecut(8*measure.Inch, measure.Inch, nil), quarter)
	w := wayOf(b, "block", right, left, right)
	for _, row := range []struct {
		pattern string
		turned  func(row, column int) bool
		clash   int
	}{
		{"all alike", func(r, c int) bool { return false }, 122},
		{"rows", func(r, c int) bool { return r%2 == 1 }, 72},
		{"columns", func(r, c int) bool { return c%2 == 1 }, 50},
		{"chequered", func(r, c int) bool { return (r+c)%2 == 1 }, 0},
	} {
		columns, rows := topTally(6, 5, w, func(r, c int) Unit {
			if row.turned(r, c) {
				return b.Block().Turned(2)
			}
			return b.Block()
		})
		assert.Equal(t, 72, columns.Nest+columns.Clash, row.pattern)
		assert.Equal(t, 75, rows.Nest+rows.Clash, row.pattern)
		assert.Equal(t, row.clash, columns.Clash+rows.Clash, row.pattern)
		assert.Zero(t, columns.Near+rows.Near+columns.Open+rows.Open, row.pattern)
	}
}

// From the same computation: two offsets chequered leave only the centre seams
// to match, 49 points.
func TestTwoOffsetsChequeredMatchAtTheCentreSeamsOnly(t *testing.T) {
	one := made(t, FourPatchRecut(8*measure.Inch, measure.Inch, nil), quarter)
	two := made(t, FourPatchRecut(8*measure.Inch, in(t, "1 1/2"), nil), quarter)
	columns, rows := topTally(6, 5, nil, func(r, c int) Unit {
		if (r+c)%2 == 1 {
			return two.Block()
		}
		return one.Block()
	})
	assert.Equal(t, 24, columns.Nest+columns.Clash)
	assert.Equal(t, 25, rows.Nest+rows.Clash)
}

// topTally tallies the joins between the blocks of a straight layout.
func topTally(down, across int, w Way, block func(row, column int) Unit) (columns, rows Tally) {
	for r := range down {
		for c := range across {
			u := block(r, c)
			if c+1 < across {
				a, b := Crossings(u, RightSide, quarter, w), Crossings(block(r, c+1), LeftSide, quarter, w)
				columns = columns.Plus(Meet(a, b, u.Size.Height, quarter))
			}
			if r+1 < down {
				a, b := Crossings(u, BottomSide, quarter, w), Crossings(block(r+1, c), TopSide, quarter, w)
				rows = rows.Plus(Meet(a, b, u.Size.Width, quarter))
			}
		}
	}
	return columns, rows
}

// Plain blocks 6 x 7, rows pressed right, left, right ...; row 4 pressed like
// row 3: 10 of 30 crossings clash, between rows 3 and 4 and rows 4 and 5.
// Pressing row 4 again cures all (hand-worked).
func TestOneRowPressedLikeTheOneAboveClashesOnBothSides(t *testing.T) {
	r := PlainSquare(in(t, "6 1/2"))
	r.Steps = append(r.Steps, Step{Name: "top", Do: Sew, Rows: gridOf("square", 7, 6)})
	b := made(t, r, quarter)
	joins := b.step(t, "top").Joins
	wrong := wayOf(b, "top", right, left, right, right, right, left, right)
	assert.Equal(t, Tally{Nest: 20, Clash: 10}, b.Tally(joins, wrong))
	for _, join := range joins {
		if join.Between {
			between := TallyMatches(join.Matches, wrong)
			assert.Equal(t, join.Index == 3 || join.Index == 4, between.Clash == 5, "join below row %d", join.Index)
		}
	}
	cured := wayOf(b, "top", right, left, right, left, right, left, right)
	assert.Equal(t, Tally{Nest: 30}, b.Tally(joins, cured))
}

// The usual pressing of a nine-patch, rows one way and the other: its four
// crossings nest (A Block Away; agrees). Left comes first.
func TestBestPressesRowsOfANinePatchInTurn(t *testing.T) {
	b := made(t, NinePatch(in(t, "2 1/2")), quarter)
	best := b.Best()
	assert.Equal(t, wayOf(b, "nine-patch", left, right, left), best)
	assert.Equal(t, Tally{Nest: 4}, b.BlockTally(best))
	words := []string{}
	for _, c := range b.Choices {
		words = append(words, b.Direction(c, best))
	}
	assert.Equal(t, []string{"left", "right", "left", "up", "up"}, words)
}

func TestDirectionIsEmptyForAnUnknownChoice(t *testing.T) {
	b := made(t, NinePatch(in(t, "2 1/2")), quarter)
	assert.Empty(t, b.Direction(Choice{Step: "nine-patch", Row: 3}, nil))
	assert.Equal(t, "down", b.Direction(Choice{"nine-patch", true, 1}, wayOf(b, "nine-patch", left, left, left, false, true)))
}

// All pairs are pressed alike. With its second pair turned a four-patch nests
// whichever way that is; without, it clashes either way (hand-worked).
func TestTurnedPairNestsInAFourPatch(t *testing.T) {
	b := made(t, FourPatch(in(t, "3")), quarter)
	for _, second := range []bool{false, true} {
		assert.Equal(t, Tally{Nest: 1}, b.BlockTally(wayOf(b, "pairs", second)))
	}
	r := FourPatch(in(t, "3"))
	r.Steps[3].Rows[1][0].Quarters = 0
	unturned := made(t, r, quarter)
	for _, second := range []bool{false, true} {
		assert.Equal(t, Tally{Clash: 1}, unturned.BlockTally(wayOf(unturned, "pairs", second)))
	}
}

// In a recut four-patch whose pieces are not turned every seam that was cut
// meets its own other half, pressed alike: the four crossings of new seams with
// old ones clash (hand-worked).
func TestUnturnedRecutClashesWithItsOwnSeams(t *testing.T) {
	still := [][]int{{0, 0, 0}, {0, 0, 0}, {0, 0, 0}}
	b := made(t, FourPatchRecut(8*measure.Inch, measure.Inch, still), quarter)
	got := b.Tally(b.step(t, "block").Joins, wayOf(b, "block", right, left, right))
	assert.Equal(t, Tally{Nest: 4, Clash: 4}, got)
}

// Every seam keeps the way it is pressed through recut and turn: the seams of
// pairs lean to the print in the finished block as they did in the pair.
func TestPressingSurvivesRecutAndTurn(t *testing.T) {
	for _, turns := range [][][]int{nil, {{90, 180, 270}, {180, 90, 180}, {0, 180, 90}}} {
		b := made(t, FourPatchRecut(8*measure.Inch, measure.Inch, turns), quarter)
		pairs := 0
		for _, s := range b.Block().Seams {
			if b.Choices[s.Choice].Step != "pairs" {
				continue
			}
			pairs++
			middle := Point{(s.A.X + s.B.X) / 2, (s.A.Y + s.B.Y) / 2}
			assert.Equal(t, []string{"print"}, b.Block().rolesAt(middle.beside(s.Lean)))
		}
		assert.Equal(t, 4, pairs, "upright seams of the pairs: top, two in the centre, bottom")
	}
}
