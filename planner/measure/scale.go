package measure

import "math"

const (
	maxLength Length = math.MaxInt64
	minLength Length = math.MinInt64
)

// Rounding says what becomes of a value between two ticks. Down is for what a
// cut yields and Up for what is cut or bought: both then err on the side on
// which the cloth suffices.
type Rounding uint8

// The roundings.
const (
	Down    Rounding = iota // towards minus infinity
	Nearest                 // to the nearer tick, a half away from zero
	Up                      // towards plus infinity
)

// grows reports whether a magnitude that was cut off with the given remainder
// of den moves one further from zero.
func (r Rounding) grows(negative bool, rest, den uint64) bool {
	switch {
	case rest == 0:
		return false
	case r == Nearest:
		return rest >= den-rest
	case r == Up:
		return !negative
	default:
		return negative
	}
}

// Scale returns l·num/den, rounded as r says from the exact 128-bit product.
// Any of the three may be negative. A result beyond an int64 is clamped to its
// end. It panics where den is 0.
func (l Length) Scale(num, den int64, r Rounding) Length {
	negative := (l < 0) != (num < 0) != (den < 0)
	below := magnitude(den)
	quotient, rest := mulWide(l.magnitude(), magnitude(num)).div(below)
	if r.grows(negative, rest, below) {
		quotient = quotient.add(wide{0, 1})
	}
	return clamp(quotient, negative)
}

func (l Length) magnitude() uint64 { return magnitude(int64(l)) }

// magnitude is right for the smallest int64 too, whose absolute value is none.
func magnitude(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}

// clamp gives a magnitude its sign back.
func clamp(w wide, negative bool) Length {
	switch {
	case !w.less(wide{0, 1 << 63}) && negative:
		return minLength
	case !w.less(wide{0, 1 << 63}):
		return maxLength
	case negative:
		return -Length(w.lo)
	default:
		return Length(w.lo)
	}
}
