package render

import (
	"io"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// jsonCompared is a job's figures with some values changed; with none as it is.
// Figures are the run's, of a quilt where that is said. Change is against the
// job as it is, null there and where it cannot be made.
type jsonCompared struct {
	Changes []jsonChange `json:"changes"`
	Problem *string      `json:"problem"` // it cannot be made so: Figures is null
	Spread  bool         `json:"spread"`  // the colourways' blocks were counted anew
	Figures *jsonFigures `json:"figures"`
	Change  *jsonFigures `json:"change"`
}

// jsonChange is one changed value.
type jsonChange struct {
	Key   string `json:"key"`
	Value string `json:"value"`
}

// jsonFigures is what is compared, or by how much it differs.
type jsonFigures struct {
	Quilt      jsonSize          `json:"quilt"` // finished, of one quilt
	Across     int               `json:"across"`
	Down       int               `json:"down"`
	Blocks     int               `json:"blocks"`
	Block      jsonSize          `json:"block"` // finished
	Colourways []jsonBlocksOf    `json:"colourways"`
	Minutes    number            `json:"minutes"`
	Fabrics    []jsonClothOf     `json:"fabrics"`
	Backing    *jsonBackingOf    `json:"backing"` // of one quilt
	Batting    *jsonSize         `json:"batting"` // of one quilt
	Binding    *jsonBindingOf    `json:"binding"` // of one quilt
	Thread     number            `json:"thread"`
	Bobbins    int               `json:"bobbins"`
	Left       *jsonComparedLeft `json:"left"` // null for a job file
}

// jsonBlocksOf is a colourway's blocks.
type jsonBlocksOf struct {
	Name   string `json:"name"`
	Blocks int    `json:"blocks"`
}

// jsonClothOf is what a fabric needs: lengths of yardage, counts of sheets.
type jsonClothOf struct {
	Name string `json:"name"`
	Need number `json:"need"`
	Buy  number `json:"buy"`
}

// jsonBackingOf is one quilt's backing.
type jsonBackingOf struct {
	Width  number `json:"width"`
	Height number `json:"height"`
	Length number `json:"length"` // off the bolt
}

// jsonBindingOf is one quilt's binding.
type jsonBindingOf struct {
	Edge   number `json:"edge"`
	Strips int    `json:"strips"`
	Length number `json:"length"`
}

// jsonComparedLeft is what would be left of a booked job.
type jsonComparedLeft struct {
	Blocks  int    `json:"blocks"`
	Over    int    `json:"over"` // squared up beyond those that the job has
	Minutes number `json:"minutes"`
}

// ComparedJSON writes a comparison for scripts.
func ComparedJSON(w io.Writer, c Comparison) error {
	job := c.Base.Plan.Job
	return writeJSON(w, struct {
		Schema       int            `json:"schema"`
		Job          string         `json:"job"`
		Unit         string         `json:"unit"`
		Now          *jsonFigures   `json:"now"`
		Alternatives []jsonCompared `json:"alternatives"`
	}{schema, job.ID, job.Units.String(), figuresOf(c.Base, nil), list(c.Others, func(o Compared) jsonCompared {
		out := jsonCompared{Spread: o.Spread, Changes: list(o.Changes, func(ch planner.Change) jsonChange { return jsonChange(ch) })}
		if o.Problem != nil {
			out.Problem = known(o.Problem.Error())
			return out
		}
		out.Figures, out.Change = figuresOf(o, nil), figuresOf(o, &c.Base)
		return out
	})})
}

// figuring makes figures of a plan, or what they are more than those of another.
type figuring struct {
	of   Compared
	less *Compared // nil: the figures themselves
}

func (f figuring) count(of func(Compared) int) int {
	if f.less != nil {
		return of(f.of) - of(*f.less)
	}
	return of(f.of)
}

func (f figuring) length(of func(Compared) measure.Length) number {
	l := of(f.of)
	if f.less != nil {
		l -= of(*f.less)
	}
	return length(l, f.of.Plan.Job.Units)
}

func (f figuring) size(of func(Compared) measure.Size) jsonSize {
	return jsonSize{
		f.length(func(c Compared) measure.Length { return of(c).Width }),
		f.length(func(c Compared) measure.Length { return of(c).Height }),
	}
}

func (f figuring) minutes(of func(Compared) planner.Minutes) number {
	if f.less != nil {
		return minutes(of(f.of) - of(*f.less))
	}
	return minutes(of(f.of))
}

// figuresOf is a plan's figures, less those of another plan where one is given.
func figuresOf(c Compared, less *Compared) *jsonFigures {
	f := figuring{c, less}
	out := &jsonFigures{
		Quilt:  f.size(func(c Compared) measure.Size { return c.Plan.Quilt.Finished }),
		Across: f.count(func(c Compared) int { return c.Plan.Quilt.Across }), Down: f.count(func(c Compared) int { return c.Plan.Quilt.Down }),
		Blocks: f.count(func(c Compared) int { return len(c.Plan.Blocks) }),
		Block:  f.size(func(c Compared) measure.Size { return c.Plan.Colourways[0].Finished }),
		Colourways: list(c.Plan.Colourways, func(w planner.ColourwayPlan) jsonBlocksOf {
			return jsonBlocksOf{w.Name, f.count(func(c Compared) int { return blocksIn(c.Plan, w.Name) })}
		}),
		Minutes: f.minutes(func(c Compared) planner.Minutes { return c.Plan.Minutes }),
		Fabrics: list(c.Plan.Fabrics, func(n planner.FabricNeed) jsonClothOf { return clothOf(n, less, c.Plan.Job.Units) }),
		Thread:  f.length(func(c Compared) measure.Length { return c.Plan.Materials.Thread.Total }),
		Bobbins: f.count(func(c Compared) int { return c.Plan.Materials.Thread.Bobbins }),
	}
	f.layers(out)
	if c.Left != nil {
		out.Left = &jsonComparedLeft{
			f.count(func(c Compared) int { return c.Left.Blocks(tracker.Lot{}) - c.Left.FinishedBlocks(tracker.Lot{}) }),
			f.count(func(c Compared) int { return spareBlocks(*c.Left) }),
			f.minutes(func(c Compared) planner.Minutes { return remainingMinutes(*c.Left) }),
		}
	}
	return out
}

// layers enters what goes under a top and around it, as far as the job has it. A
// change alters values and puts no section in or out: what one plan has, both have.
func (f figuring) layers(out *jsonFigures) {
	has := f.of.Plan.Materials
	if has.Backing != nil {
		size := f.size(func(c Compared) measure.Size { return c.Plan.Materials.Backing.Size })
		out.Backing = &jsonBackingOf{size.Width, size.Height, f.length(func(c Compared) measure.Length { return c.Plan.Materials.Backing.Length })}
	}
	if has.Batting != nil {
		out.Batting = some(f.size(func(c Compared) measure.Size { return c.Plan.Materials.Batting.Size }))
	}
	if has.Binding != nil {
		out.Binding = &jsonBindingOf{
			f.length(func(c Compared) measure.Length { return edgeOf(c.Plan) }),
			f.count(func(c Compared) int { return c.Plan.Materials.Binding.Strips }),
			f.length(func(c Compared) measure.Length { return c.Plan.Materials.Binding.Length }),
		}
	}
}

// clothOf is a fabric's need, less that of the same fabric in another plan.
func clothOf(n planner.FabricNeed, less *Compared, u measure.Unit) jsonClothOf {
	var was planner.FabricNeed
	if less != nil {
		was = needIn(less.Plan, n.Fabric.Name)
	}
	if n.Fabric.Form.Sheets() {
		return jsonClothOf{n.Fabric.Name, decimal(float64(n.Sheets-was.Sheets), 0), decimal(float64(n.SheetBuy-was.SheetBuy), 0)}
	}
	return jsonClothOf{n.Fabric.Name, length(n.Length-was.Length, u), length(n.LengthBuy-was.LengthBuy, u)}
}
