package planner

import (
	"slices"

	"quiltrun/planner/measure"
)

// Amount is how much of something: ticks of length for what is measured, a count
// for what comes in sheets.
type Amount int64

// Material is what sort of thing lies on the shelf.
type Material string

// The materials.
const (
	ClothMaterial   Material = "cloth"
	BattingMaterial Material = "batting"
	ThreadMaterial  Material = "thread"
)

// The forms that no job file gives, beside those that it can.
const (
	Pieces  Form = "pieces"  // cloth or batting in rectangles of one size
	Package Form = "package" // of batting, one quilt's worth
	Roll    Form = "roll"    // batting by the length
	Spool   Form = "spool"   // thread by the length
)

// Counted reports whether the form is counted; others are measured.
func (f Form) Counted() bool { return f != Yardage && f != Roll && f != Spool }

// StockNeed is what a run takes of one thing that could lie on a shelf: a fabric's
// pieces, its backing, batting, or thread of one use. Whole, Own and the strips
// are ticks or counts, as the form is measured or counted; batting counts quilts.
type StockNeed struct {
	Material    Material       `json:"material"`
	Name        string         `json:"name,omitempty"` // the fabric, or what the thread sews; "" for batting
	Form        Form           `json:"form"`
	Width       measure.Length `json:"width,omitempty"` // least that does: usable width, or of a sheet
	Height      measure.Length `json:"height,omitempty"`
	Directional bool           `json:"directional,omitempty"`
	For         string         `json:"for,omitempty"` // "backing" where it is that alone, else ""
	Whole       Amount         `json:"whole"`
	Metric      bool           `json:"metric,omitempty"` // the job's units are centimetres
	Own         Amount         `json:"own,omitempty"`    // the job file's on-hand, for the fabric's pieces and then its backing
	Strips      []StockStrip   `json:"strips,omitempty"`
	Left        []StockLeft    `json:"left,omitempty"` // leftovers of use once all is cut
	Parts       []StockPart    `json:"parts,omitempty"`
}

// StockStrip is lengths off the bolt that cannot be joined of two. Width is how far
// across its pieces reach, 0 where a ledger does not say: a rectangle that large
// does in its place.
type StockStrip struct {
	Length measure.Length `json:"length"`
	Width  measure.Length `json:"width,omitempty"`
	Count  int            `json:"count"`
}

// StockLeft is leftovers of one size.
type StockLeft struct {
	Width  measure.Length `json:"width"`
	Height measure.Length `json:"height"`
	Count  int            `json:"count"`
}

// StockPart is a row of the route that uses the need up: its whole count takes
// the share. Shares add up to 1. Spare are counts beyond what the quilts take.
type StockPart struct {
	Operation string  `json:"operation"`
	LotKind   LotKind `json:"lot_kind"`
	Lot       string  `json:"lot"`
	Count     int     `json:"count"`
	Spare     int     `json:"spare,omitempty"`
	Share     float64 `json:"share"`
}

// StockNeeds is what the plan's run takes: fabrics in file order, each followed by
// its backing, then batting and thread. A backing whose lengths other pieces come
// from too is one need with them.
func (p Plan) StockNeeds() []StockNeed {
	var needs []StockNeed
	for _, n := range p.Fabrics {
		needs = append(needs, p.clothNeeds(n)...)
	}
	if b := p.Materials.Batting; b != nil && !b.Quilter {
		needs = append(needs, p.battingNeed(*b))
	}
	for _, use := range ThreadUses {
		if n := p.threadNeed(use); n.Whole > 0 {
			needs = append(needs, n)
		}
	}
	for i := range needs {
		needs[i].Metric = p.Job.Units == measure.Centimetres
	}
	return needs
}

// clothNeeds is what the pieces of one fabric take, cut together: those of the
// backing by themselves where no others come from its lengths. Lengths are of cloth
// as it is bought.
func (p Plan) clothNeeds(n FabricNeed) []StockNeed {
	if len(n.Pieces) == 0 {
		return nil
	}
	f := n.Fabric
	need := StockNeed{Material: ClothMaterial, Name: f.Name, Form: f.Form, Width: f.Width, Directional: f.Directional, Own: ownOf(f), Left: stockLeft(n.Cutting)}
	if f.Form.Sheets() {
		need.Width, need.Height, need.Whole = f.Size.Width, f.Size.Height, Amount(n.Sheets)
		need.Parts = p.cutParts(n)
		return []StockNeed{need}
	}
	pieces, backing, apart := n.parted()
	if !apart {
		need.strips(f, slices.Concat(pieces, backing))
		need.Parts = p.cutParts(n)
		return []StockNeed{need}
	}
	var needs []StockNeed
	if len(pieces) > 0 {
		rest := need
		rest.strips(f, pieces)
		rest.Parts = p.cutParts(n.only(func(p PieceCount) bool { return p.For != forBacking }))
		needs = append(needs, rest)
		need.Own, need.Left = 0, nil // of the job's own cloth the backing has what the pieces leave
	}
	if len(backing) > 0 {
		need.For = forBacking
		need.strips(f, backing)
		need.Parts = p.cutParts(n.only(func(p PieceCount) bool { return p.For == forBacking }))
		needs = append(needs, need)
	}
	return needs
}

// parted is the lengths of the bolt that give backing and those that give other
// pieces; apart is false where one gives both.
func (n FabricNeed) parted() (pieces, backing []band, apart bool) {
	for _, b := range bands(n.Cutting) {
		back := 0
		for _, p := range b.pieces {
			back += oneIf(n.Pieces[p.Want].For == forBacking)
		}
		switch back {
		case 0:
			pieces = append(pieces, b)
		case len(b.pieces):
			backing = append(backing, b)
		default:
			return pieces, append(backing, bands(n.Cutting)[len(pieces)+len(backing):]...), false
		}
	}
	return pieces, backing, true
}

// only is the need with some of its pieces.
func (n FabricNeed) only(which func(PieceCount) bool) FabricNeed {
	n.Pieces = slices.DeleteFunc(slices.Clone(n.Pieces), func(p PieceCount) bool { return !which(p) })
	return n
}

// strips enters lengths off the bolt, which add up to the whole.
func (s *StockNeed) strips(f Fabric, bands []band) {
	s.Strips, s.Whole = nil, 0
	for _, strip := range stripsOf(bands) {
		strip.Length, strip.Width = f.unwashed(strip.Length), min(f.Width, f.unwashedWidth(strip.Width))
		s.Strips = append(s.Strips, strip)
		s.Whole += Amount(strip.Length.Times(strip.Count))
	}
}

func ownOf(f Fabric) Amount {
	switch {
	case f.OnHand == nil:
		return 0
	case f.Form.Sheets():
		return Amount(f.OnHand.Sheets)
	}
	return Amount(f.OnHand.Length)
}

func (p Plan) battingNeed(b BattingPlan) StockNeed {
	return StockNeed{
		Material: BattingMaterial, Form: Package, Width: b.Size.Width, Height: b.Size.Height, Whole: Amount(p.Job.Quantity),
		Parts: p.partsOf(func(o Operation) float64 { return float64(oneIf(o.Key == keyLayer || o.Key == keySendOut)) }),
	}
}

// ThreadUses is what thread sews, in the order of the work.
var ThreadUses = []string{"piecing", "quilting", "binding"}

// ThreadUse is which of the uses an operation's thread is for.
func ThreadUse(key string) string {
	switch key {
	case keyQuilt:
		return "quilting"
	case keyAttach, keyFinish:
		return "binding"
	}
	return "piecing"
}

func (p Plan) threadNeed(use string) StockNeed {
	need := StockNeed{Material: ThreadMaterial, Name: use, Form: Spool}
	for _, o := range p.Operations {
		if ThreadUse(o.Key) == use {
			need.Whole += Amount(o.ThreadLength)
		}
	}
	need.Parts = p.partsOf(func(o Operation) float64 {
		return float64(oneIf(ThreadUse(o.Key) == use)) * float64(o.ThreadLength)
	})
	return need
}

func oneIf(is bool) int {
	if is {
		return 1
	}
	return 0
}

// partsOf is the operations that have a weight, with their share of all.
func (p Plan) partsOf(weight func(Operation) float64) []StockPart {
	var parts []StockPart
	all := 0.0
	for _, o := range p.Operations {
		if w := weight(o); w > 0 && o.Count > 0 {
			parts = append(parts, StockPart{Operation: o.Key, LotKind: o.Lot.Kind, Lot: o.Lot.Name, Count: o.Count, Share: w})
			all += w
		}
	}
	for i := range parts {
		parts[i].Share /= all
	}
	return parts
}

// cutParts is the rows in which a fabric's pieces are cut, weighed by the area of
// the pieces: panels where the backing is prepared, spare pieces with those of the
// blocks; of pieces that are used as they come, the rows that kit them.
func (p Plan) cutParts(n FabricNeed) []StockPart {
	kitted, spare := 0.0, 0
	area := map[string]float64{} // by the operation's key
	for _, piece := range n.Pieces {
		a := measure.Mul(piece.Size.Width, piece.Size.Height).Times(piece.Count).In(measure.Inches)
		if readyCut(n.Fabric, piece) {
			if piece.For == forBlocks {
				kitted += a
			} else {
				area[readyUse[piece.For]] += a
			}
			continue
		}
		switch piece.For {
		case forBacking:
			area[keyBacking] += a / float64(p.Job.Quantity)
		case forSpare:
			area[keyCut] += a
			spare += piece.Count
		}
		for _, c := range cuttings {
			if c.purpose == piece.For {
				area[c.key] += a
			}
		}
	}
	blocks := p.blocksWith(n.Fabric.Name)
	parts := p.partsOf(func(o Operation) float64 {
		switch {
		case o.Lot == fabricLot(n) || o.Lot.Kind == QuiltLot:
			return area[o.Key]
		case o.Key == keyKit && kitted > 0:
			return kitted * float64(blocks[o.Lot.Name]) / float64(blocks[""])
		}
		return 0
	})
	for i := range parts {
		if parts[i].Operation == keyCut {
			parts[i].Spare = spare
		}
	}
	return parts
}

// readyUse is the row of a quilt that uses up pieces which come as they are used.
var readyUse = map[string]string{forBinding: keyMakeBind, forBorder: keyBorders, forSashing: keySewRows}

// blocksWith is how many blocks of each colourway use a fabric; "" is all.
func (p Plan) blocksWith(fabric string) map[string]int {
	n := map[string]int{}
	for _, b := range p.Blocks {
		for _, f := range b.Fabrics {
			if f.Fabric == fabric {
				n[b.Colourway]++
				n[""]++
				break
			}
		}
	}
	return n
}
