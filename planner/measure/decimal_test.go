package measure_test

import (
	"fmt"
	"math"
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

func TestDecimal(t *testing.T) {
	// Hand-worked.
	for _, c := range []struct {
		length measure.Length
		unit   measure.Unit
		places int
		want   string
	}{
		{14*in + in/2, measure.Inches, 6, "14.5"},
		{14 * in, measure.Inches, 6, "14"},
		{100 * in, measure.Inches, 0, "100"},
		{0, measure.Inches, 6, "0"},
		{in / 3, measure.Inches, 6, "0.333333"},
		{2 * in / 3, measure.Inches, 6, "0.666667"},
		{in / 16, measure.Inches, 3, "0.063"},   // 0.0625, a half away from zero
		{-in / 16, measure.Inches, 3, "-0.063"}, // the same below zero
		{in / 2, measure.Inches, 0, "1"},
		{-in / 2, measure.Inches, 0, "-1"},
		{in/2 - 1, measure.Inches, 0, "0"},
		{-1, measure.Inches, 6, "0"}, // never -0
		{10*in - 1, measure.Inches, 6, "10"},
		{1, measure.Inches, 9, "0.000000007"}, // a tick is 6.8e-9 in: no exponent
		{1, measure.Inches, 40, "0.000000007"},
		{in / 2, measure.Inches, -1, "1"},
		{5 * in, measure.Centimetres, 6, "12.7"},
		{205 * mm, measure.Centimetres, 1, "20.5"},
		{math.MaxInt64, measure.Centimetres, 2, "160127986750.95"}, // 2⁶³/57 600 000, by big-number calculator
	} {
		t.Run(fmt.Sprint(c.length, " ", c.unit, " ", c.places), func(t *testing.T) {
			assert.Equal(t, c.want, c.length.Decimal(c.unit, c.places))
		})
	}
}

func TestDecimalAgreesWithUnboundedArithmetic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := everyInt64().Draw(t, "length")
		places := rapid.IntRange(0, 9).Draw(t, "places")
		for u, side := range sides {
			exact := new(big.Rat).SetFrac(big.NewInt(int64(l)), big.NewInt(int64(side)))
			assert.Equal(t, decimalBig(exact, places), l.Decimal(u, places))
			assert.InEpsilon(t, 1+math.Abs(floatBig(exact)), 1+math.Abs(l.In(u)), 1e-12)
		}
	})
}

func TestAreaDecimalAgreesWithUnboundedArithmetic(t *testing.T) {
	check := func(t assert.TestingT, area measure.Area, places int) {
		for u, side := range sides {
			exact := new(big.Rat).SetFrac(area.Ticks(), product(side, side))
			assert.Equal(t, decimalBig(exact, places), area.Decimal(u, places))
			assert.InEpsilon(t, 1+math.Abs(floatBig(exact)), 1+math.Abs(area.In(u)), 1e-12)
			assert.Equal(t, exact.Sign() < 0, area.In(u) < 0)
		}
	}
	for _, a := range ends {
		for _, b := range ends {
			check(t, measure.Mul(a, b), 4)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		area := measure.Mul(everyInt64().Draw(t, "a"), everyInt64().Draw(t, "b"))
		check(t, area, rapid.IntRange(0, 9).Draw(t, "places"))
	})
}

func TestDecimalIsWhatJSONTakesForANumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := everyInt64().Draw(t, "length").Decimal(measure.Inches, 6)
		assert.Regexp(t, `^(0|-?(0|[1-9][0-9]*)(\.[0-9]{0,5}[1-9])?)$`, s)
		assert.NotEqual(t, "-0", s)
	})
}

var sides = map[measure.Unit]measure.Length{measure.Inches: in, measure.Centimetres: cm}

// decimalBig writes x with at most the given places; FloatString rounds halves
// away from zero.
func decimalBig(x *big.Rat, places int) string {
	s := x.FloatString(places)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

func floatBig(x *big.Rat) float64 {
	f, _ := x.Float64()
	return f
}
