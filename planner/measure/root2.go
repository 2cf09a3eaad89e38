package measure

// TimesRoot2 returns l·√2, the diagonal of a square of side l, rounded as r
// says. It comes from the integer square root of 2l², so the rounding is that
// of the true value. Beyond an int64 it is clamped to its end.
func (l Length) TimesRoot2(r Rounding) Length {
	square := mulWide(l.magnitude(), l.magnitude())
	return rooted(square.add(square), false, l < 0, r)
}

// OverRoot2 returns l/√2, the side of a square of diagonal l, rounded as r
// says. It comes from the integer square root of l²/2, so the rounding is that
// of the true value.
func (l Length) OverRoot2(r Rounding) Length {
	square := mulWide(l.magnitude(), l.magnitude())
	return rooted(square.half(), l&1 == 1, l < 0, r)
}

// rooted rounds the root of n, or of n + 1/2 where half is set. Neither is ever
// a perfect square here, as √2 is irrational, unless n is 0.
//
// With f the integer part, the root lies above f + 1/2 exactly when what it is
// the root of exceeds f² + f + 1/4; n − f² = f decides by the half alone.
func rooted(n wide, half, negative bool, r Rounding) Length {
	floor := n.root()
	rest := n.sub(mulWide(floor, floor))
	quarters := uint64(1)
	switch {
	case n == wide{} && !half:
		quarters = 0
	case wide{0, floor}.less(rest) || half && rest == wide{0, floor}:
		quarters = 3
	}
	root := wide{0, floor}
	if r.grows(negative, quarters, 4) {
		root = root.add(wide{0, 1})
	}
	return clamp(root, negative)
}
