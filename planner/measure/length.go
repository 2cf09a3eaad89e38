// Package measure holds lengths and areas as a patchwork maker uses them: exact
// values, parsed from what people write and printed back.
//
// Inches and centimetres share one integer grid, so a job may mix them freely.
package measure

// Length is a whole number of ticks. One inch is 146 304 000 ticks and one
// millimetre 5 760 000, so that 1/64 in, 0.001 in and 0.001 mm, and each of
// these divided by 2⁴·3², are whole. The int64 reaches about 1600 km either way.
//
// Sums and differences are those of the integers; use Scale for a product or a
// quotient that may not be whole.
type Length int64

// The units. The inch is 25.4 mm and the yard 0.9144 m exactly: the
// international yard of 1959, as in NIST Special Publication 811, appendix B.
const (
	Millimetre Length = 5_760_000
	Centimetre        = 10 * Millimetre
	Metre             = 100 * Centimetre
	Inch       Length = 146_304_000
	Yard              = 36 * Inch
)

// Longest is the longest measure that the parser takes; more is a slip of the
// pen.
const Longest = 1000 * Metre

// Times returns n of l laid end to end, n·l. The product must fit an int64;
// any count of pieces below a million does, for lengths up to Longest.
func (l Length) Times(n int) Length { return l * Length(n) }

// Half returns l/2: exactly where l is even, which every measure on a ruler's
// or a metric grid is, else to the tick further from zero.
func (l Length) Half() Length { return l.Scale(1, 2, Nearest) }

// RoundUp returns the smallest multiple of step that is not less than l, as
// cloth is bought. The step must be positive; a result beyond an int64 is
// clamped to the largest one.
func (l Length) RoundUp(step Length) Length {
	over := l % step
	if over == 0 {
		return l
	}
	if over < 0 {
		return l - over
	}
	if l-over > maxLength-step {
		return maxLength
	}
	return l - over + step
}

// FloorDiv says how many b fit into a: a/b rounded down. It is for a ≥ 0 and
// b > 0, and panics where b is 0.
func FloorDiv(a, b Length) int { return int(a / b) }

// CeilDiv says how many b it takes to cover a: a/b rounded up. It is for a ≥ 0
// and b > 0, and panics where b is 0.
func CeilDiv(a, b Length) int {
	n := int(a / b)
	if a%b > 0 {
		n++
	}
	return n
}
