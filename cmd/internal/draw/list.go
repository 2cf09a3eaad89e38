package draw

import (
	"fmt"
	"io"
	"strings"
	"unicode"

	"quiltrun/planner"
)

// Drawing is one drawing of a plan: a quilt's top, or a colourway's block.
type Drawing struct {
	File      string // its usual file's name, without a folder
	What      string // it shows: "the top", "the block tide"
	Quilt     int    // from 1; 0: a block
	Colourway string // "": a top
}

// Draw writes the drawing. Errors are those of Top and Block.
func (d Drawing) Draw(w io.Writer, p planner.Plan) error {
	if d.Quilt > 0 {
		return Top(w, p, d.Quilt)
	}
	return Block(w, p, d.Colourway)
}

// List is all drawings of a plan: the tops, then the blocks in file order. File
// names differ even where capitals count for nothing, and keep to letters, digits
// and hyphens, of any script.
func List(p planner.Plan) []Drawing {
	taken := map[string]bool{}
	name := func(of string) string {
		base := p.Job.ID + "-" + fileWord(of)
		free := base
		for n := 2; taken[strings.ToLower(free)]; n++ {
			free = fmt.Sprintf("%s-%d", base, n)
		}
		taken[strings.ToLower(free)] = true
		return free + ".svg"
	}
	var list []Drawing
	for quilt := 1; quilt <= p.Job.Quantity; quilt++ {
		of := "top"
		if p.Job.Quantity > 1 {
			of = fmt.Sprintf("top-%d", quilt)
		}
		list = append(list, Drawing{File: name(of), What: topName(p, quilt), Quilt: quilt})
	}
	for _, c := range p.Colourways {
		list = append(list, Drawing{File: name(c.Name), What: "the block " + c.Name, Colourway: c.Name})
	}
	return list
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
