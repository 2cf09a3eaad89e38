package measure

import "math/bits"

// wide is an unsigned 128-bit integer: products of two lengths live here.
type wide struct{ hi, lo uint64 }

func mulWide(a, b uint64) wide {
	hi, lo := bits.Mul64(a, b)
	return wide{hi, lo}
}

// add and sub wrap at 2¹²⁸, like Go's own integers.
func (w wide) add(v wide) wide {
	lo, carry := bits.Add64(w.lo, v.lo, 0)
	hi, _ := bits.Add64(w.hi, v.hi, carry)
	return wide{hi, lo}
}

func (w wide) sub(v wide) wide {
	lo, borrow := bits.Sub64(w.lo, v.lo, 0)
	hi, _ := bits.Sub64(w.hi, v.hi, borrow)
	return wide{hi, lo}
}

func (w wide) less(v wide) bool {
	return w.hi < v.hi || w.hi == v.hi && w.lo < v.lo
}

func (w wide) half() wide {
	return wide{w.hi >> 1, w.hi<<63 | w.lo>>1}
}

// div returns quotient and remainder by long division in base 2⁶⁴. It panics
// where d is 0.
func (w wide) div(d uint64) (wide, uint64) {
	hi, rest := bits.Div64(0, w.hi, d)
	lo, rest := bits.Div64(rest, w.lo, d)
	return wide{hi, lo}, rest
}

// root returns the integer part of the square root, settling one binary digit
// after the other, so that no first guess can mislead it.
func (w wide) root() uint64 {
	var r uint64
	for bit := uint64(1) << 63; bit > 0; bit >>= 1 {
		if next := r | bit; !w.less(mulWide(next, next)) {
			r = next
		}
	}
	return r
}
