package measure_test

import (
	"fmt"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

func TestRootsOfSmallLengths(t *testing.T) {
	// Hand-worked: √2 = 1.41421, 5·√2 = 7.07, 12·√2 = 16.97; 1/√2 = 0.707,
	// 5/√2 = 3.5355, 7/√2 = 4.9497, 29/√2 = 20.506. 5² = 3² + 4² and
	// 29² = 20² + 21²: there the root of the halved square lies closest above a
	// half, and a halved square that lost its own half would round down.
	for _, c := range []struct {
		length      measure.Length
		times, over [3]measure.Length // down, nearest, up
	}{
		{0, [3]measure.Length{0, 0, 0}, [3]measure.Length{0, 0, 0}},
		{1, [3]measure.Length{1, 1, 2}, [3]measure.Length{0, 1, 1}},
		{5, [3]measure.Length{7, 7, 8}, [3]measure.Length{3, 4, 4}},
		{7, [3]measure.Length{9, 10, 10}, [3]measure.Length{4, 5, 5}},
		{12, [3]measure.Length{16, 17, 17}, [3]measure.Length{8, 8, 9}},
		{29, [3]measure.Length{41, 41, 42}, [3]measure.Length{20, 21, 21}},
		{-5, [3]measure.Length{-8, -7, -7}, [3]measure.Length{-4, -4, -3}},
	} {
		t.Run(fmt.Sprint(int64(c.length)), func(t *testing.T) {
			for i, r := range []measure.Rounding{measure.Down, measure.Nearest, measure.Up} {
				assert.Equal(t, c.times[i], c.length.TimesRoot2(r))
				assert.Equal(t, c.over[i], c.length.OverRoot2(r))
			}
		})
	}
}

func TestRootsAgreeWithUnboundedArithmetic(t *testing.T) {
	for name, r := range everyRounding {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				l := everyInt64().Draw(t, "length")
				square := new(big.Int).Mul(big.NewInt(int64(l)), big.NewInt(int64(l)))
				twice := new(big.Rat).SetInt(new(big.Int).Lsh(square, 1))
				half := new(big.Rat).SetFrac(square, big.NewInt(2))
				assert.Equal(t, rootBig(twice, l < 0, r), l.TimesRoot2(r))
				assert.Equal(t, rootBig(half, l < 0, r), l.OverRoot2(r))
			})
		})
	}
}

// rootBig rounds ±√x. The root is taken of x·2²⁰⁰, so that what it cuts off
// decides nothing: neither 2l² nor l²/2 comes that near to the square of a
// half.
func rootBig(x *big.Rat, negative bool, r measure.Rounding) measure.Length {
	const shift = 100
	scaled := new(big.Int).Lsh(x.Num(), 2*shift)
	scaled.Div(scaled, x.Denom())
	root := new(big.Rat).SetFrac(new(big.Int).Sqrt(scaled), new(big.Int).Lsh(big.NewInt(1), shift))
	if negative {
		root.Neg(root)
	}
	return clampBig(roundBig(root, r))
}

func TestDiagonalsOfTheTradeChart(t *testing.T) {
	// Quilter's Cache, "Math Charts": diagonals of squares to the nearest 1/8.
	// 8 in is a near tie: 11.3137 against 11.3125.
	for side, want := range map[measure.Length]string{
		4: "5 5/8 in", 5: "7 1/8 in", 6: "8 1/2 in", 7: "9 7/8 in", 8: "11 3/8 in",
		9: "12 3/4 in", 10: "14 1/8 in", 12: "17 in", 14: "19 3/4 in",
	} {
		t.Run(want, func(t *testing.T) {
			diagonal := (side * in).TimesRoot2(measure.Nearest)
			eighths := diagonal.Scale(1, int64(in/8), measure.Nearest)
			assert.Equal(t, want, (eighths * in / 8).String())
		})
	}
}

func TestHalfSquareTrianglesBeforeTrimming(t *testing.T) {
	seam := in / 4
	lost := seam.TimesRoot2(measure.Up)

	// Two at a time, raw S − s·√2. American Patchwork & Quilting's Hourglass
	// Stars and Ohio Star: trimmed to 6 7/8 and 4 3/8 from these, hand-worked
	// with √2 = 1.414214.
	assert.Equal(t, "6.896", (7*in+in/4-lost).Decimal(measure.Inches, 3))
	assert.Equal(t, "4.396", (4*in+3*in/4-lost).Decimal(measure.Inches, 3))
	assert.Equal(t, "2.521", ((5*in+3*in/4).Half()-lost).Decimal(measure.Inches, 3))

	// Four at a time, raw (S − 2s)/√2; A. Tomlinson, "4 at a time": 5 1/2 gives
	// 3 1/2. Hand-worked to 3.536.
	four := func(square measure.Length) measure.Length { return (square - 2*seam).OverRoot2(measure.Down) }
	assert.Equal(t, "3.536", four(5*in+in/2).Decimal(measure.Inches, 3))
	assert.Equal(t, "2.828", four(4*in+in/2).Decimal(measure.Inches, 3))

	// The same page's rule, raw/0.64, must not be trusted for small units: for
	// 2 1/2 it cuts 3.906, which gives 2.409.
	byRule := (2*in + in/2).Scale(100, 64, measure.Nearest)
	assert.Equal(t, "2.409", four(byRule).Decimal(measure.Inches, 3))
	needed := (2*in + in/2).TimesRoot2(measure.Up) + 2*seam
	assert.Equal(t, "4.036", needed.Decimal(measure.Inches, 3))
	assert.GreaterOrEqual(t, four(needed), 2*in+in/2)
}

func TestRootsUndoEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "length")
		// Cut up and yielded down, a square is never short.
		assert.GreaterOrEqual(t, l.TimesRoot2(measure.Up).OverRoot2(measure.Down), l)
		assert.Equal(t, l, l.TimesRoot2(measure.Nearest).OverRoot2(measure.Nearest))
	})
}
