package measure_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// The expressions in tests read like a quilter's: 8*in + in/2.
const (
	in = measure.Inch
	yd = measure.Yard
	mm = measure.Millimetre
	cm = measure.Centimetre
	m  = measure.Metre
)

// anyLength draws lengths the parser can read, from a tick up to Longest.
func anyLength() *rapid.Generator[measure.Length] {
	return rapid.Custom(func(t *rapid.T) measure.Length {
		return measure.Length(rapid.Int64Range(1, int64(measure.Longest)).Draw(t, "ticks"))
	})
}

// everyInt64 draws lengths from the whole type, its ends included.
func everyInt64() *rapid.Generator[measure.Length] {
	return rapid.Custom(func(t *rapid.T) measure.Length {
		return measure.Length(rapid.Int64().Draw(t, "ticks"))
	})
}

func TestUnitsAreTheInternationalInchAndYard(t *testing.T) {
	// 1959: 1 yd = 0.9144 m and so 1 in = 25.4 mm, exactly. NIST SP 811,
	// appendix B.8. Hand-worked in tenths of a millimetre.
	assert.Equal(t, 254*mm/10, in)
	assert.Equal(t, 9144*mm/10, yd)
	assert.Equal(t, 36*in, yd)
	assert.Equal(t, measure.Length(146_304_000), in)
	assert.Equal(t, measure.Length(5_760_000), mm)
	assert.Equal(t, 1_000_000*mm, measure.Longest)
}

func TestGridsDividedByHalvesAndThirdsStayWhole(t *testing.T) {
	// A recut halves, a second recut halves again, thirds cut a centre: four
	// halvings and two thirdings of each grid must leave no remainder.
	const parts = 2 * 2 * 2 * 2 * 3 * 3
	for name, grid := range map[string]measure.Length{"1/64 in": in / 64, "0.001 in": in / 1000, "0.001 mm": mm / 1000} {
		t.Run(name, func(t *testing.T) {
			assert.Zero(t, grid%parts)
			assert.Zero(t, in%(in/64)+in%(in/1000)+mm%(mm/1000))
		})
	}
}

func TestTimesLaysPiecesEndToEnd(t *testing.T) {
	assert.Equal(t, 7*in+in/2, (2*in + in/2).Times(3)) // hand-worked
	assert.Equal(t, measure.Length(0), in.Times(0))
	assert.Equal(t, -3*in, in.Times(-3))
}

func TestHalfIsExactOrGoesAwayFromZero(t *testing.T) {
	// Hand-worked.
	assert.Equal(t, in/128, (in / 64).Half())
	assert.Equal(t, measure.Length(2), measure.Length(3).Half())
	assert.Equal(t, measure.Length(-2), measure.Length(-3).Half())
	assert.Equal(t, measure.Length(0), measure.Length(0).Half())
}

func TestRoundUpGoesToTheNextStep(t *testing.T) {
	// 148 in is 4.11 yd: 4 1/8 yd (148.5 in) in eighths, 4 1/4 in quarters; a
	// published example, petiterepublic.com, "How many yards of fabric". The
	// rest is hand-worked.
	for _, c := range []struct{ length, step, want measure.Length }{
		{148 * in, yd / 8, 148*in + in/2},
		{148 * in, yd / 4, 153 * in},
		{36 * in, yd / 8, 36 * in},
		{36*in + 1, yd / 8, 40*in + in/2},
		{1, 10 * cm, 10 * cm},
		{0, yd / 8, 0},
		{-1, 10 * cm, 0},
		{-10 * cm, 10 * cm, -10 * cm},
		{-11 * cm, 10 * cm, -10 * cm},
		{math.MaxInt64, 10, math.MaxInt64},
	} {
		t.Run(fmt.Sprint(c.length, " by ", c.step), func(t *testing.T) {
			assert.Equal(t, c.want, c.length.RoundUp(c.step))
		})
	}
}

func TestRoundUpIsTheLeastSufficientMultiple(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "length")
		step := measure.Length(rapid.Int64Range(1, int64(yd)).Draw(t, "step"))
		up := l.RoundUp(step)
		assert.Zero(t, up%step)
		assert.GreaterOrEqual(t, up, l)
		assert.Less(t, up-step, l)
	})
}

func TestDivisionCountsWholePieces(t *testing.T) {
	// Squares across cloth, and strips for a number of squares; hand-worked.
	for _, c := range []struct {
		a, b        measure.Length
		floor, ceil int
	}{
		{44 * in, 5 * in, 8, 9},
		{40 * in, 5 * in, 8, 8},
		{40*in - 1, 5 * in, 7, 8},
		{40*in + 1, 5 * in, 8, 9},
		{18 * in, 4*in + in/2, 4, 4},
		{0, 5 * in, 0, 0},
		{1, 5 * in, 0, 1},
		{math.MaxInt64, 2, math.MaxInt64 / 2, math.MaxInt64/2 + 1},
	} {
		t.Run(fmt.Sprint(c.a, " by ", c.b), func(t *testing.T) {
			assert.Equal(t, c.floor, measure.FloorDiv(c.a, c.b))
			assert.Equal(t, c.ceil, measure.CeilDiv(c.a, c.b))
		})
	}
}

func TestShopStep(t *testing.T) {
	// Common practice: eighths of a yard, tens of centimetres.
	assert.Equal(t, yd/8, measure.Inches.ShopStep())
	assert.Equal(t, 10*cm, measure.Centimetres.ShopStep())
	assert.Zero(t, yd%8)
}

func TestUnitName(t *testing.T) {
	assert.Equal(t, "in", measure.Inches.String())
	assert.Equal(t, "cm", measure.Centimetres.String())
}
