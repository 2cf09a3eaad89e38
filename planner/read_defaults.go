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

// Sources, in inches: 40 usable is what cautious makers plan with (published: Four
// Pines Quilting), a fat quarter 18 × 21 and a fat eighth 9 × 21 come from cloth
// 42 wide (published: American Patchwork & Quilting), 4 extra per side is asked
// for by quilters at the frame (published: Log House Quilting), 2 1/2 is the
// commonest strip (published: Villa Rosa basics). In centimetres: 50 × 55 and
// 25 × 55 (published: Gone to Earth; Olive & Flo); seam, width, extra and strip are
// common practice, no source.
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
