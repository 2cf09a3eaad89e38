package planner

import (
	"strings"

	"quiltrun/planner/cloth"
	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// Job is one quilt, or several alike, as its job file describes it. Lists keep
// the file's order. Parse makes it and has checked it; geometry's and cloth's
// own faults are found by Make.
type Job struct {
	File     string // as it was named to Parse, for messages
	ID       string
	Title    string // the id where the file gives none
	Client   string
	Received Date
	Due      Date // in the client's hands
	Quantity int  // alike quilts in one run, at least 1
	Units    measure.Unit
	Seam     measure.Length // what one seam takes from each side
	Prewash  bool
	Cutting  CutRules
	Spares   Spares

	// SeamAsked is the job file's seam where Seam is one that was measured at the
	// machine; 0 where they are the same.
	SeamAsked measure.Length

	Fabrics    []Fabric
	Colourways []Colourway
	Press      PressRule // "" is PressBest
	Layout     Layout
	Borders    []Border
	Backing    *Backing  // nil: not asked for
	Batting    *Batting  // nil: not asked for
	Binding    *Binding  // nil: not asked for
	Quilting   *Quilting // nil: not asked for

	At Positions // where the file says what, by path
}

// Form is how a fabric is sold and lies on the shelf.
type Form string

// The forms that a job file can give.
const (
	Yardage       Form = "yardage"
	FatQuarter    Form = "fat quarter"
	FatEighth     Form = "fat eighth"
	PreCutSquares Form = "pre-cut squares"
	PreCutStrips  Form = "pre-cut strips"
)

// Sheets reports whether the form is counted rather than measured off a bolt.
func (f Form) Sheets() bool { return f != Yardage }

// One is what a single one is called: "fat quarter", "pre-cut square".
func (f Form) One() string { return strings.TrimSuffix(string(f), "s") }

// Several is what several are called: "fat quarters", "pre-cut squares".
func (f Form) Several() string { return english.Plural(f.One()) }

// Fabric is one cloth with a name, a form and what is on hand.
type Fabric struct {
	Name   string
	Form   Form
	Width  measure.Length // usable width of yardage
	Size   measure.Size   // of one sheet; zero for yardage
	OnHand *Stock         // nil: the file does not say
	Colour string         // as the file writes it, "" where not given

	Directional bool
	Assumed     bool      // Width or Size is the planner's, not the file's
	Shrinkage   Shrinkage // what washing takes before it is cut; zero where it is not washed
}

// Stock is what is on hand: a length of yardage or a count of sheets, and pieces
// of any size beside it. A bolt cut in two is its longer length here, and the
// other one a piece of the usable width.
type Stock struct {
	Length measure.Length
	Sheets int
	Pieces []measure.Size // in the file's order
}

// Shrinkage is what a wash takes off cloth, in hundredths of a percent of its
// width and of its length.
type Shrinkage struct{ Width, Length int }

// CutRules are the maker's ways of cutting.
type CutRules struct {
	Style    cloth.Style    // "" is simple
	Layers   int            // most layers in a stack; 0 is cloth.DefaultLayers
	SquareUp measure.Length // what straightening takes off each length and width
}

// Spares are pieces cut beyond those that blocks take.
type Spares struct {
	Pieces int // of each size that blocks take of a fabric
	Blocks int // of each colourway: the pieces of so many blocks more
}

// Colourway is a group of blocks that use the same lists of fabrics in each
// role and the same measures. Keys of the file's `block` that the colourway
// does not give itself are already filled in.
type Colourway struct {
	Name   string
	Was    string // the name under which its blocks were booked, "" where unchanged
	Blocks int    // per quilt
	Block  BlockSpec
	Roles  []RoleFabrics // one for each of the block's roles, in the order of BuiltIn.Roles or of the steps
}

// BlockSpec is what a block is made from: a built-in with its measures, or steps
// of its own. Which measures a built-in takes, the table of built-ins says.
type BlockSpec struct {
	Make     string                    // the trade's full name, synonyms resolved; "" where Steps are given
	Square   measure.Size              // raw, of a piece as it is cut; a rectangle where the file gives two sides
	Measures map[string]measure.Length // offset, strip, length, unit
	Method   int                       // half-square triangles at a time: 0 (not given), 2, 4 or 8
	Strips   int                       // of a rail
	Turn     [][]int                   // degrees clockwise per piece, row by row; nil: the built-in's own
	Steps    patchwork.Recipe          // steps of its own
}

// RoleFabrics says which fabrics a colourway uses in a role, block by block.
type RoleFabrics struct {
	Role    string
	Fabrics []Share
	Counted bool // {Kelp: 5, Cormorant: 3} rather than a list to deal from
}

// Share is a fabric and, in a counted role, how many of a quilt's blocks it gets.
type Share struct {
	Fabric string
	Blocks int // 0 where the list is dealt
}

// Setting is how blocks lie in the top.
type Setting string

// The settings of a layout.
const (
	Straight Setting = "straight"
	OnPoint  Setting = "on point"
)

// Order is how the layout's places are given to colourways.
type Order string

// The orders of a layout. Deal orders take the next colourway at each place;
// fill orders use one colourway up before the next.
const (
	DealDiagonal Order = "diagonal"
	DealRows     Order = "rows"
	FillDiagonal Order = "diagonal fill"
	FillRows     Order = "rows fill"
	Scatter      Order = "scatter"
	Mapped       Order = "map"
)

// Layout is the setting of the top.
type Layout struct {
	Across, Down int
	Setting      Setting
	Order        Order
	Map          [][]MapCell // for Mapped: level lines as the quilt hangs, on point those between rows too
	Turn         [][]int     // degrees clockwise, repeated over the layout; nil: none
	Sashing      *Sashing
	Triangles    string // fabric of the setting triangles, on point; "" where straight
}

// MapCell is one place of a mapped layout. Turn is in degrees clockwise.
type MapCell struct {
	Colourway string
	Turn      int
}

// Sashing is the strips between blocks.
type Sashing struct {
	Width        measure.Length // finished
	Fabric       string
	Cornerstones string // fabric, "" for none
	Edge         bool   // all round, not only between
}

// Grain is which way long pieces, or the seams of a backing, run on the cloth.
type Grain string

// The grains. Where none is given, the one that buys less is taken.
const (
	Lengthwise Grain = "lengthwise" // along the selvage, in one piece
	Crosswise  Grain = "crosswise"  // across the cloth, joined where it is too narrow
)

// Border is one border round the top: of cloth, or of blocks.
type Border struct {
	Width  measure.Length // finished; 0 for a border of blocks
	Fabric string         // "" for a border of blocks
	Grain  Grain          // "": whichever buys less

	Blocks  []BlockShare // nil for a border of cloth
	Counted bool         // {dune: 24, tide: 20} rather than a list to deal from
}

// BlockShare is a colourway and, where a border counts its blocks, how many of them
// it gives.
type BlockShare struct {
	Colourway string
	Blocks    int // 0 where the list is dealt
}

// Backing is the back of the quilt.
type Backing struct {
	Fabric string
	Extra  measure.Length // on the left and on the right
	Ends   measure.Length // at the top and at the bottom
	Seams  Grain          // which way the seams run; "": whichever buys less
}

// Batting is the layer between.
type Batting struct {
	Extra    measure.Length // per side
	Packages []measure.Size // the packages to choose from; nil: the usual ones
	Roll     measure.Length // width of the roll that it is cut from; 0: packages
	Quilter  bool           // whoever quilts brings it
}

// Finish is how the binding's second side is sewn down.
type Finish string

// The finishes of a binding.
const (
	ByMachine Finish = "machine"
	ByHand    Finish = "hand"
)

// Joint is how binding strips are joined end to end.
type Joint string

// The joints of binding strips.
const (
	DiagonalJoint Joint = "diagonal" // costs a strip's width of length
	StraightJoint Joint = "straight" // costs its two seams
)

// Binding is the edge.
type Binding struct {
	Fabric    string
	Strip     measure.Length // cut width
	Finish    Finish
	Joints    Joint
	Allowance measure.Length // length asked for beyond the edge
	Bias      bool           // cut on the bias, from a square
}

// Density is how close the quilting lines run.
type Density string

// The densities of quilting, from close to wide.
const (
	Dense  Density = "dense"
	Medium Density = "medium"
	Open   Density = "open"
)

// Quilting says who quilts and how closely. LeadDays are calendar days from
// hand-over to collection, for quilting sent out.
type Quilting struct {
	SentOut  bool
	LeadDays int
	Density  Density
}

// SeamShown is the seam allowance for people. In centimetres it is given to the
// tenth of a millimetre: 0.75 cm is not 0.8 cm at the needle. A measured one is
// given to the thousandth of an inch, since no ruler's line says it.
func (j Job) SeamShown() string {
	switch {
	case j.Units == measure.Centimetres:
		return j.Seam.Decimal(j.Units, 2) + " cm"
	case j.SeamAsked != 0:
		return SeamMeasured(j.Seam, j.Units)
	}
	return j.Seam.Show(j.Units)
}

// SeamMeasured is a seam as it was measured: to the thousandth of an inch, or to
// the hundredth of a centimetre and one place more.
func SeamMeasured(seam measure.Length, u measure.Unit) string {
	return seam.Decimal(u, 3) + " " + u.String()
}
