package cloth

import (
	"slices"

	"quiltrun/planner/measure"
)

// BackingSeam is what one backing seam takes from each side: half an inch,
// pressed open. Source: quilting.about.com "Quilt backing" (seams 1/2 in); two
// 42 in lengths then make 83 in.
const BackingSeam = measure.Inch / 2

// leastPanel is the narrowest panel worth sewing on, as it is cut. The one before
// gives up what it lacks. Common practice, no source.
const leastPanel = 4 * measure.Inch

// Run says how a backing's seams lie.
type Run string

// The runs of backing seams.
const (
	NoSeam     Run = "none"
	Lengthwise Run = "lengthwise" // panels, and the seams between them, run along the quilt's length
	Crosswise  Run = "crosswise"
)

// Backing is a backing pieced from lengths of cloth.
type Backing struct {
	Size   measure.Size     // raw, wanted
	Panels []measure.Size   // as each is cut: across the cloth, and along it
	Run    Run              // of the seams
	Seams  []measure.Length // from the left edge, or from the top where they run crosswise
	Turned bool             // the cloth's length runs across the quilt

	Length    measure.Length // off the bolt, for one quilt
	RunLength measure.Length // for all quilts, narrow panels side by side
}

// BackingOf is the backing of a raw size for so many alike quilts, from cloth of a
// usable width: the way round that takes less off the bolt for all of them, then
// the one with fewer seams, then lengthwise. Seams is how a backing that is pieced
// must be pieced; "" is either way. A backing whose print has a direction stays
// upright.
func BackingOf(size measure.Size, width measure.Length, quilts int, seams Run, upright bool) Backing {
	along := panels(size.Width, size.Height, width, quilts)
	across := panels(size.Height, size.Width, width, quilts)
	across.Turned = true
	best := along
	if !upright && better(across, along) {
		best = across
	}
	switch pieced := len(best.Panels) > 1; {
	case pieced && seams == Lengthwise:
		best = along
	case pieced && seams == Crosswise:
		best = across
	}
	best.Size, best.Run = size, NoSeam
	if len(best.Panels) > 1 {
		best.Run = Lengthwise
		if best.Turned {
			best.Run = Crosswise
		}
	}
	return best
}

func better(a, b Backing) bool {
	if a.RunLength != b.RunLength {
		return a.RunLength < b.RunLength
	}
	return len(a.Panels) < len(b.Panels)
}

// panels covers a span with panels of a length side by side: full widths, and a
// last one that makes up the rest.
func panels(span, length, width measure.Length, quilts int) Backing {
	n := 1
	for width.Times(n)-BackingSeam.Times(2*(n-1)) < span {
		n++
	}
	widths := slices.Repeat([]measure.Length{width}, n)
	last := span + BackingSeam.Times(2*(n-1)) - width.Times(n-1)
	if n > 1 && last < leastPanel {
		widths[0] -= leastPanel - last
		last = leastPanel
	}
	widths[n-1] = last
	var b Backing
	at := measure.Length(0)
	for k, w := range widths {
		b.Panels = append(b.Panels, measure.Size{Width: w, Height: length})
		if at += w - BackingSeam; k < n-1 {
			b.Seams = append(b.Seams, at)
		}
		at -= BackingSeam
	}
	aside := measure.FloorDiv(width, last) // of the last panels, in one length
	b.Length = length.Times(n)
	b.RunLength = length.Times((n-1)*quilts + (quilts+aside-1)/aside)
	return b
}
