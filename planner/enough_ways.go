package planner

import (
	"fmt"
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

	Square         measure.Length // of a smaller square, and what it makes
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

// smaller is the largest square, in steps of the ruler, of which all blocks can be
// cut. Once cloth is cut its size is settled.
func (a EnoughAsk) smaller() []EnoughWay {
	first := a.Plan.Job.Colourways[0].Block.Square
	for _, c := range a.Plan.Job.Colourways {
		if a.Begun || c.Block.Square != first || first.Width != first.Height || first.Width == 0 {
			return nil
		}
	}
	step := measure.Inch / 4
	if a.Plan.Job.Units == measure.Centimetres {
		step = measure.Centimetre / 2
	}
	// Of squares smaller by so many steps; beyond half the size it is another quilt.
	fits := func(steps int) (Enough, bool) {
		e, ok := a.changed(withSquare(a.Plan.Job, first.Width-step.Times(steps)))
		return e, ok && e.Fits
	}
	low, high := 0, measure.FloorDiv(first.Width/2, step)
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
	side := first.Width - step.Times(high)
	return []EnoughWay{{
		Kind: WaySmaller, Square: side, Block: best.Plan.Colourways[0].Finished, Quilt: best.Plan.Quilt.Finished,
		Lines: []string{"square: " + bare(side, a.Plan.Job.Units)},
	}}
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

func withSquare(j Job, side measure.Length) Job {
	j.Colourways = slices.Clone(j.Colourways)
	for i := range j.Colourways {
		j.Colourways[i].Block.Square = measure.Size{Width: side, Height: side}
	}
	return j
}

// splits is other shares of a role's prints with which a colourway's blocks can
// all be made. Only prints that nothing else uses are shared anew.
func (a EnoughAsk) splits(e Enough) []EnoughWay {
	var ways []EnoughWay
	for c := range a.Plan.Job.Colourways {
		for r := range a.Plan.Job.Colourways[c].Roles {
			if way, ok := a.split(e, c, r); ok {
				ways = append(ways, way)
			}
		}
	}
	return ways
}

func (a EnoughAsk) split(e Enough, c, r int) (EnoughWay, bool) {
	job := a.Plan.Job
	own := job.Colourways[c]
	role := own.Roles[r]
	if len(role.Fabrics) < 2 || !slices.ContainsFunc(role.Fabrics, func(s Share) bool { return e.short(s.Fabric) }) {
		return EnoughWay{}, false
	}
	caps := make([]int, len(role.Fabrics))
	for i, s := range role.Fabrics {
		most, ok := a.mostOf(c, role.Role, s.Fabric)
		if !ok {
			return EnoughWay{}, false
		}
		caps[i] = most / job.Quantity
	}
	shares, ok := shareOut(own.Blocks, a.shares(c, role), caps)
	if !ok {
		return EnoughWay{}, false
	}
	job.Colourways = slices.Clone(job.Colourways)
	own.Roles = slices.Clone(own.Roles)
	own.Roles[r] = RoleFabrics{Role: role.Role, Counted: true}
	var parts []string
	for i, s := range role.Fabrics {
		if shares[i] > 0 {
			own.Roles[r].Fabrics = append(own.Roles[r].Fabrics, Share{s.Fabric, shares[i]})
			parts = append(parts, fmt.Sprintf("%s: %d", yamlName(s.Fabric), shares[i]))
		}
	}
	job.Colourways[c] = own
	after, ok := a.changed(job)
	if !ok || !e.relieved(after) {
		return EnoughWay{}, false
	}
	return EnoughWay{Kind: WaySplit, Colourway: own.Name, Buy: after.buys(), Spare: after.spares(),
		Lines: []string{yamlName(own.Name) + ":", "  " + role.Role + ": {" + strings.Join(parts, ", ") + "}"}}, true
}

func (e Enough) short(fabric string) bool {
	return slices.ContainsFunc(e.Fabrics, func(f EnoughFabric) bool { return f.Fabric.Name == fabric && f.Short() })
}

// relieved reports that a fabric that was short no longer is.
func (e Enough) relieved(after Enough) bool {
	return slices.ContainsFunc(e.Fabrics, func(f EnoughFabric) bool { return f.Short() && !after.short(f.Fabric.Name) })
}

// mostOf is how many blocks of a colourway the cloth of one print could do for in
// all, false where anything else takes of it.
func (a EnoughAsk) mostOf(c int, role, fabric string) (int, bool) {
	for _, w := range a.Left(a.Plan).Fabrics {
		if w.Fabric.Name != fabric {
			continue
		}
		q := queueOf(a.Plan, w)
		have, said := a.Have[fabric]
		if w.Backing != nil || slices.ContainsFunc(w.Pieces, func(p PieceCount) bool { return p.For != forBlocks }) ||
			slices.ContainsFunc(q.of, func(of int) bool { return of != c }) || len(q.pooled[c]) > 0 {
			return 0, false
		}
		blocks := a.Plan.Job.Colourways[c].Blocks * a.Plan.Job.Quantity
		if !said {
			return blocks, true
		}
		q.stretch(c, blocks)
		most, err := q.most(have, blocks)
		return most, err == nil
	}
	return 0, false
}

// stretch lengthens the queue to so many blocks of one colourway.
func (q *queue) stretch(c, blocks int) {
	for len(q.of) < blocks {
		q.of = append(q.of, c)
	}
}

// shares is how many of a quilt's blocks each print of a role has now.
func (a EnoughAsk) shares(c int, role RoleFabrics) []int {
	now := make([]int, len(role.Fabrics))
	for _, b := range a.Plan.Blocks {
		if b.Quilt != 1 || b.Colourway != a.Plan.Job.Colourways[c].Name {
			continue
		}
		fabric := fabricOf(b.Fabrics, role.Role)
		for i, s := range role.Fabrics {
			if s.Fabric == fabric {
				now[i]++
			}
		}
	}
	return now
}

// shareOut shares blocks among prints, none more than it has cloth for, changing
// as little as can be: what one is short of goes one by one to whichever has the
// fewest and can take more. No block is lost and none is added.
func shareOut(blocks int, now, caps []int) ([]int, bool) {
	shares := make([]int, len(now))
	left := blocks
	for i := range now {
		shares[i] = min(now[i], caps[i])
		left -= shares[i]
	}
	for ; left > 0; left-- {
		to := -1
		for i := range shares {
			if shares[i] < caps[i] && (to < 0 || shares[i] < shares[to]) {
				to = i
			}
		}
		if to < 0 {
			return nil, false
		}
		shares[to]++
	}
	return shares, left == 0
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
