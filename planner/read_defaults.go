package planner

import "quiltrun/planner/measure"

// defaults is what a job file need not say, in each of the units.
type defaults struct {
	seam  measure.Length
	width measure.Length // usable, of yardage
	fat   measure.Size   // quarter
	thin  measure.Size   // fat eighth
	extra measure.Length // of backing and batting, per side
	strip measure.Length // of binding, cut width
}

// Seam, width and fat quarter are cautious planning values, common practice. The
// fat eighth is
// the shops' own half of it, 9 × 21 in or 25 × 55 cm (published: American
// Patchwork & Quilting; Olive & Flo). An extra of 4 in per side is what
// quilters by the frame ask for (published: Log House Quilting), and 2 1/2 in is
// the commonest strip (published: Villa Rosa basics); 10 and 6.5 cm are common
// practice, no source.
var (
	inchDefaults = defaults{
		seam: measure.Inch / 4, width: 40 * measure.Inch,
		fat:   measure.Size{Width: 18 * measure.Inch, Height: 21 * measure.Inch},
		thin:  measure.Size{Width: 9 * measure.Inch, Height: 21 * measure.Inch},
		extra: 4 * measure.Inch, strip: 5 * measure.Inch / 2,
	}
	metricDefaults = defaults{
		seam: 3 * measure.Centimetre / 4, width: 102 * measure.Centimetre,
		fat:   measure.Size{Width: 50 * measure.Centimetre, Height: 55 * measure.Centimetre},
		thin:  measure.Size{Width: 25 * measure.Centimetre, Height: 55 * measure.Centimetre},
		extra: 10 * measure.Centimetre, strip: 13 * measure.Centimetre / 2,
	}
)

// defaults are those of the job's units.
func (r *jobReader) defaults() defaults {
	if r.job.Units == measure.Centimetres {
		return metricDefaults
	}
	return inchDefaults
}
