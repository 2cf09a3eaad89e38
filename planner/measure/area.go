package measure

import "math"

// Area is a whole number of square ticks, held in 128 bits with a sign: the
// product of any two lengths is exact. It reaches 2¹²⁷ square ticks either way,
// about 5·10¹⁸ m²; sums beyond that wrap. The zero value is no area, and == is
// equality.
type Area struct {
	hi int64
	lo uint64
}

// Mul returns the area of a rectangle of sides a and b; it is negative where
// one of them is.
func Mul(a, b Length) Area {
	product := mulWide(a.magnitude(), b.magnitude())
	return signed(product, (a < 0) != (b < 0))
}

// signed gives a magnitude its sign.
func signed(w wide, negative bool) Area {
	if negative {
		w = wide{}.sub(w)
	}
	return Area{int64(w.hi), w.lo}
}

// wide returns the two's complement of a, which adds and subtracts as it is.
func (a Area) wide() wide { return wide{uint64(a.hi), a.lo} }

func (a Area) magnitude() wide {
	if a.hi < 0 {
		return wide{}.sub(a.wide())
	}
	return a.wide()
}

// Add returns a + b.
func (a Area) Add(b Area) Area { return signed(a.wide().add(b.wide()), false) }

// Sub returns a − b.
func (a Area) Sub(b Area) Area { return signed(a.wide().sub(b.wide()), false) }

// Times returns n·a.
func (a Area) Times(n int) Area {
	m, count := a.magnitude(), magnitude(int64(n))
	product := mulWide(m.lo, count)
	product.hi += m.hi * count
	return signed(product, (a.hi < 0) != (n < 0))
}

// Half returns a/2: exactly where a is even, as twice the area of a polygon on
// an even grid is, else the whole number of square ticks next below.
func (a Area) Half() Area {
	return Area{a.hi >> 1, uint64(a.hi)<<63 | a.lo>>1}
}

// Cmp returns −1, 0 or +1 as a is less than, equal to or greater than b.
func (a Area) Cmp(b Area) int {
	switch {
	case a == b:
		return 0
	case a.hi < b.hi || a.hi == b.hi && a.lo < b.lo:
		return -1
	default:
		return 1
	}
}

// Sign returns −1, 0 or +1.
func (a Area) Sign() int { return a.Cmp(Area{}) }

// In returns a in square inches or square centimetres, for times and costs
// only: geometry compares areas, which are exact.
func (a Area) In(u Unit) float64 {
	m, unit := a.magnitude(), float64(u.length())
	value := (math.Ldexp(float64(m.hi), 64) + float64(m.lo)) / (unit * unit)
	if a.hi < 0 {
		return -value
	}
	return value
}
