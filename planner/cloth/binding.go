package cloth

import "quiltrun/planner/measure"

// Binding is strips joined into one length.
type Binding struct {
	Strips    int
	Strip     measure.Length // cut width
	Edge      measure.Length // round the quilt
	Allowance measure.Length // asked for beyond the edge
	Joined    measure.Length // length of the joined strips, closing join taken off
	Cloth     measure.Length // off the bolt
	each      measure.Length // what a strip adds
}

// Spare is what is left beyond the edge.
func (b Binding) Spare() measure.Length { return b.Joined - b.Edge }

// Fewer is what one strip fewer would leave beyond the edge; negative where it
// would not go round.
func (b Binding) Fewer() measure.Length { return b.Spare() - b.each }

// BindingOf counts the strips that go round an edge with an allowance. Each join
// costs some length, and the closing join another: a diagonal join one strip width
// (source: Crayon Box Quilt Studio, "What is lost?": 3 in strips of 10 in join to
// 17), a straight one its two seams. It returns false where a join costs a whole
// strip.
func BindingOf(edge, allowance, strip, width, join measure.Length) (Binding, bool) {
	if join >= width {
		return Binding{}, false
	}
	n := max(1, measure.CeilDiv(edge+allowance, width-join))
	return Binding{
		Strips: n, Strip: strip, Edge: edge, Allowance: allowance,
		Joined: (width - join).Times(n), Cloth: strip.Times(n), each: width - join,
	}, true
}

// BiasSquares are alike squares, as few as the cloth's width allows, that a length
// of binding is cut from in one continuous spiral on the bias. The side is rounded
// up to a whole step. Length times width of the strip is the area of the squares
// less their seams: each is cut on the diagonal and sewn to a tube, two seams as
// long as its side. The published rule leaves the seams out (quiltingboard.com
// t9808: 250 in of 2 in strip from a square of 23); it rounds up so far that it
// gives the same there.
func BiasSquares(length, strip, seam, width, step measure.Length) (squares int, side measure.Length) {
	for squares = 1; ; squares++ {
		for side = step; side <= width; side += step {
			if BiasYield(side, strip, seam).Times(squares) >= length {
				return squares, side
			}
		}
		if squares > MostPieces || BiasYield(width, strip, seam) <= 0 {
			return 0, 0
		}
	}
}

// BiasYield is the length of bias strip from one square, its two seams taken off,
// rounded down.
func BiasYield(side, strip, seam measure.Length) measure.Length {
	return (side - 4*seam).Scale(int64(side), int64(strip), measure.Down)
}
