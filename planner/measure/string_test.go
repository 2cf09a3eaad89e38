package measure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

func TestStringTakesThePlainestExactForm(t *testing.T) {
	// Hand-worked.
	for want, l := range map[string]measure.Length{
		"0 in":          0,
		"8 in":          8 * in,
		"8 1/2 in":      8*in + in/2,
		"3/4 in":        3 * in / 4,
		"1/64 in":       in / 64,
		"5 in":          127 * mm, // on both grids: inches
		"20.5 cm":       205 * mm,
		"0.01 cm":       mm / 10,
		"0.75 cm":       7*mm + mm/2,
		"8 1/3 in":      8*in + in/3,
		"1/192 in":      in / 192,
		"20 1/3 mm":     20*mm + mm/3,
		"1/30 mm":       mm / 30,
		"0.333 in":      in / 1000 * 333,
		"0.315 in":      8*mm + mm/1000, // on both grids of thousandths: inches
		"8.002 mm":      8*mm + mm/500,
		"1/7680 mm":     mm / 7680,
		"1/5760000 mm":  1,
		"-8 1/2 in":     -8*in - in/2,
		"-20.5 cm":      -205 * mm,
		"-1/5760000 mm": -1,
		"100000 cm":     measure.Longest,
	} {
		t.Run(want, func(t *testing.T) {
			assert.Equal(t, want, l.String())
		})
	}
}

// assertReadsBack holds for both meanings of a bare number, and where the unit
// must be named.
func assertReadsBack(t require.TestingT, l measure.Length) {
	for _, bare := range []measure.Unit{measure.Inches, measure.Centimetres} {
		got, err := measure.Parse(l.String(), bare)
		require.NoError(t, err)
		require.Equal(t, l, got)
	}
	got, err := measure.ParseNamed(l.String())
	require.NoError(t, err)
	require.Equal(t, l, got)
}

func TestEveryLengthReadsBackFromItsString(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { assertReadsBack(t, anyLength().Draw(t, "length")) })
	for _, l := range []measure.Length{1, 2, in - 1, in + 1, measure.Longest - 1, measure.Longest} {
		assertReadsBack(t, l)
	}
}

// The forms on the grids of rulers and tapes are those a person would write.
const (
	inFraction = `^[1-9][0-9]* in$|^([1-9][0-9]* )?[1-9][0-9]*/(2|4|8|16|32|64) in$`
	cmDecimal  = `^(0|[1-9][0-9]*)(\.[0-9]?[1-9])? cm$`
	inThird    = `^([1-9][0-9]* )?[1-9][0-9]*/(3|6|12|24|48|96|192) in$`
	mmThird    = `^([1-9][0-9]* )?[1-9][0-9]*/(3|6|15|30) mm$`
)

func TestGridLengthsReadBackFromAPlainForm(t *testing.T) {
	for name, grid := range map[string]struct {
		step measure.Length
		form string
	}{
		"1/64 in":            {in / 64, inFraction},
		"0.1 mm":             {mm / 10, cmDecimal + "|" + inFraction},
		"thirds of 1/64 in":  {in / 192, inThird + "|" + inFraction + "|" + cmDecimal + "|" + mmThird},
		"thirds of 0.1 mm":   {mm / 30, mmThird + "|" + cmDecimal + "|" + inFraction + "|" + inThird},
		"whole millimetres":  {mm, cmDecimal + "|" + inFraction},
		"eighths of an inch": {in / 8, inFraction},
	} {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				n := rapid.Int64Range(1, int64(measure.Longest/grid.step)).Draw(t, "steps")
				l := grid.step.Times(int(n))
				assert.Regexp(t, grid.form, l.String())
				assertReadsBack(t, l)
			})
		})
	}
}

func TestStringIsItsOwnOnceReadBack(t *testing.T) {
	// Two lengths never share a string, not even a tick apart.
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "length")
		assert.NotEqual(t, l.String(), (l + 1).String())
	})
}
