// Package thread works out lockstitch thread: how much a seam takes, from its
// stitch length and the thickness that it is sewn through.
package thread

import "quiltrun/planner/measure"

// Stitch is one kind of sewing on the job.
type Stitch struct {
	PerInch   float64        // stitches in an inch
	Thickness measure.Length // of everything under the foot, squeezed
}

// The job's stitches. Two plies of quilting cotton: Union Special manual 301,
// "sometimes only 0.020 in". Quilting: two plies of 0.010 in and cotton batting
// of 1/8 in squeezed to a third (hsvti.com, batting for upholstery), 10 an inch
// (APQS, "How many stitches per inch"). Binding: the same with four plies more.
// Piecing at 12 an inch: Taking out the math #3, piecefulkwilter.
var (
	Piecing  = Stitch{PerInch: 12, Thickness: measure.Inch * 20 / 1000}
	Quilting = Stitch{PerInch: 10, Thickness: measure.Inch*20/1000 + measure.Inch/24}
	Binding  = Stitch{PerInch: 10, Thickness: measure.Inch*60/1000 + measure.Inch/24}
)

// Ratio is inches of thread, needle and bobbin together, for an inch of
// lockstitch (ISO 4915 type 301): 2 + 2·T·S. Source: A. K. Das, Calculate amount
// of sewing thread consumption (T 0.01 in, S 10 gives 2.2).
func (s Stitch) Ratio() float64 {
	return 2 + 2*s.Thickness.In(measure.Inches)*s.PerInch
}

// Waste is added for tails, breaks and repairs: 15 %, which lies in both ranges
// that American & Efird (15-20 %) and shop-floor practice (10-15 %) publish.
const Waste = 0.15

// ForSeam is the thread for a length of seam, waste included.
func (s Stitch) ForSeam(seam measure.Length) measure.Length {
	return measure.Length(float64(seam) * s.Ratio() * (1 + Waste))
}

// BobbinHolds is what one home-wound bobbin of 50 wt cotton holds: 60 yd, the
// low end of 60-80 yd (from memory; no published table was found).
const BobbinHolds = 60 * measure.Yard

// Bobbins is how many bobbins to wind: half of a lockstitch's thread comes from
// below (Coats Standard Stitch Type Classification: 1 : 1 for type 301).
func Bobbins(total measure.Length) int {
	return measure.CeilDiv(total/2, BobbinHolds)
}

// Spacing is how far apart quilting lines run, by the words longarm shops use
// (yourlongarmquilter.com, "All about density": heavy under 1 in, medium 1-2 in,
// low over 2 in); the figures within those ranges are ours.
var Spacing = map[string]measure.Length{
	"dense":  measure.Inch * 3 / 4,
	"medium": measure.Inch * 3 / 2,
	"open":   measure.Inch * 3,
}

// LinesOver is the length of parallel lines that far apart over an area.
func LinesOver(size measure.Size, apart measure.Length) measure.Length {
	return size.Width.Scale(int64(size.Height), int64(apart), measure.Nearest)
}
