package planner

import (
	"cmp"
	"fmt"
	"strings"

	"quiltrun/planner/measure"
)

// readFabrics reads every fabric, in file order. One that nothing uses is no fault:
// it may be for a change of mind.
func (r *jobReader) readFabrics(n *fileNode) {
	for _, pair := range r.named(n, "a fabric", "{form: fat quarter}") {
		r.job.Fabrics = append(r.job.Fabrics, r.fabric(pair))
	}
}

// fabric reads one fabric; without a form it is yardage.
func (r *jobReader) fabric(pair filePair) Fabric {
	f := Fabric{Name: pair.key, Form: Yardage}
	s := r.section(pair.value, "fabric "+said(pair.key), "form", "width", "bolt", "size", "on-hand", "colour", "directional", "shrinkage")
	f.Directional = r.yes(s.get("directional"))
	f.Colour = r.colour(s.get("colour"))
	if n := s.get("form"); n != nil {
		word, ok := r.choose(n, formWords)
		if !ok {
			return f
		}
		f.Form = Form(word)
	}
	if f.Form.Sheets() {
		r.sheets(&f, s)
	} else {
		r.yardage(&f, s)
	}
	r.washing(&f, s.get("shrinkage"))
	return f
}

// washing reads what a wash takes off this fabric. Pre-cut pieces are not washed.
func (r *jobReader) washing(f *Fabric, n *fileNode) {
	preCut := f.Form == PreCutSquares || f.Form == PreCutStrips
	switch {
	case n != nil && preCut:
		r.fault(n, f.Form.Several()+" are not washed before they are sewn, they fray", `take "shrinkage" out`)
	case n != nil:
		f.Shrinkage = r.shrunk(n)
	case !preCut:
		f.Shrinkage = r.shrinkage
	}
}

// colour reads a colour and keeps it as it is written; "" for nil.
func (r *jobReader) colour(n *fileNode) string {
	if n == nil {
		return ""
	}
	text, ok := r.scalarText(n, "a colour")
	if !ok || isColour(text) {
		return text
	}
	r.fault(n, said(text)+" is not a colour", cmp.Or(didYouMean(text, colourNames()), n.hint()))
	return ""
}

// yardage reads what is measured off a bolt.
func (r *jobReader) yardage(f *Fabric, s section) {
	f.Width, f.Assumed = r.defaults().width, true
	if n := s.get("width"); n != nil {
		f.Width, f.Assumed = r.length(n), false
	}
	if n := s.get("bolt"); n != nil {
		r.bolt(f, s, n)
	}
	if n := s.get("size"); n != nil {
		r.fault(n, s.what+" is yardage, which has a width and no size", writeAs("width: 42"))
	}
	if n := s.get("on-hand"); n != nil {
		f.OnHand = r.onHand(n, f, func(n *fileNode) *Stock {
			text, ok := r.scalarText(n, "a length of cloth")
			if !ok {
				return nil
			}
			return r.yards(n, text)
		})
	}
}

// bolt reads the full width as it is sold; what is usable of it lies between the
// selvages.
func (r *jobReader) bolt(f *Fabric, s section, n *fileNode) {
	if s.get("width") != nil {
		r.fault(n, s.what+` has both "width" and "bolt"`, "keep the usable width or the full width of the bolt")
		return
	}
	full := r.length(n)
	if full > 0 && full <= 2*r.selvage {
		r.fault(n, fmt.Sprintf("a bolt %s wide has nothing left between its selvages", full.Show(r.job.Units)),
			fmt.Sprintf("each selvage takes %s", r.selvage.Show(r.job.Units)))
		return
	}
	f.Width, f.Assumed = full-2*r.selvage, false
	r.at[s.path("width")] = n.at
}

// onHand reads what is on hand: one value, or a list of such values and of pieces
// of any size. The longest length is the stock, the others pieces of the full
// usable width.
func (r *jobReader) onHand(n *fileNode, f *Fabric, one func(*fileNode) *Stock) *Stock {
	if n.kind != list {
		return one(n)
	}
	all := &Stock{}
	for _, item := range r.items(n, `"on-hand"`, "lengths, counts and sizes") {
		if _, _, sides := strings.Cut(strings.ToLower(item.text), "x"); item.kind == scalar && (sides || strings.ContainsAny(item.text, "×")) {
			size, err := measure.ParseSize(item.text, r.job.Units)
			r.noMeasure(item, err)
			all.Pieces = append(all.Pieces, size)
			continue
		}
		s := one(item)
		if s == nil {
			continue
		}
		shorter := min(all.Length, s.Length)
		all.Length, all.Sheets = max(all.Length, s.Length), all.Sheets+s.Sheets
		if shorter > 0 {
			all.Pieces = append(all.Pieces, measure.Size{Width: f.Width, Height: shorter})
		}
	}
	return all
}

// yards reads a length of cloth on hand. Its unit must be written, because cloth
// is bought by the yard and cut by the inch; none at all needs no unit.
func (r *jobReader) yards(n *fileNode, text string) *Stock {
	if l, err := measure.ParseAllowZero(text, r.job.Units); err == nil && l == 0 {
		return &Stock{}
	}
	l, err := measure.ParseNamed(text)
	if err == nil {
		return &Stock{Length: l}
	}
	if _, bare := measure.Parse(text, r.job.Units); bare != nil {
		r.noMeasure(n, err)
		return nil
	}
	unit := "yd"
	if r.job.Units == measure.Centimetres {
		unit = "m"
	}
	r.fault(n, fmt.Sprintf("yardage on hand needs its unit: %s %s, not %s", text, unit, text), "")
	return nil
}

// sheets reads what comes in sheets of one size, and is counted.
func (r *jobReader) sheets(f *Fabric, s section) {
	for _, key := range []string{"width", "bolt"} {
		if n := s.get(key); n != nil {
			r.fault(n, fmt.Sprintf("%s comes as %s, which have a size and no width", s.what, f.Form.Several()), writeAs("size: 18 x 22"))
		}
	}
	r.sheetSize(f, s)
	if n := s.get("on-hand"); n != nil {
		f.OnHand = r.onHand(n, f, func(n *fileNode) *Stock { return r.sheetCount(n, f.Form) })
	}
}

// sheetCount reads how many sheets are on hand.
func (r *jobReader) sheetCount(n *fileNode, form Form) *Stock {
	if _, err := measure.ParseNamed(n.text); n.kind == scalar && err == nil {
		r.fault(n, fmt.Sprintf("%s on hand are counted; %s is a length", form.Several(), said(n.text)), n.hint())
		return nil
	}
	return &Stock{Sheets: r.count(n, 0)}
}

// sizeExample is the size of a form that has none of its own.
func sizeExample(f Form) string {
	if f == PreCutStrips {
		return "size: 2 1/2 x 42"
	}
	return "size: 5"
}

// sheetSize reads the size of one sheet, or assumes that of the shops where the
// form has one.
func (r *jobReader) sheetSize(f *Fabric, s section) {
	switch f.Form {
	case FatQuarter:
		f.Size = r.defaults().fat
	case FatEighth:
		f.Size = r.defaults().thin
	}
	f.Assumed = f.Size != measure.Size{}
	n := s.get("size")
	if n == nil {
		if !f.Assumed && s.node != nil {
			r.fault(s.node, fmt.Sprintf("%s has no \"size\", which %s need", s.what, f.Form), writeAs(sizeExample(f.Form)))
		}
		return
	}
	text, ok := r.scalarText(n, "a size")
	if !ok {
		return
	}
	size, err := measure.ParseSize(text, r.job.Units)
	r.noMeasure(n, err)
	if err == nil {
		r.checkSheet(f, n, size)
	}
}

// checkSheet takes the size that the file gives. A strip that gives its width
// alone runs the usable width of the cloth.
func (r *jobReader) checkSheet(f *Fabric, n *fileNode, size measure.Size) {
	oneSide := size.Width == size.Height && !strings.ContainsAny(strings.ToLower(n.text), "x×y")
	f.Size, f.Assumed = size, false
	switch {
	case f.Form == PreCutSquares && size.Width != size.Height:
		r.fault(n, fmt.Sprintf("pre-cut squares are square, and %s is not", said(n.text)),
			"give one side, or describe the sheets as fat quarters with their size")
	case f.Form == PreCutStrips && oneSide:
		f.Size.Height, f.Assumed = r.defaults().width, true
	}
}
