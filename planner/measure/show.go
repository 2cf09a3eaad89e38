package measure

// about marks what rounding has changed. The parser refuses it, lest a rounded
// measure come back as the true one.
const about = "≈ "

// Show returns l for reading: inches as a mixed fraction to 1/16 ("8 1/2 in"),
// centimetres to 0.1 ("20.5 cm"), to the nearest, a half away from zero. What
// rounding has changed carries a mark: "≈ 8 9/16 in".
func (l Length) Show(u Unit) string {
	near, shown := l.near(u)
	return rounded(l != near) + shown + " " + u.String()
}

// ShowYardage returns l as shops measure cloth: yards to 1/8 with thirds kept
// ("2 3/4 yd", "1 2/3 yd") or metres to 0.01 ("1.2 m"), to the nearest, marked
// with ≈ where that changed it. Round up to the shop's step before showing what
// to buy.
func (l Length) ShowYardage(u Unit) string {
	if u == Centimetres {
		near := l.nearest(Centimetre)
		return rounded(l != near) + decimal(wide{0, near.magnitude()}, near < 0, uint64(Metre), 2) + " m"
	}
	if l%(Yard/3) == 0 {
		return l.mixed(Yard) + " yd"
	}
	near := l.nearest(Yard / 8)
	return rounded(l != near) + near.mixed(Yard) + " yd"
}

// near returns l on the grid that Show prints, and its digits without the unit.
func (l Length) near(u Unit) (Length, string) {
	if u == Centimetres {
		near := l.nearest(Millimetre)
		return near, near.Decimal(Centimetres, 1)
	}
	near := l.nearest(Inch / 16)
	return near, near.mixed(Inch)
}

// nearest rounds to a multiple of step, a half away from zero; at the ends of
// an int64 to the last multiple within it.
func (l Length) nearest(step Length) Length {
	count := l.Scale(1, int64(step), Nearest)
	return step * min(max(count, minLength/step), maxLength/step)
}

func rounded(changed bool) string {
	if changed {
		return about
	}
	return ""
}
