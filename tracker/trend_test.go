package tracker

import (
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// reference is a data set of the NIST Statistical Reference Datasets
// (itl.nist.gov/div898/strd), as published: its certified values and its data.
func reference(t *testing.T, name string) (certified string, rows [][]float64) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "nist", name+".dat"))
	require.NoError(t, err)
	lines := strings.Split(string(text), "\n")
	for i := len(lines) - 1; i >= 0; i-- {
		fields := strings.Fields(lines[i])
		if len(fields) == 0 {
			continue
		}
		var row []float64
		for _, f := range fields {
			v, err := strconv.ParseFloat(f, 64)
			if err != nil {
				return strings.Join(lines[:i+1], "\n"), rows // the line above the data
			}
			row = append(row, v)
		}
		rows = append([][]float64{row}, rows...)
	}
	return "", rows
}

// certifiedAs is the first number after some words of the certified values.
func certifiedAs(t *testing.T, certified, words string) float64 {
	t.Helper()
	found := regexp.MustCompile(words + `[^0-9\-]*(-?[0-9.]+(?:E[-+][0-9]+)?)`).FindStringSubmatch(certified)
	require.NotNil(t, found, words)
	v, err := strconv.ParseFloat(found[1], 64)
	require.NoError(t, err)
	return v
}

// digits is to how many significant digits a value agrees with a certified one.
func digits(got, certified float64) float64 {
	if got == certified {
		return 15
	}
	return -math.Log10(math.Abs(got-certified) / math.Abs(certified))
}

// Certified values of simple linear regression: Norris, 36 observations.
func TestALineFitsAsNISTCertifies(t *testing.T) {
	_, rows := reference(t, "Norris")
	var x, y []float64
	for _, row := range rows {
		require.Len(t, row, 2)
		x, y = append(x, row[1]), append(y, row[0])
	}
	require.Len(t, y, 36)
	fit := Fit(x, y)
	for _, c := range []struct {
		what           string
		got, certified float64
	}{
		{"B0", fit.Start, -0.262323073774029},
		{"B1", fit.Slope, 1.00211681802045},
		{"standard deviation of B1", fit.SlopeSE, 0.429796848199937e-03},
		{"residual standard deviation", fit.Residuals, 0.884796396144373},
	} {
		assert.GreaterOrEqual(t, digits(c.got, c.certified), 11.0, c.what)
	}
}

// Certified means and standard deviations of univariate data; NumAcc4 is there
// to show sums that lose their last digits.
func TestMeanAndSpreadAreAsNISTCertifies(t *testing.T) {
	for name, least := range map[string]float64{"Lew": 13, "Michelso": 12, "NumAcc4": 8} {
		certified, rows := reference(t, name)
		var values []float64
		for _, row := range rows {
			require.Len(t, row, 1, name)
			values = append(values, row[0])
		}
		trend := Steady(values)
		assert.Len(t, values, int(certifiedAs(t, certified, "Number of Observations:")), name)
		assert.GreaterOrEqual(t, digits(trend.Mean, certifiedAs(t, certified, "Sample Mean")), least, name)
		assert.GreaterOrEqual(t, digits(trend.Spread, certifiedAs(t, certified, `Sample Standard Deviation \(denom. = n-1\)`)), least, name)
	}
}

func TestALineThroughFewValues(t *testing.T) {
	assert.Equal(t, Trend{}, Steady(nil))
	assert.Equal(t, Trend{N: 1, Mean: 3, Start: 3}, Steady([]float64{3}))
	two := Steady([]float64{3, 5})
	assert.Equal(t, 2.0, two.Slope)
	assert.Zero(t, two.SlopeSE, "two points have no scatter about their line")
}

// readTo is a series of measures of three strips in 16ths of an inch, as a ruler
// is read.
func readTo(widths ...float64) Series {
	x := Series{Unit: "in", Step: "three-strips", Name: "three strips"}
	for _, w := range widths {
		w = math.Round(w*16) / 16
		seam := (4.5 - w) / 4
		x.Readings = append(x.Readings, Reading{Seams: 2, Seam: inchesOf(seam), Planned: inchesOf(0.25)})
	}
	return x
}

func TestADriftIsToldFromScatter(t *testing.T) {
	for _, c := range []struct {
		why    string
		widths []float64
		told   bool
	}{
		{"a line a measure", []float64{3.5, 3.4375, 3.375, 3.3125}, true},
		{"with a reading that stays", []float64{3.5, 3.4375, 3.4375, 3.375, 3.3125}, true},
		{"growing", []float64{3.5, 3.5625, 3.5625, 3.625, 3.6875}, true},
		{"three are too few", []float64{3.5, 3.4375, 3.375}, false},
		{"all alike", []float64{3.5, 3.5, 3.5, 3.5, 3.5, 3.5}, false},
		{"up and down", []float64{3.5, 3.4375, 3.5, 3.4375, 3.5, 3.4375}, false},
		{"one that is off", []float64{3.5, 3.5, 3.5, 3.5, 3.25, 3.5}, false},
	} {
		d, told := readTo(c.widths...).Drift()
		assert.Equal(t, c.told, told, c.why)
		if told {
			assert.Equal(t, c.widths[len(c.widths)-1] > c.widths[0], d.Each > 0, c.why)
		}
	}
}

func TestADriftSaysWhenTheToleranceIsPassed(t *testing.T) {
	_, told := readTo(3.5, 3.46875, 3.4375, 3.40625).Drift() // read to 16ths: 3.5, 3.5, 3.4375, 3.4375
	assert.False(t, told)
	d, told := readTo(3.625, 3.5625, 3.5, 3.4375).Drift() // hand-worked: 1/16 less each time, 1/16 too small now
	require.True(t, told)
	n, on := d.Until(inchesOf(0.125))
	assert.Equal(t, []any{1, true}, []any{n, on}, "1/8 too small after one more")
	n, on = d.Until(inchesOf(0.0625))
	assert.Equal(t, []any{0, true}, []any{n, on}, "it is 1/16 too small already")
	d, told = readTo(3.875, 3.8125, 3.75, 3.6875).Drift()
	require.True(t, told)
	_, on = d.Until(inchesOf(0.125))
	assert.False(t, on, "3/16 too large, and coming back")
}

// A steady machine is called drifting no more often than is said, one series in
// twenty; a line of drift at every second measure is found in most series of
// eight. Scatter of 1/32 in about the true width, read to 1/16 in; the share is
// of 4000 series with a fixed seed.
func TestHowOftenADriftIsTold(t *testing.T) {
	random := rand.New(rand.NewSource(1))
	share := func(each float64) float64 {
		told := 0
		const all = 4000
		for range all {
			var widths []float64
			for i := range 8 {
				widths = append(widths, 3.5+float64(i)*each+random.NormFloat64()/32)
			}
			if _, drifts := readTo(widths...).Drift(); drifts {
				told++
			}
		}
		return float64(told) / all
	}
	steady, drifting := share(0), share(-1.0/32)
	t.Logf("told of a steady machine: %.3f, of a drifting one: %.3f", steady, drifting)
	assert.Less(t, steady, 0.06, "one in twenty, with what counting them scatters")
	assert.Greater(t, drifting, 0.9)
}
