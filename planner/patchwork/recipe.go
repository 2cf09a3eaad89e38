package patchwork

import "quiltrun/planner/measure"

// Action is what a step of a recipe does.
type Action uint8

// The actions of a recipe.
const (
	Cut   Action = iota + 1 // cut pieces of one size from cloth
	Sew                     // sew a grid: rows first, then the rows together
	Recut                   // cut a sewn unit again, upright cuts first, then level cuts
	Turn                    // turn the pieces of a recut in their places
	Trim                    // cut all four sides back to a size, the middle kept
)

// Recipe is the making of one block: steps in the order of work. The last
// step makes the block.
type Recipe struct {
	Steps []Step
}

// Step is one step of a recipe. Which fields count depends on Do.
type Step struct {
	Name string // unique in the recipe, a-z, 0-9 and hyphens; operations' keys come from it
	Do   Action

	Role string       // Cut: what the fabric does in the block
	Size measure.Size // Cut: raw size of a piece. Trim: raw size to trim to

	Of    string   // Recut, Turn, Trim: the step whose unit or pieces are worked on
	Rows  [][]Cell // Sew: the grid, top row first
	Whole bool     // Sew: sew the grid of pieces that step Of left (a Recut or Turn), instead of Rows

	Upright []From // Recut: cuts from top to bottom, by distance
	Level   []From // Recut: cuts from side to side

	Turns [][]int // Turn: degrees clockwise for each piece, row by row
}

// Cell is one place of a sewn grid: the unit of an earlier step, turned by
// quarter turns clockwise.
type Cell struct {
	Of       string
	Quarters int
}

// Edge is what a recut is measured from.
type Edge uint8

// The edges of measure: the middle of the unit, its left or top edge, its
// right or bottom edge.
const (
	Centre Edge = iota
	Near        // left edge for upright cuts, top edge for level cuts
	Far         // right edge, bottom edge
)

// From is the place of one cut: a distance from an edge, inward; from the
// centre, negative is to the left or up.
type From struct {
	Edge     Edge
	Distance measure.Length
}
