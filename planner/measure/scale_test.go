package measure_test

import (
	"fmt"
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

var everyRounding = map[string]measure.Rounding{"down": measure.Down, "nearest": measure.Nearest, "up": measure.Up}

func TestScaleRounds(t *testing.T) {
	// Hand-worked.
	for _, c := range []struct {
		length            measure.Length
		num, den          int64
		down, nearest, up measure.Length
	}{
		{7, 1, 2, 3, 4, 4},
		{-7, 1, 2, -4, -4, -3},
		{7, -1, 2, -4, -4, -3},
		{7, 1, -2, -4, -4, -3},
		{-7, -1, 2, 3, 4, 4},
		{7, 1, 3, 2, 2, 3},
		{8, 1, 3, 2, 3, 3},
		{-8, 1, 3, -3, -3, -2},
		{9, 1, 3, 3, 3, 3},
		{0, 5, 7, 0, 0, 0},
		{5, 0, 7, 0, 0, 0},
		{36 * in, 1, 3, 12 * in, 12 * in, 12 * in},
	} {
		t.Run(fmt.Sprint(int64(c.length), c.num, c.den), func(t *testing.T) {
			assert.Equal(t, c.down, c.length.Scale(c.num, c.den, measure.Down))
			assert.Equal(t, c.nearest, c.length.Scale(c.num, c.den, measure.Nearest))
			assert.Equal(t, c.up, c.length.Scale(c.num, c.den, measure.Up))
		})
	}
}

func TestScaleClampsWhatNoInt64Holds(t *testing.T) {
	const most, least = measure.Length(math.MaxInt64), measure.Length(math.MinInt64)
	for name, r := range everyRounding {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, most, most.Scale(2, 1, r))
			assert.Equal(t, least, most.Scale(-2, 1, r))
			assert.Equal(t, most, least.Scale(-1, 1, r))
			assert.Equal(t, least, least.Scale(1, 1, r))
			assert.Equal(t, most, least.Scale(math.MinInt64, 1, r))
		})
	}
}

func TestScaleAgreesWithUnboundedArithmetic(t *testing.T) {
	for name, r := range everyRounding {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				l := everyInt64().Draw(t, "length")
				num := rapid.Int64().Draw(t, "num")
				den := rapid.Int64().Filter(func(n int64) bool { return n != 0 }).Draw(t, "den")
				product := new(big.Int).Mul(big.NewInt(int64(l)), big.NewInt(num))
				want := clampBig(roundBig(new(big.Rat).SetFrac(product, big.NewInt(den)), r))
				assert.Equal(t, want, l.Scale(num, den, r))
			})
		})
	}
}

// roundBig rounds by the definition of each rounding: the floor of x, the floor
// of x + 1/2 with the sign set apart, or the ceiling.
func roundBig(x *big.Rat, r measure.Rounding) *big.Int {
	switch r {
	case measure.Up:
		return new(big.Int).Neg(roundBig(new(big.Rat).Neg(x), measure.Down))
	case measure.Nearest:
		if x.Sign() < 0 {
			return new(big.Int).Neg(roundBig(new(big.Rat).Neg(x), measure.Nearest))
		}
		return roundBig(new(big.Rat).Add(x, big.NewRat(1, 2)), measure.Down)
	default:
		// Div rounds towards minus infinity where the divisor is positive.
		return new(big.Int).Div(x.Num(), x.Denom())
	}
}

func clampBig(n *big.Int) measure.Length {
	switch {
	case n.IsInt64():
		return measure.Length(n.Int64())
	case n.Sign() < 0:
		return math.MinInt64
	default:
		return math.MaxInt64
	}
}
