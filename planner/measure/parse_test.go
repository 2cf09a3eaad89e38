package measure_test

import (
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

func TestParseTakesWhatQuiltersWrite(t *testing.T) {
	// Hand-worked; a bare number is in inches here. The mixed fractions with
	// their own characters are the ones that are easily read as 21/2, or a lone ½
	// dropped.
	const eightAndHalf = 8*in + in/2
	for text, want := range map[string]measure.Length{
		"8": 8 * in, "08": 8 * in, "8.5": eightAndHalf, "8.50": eightAndHalf, "8,5": eightAndHalf,
		".5": in / 2, "0.5": in / 2, ",5": in / 2, "0,375": 3 * in / 8, "00,375": 3 * in / 8,
		"8,25": 8*in + in/4, "8.125": 8*in + in/8, "8,0625": 8*in + in/16, "1234,567": 1_234_567 * (in / 1000),

		"8 1/2": eightAndHalf, "8  1/2": eightAndHalf, "8\t1/2": eightAndHalf, "8-1/2": eightAndHalf,
		"8\u20101/2": eightAndHalf, "8\u20111/2": eightAndHalf, "8–1/2": eightAndHalf,
		"1/2": in / 2, "17/2": eightAndHalf, "0 1/2": in / 2, "8 2/4": eightAndHalf, "8 0/4": 8 * in,
		"8 1⁄2": eightAndHalf, "8 1∕2": eightAndHalf, "2 1⁄2": 2*in + in/2,
		"8½": eightAndHalf, "8 ½": eightAndHalf, "8-½": eightAndHalf, "½": in / 2, "2½": 2*in + in/2,
		"1¼": in + in/4, "1¾": in + 3*in/4, "1⅛": in + in/8, "1⅜": in + 3*in/8, "1⅝": in + 5*in/8,
		"1⅞": in + 7*in/8, "1⅓": in + in/3, "1⅔": in + 2*in/3,

		`8 1/2"`: eightAndHalf, `8½"`: eightAndHalf, "8½″": eightAndHalf, "8 1/2”": eightAndHalf,
		"8 1/2“": eightAndHalf, "8 1/2″": eightAndHalf, "8 1/2''": eightAndHalf, "8 1/2’’": eightAndHalf,
		"8 1/2′′": eightAndHalf, "8 1/2 ″": eightAndHalf, `8.5"`: eightAndHalf,
		"8 1/2 in": eightAndHalf, "8 1/2in": eightAndHalf, "8 1/2 in.": eightAndHalf, "8 1/2 IN": eightAndHalf,
		"1 inch": in, "8 1/2 inches": eightAndHalf, "8½ Inches": eightAndHalf,

		"20 cm": 200 * mm, "20cm": 200 * mm, "20,5 cm": 205 * mm, "20.5 cm": 205 * mm, "205 mm": 205 * mm,
		"7.5mm": 15 * mm / 2, "20 1/2 cm": 205 * mm, "0.5 m": 500 * mm, "½ m": 500 * mm, "1,5 m": 1500 * mm,
		"2 metres": 2 * m, "1 metre": m, "1 meter": m, "2 meters": 2 * m, "2 M": 2 * m,
		"3 centimetres": 3 * cm, "1 centimetre": cm, "1 centimeter": cm, "3 centimeters": 3 * cm,
		"3 millimetres": 3 * mm, "1 millimetre": mm, "1 millimeter": mm, "3 millimeters": 3 * mm,
		"1 1/4 yd": 45 * in, "1¼ yd": 45 * in, "1 1/4 yard": 45 * in, "2 yards": 72 * in, "2 yds": 72 * in,
		"2 yd.": 72 * in, "2 yds.": 72 * in, "1/3 yd": 12 * in, "2/3 yard": 24 * in, "4 1/2 yd": 162 * in,

		"  8 1/2 in  ": eightAndHalf, "8 1/2\n": eightAndHalf, "\u00a08\u00a01/2\u202fin\u00a0": eightAndHalf,
		"8\u20091/2\u2009in": eightAndHalf, "20\u202fcm": 200 * mm, "20\u200acm": 200 * mm, "\u300020\u2007cm": 200 * mm,

		"1000 m": measure.Longest, "1000000 mm": measure.Longest,
	} {
		t.Run(text, func(t *testing.T) {
			got, err := measure.Parse(text, measure.Inches)
			require.NoError(t, err)
			assert.Equal(t, want, got)
		})
	}
}

func TestBareNumberIsInTheJobsUnit(t *testing.T) {
	for text, want := range map[string]measure.Length{"8 1/2": 85 * mm, "0.75": 15 * mm / 2, "8 1/2 in": 8*in + in/2} {
		t.Run(text, func(t *testing.T) {
			got, err := measure.Parse(text, measure.Centimetres)
			require.NoError(t, err)
			assert.Equal(t, want, got)
		})
	}
}

func TestParseGoesToTheNearestTick(t *testing.T) {
	// Hand-worked: an inch is 146 304 000 ticks. /7 = 20 900 571.43 and
	// 3/7 = 62 701 714.29; /11 = 13 300 363.64; 1/292608000 is half a tick; 0.3333333 is a
	// third less 4.88 ticks, and an eighth 3 brings it within half of one.
	for text, want := range map[string]measure.Length{
		"1/7": 20_900_571, "3/7": 62_701_714, "1/11": 13_300_364,
		"1/292608000": 1, "3/292608000": 2, "2 1/7": 2*in + 20_900_571,
		"0.333333333333333333": in / 3, "0.33333333": in / 3, "0.3333333": in/3 - 5,
	} {
		t.Run(text, func(t *testing.T) {
			got, err := measure.Parse(text, measure.Inches)
			require.NoError(t, err)
			assert.Equal(t, want, got)
		})
	}
}

// TestParseRefuses has a phrase of the reason beside each text, so that a text
// is refused for what is wrong with it.
func TestParseRefuses(t *testing.T) {
	const (
		negative  = "cannot be negative"
		begins    = "begins with a number"
		notUnit   = "is not a unit"
		second    = "second number"
		stroke    = "both sides of a fraction's stroke"
		digits    = "more digits"
		thousands = "thousands or decimals"
		tooLong   = "longer than 1000 m"
		zero      = "must be more than 0"
	)
	for text, reason := range map[string]string{
		"": "nothing is written", "   ": "nothing is written", "\u00a0": "nothing is written",

		"-8": negative, "-0": negative, "- 8": negative, "-1/2": negative, "−8": negative, "–8": negative, "-½": negative,
		"-inf": negative, "-.5": negative,
		"NaN": begins, "nan": begins, "Inf": begins, "+Inf": begins, "infinity": begins, "+8": begins, "∞": begins,
		"eight": begins, "in": begins, `"`: begins, "cm 20": begins, ".": begins, ",": begins, "(8)": begins, "８": begins,
		"٨": begins, "²": begins, "#8": begins, "\x00": begins, "\xff": begins, "a yard": begins, "⅑": begins,

		"0x10": notUnit, "0b1": notUnit, "1_000": notUnit, "1e3": notUnit, "1E3": notUnit, "1p3": notUnit, "8 km": notUnit,
		"8 1/2 inchs": notUnit, "8 1/2 x 9": notUnit, "8 in in": notUnit, `8""`: notUnit, "8 in 1/2": notUnit,
		"8\x00": notUnit, "8\u200b": notUnit, "8%": notUnit, "8 1/2 \xff": notUnit, "4⅑": notUnit, "8 cm.": notUnit,
		"8 -": notUnit, "8±1": notUnit, "8!": notUnit, "8 1/2⁄": stroke,

		"8'": "feet", "8 ft": "feet", "1 foot": "feet", "2 feet": "feet", "8′": "feet", "8’": "feet",

		"≈ 8 9/16 in": "≈ marks", "≈8": "≈ marks", "~8": "≈ marks",

		"1/2 10": second, "2 1/2 30": second, "3/2 1/2": second, "8 10": second, "1 000": second, "1\u00a0000": second,
		"8.5 1/2": second, "½ ½": second, "½½": second, "8½½": second, "½8": second, "8 - 1/2": second, "8- 1/2": second,
		"8 -1/2": second, "8-10": second, "8 – 10 in": second, "8-10 1/2": second, "8.5½": second, "8,5 1/2": second,

		"5/2/2": stroke, "1 1/-2": stroke, "1/2,000": stroke, "1/": stroke, "/2": stroke, "1//2": stroke, "1 /2": stroke,
		"1/ 2": stroke, "8½/2": stroke, "1/½": stroke, "1/x": stroke, "8.5/2": stroke, "1/2.5": stroke, "8 1/2/2": stroke,
		"⁄2": stroke, "1/+2": stroke, "1/3x2": notUnit,

		"1/0": "0 below its stroke", "8 1/0": "0 below its stroke", "0/0": "0 below its stroke", "1/000": "0 below its stroke",
		"8 2/2": "less than 1", "1 3/2": "less than 1", "8-9/8": "less than 1",

		"8.": "follow the decimal mark", "8. in": "follow the decimal mark", "8,": "follow the decimal mark",
		"8..5": "follow the decimal mark", "8.½": "follow the decimal mark",
		"1.2.3": "two decimal marks", "1,234.5": "two decimal marks", "1.234,5": "two decimal marks",
		"1,000,000": "two decimal marks",
		"1,000":     thousands, "8,125": thousands, "12,500 mm": thousands, "999,999": thousands,

		"0": zero, "0.0": zero, "0 in": zero, "0/4": zero, "0 0/4": zero, "0,000": zero, "000": zero, ".0": zero,
		"0.0000000001 mm": zero, // a sixtieth of half a tick

		"1000.001 m": tooLong, "1000000.1 mm": tooLong, "39370.1": tooLong, "999999999 in": tooLong,
		"999999999999999999 yd": tooLong, "999999999999999999/1 yd": tooLong, "999999999999999999.9 m": tooLong,
		"9223372036854775807": digits, "18446744073709551616": digits, "99999999999999999999999999 in": digits,
		"1/99999999999999999999": digits, "99999999999999999999/7": digits, "8 1/99999999999999999999": digits,
		"8 99999999999999999999/3": digits, "0.3333333333333333333": digits, "99999999999999999999.5": digits,
		"0.0000000000000000000000000000000001": digits,
	} {
		t.Run(text, func(t *testing.T) {
			got, err := measure.Parse(text, measure.Inches)
			var syntax *measure.SyntaxError
			require.ErrorAs(t, err, &syntax)
			assert.Contains(t, syntax.Reason, reason)
			assert.Equal(t, text, syntax.Text)
			assert.Zero(t, got)
		})
	}
}

func TestParseAllowZeroTakesZeroAndNothingElseBesides(t *testing.T) {
	for _, text := range []string{"0", "0 in", "0.0", "0 cm", "0/4", " 0 ", "00"} {
		got, err := measure.ParseAllowZero(text, measure.Inches)
		require.NoError(t, err, text)
		assert.Zero(t, got, text)
	}
	got, err := measure.ParseAllowZero("2 1/2", measure.Inches)
	require.NoError(t, err)
	assert.Equal(t, 2*in+in/2, got)
	for _, text := range []string{"", "-0", "-1", "none", "1,000", "1001 m", "0 0"} {
		_, err := measure.ParseAllowZero(text, measure.Inches)
		assert.Error(t, err, text)
	}
}

func TestParseNamedWantsTheUnit(t *testing.T) {
	got, err := measure.ParseNamed("1 1/2 yd")
	require.NoError(t, err)
	assert.Equal(t, 54*in, got)
	for text, reason := range map[string]string{
		"2": "unit is missing", "1 1/2": "unit is missing", "0": "unit is missing", "0 yd": "more than 0",
		"2 bolts": "is not a unit", "": "nothing is written", "1001 m": "longer than 1000 m",
	} {
		_, err := measure.ParseNamed(text)
		assert.ErrorContains(t, err, reason, text)
	}
}

// TestParseAgreesWithUnboundedArithmetic writes a number in any of its forms
// and works out beside it what it should be.
func TestParseAgreesWithUnboundedArithmetic(t *testing.T) {
	units := map[string]measure.Length{"": in, "in": in, `"`: in, "mm": mm, "cm": cm, "m": m, "yd": yd}
	names := []string{"", "in", `"`, "mm", "cm", "m", "yd"}
	rapid.Check(t, func(t *rapid.T) {
		text, value := drawNumber(t)
		name := rapid.SampledFrom(names).Draw(t, "unit")
		text += rapid.SampledFrom([]string{"", " ", "\u00a0", "\u2009 "}).Draw(t, "gap") + name

		ticks := new(big.Rat).Mul(value, new(big.Rat).SetInt64(int64(units[name])))
		want := clampBig(roundBig(ticks, measure.Nearest))
		got, err := measure.ParseAllowZero(text, measure.Inches)
		if want > measure.Longest {
			assert.Error(t, err, text)
			return
		}
		require.NoError(t, err, text)
		// Whole and part are rounded apart, but a whole number of units is a
		// whole number of ticks, so the sum is rounded once.
		assert.Equal(t, want, got, text)
	})
}

// drawNumber returns a number as somebody might write it, and its value.
func drawNumber(t *rapid.T) (string, *big.Rat) {
	whole := rapid.StringMatching(`[1-9][0-9]{0,5}`).Draw(t, "whole")
	den := rapid.IntRange(2, 1000).Draw(t, "den")
	num := rapid.IntRange(1, den-1).Draw(t, "num")
	fraction := big.NewRat(int64(num), int64(den))
	sum := new(big.Rat).Add(rat(whole), fraction)
	switch rapid.SampledFrom([]string{"whole", "decimal", "comma", "fraction", "mixed", "hyphen"}).Draw(t, "form") {
	case "decimal":
		text := whole + "." + rapid.StringMatching(`[0-9]{1,15}`).Draw(t, "decimals")
		return text, rat(text)
	case "comma":
		text := whole + "." + rapid.StringMatching(`[0-9]{1,2}|[0-9]{4,15}`).Draw(t, "decimals")
		return strings.Replace(text, ".", ",", 1), rat(text)
	case "fraction":
		return frac(num, den), fraction
	case "mixed":
		return whole + rapid.SampledFrom([]string{" ", "\u202f"}).Draw(t, "blank") + frac(num, den), sum
	case "hyphen":
		return whole + "-" + frac(num, den), sum
	default:
		return whole, rat(whole)
	}
}

func rat(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic("no number: " + s)
	}
	return r
}

func frac(num, den int) string {
	return big.NewInt(int64(num)).String() + "/" + big.NewInt(int64(den)).String()
}
