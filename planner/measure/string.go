package measure

import "strconv"

// String returns l exactly, in the plainest form that can: inches with a
// fraction on the 1/64 in grid ("8 1/2 in"), centimetres on the 0.1 mm grid
// ("20.5 cm"), fractions for thirds of either ("8 1/3 in", "20 1/3 mm"),
// decimals on the 0.001 in and 0.001 mm grids, else a fraction of a millimetre.
// For 0 < l ≤ Longest the parser reads the same length back.
func (l Length) String() string {
	switch {
	case l%(Inch/64) == 0:
		return l.mixed(Inch) + " in"
	case l%(Millimetre/10) == 0:
		return l.Decimal(Centimetres, 2) + " cm"
	case l%(Inch/192) == 0:
		return l.mixed(Inch) + " in"
	case l%(Millimetre/30) == 0:
		return l.mixed(Millimetre) + " mm"
	case l%(Inch/1000) == 0:
		return l.Decimal(Inches, 3) + " in"
	case l%(Millimetre/1000) == 0:
		return decimal(wide{0, l.magnitude()}, l < 0, uint64(Millimetre), 3) + " mm"
	default:
		return l.mixed(Millimetre) + " mm"
	}
}

// mixed writes l exactly as a whole number and a fraction in lowest terms:
// "8 1/2", "1/3", "0".
func (l Length) mixed(unit Length) string {
	size := uint64(unit)
	whole, rest := l.magnitude()/size, l.magnitude()%size
	sign := ""
	if l < 0 {
		sign = "-"
	}
	if rest == 0 {
		return sign + strconv.FormatUint(whole, 10)
	}
	if whole > 0 {
		sign += strconv.FormatUint(whole, 10) + " "
	}
	common := gcd(rest, size)
	return sign + strconv.FormatUint(rest/common, 10) + "/" + strconv.FormatUint(size/common, 10)
}

func gcd(a, b uint64) uint64 {
	for b > 0 {
		a, b = b, a%b
	}
	return a
}
