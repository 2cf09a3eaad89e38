package planner

import (
	"cmp"
	"slices"

	"quiltrun/planner/measure"
)

// fabricPieces is what a fabric gives to the parts of tops between and round blocks.
type fabricPieces struct {
	fabric string
	PieceCount
}

// longStrips are the strips, as long as the cloth gives, that so many lengths are
// cut from: several from one where it is long enough, else joined, and then each
// further strip loses a seam's two allowances.
func (m *maker) longStrips(fabric string, width, length measure.Length, lengths int, purpose string) fabricPieces {
	strip := m.stripLength(m.fabric(fabric))
	n, _ := stripsFor(slices.Repeat([]measure.Length{length}, lengths), strip, m.job.Seam)
	return fabricPieces{fabric, PieceCount{Size: measure.Size{Width: strip, Height: width}, Count: n, For: purpose}}
}

// sashingPieces are the pieces of the sashing: short ones as long as a block, and
// cornerstones; without these long strips between the rows, which are cut or pieced
// from strips across the cloth.
func (m *maker) sashingPieces() []fabricPieces {
	s := m.plan.Sashing
	if s == nil {
		return nil
	}
	var out []fabricPieces
	piece := func(fabric string, width, height measure.Length, count int, purpose string) {
		if count > 0 {
			size := measure.Size{Width: width, Height: height}
			if !m.fabric(fabric).Directional {
				size = measure.Size{Width: max(width, height), Height: min(width, height)}
			}
			out = append(out, fabricPieces{fabric, PieceCount{Size: size, Count: count * m.job.Quantity, For: purpose}})
		}
	}
	block := m.plan.Colourways[0].Raw
	piece(s.Fabric, s.Cut, block.Height, s.Upright, forSashing)
	piece(s.Fabric, block.Width, s.Cut, s.Level, forSashing)
	piece(s.Sashing.Cornerstones, s.Cut, s.Cut, s.Cornerstones, forCornerstones)
	if s.Strips > 0 {
		out = append(out, m.longStrips(s.Fabric, s.Cut, s.StripLength, s.Strips*m.job.Quantity, forSashing))
	}
	return out
}

// rowLength is the raw length of a row inside all borders.
func (m *maker) rowLength() measure.Length { return m.frame.inner().Width + 2*m.job.Seam }

// sashingPlan counts the pieces of the sashing of one quilt.
func (m *maker) sashingPlan() *SashingPlan {
	f := m.frame
	if f.layout.Sashing == nil {
		return nil
	}
	p := &SashingPlan{Sashing: *f.layout.Sashing, Cut: f.sash() + 2*m.job.Seam, Upright: f.uprights() * f.layout.Down}
	switch {
	case f.stones():
		p.Level, p.Cornerstones = f.levels()*f.layout.Across, f.levels()*f.uprights()
	case f.levels() > 0:
		p.Strips, p.StripLength = f.levels(), m.rowLength()
	}
	return p
}

// Squares that setting triangles are cut from, by the finished side of a block: the
// side triangles' are its diagonal and 1 1/4 in more, cut twice, the corners' half of
// it and 7/8 in more, cut once, with seams of 1/4 in. So the straight grain lies at
// the edge. Source: pinemeadowsdesigns.com, "Block on point"; ukqu.co.uk, "On point
// settings". Exact are 1.207 and 0.854 in: what is over is trimmed off when the top
// is joined. Other seams take five, and three and a half, of theirs in proportion;
// the square is rounded up to the ruler's line, like the published 18 1/4 and 9 3/8
// of a 12 in block (18.221 and 9.360).

// sideSquare is the square that four side triangles are cut from.
func (m *maker) sideSquare() measure.Length {
	return (m.frame.block.Width.TimesRoot2(measure.Up) + 5*m.cutSeam()).RoundUp(m.rulerLine())
}

// cornerSquare is the square that two corner triangles are cut from.
func (m *maker) cornerSquare() measure.Length {
	return (m.frame.block.Width.OverRoot2(measure.Up) + m.cutSeam().Scale(7, 2, measure.Up)).RoundUp(m.rulerLine())
}

// cutSeam is the seam that cut sizes ask for: the job file's, whatever seam was
// measured at the machine since.
func (m *maker) cutSeam() measure.Length { return cmp.Or(m.job.SeamAsked, m.job.Seam) }

// rulerLine is the distance of the lines that cuts are made at: 1/8 in. Half a
// centimetre, common practice, no source.
func (m *maker) rulerLine() measure.Length {
	if m.job.Units == measure.Centimetres {
		return measure.Centimetre / 2
	}
	return measure.Inch / 8
}

// trianglesPlan counts the setting triangles, and the squares of the run that side
// and corner triangles are cut from, four and two from each.
func (m *maker) trianglesPlan() *TrianglesPlan {
	if !m.frame.onPoint() {
		return nil
	}
	t := &TrianglesPlan{
		Fabric: m.job.Layout.Triangles, Sides: m.job.Layout.sideTriangles(), Corners: cornerTriangles,
		SideSquare: m.sideSquare(), CornerSquare: m.cornerSquare(), CornerSquares: cornerTriangles / 2 * m.job.Quantity,
	}
	sides := t.Sides * m.job.Quantity
	t.SideSquares = (sides + 3) / 4
	t.Over = 4*t.SideSquares - sides
	return t
}

// trianglePieces are the squares of the setting triangles.
func (m *maker) trianglePieces() []fabricPieces {
	t := m.plan.Triangles
	if t == nil {
		return nil
	}
	square := func(side measure.Length, count int) fabricPieces {
		return fabricPieces{t.Fabric, PieceCount{Size: measure.Size{Width: side, Height: side}, Count: count, For: forTriangles}}
	}
	if t.Sides == 0 {
		return []fabricPieces{square(t.CornerSquare, t.CornerSquares)}
	}
	return []fabricPieces{square(t.SideSquare, t.SideSquares), square(t.CornerSquare, t.CornerSquares)}
}
