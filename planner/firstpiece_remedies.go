package planner

import (
	"fmt"

	"quiltrun/planner/measure"
)

// Remedies says what to do about a piece that is off, in the order in which to
// do it: needle or guide, so that nothing more is sewn wrong; then what is sewn
// already, pressed again before it is trimmed; then the border. That order of
// mending is The Spruce's ("Easy ways to square up quilt blocks": re-press, then
// trim all to the smallest); that too wide a piece means too narrow a seam, and
// the reverse, is Sonflower Quilts'. Nothing is to be done about a piece that is
// right.
func (f FirstPiece) Remedies(j Job) []string {
	switch {
	case f.Seam == 0:
		return f.ruled(j)
	case f.Seam == j.Seam:
		return nil
	case f.Piece.Top && f.Within():
		return []string{cutByMeasure}
	case f.Piece.Top:
		return []string{f.pressAgain(), cutByMeasure, f.mendTop(j)}
	}
	all := []string{f.moveGuide(j), f.testAgain(j)}
	if f.Problem != nil || f.Within() {
		return all
	}
	return append(all, f.pressAgain(), f.mendSewn(j), f.mendTop(j))
}

// cutByMeasure is how borders come to fit a top that is a little off.
const cutByMeasure = "Cut borders and backing by what you measured through the middle, not by the plan."

// wide reports whether the piece is too large, so that the seam takes too little.
func (f FirstPiece) wide(j Job) bool { return f.Seam < j.Seam }

// ruled is for a piece that the ruler made: no seam can mend it.
func (f FirstPiece) ruled(j Job) []string {
	off := f.Ways[0].Off()
	switch {
	case off == 0:
		return nil
	case off > 0:
		return []string{fmt.Sprintf("No seam is in this measure: the ruler made it. Trim it to %s.", f.Ways[0].Should.Show(j.Units))}
	}
	return []string{fmt.Sprintf("No seam is in this measure: the ruler made it. Cut it again at %s, and look how the ruler lay on the cloth.", f.Ways[0].Should.Show(j.Units))}
}

func (f FirstPiece) pressAgain() string {
	if f.Ways[0].Off() > 0 {
		return "Press again what is sewn so, without pulling, and measure it once more: a stretched piece measures too wide."
	}
	return "Press again what is sewn so, every fold opened right out to the seam, and measure it once more: some of the cloth may come back."
}

func (f FirstPiece) moveGuide(j Job) string {
	if f.wide(j) {
		return fmt.Sprintf("The seam takes too little. Is the piece pressed flat and cool, and not stretched? Then move the guide %s away from the needle, or the needle as much away from the guide.", fine(j.Seam-f.Seam, j.Units))
	}
	return fmt.Sprintf("The seam takes too much. Is the piece pressed flat and cool, with no fold left beside the seam? Then move the guide %s toward the needle, or the needle as much toward the guide.", fine(f.Seam-j.Seam, j.Units))
}

func (f FirstPiece) testAgain(j Job) string {
	test := SeamTests(j.Units)[0]
	return fmt.Sprintf("Sew %s until they measure %s across.", test.Words(j.Units), test.Wide(j.Seam).Show(j.Units))
}

// mendSewn is about what is sewn with the seam as it is.
func (f FirstPiece) mendSewn(j Job) string {
	if f.wide(j) {
		return fmt.Sprintf("Trim the blocks that are sewn so to %s raw, the middle kept: nothing is lost but a little at each edge.", f.Planned.Raw.Words(j.Units))
	}
	return fmt.Sprintf("Blocks that are sewn so: measure them all, and trim all to the smallest, about %s raw and %s finished; or pick their seams out and sew them again.",
		f.Would.Raw.Words(j.Units), f.Would.Block.Words(j.Units))
}

// narrowestBorder is the least that two opposite borders finish together: half an
// inch each is the least that is well sewn. Common practice, no source.
const narrowestBorder = measure.Inch

// mendTop is what makes the top come out though every seam is sewn so.
func (f FirstPiece) mendTop(j Job) string {
	size := f.Planned.Quilt.Show(j.Units)
	keep := "Or keep the seam as it is, the same from the first to the last"
	short := lost(f.Planned.Quilt, f.Would.Quilt)
	switch {
	case len(f.Borders) > 0:
		return fmt.Sprintf("%s, and cut the outer border %s: the top still comes out %s.", keep, f.borderWords(j.Units), size)
	case short.Width >= narrowestBorder && short.Height >= narrowestBorder:
		return fmt.Sprintf("%s, and add a border: one that finishes %s at the sides and %s at top and bottom brings the top back to %s.", keep,
			short.Width.Half().Show(j.Units), short.Height.Half().Show(j.Units), size)
	}
	return fmt.Sprintf("%s: then the top comes out %s, not %s.", keep, f.Would.Quilt.Show(j.Units), size)
}

// borderWords is the border's strips as they are to be cut.
func (f FirstPiece) borderWords(u measure.Unit) string {
	sides, ends := f.Borders[0], f.Borders[1]
	if sides.Cut == ends.Cut {
		return fmt.Sprintf("%s wide, not %s", sides.Cut.Show(u), sides.Planned.Show(u))
	}
	return fmt.Sprintf("%s wide at the sides and %s at top and bottom, not %s", sides.Cut.Show(u), ends.Cut.Show(u), sides.Planned.Show(u))
}

// fine is a small measure at the needle, where a ruler's lines end: in
// thousandths of an inch with the nearest 64th, or in tenths of a millimetre.
func fine(l measure.Length, u measure.Unit) string {
	if u == measure.Centimetres {
		return (10*l).Decimal(u, 1) + " mm"
	}
	line := l.Scale(64, int64(measure.Inch), measure.Nearest)
	text := l.Decimal(u, 3) + " in"
	if line > 0 {
		text += " (about " + (measure.Inch / 64 * line).String() + ")"
	}
	return text
}
