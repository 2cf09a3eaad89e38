package planner

import (
	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

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
	Size     measure.Size
	Choice   string         // the packaged size or what to buy, in words
	Package  *measure.Size  // nil: no package holds it, or it comes off a roll
	Packages int            // for the run: fewer than quilts where several come from one
	Roll     measure.Length // width of the roll, 0: none
	Length   measure.Length // off the roll, for the run
	Left     []measure.Size // what is over of a package, or beside it on the roll
	Quilter  bool           // whoever quilts brings it
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
