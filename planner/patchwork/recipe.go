package patchwork

import (
	"slices"

	"quiltrun/planner/measure"
)

// Action is what a step of a recipe does.
type Action uint8

// The actions of a recipe.
const (
	Cut           Action = iota + 1 // cut pieces of one size from cloth
	Sew                             // sew a grid: rows first, then the rows together
	Recut                           // cut a sewn unit again, upright cuts first, then level cuts
	Turn                            // turn the pieces of a recut in their places, and exchange places
	Trim                            // cut all four sides back to a size, the middle kept
	HalfSquare                      // half-square triangles from two squares, 2, 4 or 8 at a time
	QuarterSquare                   // quarter-square triangles from two squares, 2 at a time
	Subcut                          // cut a strip set into equal segments
)

// Recipe is the making of one block: steps in the order of work. The last
// step makes the block.
type Recipe struct {
	Steps []Step
}

// Equal reports whether two recipes say the same, step by step.
func (r Recipe) Equal(o Recipe) bool { return slices.EqualFunc(r.Steps, o.Steps, Step.equal) }

// Step is one step of a recipe. Which fields count depends on Do.
type Step struct {
	Name string // unique in the recipe, a-z, 0-9 and hyphens; operations' keys come from it
	Do   Action

	Role string // Cut: what the fabric does in the block

	// Size is the raw size of a piece (Cut), the raw size to trim to (Trim), or
	// that of the squares cut (HalfSquare, QuarterSquare). Triangles may leave it
	// out: then it is the smallest square on the ruler, a multiple of 1/8 in or
	// of 0.5 cm as the job has it, from which TrimTo can be trimmed.
	Size measure.Size

	Of    string   // Recut, Turn, Trim, Subcut: the step whose unit or pieces are worked on
	Rows  [][]Cell // Sew: the grid, top row first
	Whole bool     // Sew: sew the grid of pieces that step Of left (a Recut or Turn), instead of Rows

	Upright []From // Recut: cuts from top to bottom, by distance
	Level   []From // Recut: cuts from side to side

	Turns [][]int // Turn: degrees clockwise for each piece, row by row; nil turns none where pieces are exchanged

	// Exchange lists pairs of places, numbered row by row from 1, whose pieces
	// change places (Turn): after the turns, one pair after the other, so that a
	// ring of pieces can move on by [1 2] [2 3] [3 4].
	Exchange [][2]int

	Roles   [2]string      // HalfSquare, QuarterSquare: the roles of the two squares, the first at the top (left)
	AtATime int            // HalfSquare: how many come of two squares: 2, 4 or 8
	TrimTo  measure.Length // HalfSquare, QuarterSquare: raw side to trim the units to; 0 leaves them as they come

	Every measure.Length // Subcut: the width of a segment, measured along the set from its left edge
}

func (s Step) equal(o Step) bool {
	return s.Name == o.Name && s.Do == o.Do && s.Role == o.Role && s.Size == o.Size && s.Of == o.Of &&
		s.Whole == o.Whole && s.Roles == o.Roles && s.AtATime == o.AtATime && s.TrimTo == o.TrimTo && s.Every == o.Every &&
		slices.EqualFunc(s.Rows, o.Rows, slices.Equal[[]Cell]) &&
		slices.Equal(s.Upright, o.Upright) && slices.Equal(s.Level, o.Level) &&
		slices.EqualFunc(s.Turns, o.Turns, slices.Equal[[]int]) && slices.Equal(s.Exchange, o.Exchange)
}

// Cell is one place of a sewn grid: the unit of an earlier step, turned by
// quarter turns clockwise.
type Cell struct {
	Of       string
	Quarters int
}

// Edge is what a recut is measured from.
type Edge uint8

// The lines to measure from: the middle of the unit, its left or top edge, its
// right or bottom edge, and the lines that part it into three.
const (
	Centre      Edge = iota
	Near             // left edge for upright cuts, top edge for level cuts
	Far              // right edge, bottom edge
	FirstThird       // one third from the left or top
	SecondThird      // two thirds from the left or top
)

// From is the place of one cut: a distance from an edge, inward; from the
// centre and from a third, negative is to the left or up.
type From struct {
	Edge     Edge
	Distance measure.Length
}

// Halves is the cut through the middle.
func Halves() []From { return []From{{Edge: Centre}} }

// Thirds is the cuts that part a unit into three equal pieces, raw.
func Thirds() []From { return []From{{Edge: FirstThird}, {Edge: SecondThird}} }

// EitherSide is the cuts at a distance on both sides of the middle.
func EitherSide(offset measure.Length) []From {
	return []From{{Centre, -offset}, {Centre, offset}}
}
