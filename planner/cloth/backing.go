package cloth

import "quiltrun/planner/measure"

// BackingSeam is what one backing seam takes from each side: half an inch,
// pressed open. Source: quilting.about.com "Quilt backing" (seams 1/2 in); two
// 42 in lengths then make 83 in.
const BackingSeam = measure.Inch / 2

// Run says how a backing's panels lie.
type Run string

// The runs of backing panels.
const (
	NoSeam     Run = "none"
	Lengthwise Run = "lengthwise" // panels, and the seams between them, run along the quilt's length
	Crosswise  Run = "crosswise"
)

// Backing is a backing pieced from full widths of cloth.
type Backing struct {
	Size   measure.Size // raw, wanted
	Panels int
	Panel  measure.Size // cut size of a panel, usable width first
	Run    Run
	Length measure.Length // off the bolt
}

// BackingOf is the backing for a top with extra on each side, from cloth of a
// usable width: the way round that takes less off the bolt, then the one with
// fewer seams, then lengthwise.
func BackingOf(top measure.Size, extra, width measure.Length) Backing {
	size := measure.Size{Width: top.Width + 2*extra, Height: top.Height + 2*extra}
	along := panels(size.Width, size.Height, width, Lengthwise)
	across := panels(size.Height, size.Width, width, Crosswise)
	best := along
	if across.Length < along.Length || across.Length == along.Length && across.Panels < along.Panels {
		best = across
	}
	best.Size = size
	return best
}

// panels covers a span with panels of the given length side by side.
func panels(span, length, width measure.Length, run Run) Backing {
	n := 1
	for width.Times(n)-BackingSeam.Times(2*(n-1)) < span {
		n++
	}
	if n == 1 {
		run = NoSeam
	}
	return Backing{Panels: n, Panel: measure.Size{Width: width, Height: length}, Run: run, Length: length.Times(n)}
}
