package render

import (
	"bytes"
	"math"
	"math/big"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
	"quiltrun/tracker/forecast"
)

// Expected digits are hand-worked from the rule: at most so many decimals, half
// away from zero, no exponent, no −0, no zeros at the end.
func TestDecimalsAreRoundedHalfAwayFromZero(t *testing.T) {
	for _, c := range []struct {
		x      float64
		places int
		want   number
	}{
		{0, 2, "0"}, {math.Copysign(0, -1), 2, "0"}, {-0.001, 2, "0"}, {0.125, 2, "0.13"}, {-0.125, 2, "-0.13"},
		{1.005, 2, "1.01"}, {2.675, 2, "2.68"}, {0.005, 2, "0.01"}, {0.0049, 2, "0"}, {0.995, 2, "1"}, {9.999, 2, "10"},
		{99.995, 2, "100"}, {1e21, 2, "1000000000000000000000"}, {1e-9, 2, "0"}, {35, 2, "35"}, {0.5, 0, "1"}, {1.50, 2, "1.5"},
		{0.9995, 3, "1"}, {0.93649, 3, "0.936"},
	} {
		assert.Equal(t, c.want, decimal(c.x, c.places), "%v", c.x)
	}
}

func TestDecimalIsTheNearestWithSoManyPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-1e9, 1e9).Draw(t, "x")
		places := rapid.IntRange(0, 6).Draw(t, "places")
		shown := decimal(x, places)
		assert.Regexp(t, plainNumber, string(shown))
		got, ok := new(big.Rat).SetString(string(shown))
		require.True(t, ok)
		exact, _ := new(big.Rat).SetString(strconv.FormatFloat(x, 'f', -1, 64))
		half := new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil))
		half.Mul(half, big.NewRat(1, 2))
		off := new(big.Rat).Sub(got, exact)
		assert.LessOrEqual(t, off.Abs(off).Cmp(half), 0)
	})
}

func TestWhatIsNoNumberIsAnErrorAndNothingIsWritten(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		var out bytes.Buffer
		answer := forecast.Answer{Job: "estuary-lap", Chance: &x}
		assert.Error(t, WhenJSON(&out, planner.Date{}, []forecast.Answer{answer}))
		assert.Empty(t, out.String())
	}
}
