package measure

import (
	"math/bits"
	"strconv"
	"strings"
)

// mostPlaces is as many decimals as a tick has meaning for; 10 to that power
// times the remainder of an inch still fits 64 bits.
const mostPlaces = 9

// Decimal returns l in u as a plain decimal for machines: at most the given
// places (0 to 9, others are taken as the nearer end), rounded half away from
// zero, without trailing zeros, exponent or −0.
func (l Length) Decimal(u Unit, places int) string {
	return decimal(wide{0, l.magnitude()}, l < 0, uint64(u.length()), places)
}

// Decimal returns a in square inches or square centimetres as a plain decimal
// for machines, with the same rules as a length's.
func (a Area) Decimal(u Unit, places int) string {
	unit := uint64(u.length())
	return decimal(a.magnitude(), a.hi < 0, unit*unit, places)
}

// In returns l in u, for times and thread only: geometry stays with lengths,
// which are exact.
func (l Length) In(u Unit) float64 { return float64(l) / float64(u.length()) }

// decimal writes ±value/unit.
func decimal(value wide, negative bool, unit uint64, places int) string {
	places = min(max(places, 0), mostPlaces)
	power := powerOfTen(places)
	whole, rest := value.div(unit)

	// rest < unit, so the quotient is below the power and the division is safe.
	hi, lo := bits.Mul64(rest, power)
	parts, rest := bits.Div64(hi, lo, unit)
	if Nearest.grows(negative, rest, unit) {
		parts++
	}
	if parts == power {
		whole, parts = whole.add(wide{0, 1}), 0
	}

	digits := whole.digits()
	if parts > 0 {
		digits += "." + strings.TrimRight(padded(parts, places), "0")
	}
	if negative && digits != "0" {
		return "-" + digits
	}
	return digits
}

func powerOfTen(n int) uint64 {
	power := uint64(1)
	for range n {
		power *= 10
	}
	return power
}

// padded writes n with leading zeros to the given number of digits.
func padded(n uint64, digits int) string {
	s := strconv.FormatUint(n, 10)
	return strings.Repeat("0", max(0, digits-len(s))) + s
}

// digits writes a wide number in base ten, nineteen digits at a time. 10¹⁹ is
// the largest power that 64 bits hold, and less than 2⁶⁴, so something is left
// in front of every block.
func (w wide) digits() string {
	const block = 19
	tail := ""
	for w.hi > 0 {
		var rest uint64
		w, rest = w.div(powerOfTen(block))
		tail = padded(rest, block) + tail
	}
	return strconv.FormatUint(w.lo, 10) + tail
}
