package planner

import (
	"cmp"
	"fmt"
)

// blockBorder reads what a border of blocks is made of: one colourway, a list to
// deal round it, or counts.
func (r *jobReader) blockBorder(n *fileNode) Border {
	var b Border
	switch n.kind {
	case list:
		for _, item := range r.items(n, said("blocks"), "colourways") {
			if text, ok := r.scalarText(item, "a colourway"); ok {
				b.Blocks = append(b.Blocks, BlockShare{Colourway: r.borderColourway(item, text)})
			}
		}
	case fields:
		b.Counted = true
		for _, pair := range r.named(n, "a colourway", "20") {
			r.borderColourway(&fileNode{at: pair.at, path: pair.value.path}, pair.key)
			b.Blocks = append(b.Blocks, BlockShare{Colourway: pair.key, Blocks: r.count(pair.value, 1)})
		}
	default:
		if text, ok := r.scalarText(n, "a colourway"); ok {
			b.Blocks = []BlockShare{{Colourway: r.borderColourway(n, text)}}
		}
	}
	return b
}

// borderColourway looks a colourway up: they are read before the borders.
func (r *jobReader) borderColourway(n *fileNode, name string) string {
	if names := r.colourwayNames(); len(names) > 0 && !r.isColourway(name) {
		r.fault(n, "the border names the colourway "+said(name)+", which is not described",
			cmp.Or(didYouMean(name, names), "the colourways are "+listed(names, "and")))
	}
	return name
}

// hasBlockBorder reports whether any border is made of blocks: how many then
// depends on how large they finish, and Make counts them.
func (j *Job) hasBlockBorder() bool {
	for _, b := range j.Borders {
		if b.ofBlocks() {
			return true
		}
	}
	return false
}

// borderAt is the path of a border, borders counted from zero.
func borderAt(i int) string { return fmt.Sprintf("borders[%d]", i) }

// borderPath is the path of a border's blocks.
func borderPath(i int) string { return borderAt(i) + ".blocks" }
