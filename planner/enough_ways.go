package planner

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"quiltrun/planner/measure"
)

// WayKind is what a way to make cloth go far enough changes. Kinds may grow.
type WayKind string

// The ways.
const (
	WayBuy       WayKind = "buy"
	WaySmaller   WayKind = "smaller square"
	WaySplit     WayKind = "other split"
	WayColourway WayKind = "other colourway"
)

// EnoughWay is a way to make cloth go far enough: what is changed in the job file,
// and what is to be bought even so. Lines are the job file's, as they would read.
type EnoughWay struct {
	Kind  WayKind
	Buy   []EnoughBuy
	Lines []string

	Square         measure.Length // of a smaller square or unit, and what it makes
	Key            string         // of that in the job file: square or unit
	Block, Quilt   measure.Size   // finished
	Colourway, By  string         // whose blocks are made fewer, and who makes them instead
	Makes, Instead int            // blocks of each in the run, then
	Spare          []EnoughSpare  // pieces that are cut already and that no block takes then
}

// EnoughBuy is what is to be bought of a fabric; Need is what it still takes in
// all, beside what is cut.
type EnoughBuy struct {
	Fabric Fabric
	Need   Amount
	Amount Amount
}

// EnoughSpare is pieces of a fabric.
type EnoughSpare struct {
	Fabric string
	Pieces []PieceCount
}

// buys is what is short of.
func (e Enough) buys() []EnoughBuy {
	var all []EnoughBuy
	for _, f := range e.Fabrics {
		if f.Short() {
			all = append(all, EnoughBuy{f.Fabric, f.Need, f.Buy})
		}
	}
	return all
}

func (e Enough) spares() []EnoughSpare {
	var all []EnoughSpare
	for _, f := range e.Fabrics {
		if len(f.Spare) > 0 {
			all = append(all, EnoughSpare{f.Fabric.Name, f.Spare})
		}
	}
	return all
}

func (a EnoughAsk) buying(e Enough) []EnoughWay { return []EnoughWay{{Kind: WayBuy, Buy: e.buys()}} }

// changed is how far the cloth goes for a changed job, false where that cannot be
// made.
func (a EnoughAsk) changed(job Job) (Enough, bool) {
	plan, err := Make(job, a.Prior)
	if err != nil {
		return Enough{}, false
	}
	e, err := a.reach(plan)
	return e, err == nil
}

// smaller is the largest square, or unit, in steps of the ruler, with which all
// blocks can be cut. Once cloth is cut its size is settled.
func (a EnoughAsk) smaller() []EnoughWay {
	key, first := sizedBy(a.Plan.Job.Colourways[0].Block)
	for _, c := range a.Plan.Job.Colourways {
		if k, side := sizedBy(c.Block); a.Begun || k != key || side != first || first == 0 {
			return nil
		}
	}
	step := measure.Inch / 4
	if a.Plan.Job.Units == measure.Centimetres {
		step = measure.Centimetre / 2
	}
	// With a side smaller by so many steps; beyond half the size it is another quilt.
	fits := func(steps int) (Enough, bool) {
		e, ok := a.changed(withSide(a.Plan.Job, key, first-step.Times(steps)))
		return e, ok && e.Fits
	}
	low, high := 0, measure.FloorDiv(first/2, step)
	best, ok := fits(high)
	if !ok {
		return nil
	}
	for low+1 < high {
		middle := (low + high) / 2
		if e, does := fits(middle); does {
			best, high = e, middle
		} else {
			low = middle
		}
	}
	side := first - step.Times(high)
	return []EnoughWay{{
		Kind: WaySmaller, Square: side, Key: key, Block: best.Plan.Colourways[0].Finished, Quilt: best.Plan.Quilt.Finished,
		Lines: []string{key + ": " + bare(side, a.Plan.Job.Units)},
	}}
}

// sizedBy is the measure that a block's size hangs on, and its key in the job file;
// 0 where it is none that can simply be made smaller.
func sizedBy(b BlockSpec) (key string, side measure.Length) {
	switch {
	case b.Square.Width > 0 && b.Square.Width == b.Square.Height:
		return "square", b.Square.Width
	case b.Measures["unit"] > 0:
		return "unit", b.Measures["unit"]
	}
	return "", 0
}

// bare is a measure as a job file of those units takes it.
func bare(l measure.Length, u measure.Unit) string {
	return strings.TrimSuffix(l.Show(u), " "+u.String())
}

// yamlName is a name as a job file takes it: quoted where it could be read as
// something else.
func yamlName(name string) string {
	plain := func(r rune) bool {
		return r == ' ' || r == '-' || r == '_' || unicode.IsLetter(r) || unicode.IsDigit(r)
	}
	first, _ := utf8.DecodeRuneInString(name)
	if unicode.IsLetter(first) && !strings.ContainsFunc(name, func(r rune) bool { return !plain(r) }) {
		return name
	}
	return strconv.Quote(name)
}

func withSide(j Job, key string, side measure.Length) Job {
	j.Colourways = slices.Clone(j.Colourways)
	for i := range j.Colourways {
		block := &j.Colourways[i].Block
		if key == "square" {
			block.Square = measure.Size{Width: side, Height: side}
			continue
		}
		block.Measures = maps.Clone(block.Measures)
		block.Measures[key] = side
	}
	return j
}

// replacing is another colourway for the blocks that one cannot make.
func (a EnoughAsk) replacing(e Enough) []EnoughWay {
	var ways []EnoughWay
	for c, short := range e.Colourways {
		makes := short.Makes / a.Plan.Job.Quantity // of one quilt
		missing := a.Plan.Job.Colourways[c].Blocks - makes
		if missing <= 0 || makes == 0 || a.Plan.Job.Layout.Order == Mapped {
			continue
		}
		for d := range a.Plan.Job.Colourways {
			if way, ok := a.replace(e, c, d, makes, missing); ok && d != c {
				ways = append(ways, way)
			}
		}
	}
	slices.SortStableFunc(ways, func(a, b EnoughWay) int { return len(a.Buy) - len(b.Buy) })
	return ways
}

func (a EnoughAsk) replace(e Enough, c, d, makes, missing int) (EnoughWay, bool) {
	job := a.Plan.Job
	job.Colourways = slices.Clone(job.Colourways)
	job.Colourways[c].Blocks = makes
	job.Colourways[d].Blocks += missing
	for _, i := range []int{c, d} {
		if slices.ContainsFunc(job.Colourways[i].Roles, func(r RoleFabrics) bool { return r.Counted }) {
			return EnoughWay{}, false
		}
	}
	after, ok := a.changed(job)
	if !ok || !e.relieved(after) {
		return EnoughWay{}, false
	}
	from, by := job.Colourways[c], job.Colourways[d]
	return EnoughWay{
		Kind: WayColourway, Buy: after.buys(), Spare: after.spares(),
		Colourway: from.Name, By: by.Name, Makes: makes * job.Quantity, Instead: by.Blocks * job.Quantity,
		Lines: []string{yamlName(from.Name) + ":", fmt.Sprintf("  blocks: %d", from.Blocks), yamlName(by.Name) + ":", fmt.Sprintf("  blocks: %d", by.Blocks)},
	}, true
}

func (e Enough) short(fabric string) bool {
	return slices.ContainsFunc(e.Fabrics, func(f EnoughFabric) bool { return f.Fabric.Name == fabric && f.Short() })
}

// relieved reports that a fabric that was short no longer is.
func (e Enough) relieved(after Enough) bool {
	return slices.ContainsFunc(e.Fabrics, func(f EnoughFabric) bool { return f.Short() && !after.short(f.Fabric.Name) })
}
