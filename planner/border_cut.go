package planner

import (
	"cmp"
	"slices"

	"quiltrun/planner/measure"
)

// borderLengths are what one border of a quilt needs: two sides, then two ends
// that cover the corners.
type borderLengths struct {
	Border
	nth         int            // from the inside, from zero
	cut         measure.Length // width as it is cut
	sides, ends measure.Length // raw
}

// borderLengths are those of all borders of cloth, from the inside out.
func (m *maker) borderLengths() []borderLengths {
	var out []borderLengths
	for i, b := range m.plan.Borders {
		if b.Blocks == 0 {
			out = append(out, borderLengths{m.job.Borders[i], i, b.Cut, b.Sides, b.Ends})
		}
	}
	return out
}

// trimming is what a border cut lengthwise gets beyond its planned length, since
// it is cut to length only when the top has been measured. Common practice, no
// source.
func trimming(u measure.Unit) measure.Length {
	if u == measure.Centimetres {
		return 5 * measure.Centimetre
	}
	return 2 * measure.Inch
}

// borderPieces are the pieces of one fabric's borders for the run, those that are
// not asked for otherwise on the grain given, and what becomes of each border.
func (m *maker) borderPieces(f Fabric, grain Grain) (pieces []PieceCount, plans map[int]BorderCut) {
	plans = map[int]BorderCut{}
	all := map[string][]PieceCount{}
	for _, b := range m.borderLengths() {
		if b.Fabric != f.Name {
			continue
		}
		p := BorderCut{Nth: b.nth + 1, Fabric: f.Name, Cut: b.cut, Sides: b.sides, Ends: b.ends, Grain: cmp.Or(b.Grain, grain)}
		if f.Form.Sheets() {
			p.Grain = Crosswise
		}
		two := 2 * m.job.Quantity
		if p.Grain == Lengthwise {
			for _, l := range []measure.Length{b.sides, b.ends} {
				addPieces(all, f.Name, PieceCount{Size: measure.Size{Width: b.cut, Height: l + trimming(m.job.Units)}, Count: two, For: forBorder, Long: true})
			}
		} else {
			lengths := slices.Concat(slices.Repeat([]measure.Length{b.sides}, two), slices.Repeat([]measure.Length{b.ends}, two))
			p.Strips, p.Joined = stripsFor(lengths, m.stripLength(f), m.job.Seam)
			addPieces(all, f.Name, PieceCount{Size: measure.Size{Width: m.stripLength(f), Height: b.cut}, Count: p.Strips, For: forBorder})
		}
		plans[b.nth] = p
	}
	return all[f.Name], plans
}

// stripsFor is how many strips of a length give some lengths: each length from one
// strip where strips are long enough, the others from strips joined end to end,
// each join losing its two allowances. Where joining all of them takes fewer, all
// are joined.
func stripsFor(lengths []measure.Length, strip, seam measure.Length) (strips int, joined bool) {
	slices.SortFunc(lengths, func(a, b measure.Length) int { return cmp.Compare(b, a) })
	var long, all measure.Length
	var left []measure.Length // of each strip that gives whole lengths
	for _, l := range lengths {
		all += l
		if l > strip {
			long += l
			continue
		}
		if at := slices.IndexFunc(left, func(have measure.Length) bool { return have >= l }); at >= 0 {
			left[at] -= l
		} else {
			left = append(left, strip-l)
		}
	}
	apart, together := len(left)+chain(long, strip, seam), chain(all, strip, seam)
	if together < apart {
		return together, true
	}
	return apart, long > 0
}

// chain is how many strips joined end to end reach a length.
func chain(length, strip, seam measure.Length) int {
	if length <= 0 {
		return 0
	}
	return max(1, measure.CeilDiv(length-2*seam, strip-2*seam))
}

// tooLong reports that a border of a fabric whose grain is open is longer than
// the cloth is wide, so that its grain is worth working out.
func (m *maker) tooLong(f Fabric) bool {
	return !f.Form.Sheets() && slices.ContainsFunc(m.borderLengths(), func(b borderLengths) bool {
		return b.Fabric == f.Name && b.Grain == "" && max(b.sides, b.ends) > m.stripLength(f)
	})
}
