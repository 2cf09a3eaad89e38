package planner

import (
	"math"
	"sync"
)

// Rate is one entry of the table of starting times: the median minutes that a
// practised maker needs for one of something, and the spread of its logarithm.
// A maker's own times replace them as batches are logged.
type Rate struct {
	Per    string // what one is
	Median Minutes
	Spread float64
	Source string // where it was published, or "from memory"
}

// Allowance is what belongs on top of timed work, on work time: personal needs
// 5 %, basic fatigue 4 %, contingencies 5 %. Source: E. Gebrie, "Different types
// of allowances" (ILO figures); Konz, "Time standards: adjustments and
// allowances". A stopwatch held on ten minutes of work knows nothing of it: one
// published test of a hand-sewn binding under-stated the whole by 1.6.
const Allowance = 0.14

// The names of the table's entries.
const (
	rateCloth     = "fabric made ready"
	rateClothYard = "yard of fabric pressed"
	rateSheet     = "cut sheet pressed"
	ratePreCut    = "pre-cut pieces checked"
	ratePrewash   = "fabric washed and dried"
	rateSeamTest  = "three-strip test"
	rateTest      = "test block measured"
	rateCutSetup  = "fabric laid out and squared up"
	rateRulerCut  = "ruler cut"
	rateKit       = "block's pieces stacked"
	ratePlainKit  = "plain square counted out"
	ratePlainUp   = "plain square checked"
	rateSewSetup  = "machine set up for a chain"
	rateChainInch = "inch of chain-sewn seam"
	rateClip      = "chained unit clipped apart"
	rateMatchInch = "inch of seam with points to match"
	ratePressInch = "inch of seam pressed"
	ratePress     = "unit laid on the board"
	rateIronSetup = "iron and board made ready"
	rateRecutSet  = "unit laid on the mat to recut"
	rateTurn      = "block's pieces turned and laid out"
	rateMark      = "diagonal drawn on a square"
	rateCutApart  = "cut between triangles sewn together"
	rateTrimUnit  = "triangle unit trimmed"
	rateSetLaid   = "strip set laid on the mat and its end squared"
	rateSubcut    = "segment cut from a strip set"
	rateSquareUp  = "block squared up"
	rateLayOut    = "block laid out in the top"
	rateRowJoin   = "block sewn to its row"
	rateCorner    = "block corner met where rows join"
	ratePoint     = "match point pinned or pinched"
	rateMeasure   = "top measured through the middle"
	rateBorder    = "border joined, pinned, sewn on and pressed"
	rateSendOut   = "quilt handed over or collected"
	rateBacking   = "pieced backing cut and sewn"
	rateOnePiece  = "backing of one piece cut"
	rateSquareBck = "backing squared for sending out"
	rateBasteSet  = "layers taped down"
	rateBaste     = "square inch basted"
	rateQuiltSet  = "quilting set up"
	rateQuiltInch = "inch of quilting line"
	rateTrim      = "inch of edge trimmed"
	rateStrip     = "binding strip joined and pressed"
	rateBindInch  = "inch of binding attached"
	rateHandInch  = "inch of binding finished by hand"
	rateMachInch  = "inch of binding finished by machine"
	rateStay      = "inch of edge stay-stitched"
	rateHandOver  = "quilt made ready to hand over"
)

const fromMemory = "from memory"

// Rates is the table of starting times. Spreads of a single entry are from
// memory unless its source says more; that makers differ by a factor of three
// (sweeterlemon.com and others: 15 to 44 in of race seam a minute) is the
// forecast's business, not the table's.
var Rates = []Rate{
	{rateCloth, 3, 0.4, fromMemory},
	{rateClothYard, 2, 0.4, fromMemory},
	{rateSheet, 2.5, 0.4, fromMemory},
	{ratePreCut, 3, 0.4, fromMemory},
	{ratePrewash, 20, 0.3, fromMemory},
	{rateSeamTest, 12, 0.4, fromMemory},
	{rateTest, 10, 0.4, fromMemory},
	{rateCutSetup, 4, 0.4, fromMemory},
	{rateRulerCut, 0.4, 0.4, fromMemory},
	{rateKit, 0.8, 0.4, fromMemory},
	{ratePlainKit, 0.1, 0.4, fromMemory},
	{ratePlainUp, 0.15, 0.4, fromMemory},
	{rateSewSetup, 5, 0.4, fromMemory},
	{rateChainInch, 1.0 / 40, 0.3, "twiggyandopal.blogspot.com 2016/06: 50 seams of 11.3 in chained in 13.5 min, 41.9 in a minute"},
	{rateClip, 0.04, 0.3, "twiggyandopal.blogspot.com 2016/06: 50 clipped in 2 min"},
	{rateMatchInch, 1.0 / 20, 0.35, "quiltingdebbie.blogspot.com 2011/03: 20 in a minute held over four long seams"},
	{ratePressInch, 2.0 / 40, 0.35, "twiggyandopal.blogspot.com 2016/06: pressing 18.5 min against 13.5 min sewn, 1.4 times; stephskardalquilts.com: 3 times; taken at 2"},
	{ratePress, 0.15, 0.35, fromMemory},
	{rateIronSetup, 4, 0.4, fromMemory},
	{rateRecutSet, 0.3, 0.4, fromMemory},
	{rateTurn, 0.8, 0.4, fromMemory},
	{rateMark, 0.25, 0.4, fromMemory},
	{rateCutApart, 8.5 / 50, 0.35, "twiggyandopal.blogspot.com 2016/06: 50 pairs of 8 in squares cut apart in 8.5 min"},
	{rateTrimUnit, 0.6, 0.4, fromMemory},
	{rateSetLaid, 1, 0.4, fromMemory},
	{rateSubcut, 0.2, 0.4, fromMemory},
	{rateSquareUp, 1.5, 0.4, "pursuitsofmycreativeside.blogspot.com 2016/08: 3 min a string block with its paper edge, taken at half"},
	{rateLayOut, 0.8, 0.4, fromMemory},
	{rateRowJoin, 0.8, 0.35, "pursuitsofmycreativeside.blogspot.com 2016/08: 42 joins of plain-edged blocks in 1 h, less the seam's own length at 12 in"},
	{rateCorner, 1.5, 0.35, "pursuitsofmycreativeside.blogspot.com 2016/08: 6 joins of 7 blocks in 1.5 h, less the seam's own length at 12 in a block"},
	{ratePoint, 0.25, 0.4, fromMemory},
	{rateMeasure, 8, 0.4, fromMemory},
	{rateBorder, 18, 0.4, fromMemory},
	{rateSendOut, 30, 0.4, "heirloomlongarmquilting.com: intake 30 to 45 min; the maker's side from memory"},
	{rateBacking, 25, 0.4, "thetinwhistle.blogspot.com 2012/12: backing pieced, with pressing, 25 min"},
	{rateOnePiece, 8, 0.4, fromMemory},
	{rateSquareBck, 20, 0.4, fromMemory},
	{rateBasteSet, 14, 0.4, "rachel-thelifeofriley.blogspot.com 2012/09: backing taped 7 min, batting laid 7 min"},
	{rateBaste, 45.0 / (48 * 64), 0.5, "thetinwhistle.blogspot.com 2012/12: 48 x 64 in basted in 45 min"},
	{rateQuiltSet, 30, 0.4, fromMemory},
	{rateQuiltInch, 900.0 / (54 * 76 * 2), 0.45, "stephskardalquilts.com: 54 x 76 in, lines 1/2 in apart, quilted in 15 h"},
	{rateTrim, 0.08, 0.4, fromMemory},
	{rateStrip, 5, 0.4, fromMemory},
	{rateBindInch, 0.2, 0.4, "faithquilter.blogspot.com 2012/03: 300 in made and attached in 1 h 39; about 1 h of it attaching"},
	{rateHandInch, 1, 0.35, "faithquilter.blogspot.com 2012/03: 300 in really took about 5 h, 60 in an hour"},
	{rateMachInch, 0.2, 0.5, "gaylebong.blogspot.com 2012/01: 2.5 h start to finish by machine"},
	{rateStay, 0.05, 0.35, "quiltingdebbie.blogspot.com 2011/03: 20 in a minute on long seams"},
	{rateHandOver, 60, 0.5, fromMemory},
}

var rateByName = sync.OnceValue(func() map[string]Rate {
	byName := make(map[string]Rate, len(Rates))
	for _, r := range Rates {
		byName[r.Per] = r
	}
	return byName
})

// span is n times a table entry, allowance included. The mean of a lognormal
// time is its median times exp(spread²/2).
func span(name string, n float64) Span {
	r := rateByName()[name]
	mean := float64(r.Median) * math.Exp(r.Spread*r.Spread/2) * (1 + Allowance) * n
	return Span{Mean: Minutes(mean), Spread: r.Spread}
}

// plus adds times that the same maker takes one after the other: spreads add
// in proportion, since what makes one of them slow makes the other slow.
func (s Span) plus(other Span) Span {
	mean := s.Mean + other.Mean
	if mean == 0 {
		return Span{}
	}
	spread := (float64(s.Mean)*s.Spread + float64(other.Mean)*other.Spread) / float64(mean)
	return Span{Mean: mean, Spread: spread}
}
