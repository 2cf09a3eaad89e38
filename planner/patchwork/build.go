package patchwork

import "quiltrun/planner/measure"

// Choice is one free decision at the iron: a group of seams that are pressed
// alike in every unit of a step. Row counts from 0; for Between, Row is the row
// above the join. Half-square triangles have one choice; quarter-square
// triangles have that and, as Between, their long seam.
type Choice struct {
	Step    string
	Between bool // false: the seams within row Row; true: the join between Row and Row+1
	Row     int
}

// Match is one match point: where a seam of one side of a join meets a seam
// of the other. Near says the two miss each other by less than a seam allowance.
type Match struct {
	At    measure.Length // along the join from its start, finished
	Near  bool
	Leans []Signed // one per seam that meets there, from both sides
}

// Signed is a seam's lean along a join (+1 right or down, -1 left or up, 0 open
// or square to the join) when its choice is taken the first way.
type Signed struct {
	Choice int
	Along  int8
}

// Made is one step of a recipe as it comes off the table.
type Made struct {
	Step   Step
	Copies int  // how many units of the step one block takes (Cut: pieces), those that go into a pool not counted
	Unit   Unit // after the step; for steps that leave pieces, the pieces laid edge to edge: for Recut, the unit before it was parted

	Pieces [][]Unit            // Recut, Turn, Trim of pieces: the grid of pieces
	Joins  []SewnJoin          // what is sewn in one run: column seams pass by pass, then row joins
	Cuts   [2][]measure.Length // Recut, Subcut: upright and level cut places from left and top, rising
	Loss   measure.Size        // Trim, triangles: what comes off in all, across and down (of pieces: off the largest); Subcut: what is left over of a set

	// Yield is how many units one run of the step makes: 2, 4 or 8 triangles, as
	// many segments as a strip set has, and 1 in every other step.
	Yield int
	// Pooled steps are made for the lot before its blocks are kitted, as their
	// runs do not come out even with a block, or as a pooled step takes from
	// them. Batches counts their runs.
	Pooled bool
	Feeds  []Feed // the pooled steps that take from this one

	Square  measure.Length // triangles: raw side of the two squares of a run
	Before  measure.Length // triangles: side of a unit before the trim, rounded down to the tick
	RunCuts int            // triangles, Subcut: cuts of one run, the trim not counted
}

// Feed is what one run of a pooled step takes of another step's units.
type Feed struct {
	Step   string
	PerRun int
}

// SewnJoin is one pass of a Sew step: column Index joined to the columns before
// it in every row (Between false), or row Index joined to the rows above. Of
// triangles it is one sewing of two squares (Between false) or of two half-square
// triangles (Between true).
type SewnJoin struct {
	Between bool
	Index   int              // the column or row sewn on, from 1
	Lengths []measure.Length // length of each seam of the pass, raw edge to raw edge: one per row, or one
	Matches []Match          // of one unit
}

// Build is a recipe made: every step with its unit, and the free choices of
// pressing that its seams refer to.
type Build struct {
	Seam    measure.Length
	Steps   []Made
	Choices []Choice
}

// Block is the finished unit of the last step.
func (b *Build) Block() Unit { return b.Steps[len(b.Steps)-1].Unit }

// SeamLength is the length of all seams sewn in one run of the step.
func (m Made) SeamLength() measure.Length {
	var sum measure.Length
	for _, join := range m.Joins {
		for _, length := range join.Lengths {
			sum += length
		}
	}
	return sum
}

// SeamLength is the length of all seams sewn for one block, each raw edge to
// raw edge at the time it is sewn. Of a run that makes several units a block
// bears the share of those that it takes, to the nearest tick.
func (b *Build) SeamLength() measure.Length {
	each := make(map[string]measure.Length, len(b.Steps)) // of one unit, with all that went into it
	var last measure.Length
	for _, made := range b.Steps {
		last = made.SeamLength()
		for _, name := range made.Step.uses() {
			last += each[name]
		}
		last = last.Scale(1, int64(made.Yield), measure.Nearest)
		each[made.Step.Name] = last
	}
	return last
}
