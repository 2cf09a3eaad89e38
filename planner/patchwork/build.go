package patchwork

import "quiltrun/planner/measure"

// Choice is one free decision at the iron: a group of seams that are pressed
// alike in every unit of a step. Row counts from 0; for Between, Row is the row
// above the join.
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
	Copies int  // how many times a block needs this step's unit (Cut: pieces)
	Unit   Unit // after the step; for steps that leave pieces, the pieces laid edge to edge: for Recut, the unit before it was parted

	Pieces [][]Unit            // Recut, Turn, Trim of pieces: the grid of pieces
	Joins  []SewnJoin          // Sew: every join in sewing order: column seams pass by pass, then row joins
	Cuts   [2][]measure.Length // Recut: upright and level cut places from left and top, rising
	Loss   measure.Size        // Trim: what comes off in all, across and down (of pieces: off the largest)
}

// SewnJoin is one pass of a Sew step: column Index joined to the columns before
// it in every row (Between false), or row Index joined to the rows above.
type SewnJoin struct {
	Between bool
	Index   int              // the column or row sewn on, from 1
	Lengths []measure.Length // length of each seam of the pass, raw edge to raw edge: one per row, or one
	Matches []Match
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

// SeamLength is the length of all seams sewn for one unit of the step.
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
// raw edge at the time it is sewn.
func (b *Build) SeamLength() measure.Length {
	var sum measure.Length
	for _, made := range b.Steps {
		sum += made.SeamLength().Times(made.Copies)
	}
	return sum
}
