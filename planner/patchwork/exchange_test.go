package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// recutFour is a recut four-patch whose pieces are turned and exchanged.
func recutFour(side, offset measure.Length, turns [][]int, exchange ...[2]int) Recipe {
	r := FourPatchRecut(side, offset, turns)
	r.Steps[5].Turns, r.Steps[5].Exchange = turns, exchange
	return r
}

// Published recut four-patches with pieces exchanged. Seams Like a Dream: centre
// a quarter turn, corners swapped, strips stay, 8 1/2 from squares of 5. Big Nutty
// Quilter 2014/01: the same from squares of 6 1/2 cut at 2, pieces 4 1/4, 4,
// 4 1/4 (rebuilt 11 1/2, worked out by hand).
func TestCornersSwappedAgainstPublishedBlocks(t *testing.T) {
	centre := [][]int{{0, 0, 0}, {0, 90, 0}, {0, 0, 0}}
	for _, row := range []struct{ cut, offset, outer, middle, raw string }{
		{"5", "1", "3 3/4", "2", "8 1/2"},
		{"6 1/2", "2", "4 1/4", "4", "11 1/2"},
	} {
		b := made(t, recutFour(in(t, row.cut), in(t, row.offset), centre, [2]int{1, 9}, [2]int{3, 7}), quarter)
		pieces, turned := b.step(t, "recut").Pieces, b.step(t, "turn").Pieces
		assertSquare(t, row.outer, pieces[0][0].Size, "corner")
		assertSquare(t, row.middle, pieces[1][1].Size, "centre")
		assertSquare(t, row.raw, b.Block().Size, "block")
		assert.Equal(t, pieces[2][2], turned[0][0])
		assert.Equal(t, pieces[0][0], turned[2][2])
		assert.Equal(t, pieces[2][0], turned[0][2])
		assert.Equal(t, pieces[1][1].Turned(1), turned[1][1])
		assert.Equal(t, pieces[0][1], turned[0][1], "strips stay")
	}
}

// Alamosa Quilter 2011/07: the four side strips turned or swapped. Swapping
// opposite strips shows what half turns show, and keeps prints upright.
func TestSwappingOppositeStripsLooksLikeTurningThem(t *testing.T) {
	swapped := made(t, recutFour(in(t, "5"), in(t, "1"), nil, [2]int{2, 8}, [2]int{4, 6}), quarter).Block()
	turned := made(t, FourPatchRecut(in(t, "5"), in(t, "1"), nil), quarter).Block()
	assertSquare(t, "8 1/2", swapped.Size, "block")
	assert.Equal(t, picture(turned), picture(swapped))
	for _, p := range swapped.Patches {
		if p.Role == "print" {
			assert.Contains(t, []uint8{0, 2}, p.Quarters, "the second pair is half turned from the start")
		}
	}
}

// Exchanging two quarters of a recut nine-patch looks like turning both by half a
// turn and keeps all prints upright (hand-worked).
func TestExchangingQuartersKeepsPrintsUpright(t *testing.T) {
	r := NinePatchRecut(in(t, "5"), nil)
	turn := &r.Steps[len(r.Steps)-2]
	turn.Turns, turn.Exchange = nil, [][2]int{{2, 3}}
	block := made(t, r, quarter).Block()
	assert.Equal(t, picture(made(t, NinePatchRecut(in(t, "5"), nil), quarter).Block()), picture(block))
	for _, p := range block.Patches {
		assert.Zero(t, p.Quarters)
	}
}

// A ring of strips moves on by one place, each given a quarter turn: no exchange
// alone would fit. The numbers are of places, one exchange after the other.
func TestARingOfStripsMovesOn(t *testing.T) {
	turns := [][]int{{0, 90, 0}, {90, 0, 90}, {0, 90, 0}}
	b := made(t, recutFour(in(t, "5"), in(t, "1"), turns, [2]int{2, 6}, [2]int{2, 8}, [2]int{2, 4}), quarter)
	pieces, turned := b.step(t, "recut").Pieces, b.step(t, "turn").Pieces
	assertSquare(t, "8 1/2", b.Block().Size, "block")
	assert.Equal(t, pieces[0][1].Turned(1), turned[1][2], "top to the right")
	assert.Equal(t, pieces[1][2].Turned(1), turned[2][1], "right to the bottom")
	assert.Equal(t, pieces[2][1].Turned(1), turned[1][0], "bottom to the left")
	assert.Equal(t, pieces[1][0].Turned(1), turned[0][1], "left to the top")
}

func TestExchangeFaults(t *testing.T) {
	for _, row := range []struct {
		exchange [][2]int
		fault    Fault
	}{
		{[][2]int{{1, 9}, {2, 10}}, Fault{Key: "exchange", Row: 2,
			What: "there is no piece 10 to exchange among 3 rows of 3 pieces", Hint: "pieces are numbered row by row, from 1 at the top left to 9"}},
		{[][2]int{{0, 1}}, Fault{Key: "exchange", Row: 1,
			What: "there is no piece 0 to exchange among 3 rows of 3 pieces", Hint: "pieces are numbered row by row, from 1 at the top left to 9"}},
		{[][2]int{{4, 4}}, Fault{Key: "exchange", Row: 1, What: "piece 4 is exchanged with itself", Hint: "name two pieces, or leave the exchange out"}},
		{[][2]int{{2, 4}}, Fault{Key: "exchange",
			What: "piece 1 in row 2, 3 3/4 × 2 in as it is turned, does not fit the place of piece 2 in row 1, which is 2 × 3 3/4 in",
			Hint: "exchange pieces of one size, or give them a quarter turn where that makes them fit"}},
	} {
		_, err := Make(recutFour(in(t, "5"), in(t, "1"), nil, row.exchange...), quarter, measure.Inches)
		row.fault.Step = "turn"
		assert.Equal(t, &row.fault, err)
	}
	_, err := Make(recutFour(in(t, "5"), in(t, "1"), nil), quarter, measure.Inches)
	assert.EqualError(t, err, "step turn: the turns do not fit the 3 rows of 3 pieces; give one turn for each piece, row by row", "nothing turned, nothing exchanged")
}

// Turning every piece of a recut unit by half a turn and moving it to the place
// opposite is turning the block: it looks so, and every old seam is pressed so.
func TestATurnedRecutIsTheTurnedBlock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		eighths := func(name string, from, to int) measure.Length {
			return measure.Inch.Times(rapid.IntRange(from, to).Draw(t, name)) / 8
		}
		side := eighths("side", 24, 60)
		offset := eighths("offset", 3, 8)
		pinwheels := rapid.Bool().Draw(t, "pinwheels")
		turned := func(degrees int, exchange ...[2]int) Unit {
			r := FourPatchRecut(side, offset, nil)
			if pinwheels {
				r = PinwheelRecut(side, 2, offset, nil)
			}
			turn := &r.Steps[len(r.Steps)-2]
			turn.Turns, turn.Exchange = [][]int{{degrees, degrees, degrees}, {degrees, degrees, degrees}, {degrees, degrees, degrees}}, exchange
			b, err := Make(r, quarter, measure.Inches)
			if err != nil {
				t.Fatal(err)
			}
			return b.Block()
		}
		plain := turned(0)
		half := turned(180, [2]int{1, 9}, [2]int{2, 8}, [2]int{3, 7}, [2]int{4, 6})
		assert.Equal(t, picture(plain.Turned(2)), picture(half))
		old := 2 // choices of a four-patch: the pairs and their join
		if pinwheels {
			old = 4 // the triangles, two rows and their join
		}
		fresh := func(choice int) bool { return choice >= old }
		assert.Equal(t, pressing(plain.Turned(2), fresh), pressing(half, fresh))
		// A quarter turn: corners and strips move on by two places of eight.
		ring := [][2]int{{1, 3}, {1, 9}, {1, 7}, {2, 6}, {2, 8}, {2, 4}}
		quarterTurned := turned(90, ring...)
		assert.Equal(t, picture(plain.Turned(1)), picture(quarterTurned))
		assert.Equal(t, pressing(plain.Turned(1), fresh), pressing(quarterTurned, fresh))
	})
}

// A grid laid out a quarter turn further round, each of its cells turned too, is
// the unit turned.
func TestATurnedGridIsTheTurnedUnit(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		var steps []Step
		for _, m := range b.Steps {
			steps = append(steps, m.Step)
			if m.Step.Name == "grid" {
				break
			}
		}
		grid := steps[len(steps)-1]
		rows := make([][]Cell, len(grid.Rows[0]))
		for c := range rows {
			for r := range grid.Rows {
				cell := grid.Rows[len(grid.Rows)-1-r][c]
				cell.Quarters++
				rows[c] = append(rows[c], cell)
			}
		}
		plain, err := Make(Recipe{steps}, b.Seam, measure.Inches)
		assert.NoError(t, err)
		grid.Rows = rows
		steps[len(steps)-1] = grid
		turned, err := Make(Recipe{steps}, b.Seam, measure.Inches)
		assert.NoError(t, err)
		assert.Equal(t, picture(plain.Block().Turned(1)), picture(turned.Block()))
		before := len(plain.Choices)
		for before > 0 && plain.Choices[before-1].Step == "grid" {
			before--
		}
		fresh := func(choice int) bool { return choice >= before }
		assert.Equal(t, pressing(plain.Block().Turned(1), fresh), pressing(turned.Block(), fresh))
	})
}
