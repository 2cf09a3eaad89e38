package render

import (
	"encoding/json"
	"io"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// PlanJSON writes every figure of the job sheet for scripts.
func PlanJSON(w io.Writer, p planner.Plan) error { return writeJSON(w, planOf(p)) }

// jsonPlan is the whole plan. What the contract lists comes in its order; what
// the sheet shows beyond it comes after, in each object.
type jsonPlan struct {
	Schema     int             `json:"schema"`
	Unit       string          `json:"unit"`
	Warnings   []jsonWarning   `json:"warnings"`
	Job        jsonJob         `json:"job"`
	Quilt      jsonQuilt       `json:"quilt"`
	Colourways []jsonColourway `json:"colourways"`
	Blocks     []jsonBlock     `json:"blocks"`
	Press      jsonPress       `json:"press"`
	Joins      []jsonJoin      `json:"joins"`
	Fabrics    []jsonFabric    `json:"fabrics"`
	Operations []jsonOperation `json:"operations"`
	Materials  jsonMaterials   `json:"materials"`
	Minutes    number          `json:"minutes"`
	Borders    []jsonBorder    `json:"borders"`
	Sashing    *jsonSashing    `json:"sashing"`   // null: none
	Triangles  *jsonTriangles  `json:"triangles"` // setting triangles; null: not on point
	Pickups    []jsonPickup    `json:"pickups"`
}

// jsonWarning is something unwise; path is the place in the job file, null where
// no one value causes it.
type jsonWarning struct {
	Code    string  `json:"code"`
	Path    *string `json:"path"`
	Message string  `json:"message"`
}

// jsonJob is what the client was promised.
type jsonJob struct {
	ID       string  `json:"id"`
	Title    string  `json:"title"`
	Client   *string `json:"client"`
	Received *string `json:"received"`
	Due      *string `json:"due"`
	Quantity int     `json:"quantity"`
	Seam     number  `json:"seam"`

	SeamAsked *number `json:"seam_asked"` // the job file's, where seam was measured; else null
}

// jsonSize is a width and a height in the plan's unit.
type jsonSize struct {
	Width  number `json:"width"`
	Height number `json:"height"`
}

// jsonQuilt is one quilt of the run, flat.
type jsonQuilt struct {
	Blocks   int      `json:"blocks"`
	Across   int      `json:"across"`
	Down     int      `json:"down"`
	Finished jsonSize `json:"finished"`

	Setting string   `json:"setting"`
	Rows    int      `json:"rows"`    // of blocks over the whole, borders of blocks counted; on point diagonals
	Columns int      `json:"columns"` // places of the longest row
	Inside  jsonSize `json:"inside"`  // finished, inside all borders
}

// jsonMatches counts match points by what becomes of them.
type jsonMatches struct {
	Nest  int `json:"nest"`
	Clash int `json:"clash"`
	Open  int `json:"open"`
	Near  int `json:"near"`
}

// jsonColourway is how one colourway's block is made. Blocks are per quilt.
type jsonColourway struct {
	Name       string      `json:"name"`
	Blocks     int         `json:"blocks"`
	Raw        jsonSize    `json:"raw"`
	Finished   jsonSize    `json:"finished"`
	Steps      []jsonStep  `json:"steps"`
	Areas      []jsonArea  `json:"areas"`
	SeamLength number      `json:"seam_length"`
	Matches    jsonMatches `json:"matches"`
}

// jsonStep is one step of making a block, for one unit of it.
type jsonStep struct {
	Step    string       `json:"step"`
	Raw     jsonSize     `json:"raw"`
	Pieces  [][]jsonSize `json:"pieces"` // null but for a recut
	Matches jsonMatches  `json:"matches"`
	Copies  int          `json:"copies"`      // in one block
	Upright []number     `json:"upright"`     // places of a recut's cuts from the left
	Level   []number     `json:"level"`       // and from the top
	Grid    [][]jsonCell `json:"grid"`        // what is sewn, row by row; null but for a sewn grid
	Turns   [][]int      `json:"turns"`       // null but for a turn
	Swaps   [][2]int     `json:"exchange"`    // pieces that change places, numbered row by row from 1; null where none do
	Square  *number      `json:"square"`      // side of the squares that triangles are made of, null elsewhere
	Before  *number      `json:"before_trim"` // side of a triangle unit before it is trimmed, null elsewhere
	Yield   int          `json:"yield"`       // units that are made at a time
	Pooled  bool         `json:"pooled"`      // made for the lot before its blocks are kitted
	Rows    []string     `json:"press_rows"`
	Between []string     `json:"press_joins"`
}

// jsonCell is one place of a sewn grid: the step whose unit lies there, and its
// turn in degrees clockwise.
type jsonCell struct {
	Of   string `json:"of"`
	Turn int    `json:"turn"`
}

// jsonArea is what shows of a role in one finished block.
type jsonArea struct {
	Role string `json:"role"`
	Area number `json:"area"`
}

// jsonBlock is one block of the run. Row and column count from 1, turn is in
// degrees clockwise.
type jsonBlock struct {
	ID        string      `json:"id"`
	Quilt     int         `json:"quilt"`
	Colourway string      `json:"colourway"`
	Fabrics   jsonFabrics `json:"fabrics"`
	Row       int         `json:"row"`
	Column    int         `json:"column"`
	Turn      int         `json:"turn"`
	Press     *string     `json:"press"`
}

// jsonFabrics is an object of roles in the block's order.
type jsonFabrics []planner.RoleFabric

// MarshalJSON keeps the order, which a Go map would not.
func (roles jsonFabrics) MarshalJSON() ([]byte, error) {
	var out strings.Builder
	out.WriteByte('{')
	for i, r := range roles {
		if i > 0 {
			out.WriteByte(',')
		}
		for j, text := range []string{r.Role, r.Fabric} {
			quoted, err := json.Marshal(text)
			if err != nil {
				return nil, err
			}
			if j > 0 {
				out.WriteByte(':')
			}
			out.Write(quoted)
		}
	}
	out.WriteByte('}')
	return []byte(out.String()), nil
}

// jsonJoin sums up one kind of join over one quilt.
type jsonJoin struct {
	Between string      `json:"between"`
	Matches jsonMatches `json:"matches"`
}

// shown is how a plan's measures are written: in the job's unit.
type shown struct{ unit measure.Unit }

// size is a size in the job's unit.
func (s shown) size(size measure.Size) jsonSize {
	return jsonSize{Width: length(size.Width, s.unit), Height: length(size.Height, s.unit)}
}

// length is a length in the job's unit.
func (s shown) length(l measure.Length) number { return length(l, s.unit) }

// planOf is a plan as scripts read it.
func planOf(p planner.Plan) jsonPlan {
	s := shown{p.Job.Units}
	return jsonPlan{
		Schema: schema,
		Unit:   p.Job.Units.String(),
		Warnings: list(p.Warnings, func(w planner.Warning) jsonWarning {
			return jsonWarning{w.Code, known(w.Path), w.Message}
		}),
		Job: jsonJob{
			ID: p.Job.ID, Title: p.Job.Title, Client: known(p.Job.Client),
			Received: date(p.Job.Received), Due: date(p.Job.Due), Quantity: p.Job.Quantity,
			Seam: length(p.Job.Seam, s.unit), SeamAsked: lengthOrNull(p.Job.SeamAsked, s.unit),
		},
		Quilt: jsonQuilt{
			Blocks: p.Quilt.Blocks, Across: p.Quilt.Across, Down: p.Quilt.Down, Finished: s.size(p.Quilt.Finished),
			Setting: string(p.Job.Layout.Setting), Rows: p.Quilt.Rows, Columns: p.Quilt.Columns, Inside: s.size(p.Quilt.Inside),
		},
		Colourways: list(p.Colourways, s.colourway),
		Blocks:     list(p.Blocks, blockOf),
		Press:      pressOf(p.Press),
		Joins:      list(p.Joins, func(j planner.Join) jsonJoin { return jsonJoin{j.Between, jsonMatches(j.Matches)} }),
		Fabrics:    list(p.Fabrics, s.fabric),
		Operations: s.operations(p.Operations),
		Materials:  s.materials(p.Materials),
		Minutes:    minutes(p.Minutes),
		Borders:    list(p.Borders, s.border),
		Sashing:    s.sashing(p.Sashing),
		Triangles:  s.triangles(p.Triangles),
		Pickups:    pickupsOf(p),
	}
}

// colourway is one colourway with its steps.
func (s shown) colourway(c planner.ColourwayPlan) jsonColourway {
	return jsonColourway{
		Name: c.Name, Blocks: c.Blocks, Raw: s.size(c.Raw), Finished: s.size(c.Finished),
		Steps: list(c.Build.Steps, func(m patchwork.Made) jsonStep { return s.step(c, m) }),
		Areas: list(c.Areas, func(a patchwork.RoleArea) jsonArea {
			return jsonArea{Role: a.Role, Area: area(a.Area, s.unit)}
		}),
		SeamLength: length(c.SeamLength, s.unit), Matches: jsonMatches(c.Matches),
	}
}

// step is one step, pressed as the plan has chosen.
func (s shown) step(c planner.ColourwayPlan, m patchwork.Made) jsonStep {
	step := jsonStep{
		Step: m.Step.Name, Raw: s.size(m.Unit.Size), Matches: jsonMatches(c.Build.Tally(m.Joins, c.Press)),
		Copies: m.Copies, Upright: list(m.Cuts[0], s.length), Level: list(m.Cuts[1], s.length), Turns: m.Step.Turns,
	}
	step.Swaps, step.Yield, step.Pooled = m.Step.Exchange, m.Yield, m.Pooled && m.Step.Do != patchwork.Cut
	if m.Square > 0 {
		square, before := s.length(m.Square), s.length(m.Before)
		step.Square, step.Before = &square, &before
	}
	if len(m.Step.Rows) > 0 {
		step.Grid = list(m.Step.Rows, func(row []patchwork.Cell) []jsonCell {
			return list(row, func(c patchwork.Cell) jsonCell { return jsonCell{Of: c.Of, Turn: 90 * (c.Quarters % 4)} })
		})
	}
	step.Rows, step.Between = ways(c.Build, m.Step.Name, c.Press)
	if m.Step.Do == patchwork.Recut {
		step.Pieces = list(m.Pieces, func(row []patchwork.Unit) []jsonSize {
			return list(row, func(u patchwork.Unit) jsonSize { return s.size(u.Size) })
		})
	}
	return step
}

// blockOf is one block of the run.
func blockOf(b planner.Block) jsonBlock {
	return jsonBlock{
		ID: b.ID, Quilt: b.Quilt, Colourway: b.Colourway, Fabrics: b.Fabrics,
		Row: b.Row, Column: b.Column, Turn: b.Turn, Press: known(b.Press),
	}
}
