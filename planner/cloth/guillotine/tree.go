package guillotine

// Cut says how a node is parted.
type Cut uint8

// The cuts: across lays the parts one above the other, upright side by side.
const (
	None Cut = iota
	Across
	Upright
)

// Offcut is the Piece of a leaf that is left over.
const Offcut = -1

// Node is a rectangle of a layout, at X, Y from the bottom left. It is a piece,
// an offcut, or parted by parallel cuts into Parts that fill it exactly, in the
// order in which they lie.
type Node struct {
	X, Y, W, H int
	Cut        Cut
	Parts      []*Node
	Piece      int
	Turned     bool
}

func leaf(w, h, piece int, turned bool) *Node {
	return &Node{W: w, H: h, Piece: piece, Turned: turned}
}

// stacked joins nodes one above the other, and aside side by side, in a
// rectangle of w × h; what they leave free becomes offcuts.
func stacked(w, h int, nodes ...*Node) *Node { return joined(w, h, Across, nodes) }
func aside(w, h int, nodes ...*Node) *Node   { return joined(w, h, Upright, nodes) }

func joined(w, h int, cut Cut, nodes []*Node) *Node {
	n := &Node{W: w, H: h, Cut: cut, Piece: Offcut}
	used := 0
	for _, part := range nodes {
		part = part.within(w, h, cut)
		used += part.along(cut)
		n.take(part)
	}
	switch {
	case cut == Across && used < h:
		n.take(leaf(w, h-used, Offcut, false))
	case cut == Upright && used < w:
		n.take(leaf(w-used, h, Offcut, false))
	}
	if len(n.Parts) == 1 {
		return n.Parts[0]
	}
	return n
}

// along is how much of the parent a part takes up in the direction in which
// the parts follow each other.
func (n *Node) along(cut Cut) int {
	if cut == Across {
		return n.H
	}
	return n.W
}

// within widens a part to the full breadth of its parent.
func (n *Node) within(w, h int, cut Cut) *Node {
	if cut == Across && n.W < w {
		return aside(w, n.H, n)
	}
	if cut == Upright && n.H < h {
		return stacked(n.W, h, n)
	}
	return n
}

// take adds a part; parts that are parted the same way come in one by one.
func (n *Node) take(part *Node) {
	if part.Cut == n.Cut {
		n.Parts = append(n.Parts, part.Parts...)
	} else {
		n.Parts = append(n.Parts, part)
	}
}

// place sets the position of a node and everything in it.
func (n *Node) place(x, y int) *Node {
	n.X, n.Y = x, y
	for _, part := range n.Parts {
		part.place(x, y)
		if n.Cut == Across {
			y += part.H
		} else {
			x += part.W
		}
	}
	return n
}
