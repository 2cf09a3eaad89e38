package planner

import (
	"fmt"

	"quiltrun/planner/measure"
)

// DefaultTolerance is how far off a block may be before something is done about
// it: 1/8 in, or 3 mm. From memory; no judging or standards body publishes a
// figure, and the only one found is that 1/8 in already shows on a 5 in block
// (allthingscrafty.com, "No block left behind"). It is the maker's to change.
func DefaultTolerance(u measure.Unit) measure.Length {
	if u == measure.Centimetres {
		return 3 * measure.Millimetre
	}
	return measure.Inch / 8
}

// Way is a measure taken one way of a piece.
type Way struct {
	Down   bool // its height; false: its width
	Should measure.Length
	Is     measure.Length
	Seams  float64        // over how many seams it was measured; 0: none
	Each   measure.Length // what one seam is off, both layers together; positive: it takes too much
	Seam   measure.Length // the allowance that it implies; 0 where no seam is in it
}

// Off is how much too large the piece is that way; below 0: too small.
func (w Way) Off() measure.Length { return w.Is - w.Should }

// FirstPiece is what one measured piece says of the seam, and of everything that
// is to be sewn with it.
type FirstPiece struct {
	Piece     Piece
	Ways      []Way
	Tolerance measure.Length
	Planned   Sewn
	Seam      measure.Length // as sewn, of all ways together; 0 where no seam is in the piece
	Would     Sewn           // if everything is sewn so
	Problem   error          // what then cannot be made; Would is zero
	Seams     Crossed        // over how many seams block and quilt are measured
	Borders   []BorderChange // what makes the top come out even so; none where there is no border, or it would vanish
}

// Crossed is over how many seams something is measured, across and down.
type Crossed struct{ BlockAcross, BlockDown, QuiltAcross, QuiltDown float64 }

// BorderChange is a border cut otherwise, so that the top comes out as planned.
type BorderChange struct {
	Sides   bool           // the strips at the left and right; false: at top and bottom
	Planned measure.Length // cut width
	Cut     measure.Length
}

// ReadPiece works out what a measured piece says. Measured has a height of 0
// where it was measured one way only: across, or whichever way has the seams.
// The error is for a person: a measure that no seam explains.
func ReadPiece(p Plan, piece Piece, measured measure.Size, tolerance measure.Length) (FirstPiece, error) {
	f := FirstPiece{Piece: piece, Tolerance: tolerance}
	var err error
	if f.Planned, err = sewnWith(p.Job, p.Job.Seam); err != nil {
		return f, err
	}
	f.Ways = waysOf(piece, measured, p.Job.Seam)
	if f.Seam, err = seamSewn(p.Job, piece, f.Ways); err != nil || f.Seam == 0 {
		return f, err
	}
	f.Seams = crossed(p.Job, f.Planned)
	f.Would, f.Problem = sewnWith(p.Job, f.Seam)
	if f.Problem == nil {
		f.Borders = bordersFor(p.Job, f)
	}
	return f, nil
}

// waysOf is the measures that were taken, each with what its seams took.
func waysOf(piece Piece, measured measure.Size, seam measure.Length) []Way {
	across := Way{Should: piece.Size.Width, Is: measured.Width, Seams: piece.SeamsAcross()}
	down := Way{Down: true, Should: piece.Size.Height, Is: measured.Height, Seams: piece.SeamsDown()}
	if measured.Height == 0 && piece.Loses.Width == 0 && piece.Loses.Height != 0 {
		down.Is = measured.Width
		return []Way{down.sewn(piece.Loses.Height, seam)}
	}
	ways := []Way{across.sewn(piece.Loses.Width, seam)}
	if measured.Height != 0 {
		ways = append(ways, down.sewn(piece.Loses.Height, seam))
	}
	return ways
}

// sewn adds what the seams on a way took: the piece loses `loses` for each probe
// that the allowance grows.
func (w Way) sewn(loses, seam measure.Length) Way {
	if loses == 0 {
		return w
	}
	more := w.Off().Scale(-int64(seamProbe), int64(loses), measure.Nearest)
	w.Each, w.Seam = 2*more, seam+more
	return w
}

// seamSewn is the allowance that all ways together imply: what the piece is off
// in all, over all the seams that it crosses.
func seamSewn(j Job, piece Piece, ways []Way) (measure.Length, error) {
	var off, loses measure.Length
	for _, w := range ways {
		each := piece.Loses.Width
		if w.Down {
			each = piece.Loses.Height
		}
		if each != 0 {
			off, loses = off+w.Off(), loses+each
		}
	}
	if loses == 0 {
		return 0, nil
	}
	seam := j.Seam + off.Scale(-int64(seamProbe), int64(loses), measure.Nearest)
	if seam <= 0 || seam > 3*j.Seam {
		return 0, &NoSeam{fmt.Sprintf("%s should be %s, and no seam makes it %s", piece.Name,
			sideOf(piece.Size, j.Units), ways[0].Is.Show(j.Units))}
	}
	return seam, nil
}

// NoSeam is a measure that no seam explains.
type NoSeam struct{ What string }

func (n *NoSeam) Error() string { return n.What }

// crossed counts the seams across block and quilt by what they lose.
func crossed(j Job, planned Sewn) Crossed {
	probed, err := sewnWith(j, j.Seam+seamProbe)
	if err != nil {
		return Crossed{}
	}
	block, quilt := lost(planned.Raw, probed.Raw), lost(planned.Top, probed.Top)
	return Crossed{seamsOf(block.Width), seamsOf(block.Height), seamsOf(quilt.Width), seamsOf(quilt.Height)}
}

// bordersFor is the outermost border cut so that the quilt finishes as planned
// though the seam stays as it was measured. Its strips are sewn with that seam.
func bordersFor(j Job, f FirstPiece) []BorderChange {
	if len(j.Borders) == 0 {
		return nil
	}
	outer := j.resewn(f.Seam).Borders[len(j.Borders)-1].Width
	planned := j.Borders[len(j.Borders)-1].Width + 2*j.Seam
	short := lost(f.Planned.Quilt, f.Would.Quilt)
	var changes []BorderChange
	for _, side := range []struct {
		sides bool
		short measure.Length
	}{{true, short.Width}, {false, short.Height}} {
		width := outer + side.short.Scale(1, 2, measure.Nearest)
		if width <= 0 {
			return nil
		}
		changes = append(changes, BorderChange{side.sides, planned, width + 2*f.Seam})
	}
	return changes
}

// Off is how much larger a block comes out raw, the larger of both ways; below
// 0: smaller. Of the top and of a piece without a seam it is what was measured.
func (f FirstPiece) Off() measure.Length {
	off := lost(f.Would.Raw, f.Planned.Raw)
	if f.Seam == 0 || f.Piece.Top {
		off = measure.Size{Width: f.Ways[0].Off(), Height: f.Ways[len(f.Ways)-1].Off()}
	}
	if apart(off.Height) > apart(off.Width) {
		return off.Height
	}
	return off.Width
}

// Within reports whether the block comes out near enough: no farther off than
// the tolerance, and nothing that cannot be made.
func (f FirstPiece) Within() bool { return f.Problem == nil && apart(f.Off()) <= f.Tolerance }

// apart is a difference whichever way it goes.
func apart(l measure.Length) measure.Length { return max(l, -l) }
