package planner

import (
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// Minutes is a time in minutes of one person's work.
type Minutes float64

// Plan is everything the planner works out from a job. Lists follow the job
// file; operations go by number, then lot; blocks by quilt, then place, row by
// row.
type Plan struct {
	Job        Job
	Warnings   []Warning
	Quilt      Quilt
	Colourways []ColourwayPlan
	Blocks     []Block
	Swaps      []Swap // that Blocks is after: everything else is as the layout was dealt
	Press      PressPlan
	Joins      []Join
	Borders    []BorderPlan   // from the inside out
	Sashing    *SashingPlan   // nil: none
	Triangles  *TrianglesPlan // nil: not on point
	Fabrics    []FabricNeed
	Operations []Operation
	Materials  Materials
	Minutes    Minutes // the run's, expected
}

// Warning is something unwise that the plan goes on with. Code may grow.
type Warning struct {
	Code    string
	Path    string // of the job file, "" where no one value causes it
	Message string
}

// Quilt is one quilt of the run, flat, before quilting and washing.
type Quilt struct {
	Blocks       int // those of borders counted
	Across, Down int // of the layout; borders of blocks not counted

	Rows, Columns int          // of places over the whole, borders of blocks counted; on point rows are diagonals
	Inside        measure.Size // finished, inside all borders
	Finished      measure.Size // borders included, inside the binding's seam
	Top           measure.Size // raw
}

// BorderPlan is one border of a quilt as it is planned: two sides as long as what is
// inside is high, then two ends over them. The lengths that are cut are those of the
// made top, measured through its middle.
type BorderPlan struct {
	Fabric          string         // "" for a border of blocks
	Width, Cut      measure.Length // finished and raw; of a border of blocks, those of a block
	Inside, Outside measure.Size   // finished
	Sides, Ends     measure.Length // raw, of each of the two
	Blocks          int            // of a border of blocks, else 0
}

// SashingPlan is the sashing of a quilt: how many pieces it has of each sort. Upright
// ones stand beside the blocks of rows; level ones, with cornerstones, or strips from
// side to side lie between the rows.
type SashingPlan struct {
	Sashing
	Cut            measure.Length // raw width
	Upright, Level int            // pieces as long as a block
	Cornerstones   int
	Strips         int            // as long as a row
	StripLength    measure.Length // raw; 0 where there are no strips
}

// TrianglesPlan is the setting triangles on point: those of one quilt, and the raw
// sides of the squares that they are cut from, with how many of these the run takes.
// Over is how many side triangles are then left.
type TrianglesPlan struct {
	Fabric                     string
	Sides, Corners             int
	SideSquare, CornerSquare   measure.Length
	SideSquares, CornerSquares int
	Over                       int
}

// ColourwayPlan is how one colourway's block is made.
type ColourwayPlan struct {
	Name       string
	Blocks     int // per quilt
	Recipe     patchwork.Recipe
	Build      *patchwork.Build
	Press      patchwork.Way
	PressB     patchwork.Way // of the blocks of variant b; nil: all are pressed alike
	TwoTops    bool          // its blocks look the same after half a turn
	Raw        measure.Size
	Finished   measure.Size
	Areas      []patchwork.RoleArea
	SeamLength measure.Length
	Matches    patchwork.Tally
}

// Block is one block of the run. Row and Column count from 1 in its quilt.
// Turn is in degrees clockwise at the layout.
type Block struct {
	ID        string
	Quilt     int // from 1
	Colourway string
	Fabrics   []RoleFabric
	Row       int
	Column    int
	Turn      int
	Press     string // the variant of the press plan, "a" or "b"
}

// RoleFabric is the one fabric that a block uses in a role.
type RoleFabric struct {
	Role   string `json:"role"`
	Fabric string `json:"fabric"`
}

// Join sums up the match points of one kind of join over one quilt.
type Join struct {
	Between string // block columns, block rows, block corners …
	Matches patchwork.Tally
}

// ThreadPlan is the run's thread, both threads of the lockstitch together.
type ThreadPlan struct {
	Piecing, Quilting, Binding, Total measure.Length
	Bobbins                           int
}

// LotKind is what sort of like things go through an operation together.
type LotKind string

// The kinds of lot.
const (
	FabricLot    LotKind = "fabric"
	ColourwayLot LotKind = "colourway"
	QuiltLot     LotKind = "quilt"
)

// Lot names the like things that go through one operation together.
type Lot struct {
	Kind LotKind
	Name string
}

// CountUnit is what one count of an operation is. It may grow.
type CountUnit string

// Place is where an operation is done.
type Place string

// The places of work.
const (
	CuttingTable Place = "cutting table"
	Machine      Place = "machine"
	Iron         Place = "iron"
	DesignWall   Place = "design wall"
	Frame        Place = "frame"
	Hand         Place = "hand"
)

// Ref points at one row of the route. Takes says what is taken from that row
// where it is a pool, of cut pieces or of units made for the lot; nil elsewhere.
// A pool of units has one count for its colourway, whichever fabrics are in them.
type Ref struct {
	Key   string
	Lot   Lot
	Takes []Take
	Makes int // how many counts of the later row come of one that is taken, as segments of a strip set; 0: in proportion
}

// Take is how many counts one block takes from a pool. Without a block it is what
// the whole later row takes, in proportion to what is done of it.
type Take struct {
	Block string
	Count int
}

// Operation is one batch step of the route, for one lot.
type Operation struct {
	Number    int
	Key       string
	Step      string // of the block's recipe, "" for what belongs to none
	Name      string
	Lot       Lot
	CountedIn CountUnit
	PerBlock  int // counts that make one block; 0 outside colourway lots
	Count     int // for the run
	After     []Ref
	Place     Place

	SeamLength   measure.Length // for the whole count
	ThreadLength measure.Length // for the whole count, allowances included

	Setup Span     // once per lot
	Unit  Span     // per count
	Wait  int      // calendar days that pass without work (quilting sent out)
	Doing string   // the instruction, with the real measurements
	Care  []string // cautions
}

// Span is a time as a distribution: expected minutes and the spread of its
// logarithm (0: exact).
type Span struct {
	Mean   Minutes `json:"mean"`
	Spread float64 `json:"spread"`
}

// Minutes is the operation's expected time for its whole count.
func (o Operation) Minutes() Minutes {
	return o.Setup.Mean + Minutes(o.Count)*o.Unit.Mean
}
