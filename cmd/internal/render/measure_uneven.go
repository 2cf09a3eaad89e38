package render

import (
	"fmt"
	"strings"

	"quiltrun/planner"
)

// uneven shows both ways out of blocks of several sizes.
func (p *page) uneven(u planner.Uneven, job planner.Job) {
	unit := job.Units
	p.heading("Blocks of several sizes, planned " + size(u.Planned, unit) + " raw")
	t := u.Trim
	if u.Short == 0 && t.To != u.Planned {
		p.para(0, fmt.Sprintf("None is more than %s too small: ease them in, pinned at both ends and the middle.", u.Tolerance.Show(unit)))
		return
	}
	if t.To == u.Planned {
		p.hang(0, " 1. ", fmt.Sprintf("Trim %s to %s, as planned: nothing is lost, and the quilt stays %s. It takes %s.",
			several(t.Blocks, "block that is larger", "blocks that are larger"), size(t.To, unit), t.Now.Quilt.Show(unit), about(t.Minutes)))
		return
	}
	p.hang(0, " 1. ", fmt.Sprintf("Trim all to the smallest, %s raw, %s finished: %s to trim, %s. The quilt comes out %s, not %s; no new cloth is cut. What meets the edges of a block loses its points%s.",
		size(t.To, unit), size(t.Block, unit), counted(t.Blocks, "block"), about(t.Minutes), t.Now.Quilt.Show(unit), t.Was.Quilt.Show(unit), sashingTo(t, job)))
	r := u.Remake
	p.hang(0, " 2. ", fmt.Sprintf("Or make %s anew%s: the quilt stays %s. It takes %s and this cloth:",
		several(r.Blocks, "block", "blocks"), of(r, job), t.Was.Quilt.Show(unit), about(r.Minutes)))
	for _, piece := range r.Pieces {
		p.hang(4, "- ", piece.Words(unit)+took(piece, job))
	}
	if n := len(r.Work); n > 0 {
		p.para(4, fmt.Sprintf("Then %s back to what is left, from %d %s to %d %s.", goes(r.Blocks), r.Work[0].Number, r.Work[0].Name,
			r.Work[n-1].Number, r.Work[n-1].Name))
	}
}

// goes is a number of blocks that go somewhere.
func goes(n int) string {
	if n == 1 {
		return "1 block goes"
	}
	return counted(n, "block") + " go"
}

// several is a number of things that are known: "the block", "the 2 blocks".
func several(n int, one, more string) string {
	if n == 1 {
		return "the " + one
	}
	return fmt.Sprintf("the %d %s", n, more)
}

// of names the colourways that are made again, where there are several.
func of(r planner.Remaking, job planner.Job) string {
	if len(job.Colourways) < 2 {
		return ""
	}
	return ", counted for " + strings.Join(r.Of, " and ")
}

// took is how much cloth pieces take.
func took(r planner.RemadePieces, job planner.Job) string {
	if r.Sheets > 0 {
		for _, f := range job.Fabrics {
			if f.Name == r.Fabric {
				return ", from " + counted(r.Sheets, string(f.Form))
			}
		}
	}
	return ", " + r.Length.Show(job.Units) + " off the bolt"
}

// sashingTo says how long sashing is between blocks that are all trimmed to a size, ""
// where there is none.
func sashingTo(t planner.TrimAll, job planner.Job) string {
	if job.Layout.Sashing == nil {
		return ""
	}
	long := t.To.Height.Show(job.Units)
	if t.To.Width != t.To.Height {
		long += " and " + t.To.Width.Show(job.Units)
	}
	return ", and the sashing between them is cut " + long + " long"
}
