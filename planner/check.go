package planner

import (
	"cmp"
	"fmt"
)

// MostBlocks is how many blocks a run may have, all quilts together. It is far
// more than one maker sews in years, and keeps every plan quick.
const MostBlocks = 10_000

// check finds what is wrong between parts of the file that are each right.
func (r *jobReader) check() {
	r.checkDates()
	r.checkFabrics()
	r.checkColourwayNames()
	r.checkBlockCount()
	r.checkMap()
}

// checkDates refuses a job that is due before it came in: one of the two is a slip,
// and a forecast would be built on it. Due on the day it came in is a hard day, not
// a fault.
func (r *jobReader) checkDates() {
	j := r.job
	if j.Due.IsZero() || j.Received.IsZero() || !j.Due.Before(j.Received) {
		return
	}
	r.report(r.at["due"], "due", fmt.Sprintf("the job is due on %s, before it was received on %s", j.Due, j.Received),
		"correct one of the two dates")
}

// checkFabrics looks up every fabric that the file names. Where no fabrics could
// be read, that has been reported, and each use would be reported again.
func (r *jobReader) checkFabrics() {
	names := make([]string, len(r.job.Fabrics))
	described := map[string]bool{}
	for i, f := range r.job.Fabrics {
		names[i] = f.Name
		described[f.Name] = true
	}
	for _, use := range r.uses {
		if len(names) > 0 && !described[use.fabric] {
			r.fault(use.node, fmt.Sprintf("the fabric %s is not described under fabrics", said(use.fabric)),
				cmp.Or(didYouMean(use.fabric, names), "the fabrics are "+listed(names, "and")))
		}
	}
}

// checkBlockCount checks that the colourways' blocks fill the layout, and the
// bound of a run.
func (r *jobReader) checkBlockCount() {
	l := r.job.Layout
	if l.Across == 0 || l.Down == 0 || l.Setting == "" {
		return
	}
	places := placesOf(l)
	if run := places * max(1, r.job.Quantity); run > MostBlocks {
		r.tooManyBlocks(places, run)
		return
	}
	blocks := 0
	for _, c := range r.job.Colourways {
		blocks += c.Blocks
	}
	if !r.blocks.counts || blocks == places || r.job.hasBlockBorder() {
		return
	}
	r.report(r.at["layout.across"], "layout.across",
		fmt.Sprintf("the colourways have %s, but the layout holds %d (%s)", counted(blocks, "block"), places, layoutWords(l)),
		countHint(blocks, places)+nearestWords(l, blocks))
}

// countHint says how many blocks are too few or too many.
func countHint(blocks, places int) string {
	hint := fmt.Sprintf("make %s more", counted(places-blocks, "block"))
	if blocks > places {
		hint = fmt.Sprintf("take %s out", counted(blocks-places, "block"))
	}
	return hint + ", or change across and down"
}

// placesOf is how many blocks a layout holds.
func placesOf(l Layout) int {
	if l.Setting == OnPoint {
		return l.Across*l.Down + (l.Across-1)*(l.Down-1)
	}
	return l.Across * l.Down
}

// layoutWords says how a layout comes to its number of places.
func layoutWords(l Layout) string {
	if l.Setting == OnPoint {
		return fmt.Sprintf("%d across × %d down on point, and %d × %d between", l.Across, l.Down, l.Across-1, l.Down-1)
	}
	return fmt.Sprintf("%d across × %d down", l.Across, l.Down)
}

// tooManyBlocks reports a run past the bound where the person can bring it down: at
// the quantity, unless one quilt alone is too large.
func (r *jobReader) tooManyBlocks(places, run int) {
	path := "layout.across"
	if places <= MostBlocks {
		path = "quantity"
	}
	r.report(r.at[path], path, fmt.Sprintf("the run has %d blocks; quiltrun plans at most %d", run, MostBlocks),
		"check across, down and quantity, or split the run into several jobs")
}
