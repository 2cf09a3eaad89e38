package guillotine

// Cut says how a node is parted.
type Cut uint8

// The cuts: Across lays the parts one above the other, Upright side by side.
const (
	None Cut = iota
	Across
	Upright
)

func (c Cut) other() Cut {
	if c == Across {
		return Upright
	}
	return Across
}

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

func offcut(w, h int) *Node { return leaf(w, h, Offcut, false) }

// joined lays nodes one after the other in a rectangle of w × h; what they
// leave free becomes offcuts.
func joined(w, h int, cut Cut, nodes ...*Node) *Node {
	n := &Node{W: w, H: h, Cut: cut, Piece: Offcut}
	used := 0
	for _, part := range nodes {
		used += part.along(cut)
		n.take(part.within(w, h, cut))
	}
	switch {
	case cut == Across && used < h:
		n.take(offcut(w, h-used))
	case cut == Upright && used < w:
		n.take(offcut(w-used, h))
	}
	if len(n.Parts) == 1 {
		return n.Parts[0]
	}
	return n
}

// along is how much of its parent a part takes in the direction in which the
// parts follow each other.
func (n *Node) along(cut Cut) int {
	if cut == Across {
		return n.H
	}
	return n.W
}

// within widens a part to the full breadth of its parent.
func (n *Node) within(w, h int, cut Cut) *Node {
	if cut == Across && n.W < w {
		return joined(w, n.H, Upright, n)
	}
	if cut == Upright && n.H < h {
		return joined(n.W, h, Across, n)
	}
	return n
}

// take adds a part; one that is parted the same way comes in part by part.
func (n *Node) take(part *Node) {
	if part.Cut == n.Cut {
		n.Parts = append(n.Parts, part.Parts...)
	} else {
		n.Parts = append(n.Parts, part)
	}
}

// place sets the position of a node and of everything in it.
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

// Leaves visits the pieces and offcuts of a layout in the order they lie.
func (n *Node) Leaves(visit func(*Node)) {
	if n.Cut == None {
		visit(n)
		return
	}
	for _, part := range n.Parts {
		part.Leaves(visit)
	}
}

// tight is a node without what it can do without: the same pieces in the least
// rectangle that the same cuts allow, or nil where there are none. All sizes of
// pieces are taken anew, so a layout made on a coarser grid closes up.
func (n *Node) tight(pieces []Piece) *Node {
	if n.Cut == None {
		if n.Piece == Offcut {
			return nil
		}
		s := pieces[n.Piece].lying(n.Turned)
		return leaf(s.w, s.h, n.Piece, n.Turned)
	}
	var parts []*Node
	w, h := 0, 0
	for _, part := range n.Parts {
		p := part.tight(pieces)
		if p == nil {
			continue
		}
		parts = append(parts, p)
		if n.Cut == Across {
			w, h = max(w, p.W), h+p.H
		} else {
			w, h = w+p.W, max(h, p.H)
		}
	}
	if len(parts) == 0 {
		return nil
	}
	return joined(w, h, n.Cut, parts...)
}

// levels are the parts of a layout that lie one above the other.
func (n *Node) levels() []*Node {
	if n == nil {
		return nil
	}
	if n.Cut == Across {
		return n.Parts
	}
	return []*Node{n}
}
