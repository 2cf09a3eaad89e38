package render

import (
	"strconv"

	"quiltrun/planner"
)

// jsonFabric is what the run needs of one fabric: lengths in the plan's unit for
// yardage, counts for every other form.
type jsonFabric struct {
	Name   string      `json:"name"`
	Form   string      `json:"form"`
	Pieces []jsonPiece `json:"pieces"`
	Need   number      `json:"need"`
	Bound  number      `json:"bound"`
	Length *number     `json:"length"` // of yardage, else null
	Sheets *int        `json:"sheets"` // of every other form, else null
	OnHand *number     `json:"on_hand"`
	Buy    number      `json:"buy"`
	Width  *number     `json:"width"` // usable width of yardage, else null
	Size   *jsonSize   `json:"size"`  // of a sheet, else null

	Assumed     bool `json:"assumed"` // width or size is the planner's own
	Directional bool `json:"directional"`
	Strips      int  `json:"strips"`
	Cuts        int  `json:"cuts"`

	CutWidth  *number        `json:"cut_width"` // of yardage once it is washed, else null
	CutSize   *jsonSize      `json:"cut_size"`  // of a sheet once it is washed, else null
	Shrinkage *jsonSize      `json:"shrinkage"` // percent of width and of length; null: not washed
	Pieced    []jsonSize     `json:"on_hand_pieces"`
	Joint     number         `json:"joint"`  // lost of what is on hand where no strip ends
	Plain     number         `json:"plain"`  // what strips, or sheets, for each size take
	Nested    *jsonNested    `json:"nested"` // null: cuts in any order buy no less
	Leftovers []jsonLeftover `json:"leftovers"`
}

// jsonPiece is how many pieces of one raw size the run needs.
type jsonPiece struct {
	Width  number `json:"width"`
	Height number `json:"height"`
	Count  int    `json:"count"`
	For    string `json:"for"`
}

// jsonOperation is one row of the route. Minutes are expected ones by the table
// of starting times; lengths are for the whole count.
type jsonOperation struct {
	Number       int       `json:"number"`
	Key          string    `json:"key"`
	Name         string    `json:"name"`
	Lot          string    `json:"lot"`
	LotKind      string    `json:"lot_kind"`
	CountedIn    string    `json:"counted_in"`
	PerBlock     *int      `json:"per_block"`
	Count        int       `json:"count"`
	After        []jsonRef `json:"after"`
	SeamLength   number    `json:"seam_length"`
	ThreadLength number    `json:"thread_length"`
	SetupMinutes number    `json:"setup_minutes"`
	UnitMinutes  number    `json:"unit_minutes"`
	Minutes      number    `json:"minutes"`
	Place        string    `json:"place"`
	WaitDays     int       `json:"wait_days"`
	Instruction  string    `json:"instruction"`
	Cautions     []string  `json:"cautions"`
}

// jsonRef points at a row of the route.
type jsonRef struct {
	Number  int    `json:"number"`
	LotKind string `json:"lot_kind"`
	Lot     string `json:"lot"`
}

// jsonMaterials is what a quilt takes beside its pieces; null is not asked for.
// Backing, batting and binding are for one quilt, thread is for the run.
type jsonMaterials struct {
	Backing *jsonBacking    `json:"backing"`
	Batting *jsonBatting    `json:"batting"`
	Binding *jsonBinding    `json:"binding"`
	Borders []jsonBorderCut `json:"borders"` // from the inside out
	Thread  jsonThread      `json:"thread"`
}

// jsonBacking is a backing: its raw size, and the length that it takes off the
// bolt in so many pieces.
type jsonBacking struct {
	Width  number `json:"width"`
	Height number `json:"height"`
	Length number `json:"length"`
	Pieces int    `json:"pieces"`

	Fabric    string   `json:"fabric"`
	Piece     jsonSize `json:"piece"` // raw
	SeamsRun  string   `json:"seams_run"`
	SeamTaken number   `json:"seam_taken"` // from each side

	Panels    []jsonSize `json:"panels"`   // each as it is cut, width across the cloth
	SeamsAt   []number   `json:"seams_at"` // from the left edge, or from the top where they run crosswise
	RunLength number     `json:"run_length"`
}

// jsonBorderCut is how one border of cloth is cut for every quilt.
type jsonBorderCut struct {
	Border   int     `json:"border"` // from the inside out, from 1
	Fabric   string  `json:"fabric"`
	CutWidth number  `json:"cut_width"`
	Sides    number  `json:"sides"` // of the two, raw
	Ends     number  `json:"ends"`
	Grain    string  `json:"grain"`
	Strips   int     `json:"strips"` // across the cloth for the run; 0 lengthwise
	Joined   bool    `json:"joined"`
	Saves    *number `json:"saves"` // of what is bought, against the other grain; null: not worked out
}

// jsonBatting is the least size of a batting, and what to buy in words.
type jsonBatting struct {
	Width  number `json:"width"`
	Height number `json:"height"`
	Choice string `json:"choice"`

	Package  *jsonSize  `json:"package"`  // null: none
	Packages int        `json:"packages"` // for the run; 0: none
	Roll     *number    `json:"roll"`     // its width; null: none
	Length   *number    `json:"length"`   // off the roll for the run, else null
	Left     []jsonSize `json:"left"`
	By       string     `json:"by"` // "self" or "quilter"
}

// jsonBinding is a binding: its strips, the length that they are to reach, and
// the length that they take off the bolt.
type jsonBinding struct {
	Strips       int    `json:"strips"`
	Length       number `json:"length"`
	FabricLength number `json:"fabric_length"`
	Fabric       string `json:"fabric"`
	StripWidth   number `json:"strip_width"` // cut
	Allowance    number `json:"allowance"`   // asked for beyond the edge
	Spare        number `json:"spare"`       // what these strips leave beyond the edge

	Fewer  *number `json:"fewer"` // what one strip fewer would leave; null on the bias
	Joins  string  `json:"joins"`
	Square *number `json:"square"` // side of the squares of a bias binding, else null
}

// jsonThread is thread, needle and bobbin together.
type jsonThread struct {
	Piecing  number `json:"piecing"`
	Quilting number `json:"quilting"`
	Binding  number `json:"binding"`
	Total    number `json:"total"`
	Bobbins  int    `json:"bobbins"`
}

// count is a count where a length may stand too.
func count(n int) number { return number(strconv.Itoa(n)) }

// fabric is one fabric, measured or counted by its form.
func (s shown) fabric(f planner.FabricNeed) jsonFabric {
	out := jsonFabric{
		Name: f.Fabric.Name, Form: string(f.Fabric.Form),
		Pieces: list(f.Pieces, func(p planner.PieceCount) jsonPiece {
			return jsonPiece{Width: s.length(p.Size.Width), Height: s.length(p.Size.Height), Count: p.Count, For: p.For}
		}),
		Assumed: f.Fabric.Assumed, Directional: f.Fabric.Directional, Strips: f.Strips, Cuts: f.Cuts,
	}
	s.cutOf(&out, f)
	stock := f.Fabric.OnHand
	if f.Fabric.Form.Sheets() {
		out.Sheets, out.Size = &f.Sheets, some(s.size(f.Fabric.Size))
		out.Need, out.Bound, out.Buy = count(f.Sheets), count(f.SheetBound), count(f.SheetBuy)
		if stock != nil {
			out.OnHand = some(count(stock.Sheets))
		}
		return out
	}
	out.Need, out.Bound, out.Buy = s.length(f.Length), s.length(f.LengthBound), s.length(f.LengthBuy)
	out.Length, out.Width = some(out.Need), some(s.length(f.Fabric.Width))
	if stock != nil {
		out.OnHand = some(s.length(stock.Length))
	}
	return out
}

// some is a value that is known.
func some[T any](value T) *T { return &value }

// operations is the route; a row before is named by its number.
func (s shown) operations(ops []planner.Operation) []jsonOperation {
	numbers := make(map[string]int, len(ops))
	for _, o := range ops {
		numbers[o.Key] = o.Number
	}
	return list(ops, func(o planner.Operation) jsonOperation {
		return jsonOperation{
			Number: o.Number, Key: o.Key, Name: o.Name, Lot: o.Lot.Name, LotKind: string(o.Lot.Kind),
			CountedIn: string(o.CountedIn), PerBlock: perBlock(o), Count: o.Count,
			After: list(o.After, func(r planner.Ref) jsonRef {
				return jsonRef{Number: numbers[r.Key], LotKind: string(r.Lot.Kind), Lot: r.Lot.Name}
			}),
			SeamLength: s.length(o.SeamLength), ThreadLength: s.length(o.ThreadLength),
			SetupMinutes: minutes(o.Setup.Mean), UnitMinutes: minutes(o.Unit.Mean), Minutes: minutes(o.Minutes()),
			Place: string(o.Place), WaitDays: o.Wait, Instruction: o.Doing,
			Cautions: list(o.Care, func(c string) string { return c }),
		}
	})
}

// perBlock is null where counts do not make blocks.
func perBlock(o planner.Operation) *int {
	if o.Lot.Kind != planner.ColourwayLot || o.PerBlock == 0 {
		return nil
	}
	return &o.PerBlock
}

// materials leaves out nothing that is asked for.
func (s shown) materials(m planner.Materials) jsonMaterials {
	out := jsonMaterials{Thread: jsonThread{
		Piecing: s.length(m.Thread.Piecing), Quilting: s.length(m.Thread.Quilting),
		Binding: s.length(m.Thread.Binding), Total: s.length(m.Thread.Total), Bobbins: m.Thread.Bobbins,
	}}
	out.Borders = list(m.Borders, s.borderCut)
	if b := m.Backing; b != nil {
		out.Backing = &jsonBacking{Width: s.length(b.Size.Width), Height: s.length(b.Size.Height),
			Length: s.length(b.Length), Pieces: b.Panels,
			Fabric: b.Fabric, Piece: s.size(b.Panel), SeamsRun: b.SeamsRun, SeamTaken: s.length(b.SeamTaken),
			Panels: list(b.Cut, s.size), SeamsAt: list(b.SeamsAt, s.length), RunLength: s.length(b.RunLength)}
	}
	if b := m.Batting; b != nil {
		out.Batting = s.batting(*b)
	}
	if b := m.Binding; b != nil {
		out.Binding = s.binding(*b)
	}
	return out
}
