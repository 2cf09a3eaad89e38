package measure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// onAGrid draws a length that a ruler or a tape shows.
func onAGrid() *rapid.Generator[measure.Length] {
	return rapid.Custom(func(t *rapid.T) measure.Length {
		grid := rapid.SampledFrom([]measure.Length{in / 64, in / 1000, mm / 10, mm / 1000}).Draw(t, "grid")
		return grid.Times(rapid.IntRange(1, 100_000).Draw(t, "steps"))
	})
}

func TestHalvesAndThirdsOfMeasuredLengthsMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := onAGrid().Draw(t, "length")
		quarter := l.Half().Half()
		assert.Equal(t, l, quarter.Times(4))
		ninth := quarter.Scale(1, 9, measure.Down)
		assert.Equal(t, l, ninth.Times(36))
		assert.Equal(t, ninth, quarter.Scale(1, 9, measure.Up))
	})
}

func TestInchesAndMillimetresAddWithoutDrift(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces := rapid.SliceOfN(onAGrid(), 1, 200).Draw(t, "pieces")
		var row measure.Length
		for _, piece := range pieces {
			row += piece
		}
		for i := len(pieces) - 1; i >= 0; i-- {
			row -= pieces[i]
		}
		assert.Zero(t, row)
	})
}

func TestPiecesOfACutFillTheSheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width, height := onAGrid().Draw(t, "width"), onAGrid().Draw(t, "height")
		across := measure.Length(rapid.Int64Range(0, int64(width)).Draw(t, "across"))
		down := measure.Length(rapid.Int64Range(0, int64(height)).Draw(t, "down"))
		sum := measure.Mul(across, down).
			Add(measure.Mul(width-across, down)).
			Add(measure.Mul(across, height-down)).
			Add(measure.Mul(width-across, height-down))
		assert.Equal(t, measure.Mul(width, height), sum)
	})
}

func TestAreaOfAPolygonIsThatOfItsRectangle(t *testing.T) {
	// The shoelace sum of a rectangle, with its cancelling signs, is twice its
	// area wherever it lies and whichever way its corners go round.
	rapid.Check(t, func(t *rapid.T) {
		x, y := everyInt64().Draw(t, "x")/4, everyInt64().Draw(t, "y")/4
		w, h := onAGrid().Draw(t, "w"), onAGrid().Draw(t, "h")
		corners := [][2]measure.Length{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}
		var twice, back measure.Area
		for i, p := range corners {
			q := corners[(i+1)%len(corners)]
			cross := measure.Mul(p[0], q[1]).Sub(measure.Mul(q[0], p[1]))
			twice, back = twice.Add(cross), back.Sub(cross)
		}
		assert.Equal(t, measure.Mul(w, h), twice.Half())
		assert.Equal(t, twice, measure.Area{}.Sub(back))
		assert.Equal(t, 1, twice.Sign())
		assert.Equal(t, -1, back.Sign())
	})
}

func TestAreaTimesIsRepeatedSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area := measure.Mul(onAGrid().Draw(t, "a"), -onAGrid().Draw(t, "b"))
		n := rapid.IntRange(0, 60).Draw(t, "n")
		var sum measure.Area
		for range n {
			sum = sum.Add(area)
		}
		assert.Equal(t, sum, area.Times(n))
		assert.Equal(t, measure.Area{}.Sub(sum), area.Times(-n))
	})
}

func TestRoundingKeepsTheOrderOfLengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := onAGrid().Draw(t, "a"), onAGrid().Draw(t, "b")
		if a > b {
			a, b = b, a
		}
		for _, r := range []measure.Rounding{measure.Down, measure.Nearest, measure.Up} {
			assert.LessOrEqual(t, a.Scale(2, 7, r), b.Scale(2, 7, r))
			assert.LessOrEqual(t, a.TimesRoot2(r), b.TimesRoot2(r))
			assert.LessOrEqual(t, a.OverRoot2(r), b.OverRoot2(r))
		}
	})
}
