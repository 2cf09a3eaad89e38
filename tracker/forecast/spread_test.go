package forecast

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Quantiles of the standard normal, from printed tables.
func TestStandardNormal(t *testing.T) {
	for p, z := range map[float64]float64{0.5: 0, 0.75: 0.674490, 0.80: 0.841621, 0.90: 1.281552,
		0.95: 1.644854, 0.975: 1.959964, 0.99: 2.326348, 0.05: -1.644854} {
		assert.InDelta(t, z, standardNormal(p), 5e-7)
	}
}

// Closed forms of the lognormal, recomputed.
func TestLognormalQuantiles(t *testing.T) {
	for _, c := range []struct{ mean, sigma, median, q90, q95 float64 }{
		{1.648721, 1, 1, 3.602224, 5.180252},
		{113.491775, 0.25, 110, 151.542825, 165.951201},
	} {
		d := lognormal{c.mean, c.sigma}
		assert.InEpsilon(t, c.median, d.at(0), 1e-6)
		assert.InEpsilon(t, c.q90, d.at(standardNormal(0.90)), 1e-6)
		assert.InEpsilon(t, c.q95, d.at(standardNormal(0.95)), 1e-6)
	}
}

// The sum of two independent lognormals, mu ln 110 and ln 100, spreads 0.25 and
// 0.15. The values are recomputed from the exact two-moment match (Fenton 1960).
func TestSumMatchesTwoMoments(t *testing.T) {
	var l load
	l.add("sew", 110*math.Exp(0.25*0.25/2), 0.25)
	l.add("press", 100*math.Exp(0.15*0.15/2), 0.15)
	assert.InDelta(t, 214.623127, l.mean, 1e-6)
	assert.InDelta(t, 1063.441587, l.variance, 1e-5)

	d := l.made(0)
	assert.InDelta(t, 0.15107670, d.sigma, 1e-8)
	assert.InDelta(t, 5.35747151, math.Log(d.at(0)), 1e-8)
	assert.InDelta(t, 212.187752, d.at(0), 1e-5)
	assert.InDelta(t, 257.516575, d.at(standardNormal(0.90)), 1e-4)
	assert.InDelta(t, 272.045835, d.at(standardNormal(0.95)), 1e-4)

	// Must not match: Lo 2013 takes the variance to first order only.
	assert.Greater(t, math.Abs(d.sigma-0.14990766), 1e-3)
	assert.Greater(t, math.Abs(math.Log(d.at(0))-5.35764744), 1e-4)
}

// A slow presser is slow at every press: what has one key does not average out.
func TestOneKeyKeepsItsSpreadHoweverOftenItComes(t *testing.T) {
	var one, many load
	one.add("press", 400, 0.3)
	for range 40 {
		many.add("press", 10, 0.3)
	}
	assert.InDelta(t, 0.3, one.made(0).sigma, 1e-12)
	assert.InDelta(t, 0.3, many.made(0).sigma, 1e-12)

	// Different keys do: hand-worked, 40 equal ones have a fortieth of the variance.
	var apart load
	for i := range 40 {
		apart.add(string(rune('a'+i)), 10, 0.3)
	}
	want := math.Sqrt(math.Log(1 + (math.Exp(0.09)-1)/40))
	assert.InDelta(t, want, apart.made(0).sigma, 1e-12)
}

// Setup and unit of one key follow one normal variable. The moments are
// integrated numerically here (Simpson's rule), not taken from the closed form.
func TestSetupAndUnitOfAKeyGoTogether(t *testing.T) {
	var l load
	l.add("cut", 20, 0.8)
	l.add("cut", 70, 0.25)
	l.add("cut", 10, 0.8)

	const steps, reach = 4000, 10.0
	mean, square := 0.0, 0.0
	for i := 0; i <= steps; i++ {
		z := -reach + 2*reach*float64(i)/steps
		weight := 2.0 + 2*float64(i%2)
		if i == 0 || i == steps {
			weight = 1
		}
		density := weight * math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) * (2 * reach / steps) / 3
		total := 30*math.Exp(0.8*z-0.32) + 70*math.Exp(0.25*z-0.03125)
		mean += density * total
		square += density * total * total
	}
	assert.InEpsilon(t, mean, l.mean, 1e-9)
	assert.InEpsilon(t, square-mean*mean, l.variance, 1e-9)
}

// The maker's factor: a factor of three from the 5 to the 95 % quantile, and
// the mean stays the table's.
func TestMakersDifferByAFactorOfThree(t *testing.T) {
	assert.InDelta(t, 0.33395, makerSpread(), 1e-5) // hand-worked: 1.098612 / 3.289707

	var l load
	l.add("sew", 600, 0)
	d := l.made(makerSpread())
	assert.InDelta(t, 3, d.at(standardNormal(0.95))/d.at(standardNormal(0.05)), 1e-9)
	assert.InDelta(t, 600*math.Exp(-makerSpread()*makerSpread()/2), d.at(0), 1e-9)

	// It is common to all keys, so it does not average out either.
	for i := range 20 {
		l.add(string(rune('a'+i)), 100, 0)
	}
	assert.InDelta(t, makerSpread(), l.made(makerSpread()).sigma, 1e-12)
}

func TestNoWorkHasNoMinutes(t *testing.T) {
	var l load
	l.add("sew", 0, 0.5)
	l.add("sew", -10, 0.5)
	d := l.made(makerSpread())
	assert.Equal(t, lognormal{}, d)
	assert.Equal(t, 0.0, d.at(1.6))
}

// The quantiles are right as often as they say: the share of a fine grid of
// outcomes (an additive sequence of irrational steps, so that nothing is left
// to chance) that stays below them. Two moments are not the whole sum, hence
// the hundredth of tolerance.
func TestQuantilesCoverWhatTheySay(t *testing.T) {
	means, spreads := []float64{300, 120, 60, 240}, []float64{0.25, 0.4, 0.6, 0.3}
	roots := []float64{math.Sqrt(2), math.Sqrt(3), math.Sqrt(5), math.Sqrt(7), math.Sqrt(11)}
	var l load
	for i, mean := range means {
		l.add(string(rune('a'+i)), mean, spreads[i])
	}
	d := l.made(makerSpread())

	const outcomes = 20000
	for _, p := range levels {
		below := 0
		for n := 1; n <= outcomes; n++ {
			_, at := math.Modf(float64(n) * roots[4])
			maker := lognormal{1, makerSpread()}.at(standardNormal(at))
			sum := 0.0
			for i, mean := range means {
				_, at := math.Modf(float64(n) * roots[i])
				sum += lognormal{mean, spreads[i]}.at(standardNormal(at))
			}
			if maker*sum <= d.at(standardNormal(p)) {
				below++
			}
		}
		assert.InDelta(t, p, float64(below)/outcomes, 0.01)
	}
}

// A spread that no table has is read as the widest, so that more work keeps
// taking longer; less than none is none.
func TestSpreadsAreKeptWithinReason(t *testing.T) {
	for given, want := range map[float64]float64{-1: 0, 0: 0, 1.2: 1.2, 1.4: 1.4, 3: 1.4, 1000: 1.4} {
		var l load
		l.add("sew", 60, given)
		assert.InDelta(t, want, l.made(0).sigma, 1e-12)
	}
}
