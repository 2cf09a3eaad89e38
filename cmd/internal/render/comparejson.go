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

// figuresOf is a plan's figures, less those of another plan where one is given.
func figuresOf(c Compared, less *Compared) *jsonFigures {
	u := c.Plan.Job.Units
	minus := func(of func(Compared) measure.Length) number {
		l := of(c)
		if less != nil {
			l -= of(*less)
		}
		return length(l, u)
	}
	count := func(of func(Compared) int) int {
		if less != nil {
			return of(c) - of(*less)
		}
		return of(c)
	}
	sized := func(of func(Compared) measure.Size) jsonSize {
		return jsonSize{minus(func(c Compared) measure.Length { return of(c).Width }), minus(func(c Compared) measure.Length { return of(c).Height })}
	}
	time := func(of func(Compared) planner.Minutes) number {
		if less != nil {
			return minutes(of(c) - of(*less))
		}
		return minutes(of(c))
	}
	f := &jsonFigures{
		Quilt:  sized(func(c Compared) measure.Size { return c.Plan.Quilt.Finished }),
		Across: count(func(c Compared) int { return c.Plan.Quilt.Across }), Down: count(func(c Compared) int { return c.Plan.Quilt.Down }),
		Blocks: count(func(c Compared) int { return len(c.Plan.Blocks) }),
		Block:  sized(func(c Compared) measure.Size { return c.Plan.Colourways[0].Finished }),
		Colourways: list(c.Plan.Colourways, func(w planner.ColourwayPlan) jsonBlocksOf {
			return jsonBlocksOf{w.Name, count(func(c Compared) int { return blocksIn(c.Plan, w.Name) })}
		}),
		Minutes: time(func(c Compared) planner.Minutes { return c.Plan.Minutes }),
		Fabrics: list(c.Plan.Fabrics, func(n planner.FabricNeed) jsonClothOf { return clothOf(n, less, u) }),
		Thread:  minus(func(c Compared) measure.Length { return c.Plan.Materials.Thread.Total }),
		Bobbins: count(func(c Compared) int { return c.Plan.Materials.Thread.Bobbins }),
	}
	if c.Plan.Materials.Backing != nil {
		size := sized(func(c Compared) measure.Size { return c.Plan.Materials.Backing.Size })
		f.Backing = &jsonBackingOf{size.Width, size.Height, minus(func(c Compared) measure.Length { return c.Plan.Materials.Backing.Length })}
	}
	if c.Plan.Materials.Batting != nil {
		f.Batting = some(sized(func(c Compared) measure.Size { return c.Plan.Materials.Batting.Size }))
	}
	if c.Plan.Materials.Binding != nil {
		f.Binding = &jsonBindingOf{minus(func(c Compared) measure.Length { return edgeOf(c.Plan) }),
			count(func(c Compared) int { return c.Plan.Materials.Binding.Strips }),
			minus(func(c Compared) measure.Length { return c.Plan.Materials.Binding.Length })}
	}
	if c.Left != nil {
		f.Left = &jsonComparedLeft{
			count(func(c Compared) int { return c.Left.Blocks(tracker.Lot{}) - c.Left.FinishedBlocks(tracker.Lot{}) }),
			count(func(c Compared) int { return spareBlocks(*c.Left) }),
			time(func(c Compared) planner.Minutes { return remainingMinutes(*c.Left) }),
		}
	}
	return f
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
