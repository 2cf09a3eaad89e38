package planner

import (
	"fmt"
	"strconv"
	"strings"

	"quiltrun/planner/cloth"
)

// readCutting reads the maker's ways of cutting.
func (r *jobReader) readCutting(n *fileNode) {
	r.selvage = r.defaults().selvage
	if r.job.Prewash {
		r.shrinkage = washed
	}
	if n == nil {
		return
	}
	s := r.section(n, "the cutting", "style", "layers", "square-up", "selvage", "shrinkage")
	if style := s.get("style"); style != nil {
		word, _ := r.choose(style, styleWords)
		r.job.Cutting.Style = cloth.Style(word)
	}
	if layers := s.get("layers"); layers != nil {
		r.job.Cutting.Layers = r.count(layers, 1)
	}
	if square := s.get("square-up"); square != nil {
		r.job.Cutting.SquareUp = r.lengthOrZero(square)
	}
	if selvage := s.get("selvage"); selvage != nil {
		r.selvage = r.lengthOrZero(selvage)
	}
	if shrinkage := s.get("shrinkage"); shrinkage != nil {
		r.shrinkage = r.shrunk(shrinkage)
	}
}

// readSpares reads what is cut beyond the blocks' need.
func (r *jobReader) readSpares(n *fileNode) {
	if n == nil {
		return
	}
	s := r.section(n, "the spares", "pieces", "blocks")
	if pieces := s.get("pieces"); pieces != nil {
		r.job.Spares.Pieces = r.count(pieces, 0)
	}
	if blocks := s.get("blocks"); blocks != nil {
		r.job.Spares.Blocks = r.count(blocks, 0)
	}
	if most := max(r.job.Spares.Pieces, r.job.Spares.Blocks); most > MostBlocks {
		r.fault(n, fmt.Sprintf("%d spares are more than a run may have blocks", most), fmt.Sprintf("keep to %d", MostBlocks))
		r.job.Spares = Spares{}
	}
}

// shrunk reads what washing takes: one share for both ways, or one for the width
// and one for the length. Without washing there is none.
func (r *jobReader) shrunk(n *fileNode) Shrinkage {
	if !r.job.Prewash {
		r.fault(n, `"shrinkage" counts where cloth is washed before it is cut`, "write "+keyExamples()["prewash"]+", or take it out")
		return Shrinkage{}
	}
	if n.kind != fields {
		share := r.percent(n)
		return Shrinkage{share, share}
	}
	s := r.section(n, "the shrinkage", "width", "length")
	var out Shrinkage
	if width := s.get("width"); width != nil {
		out.Width = r.percent(width)
	}
	if length := s.get("length"); length != nil {
		out.Length = r.percent(length)
	}
	return out
}

// mostShrinkage is the most that a wash may take: a quarter. What shrinks more is
// no quilting cotton.
const mostShrinkage = 25

// percent reads a share in percent, "3", "3 %" or "2.5 %", in hundredths of one.
func (r *jobReader) percent(n *fileNode) int {
	text, ok := r.scalarText(n, "a share in percent")
	if !ok {
		return 0
	}
	number := strings.TrimSpace(strings.TrimSuffix(strings.Replace(text, ",", ".", 1), "%"))
	whole, part, _ := strings.Cut(number, ".")
	share, err := strconv.ParseUint(whole+(part + "00")[:2], 10, 32)
	if err != nil || whole == "" || len(part) > 2 {
		r.fault(n, fmt.Sprintf("%s should be a share in percent, not %s", said(n.label), said(text)), "write it as in shrinkage: 3 %")
		return 0
	}
	if share > mostShrinkage*100 {
		r.fault(n, fmt.Sprintf("%s is %s, more than any cloth for quilts shrinks", said(n.label), said(text)), fmt.Sprintf("at most %d %%", mostShrinkage))
		return 0
	}
	return int(share)
}
