package forecast

import "math"

// widest is the largest spread of one operation that is reckoned with, a factor
// of four either way. Beyond about 1.48 the two-moment match gives way: the
// median of a sum can fall when work is added.
const widest = 1.4

// lognormal is a distribution of minutes by its mean and the standard deviation
// of its logarithm.
type lognormal struct {
	mean, sigma float64
}

// at is the quantile z standard deviations from the median.
func (d lognormal) at(z float64) float64 {
	return d.mean * math.Exp(z*d.sigma-d.sigma*d.sigma/2)
}

// standardNormal is the z that a standard normal variable stays below with
// probability p, 0 < p < 1.
func standardNormal(p float64) float64 {
	return math.Sqrt2 * math.Erfinv(2*p-1)
}

// load is work that adds up: mean and variance of S, the sum over the keys.
type load struct {
	mean, variance float64
	keys           map[string][]portion
}

// portion is the expected minutes of one key that have one spread.
type portion struct {
	spread, mean float64
}

// add puts expected minutes of a key on. Two lognormals of means a and b and
// spreads s and t that follow one normal variable have the covariance
// a·b·(exp(s·t) − 1); different keys have none.
func (l *load) add(key string, mean, spread float64) {
	if mean <= 0 {
		return
	}
	spread = min(max(spread, 0), widest)
	known := -1
	for i, p := range l.keys[key] {
		l.variance += 2 * mean * p.mean * math.Expm1(spread*p.spread)
		if p.spread == spread {
			known = i
		}
	}
	l.variance += mean * mean * math.Expm1(spread*spread)
	l.mean += mean
	if known >= 0 {
		l.keys[key][known].mean += mean
		return
	}
	if l.keys == nil {
		l.keys = map[string][]portion{}
	}
	l.keys[key] = append(l.keys[key], portion{spread, mean})
}

// made is the distribution of T = M·S, where the maker's factor has the given
// spread.
func (l *load) made(maker float64) lognormal {
	if l.mean == 0 {
		return lognormal{}
	}
	match := math.Log1p(l.variance / (l.mean * l.mean))
	return lognormal{mean: l.mean, sigma: math.Sqrt(maker*maker + match)}
}
