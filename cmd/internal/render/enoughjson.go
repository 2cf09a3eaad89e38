package render

import (
	"io"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

type jsonEnoughFabric struct {
	Fabric string          `json:"fabric"`
	Form   string          `json:"form"`
	Said   bool            `json:"said"` // false: taken as bought as needed
	OnHand *number         `json:"on_hand"`
	Need   number          `json:"need"`
	Buy    number          `json:"buy"`    // 0 where it does, or where nothing is said
	Piece  *jsonSize       `json:"piece"`  // where all pieces for blocks are of one size
	Gives  *int            `json:"gives"`  // of those
	Wanted int             `json:"wanted"` // pieces still to be cut for blocks
	Over   *int            `json:"over"`   // what the blocks that can be made leave of them
	Blocks []jsonEnoughUse `json:"blocks"`
	Spare  []jsonShopPiece `json:"spare"` // cut, and no longer wanted
}

type jsonEnoughUse struct {
	Colourway string `json:"colourway"`
	Blocks    int    `json:"blocks"`
	Makes     int    `json:"makes"`
}

type jsonEnoughWay struct {
	Kind      string          `json:"kind"` // may grow
	Buy       []jsonEnoughBuy `json:"buy"`
	Lines     []string        `json:"lines"`  // of the job file
	Key       *string         `json:"key"`    // of the measure that is made smaller
	Square    *number         `json:"square"` // what it is then
	Block     *jsonSize       `json:"block"`
	Quilt     *jsonSize       `json:"quilt"`
	Colourway *string         `json:"colourway"`
	Makes     *int            `json:"makes"`
	By        *string         `json:"by"`
	Instead   *int            `json:"instead"`
}

type jsonEnoughBuy struct {
	Fabric string `json:"fabric"`
	Form   string `json:"form"`
	Need   number `json:"need"`
	Buy    number `json:"buy"`
}

// EnoughJSON shows how far the cloth goes for scripts.
func EnoughJSON(w io.Writer, e planner.Enough) error {
	u := e.Plan.Job.Units
	return writeJSON(w, struct {
		Schema     int                `json:"schema"`
		Unit       string             `json:"unit"`
		Job        string             `json:"job"`
		Enough     bool               `json:"enough"`
		Colourways []jsonEnoughUse    `json:"colourways"`
		Fabrics    []jsonEnoughFabric `json:"fabrics"`
		Ways       []jsonEnoughWay    `json:"ways"`
	}{
		schema, u.String(), e.Plan.Job.ID, e.Fits,
		list(e.Colourways, func(c planner.EnoughColourway) jsonEnoughUse { return jsonEnoughUse{c.Name, c.Blocks, c.Makes} }),
		list(e.Fabrics, func(f planner.EnoughFabric) jsonEnoughFabric { return jsonEnoughFabricOf(f, u) }),
		list(e.Ways, func(w planner.EnoughWay) jsonEnoughWay { return jsonEnoughWayOf(w, u) }),
	})
}

func jsonEnoughFabricOf(f planner.EnoughFabric, u measure.Unit) jsonEnoughFabric {
	n := func(a planner.Amount) number { return stockNumber(a, f.Fabric.Form, u) }
	out := jsonEnoughFabric{
		Fabric: f.Fabric.Name, Form: string(f.Fabric.Form), Said: f.Said, Need: n(f.Need), Buy: n(0), Wanted: f.Wanted,
		Blocks: list(f.Uses, func(u planner.EnoughUse) jsonEnoughUse { return jsonEnoughUse{u.Colourway, u.Blocks, u.Makes} }),
		Spare: list(f.Spare, func(p planner.PieceCount) jsonShopPiece {
			return jsonShopPiece{length(p.Size.Width, u), length(p.Size.Height, u), p.Count, p.For}
		}),
	}
	if !f.Said {
		return out
	}
	out.Buy = n(f.Buy)
	out.OnHand = some(n(planner.Amount(f.Have.Length())))
	if f.Fabric.Form.Sheets() {
		out.OnHand = some(n(planner.Amount(f.Have.Count())))
	}
	if f.Size != (measure.Size{}) {
		size := jsonSizeOf(f.Size, u)
		out.Piece, out.Gives, out.Over = &size, &f.Gives, &f.Over
	}
	return out
}

func jsonEnoughWayOf(w planner.EnoughWay, u measure.Unit) jsonEnoughWay {
	out := jsonEnoughWay{
		Kind: string(w.Kind), Lines: list(w.Lines, func(l string) string { return l }),
		Buy: list(w.Buy, func(b planner.EnoughBuy) jsonEnoughBuy {
			return jsonEnoughBuy{b.Fabric.Name, string(b.Fabric.Form), stockNumber(b.Need, b.Fabric.Form, u), stockNumber(b.Amount, b.Fabric.Form, u)}
		}),
		Key: known(w.Key), Colourway: known(w.Colourway), By: known(w.By),
	}
	if w.By != "" {
		out.Makes, out.Instead = &w.Makes, &w.Instead
	}
	if w.Square > 0 {
		block, quilt := jsonSizeOf(w.Block, u), jsonSizeOf(w.Quilt, u)
		out.Square, out.Block, out.Quilt = some(length(w.Square, u)), &block, &quilt
	}
	return out
}
