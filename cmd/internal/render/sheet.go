package render

import (
	"fmt"
	"io"

	"quiltrun/planner"
)

// Sheet writes the job sheet: all that is pinned up beside the machine.
func Sheet(w io.Writer, p planner.Plan, look Look) error {
	s := &sheet{page: page{look: look}, plan: p}
	for _, part := range []func(){
		s.head, s.warnings, s.fabrics, s.materials, s.cutting, s.blocks, s.pressing, s.layout, s.kits, s.route, s.cautions,
	} {
		part()
	}
	return s.writeTo(w)
}

// sheet is a job sheet being written.
type sheet struct {
	page
	plan planner.Plan
}

// factAt is the column at which the values of facts stand.
const factAt = 11

// head says whose quilt it is, when it is due and how large.
func (s *sheet) head() {
	job, quilt := s.plan.Job, s.plan.Quilt
	s.prose(strong, 0, "", job.Title)
	s.rule()
	s.fact("Job", factAt, job.ID)
	s.fact("For", factAt, job.Client)
	s.fact("Received", factAt, day(job.Received))
	if !job.Due.IsZero() {
		s.fact("Due", factAt, day(job.Due)+", in the client's hands")
	}
	s.fact("Quilts", factAt, s.quilts())
	s.fact("Seam", factAt, seamWords(job))
	s.fact("Flat size", factAt, size(quilt.Finished, job.Units)+" finished; a little less after quilting and washing")
	s.fact("Work", factAt, about(s.plan.Minutes)+" in all, by the table of starting times")
}

// quilts says how many quilts of how many blocks.
func (s *sheet) quilts() string {
	q := s.plan.Quilt
	blocks := fmt.Sprintf("%s, %s", counted(q.Blocks, "block"), s.acrossDown())
	if inside := s.insideBlocks(); inside < q.Blocks {
		blocks += fmt.Sprintf(", %d of them in borders", q.Blocks-inside)
	}
	if s.plan.Job.Quantity == 1 {
		return "1, of " + blocks
	}
	return fmt.Sprintf("%d alike, each of %s; counts, cloth and times below are for all of them", s.plan.Job.Quantity, blocks)
}

// insideBlocks is how many blocks of a quilt lie inside all borders.
func (s *sheet) insideBlocks() int {
	q := s.plan.Quilt
	if s.onPoint() {
		return q.Across*q.Down + (q.Across-1)*(q.Down-1)
	}
	return q.Across * q.Down
}

// warnings come before anything is cut.
func (s *sheet) warnings() {
	if len(s.plan.Warnings) == 0 {
		return
	}
	s.heading("Look at this before cutting")
	for _, w := range s.plan.Warnings {
		s.hang(1, "! ", w.Message)
	}
}
