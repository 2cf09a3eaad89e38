package draw

import (
	"fmt"
	"io"
	"strings"
	"unicode"

	"quiltrun/planner"
)

// Drawing is one drawing of a plan: a quilt's top, a colourway's block, or
// the cutting of a fabric.
type Drawing struct {
	File      string // its usual file's name, without a folder
	What      string // it shows: "the top", "the block tide"
	Quilt     int    // from 1; 0: no top
	Colourway string // "": no block

	Fabrics []string // that are cut so; nil: no cutting
}

// Draw writes the drawing. Errors are those of Top, Block and Cutting.
func (d Drawing) Draw(w io.Writer, p planner.Plan) error {
	switch {
	case d.Quilt > 0:
		return Top(w, p, d.Quilt)
	case len(d.Fabrics) > 0:
		return Cutting(w, p, d.Fabrics[0])
	}
	return Block(w, p, d.Colourway)
}

// List is the drawings of a plan's tops, then of its blocks in file order. File
// names differ even where capitals count for nothing, and keep to letters, digits
// and hyphens, of any script.
func List(p planner.Plan) []Drawing {
	names := newNames(p.Job.ID)
	var list []Drawing
	for quilt := 1; quilt <= p.Job.Quantity; quilt++ {
		of := "top"
		if p.Job.Quantity > 1 {
			of = fmt.Sprintf("top-%d", quilt)
		}
		list = append(list, Drawing{File: names.file(of), What: topName(p, quilt), Quilt: quilt})
	}
	for _, c := range p.Colourways {
		list = append(list, Drawing{File: names.file(fileWord(c.Name)), What: "the block " + c.Name, Colourway: c.Name})
	}
	return list
}

// names gives files names that differ.
type names struct {
	job   string
	taken map[string]bool
}

func newNames(job string) *names { return &names{job, map[string]bool{}} }

// file is the name of a drawing's file.
func (n *names) file(of string) string {
	base := n.job + "-" + of
	free := base
	for k := 2; n.taken[strings.ToLower(free)]; k++ {
		free = fmt.Sprintf("%s-%d", base, k)
	}
	n.taken[strings.ToLower(free)] = true
	return free + ".svg"
}

// longestWord bounds a colourway's part of a file name, in bytes: disks take
// names of 255 in all.
const longestWord = 120

// fileWord is a name fit for a file on any disk: letters and digits, with single
// hyphens for all else. What has neither is called block.
func fileWord(name string) string {
	var out strings.Builder
	for _, r := range name {
		keep := unicode.In(r, unicode.Letter, unicode.Mark, unicode.Digit)
		switch {
		case out.Len()+4 > longestWord:
		case keep:
			out.WriteRune(r)
		case out.Len() > 0 && !strings.HasSuffix(out.String(), "-") && r != '\'' && r != '’':
			out.WriteByte('-')
		}
	}
	if word := strings.Trim(out.String(), "-"); word != "" {
		return word
	}
	return "block"
}
