package planner

import "quiltrun/planner/measure"

// defaults is what a job file need not say, in each of the units.
type defaults struct {
	seam  measure.Length
	width measure.Length // usable, of yardage
	fat   measure.Size   // quarter
	thin  measure.Size   // fat eighth
	home  measure.Length // backing, per side, quilted at home
	frame measure.Length // backing, per side, sent out
	loft  measure.Length // batting, per side
	strip measure.Length // of binding, cut width
	tail  measure.Length // of binding, beyond the edge

	selvage measure.Length // each of the two, where a bolt's full width is given
}

// washed is what a wash takes where cloth is washed first and nothing else is said:
// about 2 % each way of good cotton, up to 6 of poor (published: All About Quilts).
var washed = Shrinkage{200, 200}

// Sources, in inches: 40 usable is what cautious makers plan with (published: Four
// Pines Quilting), a fat quarter 18 × 21 and a fat eighth 9 × 21 come from cloth
// 42 wide (published: American Patchwork & Quilting). A backing is 4 larger per
// side at somebody else's frame (published: Log House Quilting, Lupine) and 3 at
// home (published: Stitched in Color, 3 at each end; about.com has 2, others 4); a
// batting 3 per side (published: Log House Quilting, Honey Be Good: 6 in all). 2 1/2
// is the commonest strip (published: Villa Rosa basics); published margins beyond
// the edge are 10, 12, 20 and 24, and 10 is the least (Monica Curry): what is spare
// is said beside it. Cloth sold as 44 is 42 without its selvages (published:
// Quilter's Cache). Nothing is kept back for squaring up: so count the charts of
// Quilter's Cache, Sylvia's Quilt Depot and Quiltville; one other (docsbay) keeps
// back a strip. In centimetres: 50 × 55 and 25 × 55 (published: Gone to Earth;
// Olive & Flo); the rest is common practice, no source.
var (
	inchDefaults = defaults{
		seam: measure.Inch / 4, width: 40 * measure.Inch,
		fat:  measure.Size{Width: 18 * measure.Inch, Height: 21 * measure.Inch},
		thin: measure.Size{Width: 9 * measure.Inch, Height: 21 * measure.Inch},
		home: 3 * measure.Inch, frame: 4 * measure.Inch, loft: 3 * measure.Inch,
		strip: 5 * measure.Inch / 2, tail: 10 * measure.Inch, selvage: measure.Inch,
	}
	metricDefaults = defaults{
		seam: 3 * measure.Centimetre / 4, width: 102 * measure.Centimetre,
		fat:  measure.Size{Width: 50 * measure.Centimetre, Height: 55 * measure.Centimetre},
		thin: measure.Size{Width: 25 * measure.Centimetre, Height: 55 * measure.Centimetre},
		home: 8 * measure.Centimetre, frame: 10 * measure.Centimetre, loft: 8 * measure.Centimetre,
		strip: 13 * measure.Centimetre / 2, tail: 25 * measure.Centimetre, selvage: 5 * measure.Centimetre / 2,
	}
)

// defaults are those of the job's units.
func (r *jobReader) defaults() defaults {
	if r.job.Units == measure.Centimetres {
		return metricDefaults
	}
	return inchDefaults
}
