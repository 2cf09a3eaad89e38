package planner

import (
	"quiltrun/planner/cloth"
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

// FabricNeed is what the run needs of one fabric. Lengths are for yardage,
// sheets for every other form. Cutting is how all its pieces come off the cloth; what
// it says of lengths is of cloth as it is cut, after a wash; the need is of cloth
// as it is bought.
type FabricNeed struct {
	Fabric Fabric
	Pieces []PieceCount // longest first
	Strips int          // strips across the cloth, or lengths of it
	Cuts   int          // ruler cuts

	Length, LengthBound, LengthBuy measure.Length
	Sheets, SheetBound, SheetBuy   int

	Cutting     cloth.Plan     // its wants are Pieces
	Plain       measure.Length // what strips of each size of their own would take
	PlainSheets int            // the same of sheets
	Joint       measure.Length // lost where what is on hand ends and what is bought begins
	Nested      *NestedSaving  // nil: cuts in any order buy no less, or are planned so already
}

// NestedSaving is what cutting in any order would save of what is to be bought.
type NestedSaving struct {
	Length measure.Length // of yardage
	Sheets int            // of every other form
	Cuts   int            // ruler cuts in all
}

// PieceCount is how many pieces of one raw size the run needs, and what for.
type PieceCount struct {
	Size  measure.Size
	Count int
	For   string // blocks, border, binding, backing, spare
	Long  bool   // it runs along the selvage, and is cut first
	Cuts  int    // its share of the ruler cuts
}

// Materials are the quilt's layers and thread, for the run unless said.
type Materials struct {
	Backing *BackingPlan
	Batting *BattingPlan
	Binding *BindingPlan
	Borders []BorderCut // of cloth, from the inside out
	Thread  ThreadPlan
}

// BackingPlan is one quilt's backing: raw size wanted, and the panels that make
// it. Length is off the bolt, for one quilt; RunLength for all of them, cut side by
// side where that takes less.
type BackingPlan struct {
	Fabric    string
	Size      measure.Size
	Panels    int
	Panel     measure.Size     // the largest, across the cloth and along it
	Cut       []measure.Size   // every panel as it is cut
	SeamsRun  string           // "none", "lengthwise" or "crosswise"
	SeamsAt   []measure.Length // from the left edge, or from the top where they run crosswise
	Length    measure.Length
	RunLength measure.Length
	SeamTaken measure.Length
	Width     measure.Length // usable, of the cloth
}

// BattingPlan is one quilt's batting.
type BattingPlan struct {
	Size    measure.Size
	Choice  string         // the packaged size or what to buy, in words
	Package *measure.Size  // nil: no package holds it, or it comes off a roll
	Roll    measure.Length // width of the roll, 0: none
	Length  measure.Length // off the roll, for the run
	Left    []measure.Size // what is over of a package, or beside it on the roll
	Quilter bool           // whoever quilts brings it
}

// BindingPlan is one quilt's binding. Length is what goes round the edge with
// its allowance, FabricLength what its strips take off the bolt.
type BindingPlan struct {
	Fabric       string
	Strips       int // squares, where it is cut on the bias
	Strip        measure.Length
	Length       measure.Length
	FabricLength measure.Length
	Allowance    measure.Length // beyond the edge itself, asked for
	Spare        measure.Length // beyond the edge and joins, left with this many strips
	Fewer        measure.Length // what one strip fewer would leave beyond the edge; negative where it would not reach
	Joints       Joint
	Square       measure.Length // side of each square that a bias binding is cut from; 0: straight strips
}

// BorderCut is one border of cloth of every quilt: its four lengths as planned, and how
// they are cut.
type BorderCut struct {
	Nth        int // from the inside out, from 1; borders of blocks count too
	Fabric     string
	Cut        measure.Length // width as it is cut
	Sides      measure.Length // of the two sides, raw
	Ends       measure.Length // of top and bottom, raw
	Grain      Grain
	Strips     int            // across the cloth for the run; 0 where it is cut lengthwise
	Joined     bool           // strips are joined end to end, then cut to length
	Saves      measure.Length // what this grain buys less than the other, 0: nothing or forced
	Considered bool           // the other grain was worked out too
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
