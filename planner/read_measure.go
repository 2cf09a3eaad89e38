package planner

import (
	"errors"
	"fmt"
	"strings"

	"quiltrun/planner/measure"
)

// length reads a measure of more than zero; 0, and reported, for anything else.
func (r *jobReader) length(n *fileNode) measure.Length { return r.lengthBy(n, measure.Parse) }

// lengthOrZero reads a measure that may be zero.
func (r *jobReader) lengthOrZero(n *fileNode) measure.Length {
	return r.lengthBy(n, measure.ParseAllowZero)
}

func (r *jobReader) lengthBy(n *fileNode, parse func(string, measure.Unit) (measure.Length, error)) measure.Length {
	text, ok := r.scalarText(n, "a measure")
	if !ok {
		return 0
	}
	l, err := parse(text, r.job.Units)
	r.noMeasure(n, err)
	return l
}

// noMeasure reports what is wrong with a measure, if anything is.
func (r *jobReader) noMeasure(n *fileNode, err error) {
	if err == nil {
		return
	}
	hint := ""
	var syntax *measure.SyntaxError
	if errors.As(err, &syntax) {
		hint = syntax.Reason
	}
	r.fault(n, fmt.Sprintf("%s cannot be %s", said(n.label), said(n.text)), hint)
}

// rawLength reads a size with its seam allowances, as pieces are cut. People may
// say so ("7 raw", "7 unfinished"); a size said to be finished is refused with
// the size to cut.
func (r *jobReader) rawLength(n *fileNode) measure.Length {
	l, word := r.sizedLength(n)
	if word != "finished" || l == 0 {
		return l
	}
	r.fault(n, said(n.label)+" is a raw size, with its seam allowances; this one is said to be finished",
		fmt.Sprintf("what is %s inside its seams is cut %s", l.Show(r.job.Units), (l+2*r.job.Seam).Show(r.job.Units)))
	return 0
}

// rawSize reads the raw size of a piece, one measure for a square, as rawLength
// reads a length.
func (r *jobReader) rawSize(n *fileNode) measure.Size {
	text, ok := r.scalarText(n, "a size")
	if !ok {
		return measure.Size{}
	}
	text, word := sizeWord(text)
	size, err := measure.ParseSize(text, r.job.Units)
	r.noMeasure(n, err)
	if word != "finished" || err != nil {
		return size
	}
	cut := less(size, -2*r.job.Seam)
	r.fault(n, said(n.label)+" is a raw size, with its seam allowances; this one is said to be finished",
		fmt.Sprintf("what is %s inside its seams is cut %s", sideOf(size, r.job.Units), sideOf(cut, r.job.Units)))
	return measure.Size{}
}

// sideOf is a size as people say it: of a square its side.
func sideOf(size measure.Size, u measure.Unit) string {
	if size.Width == size.Height {
		return size.Width.Show(u)
	}
	return size.Show(u)
}

// finishedLength reads a size inside its seams. One said to be raw is refused,
// since `cut` is the key for that.
func (r *jobReader) finishedLength(n *fileNode) measure.Length {
	l, word := r.sizedLength(n)
	if word != "raw" || l == 0 {
		return l
	}
	r.fault(n, said(n.label)+" is a finished size; this one is said to be raw, with its seam allowances",
		fmt.Sprintf("for the size to cut, write cut: %s", l))
	return 0
}

// sizedLength reads a measure that may say at its end which size it is, and
// returns that word as sizeWord does.
func (r *jobReader) sizedLength(n *fileNode) (measure.Length, string) {
	text, ok := r.scalarText(n, "a measure")
	if !ok {
		return 0, ""
	}
	text, word := sizeWord(text)
	l, err := measure.Parse(text, r.job.Units)
	r.noMeasure(n, err)
	return l, word
}

// sizeWord takes the trade's word for which size is meant off the end of a
// measure: "raw" (also cut, unfinished), "finished" or "".
func sizeWord(text string) (rest, word string) {
	fields := strings.Fields(text)
	if len(fields) < 2 {
		return text, ""
	}
	rest = strings.Join(fields[:len(fields)-1], " ")
	switch strings.ToLower(fields[len(fields)-1]) {
	case "raw", "cut", "unfinished":
		return rest, "raw"
	case "finished":
		return rest, "finished"
	}
	return text, ""
}

// seamed reads a width that may be given finished, at `width`, or as it is cut,
// at `cut`, and returns it finished; 0 where neither is right.
func (r *jobReader) seamed(s section) measure.Length {
	width, cut := s.get("width"), s.get("cut")
	switch {
	case width != nil && cut != nil:
		r.fault(cut, s.what+` has both "width" and "cut"`, "keep the finished width or the cut width")
	case cut != nil:
		return r.cutWidth(s, cut)
	default:
		if width = s.need("width"); width != nil {
			return r.finishedLength(width)
		}
	}
	return 0
}

// cutWidth reads a width as it is cut and takes its two seams off. The outermost
// border has its second seam under the binding.
func (r *jobReader) cutWidth(s section, cut *fileNode) measure.Length {
	l := r.rawLength(cut)
	seams := 2 * r.job.Seam
	if l > 0 && l <= seams {
		r.fault(cut, fmt.Sprintf("%s, cut %s wide, has nothing left inside its two seams", s.what, l.Show(r.job.Units)),
			"cut it wider than "+seams.Show(r.job.Units))
		return 0
	}
	r.at[s.path("width")] = cut.at
	return max(0, l-seams)
}
