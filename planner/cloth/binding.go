package cloth

import "quiltrun/planner/measure"

// Binding is strips joined on the diagonal into one length.
type Binding struct {
	Strips    int
	Strip     measure.Length // cut width
	Edge      measure.Length // round the quilt
	Allowance measure.Length // asked for beyond the edge
	Joined    measure.Length // length of the joined strips, closing join taken off
	Cloth     measure.Length // off the bolt
}

// Spare is what is left beyond the edge.
func (b Binding) Spare() measure.Length { return b.Joined - b.Edge }

// BindingOf counts the strips that go round an edge with an allowance. A
// diagonal join costs one strip width, and the closing join another. Source:
// Crayon Box Quilt Studio, "What is lost?" (3 in strips of 10 in join to 17).
// It returns false where a strip is no longer than it is wide.
func BindingOf(edge, allowance, strip, width measure.Length) (Binding, bool) {
	if strip >= width {
		return Binding{}, false
	}
	n := max(1, measure.CeilDiv(edge+allowance, width-strip))
	return Binding{
		Strips: n, Strip: strip, Edge: edge, Allowance: allowance,
		Joined: (width - strip).Times(n), Cloth: strip.Times(n),
	}, true
}
