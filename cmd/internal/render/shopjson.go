package render

import (
	"io"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// jsonShopFabric is one cloth to buy: lengths in the list's unit for yardage,
// counts for every other form.
type jsonShopFabric struct {
	Fabric      string        `json:"fabric"`
	Form        string        `json:"form"`
	Width       *number       `json:"width"`
	Size        *jsonSize     `json:"size"`
	Directional bool          `json:"directional"`
	Jobs        []string      `json:"jobs"`
	Need        number        `json:"need"`
	Own         number        `json:"own"`   // on hand by the job files, not cut yet
	Shelf       number        `json:"shelf"` // free, or kept for these jobs
	Buy         number        `json:"buy"`
	Apart       number        `json:"apart"`    // bought for each job by itself, stock left aside
	Together    number        `json:"together"` // the same for all of them
	Saves       number        `json:"saves"`
	Pieces      number        `json:"pieces"` // of the need, what pieces that are there save
	Tight       bool          `json:"tight"`  // nothing to speak of is left to straighten the ends
	Cuts        []jsonShopCut `json:"cuts"`
}

// jsonShopCut is the pieces that come from one length or sheet.
type jsonShopCut struct {
	Bought bool            `json:"bought"`
	Length *number         `json:"length"` // of yardage, else null
	Size   *jsonSize       `json:"size"`   // of a sheet, else null
	Pieces []jsonShopPiece `json:"pieces"`
}

type jsonShopPiece struct {
	Width  number `json:"width"`
	Height number `json:"height"`
	Count  int    `json:"count"`
	For    string `json:"for"`
}

type jsonShopBatting struct {
	Package *string   `json:"package"` // null: no usual package holds it
	Size    jsonSize  `json:"size"`    // wanted
	Jobs    []string  `json:"jobs"`
	Need    int       `json:"need"`
	Shelf   int       `json:"shelf"`
	Buy     int       `json:"buy"`
	Pack    *jsonSize `json:"package_size"` // null: off a roll, or no package holds it
	Roll    *number   `json:"roll"`         // its width; null: packages
	Length  *number   `json:"length"`       // to buy off it
}

type jsonShopThread struct {
	Piecing  number `json:"piecing"`
	Quilting number `json:"quilting"`
	Binding  number `json:"binding"`
	Total    number `json:"total"`
	Shelf    number `json:"shelf"`
	Buy      number `json:"buy"`
	Spool    number `json:"spool"` // thread on one
	Spools   int    `json:"spools"`
	Bobbins  int    `json:"bobbins"` // to wind
}

// jsonReminder is what wears out with the work.
type jsonReminder struct {
	Item   string  `json:"item"`
	Count  int     `json:"count"`
	Rule   string  `json:"rule"`
	Source *string `json:"source"`
}

// ShopJSON writes the list for scripts.
func ShopJSON(w io.Writer, s Shopped) error {
	u, t := s.Units, s.Thread
	var reminders []jsonReminder
	for _, n := range s.notions() {
		if n.source != "" {
			reminders = append(reminders, jsonReminder{n.item, n.count, n.why, known(n.source)})
		}
	}
	return writeJSON(w, struct {
		Schema    int               `json:"schema"`
		Unit      string            `json:"unit"`
		Jobs      []string          `json:"jobs"`
		Fabrics   []jsonShopFabric  `json:"fabrics"`
		Batting   []jsonShopBatting `json:"batting"`
		Thread    jsonShopThread    `json:"thread"`
		Reminders []jsonReminder    `json:"reminders"`
	}{
		schema, u.String(), list(s.jobs(), func(j string) string { return j }),
		list(s.Fabrics, func(f planner.ShopFabric) jsonShopFabric { return jsonShopFabricOf(f, u) }),
		list(s.Battings, func(b planner.ShopBatting) jsonShopBatting {
			return jsonShopBattingOf(b, u)
		}),
		jsonShopThread{length(t.Need.Piecing, u), length(t.Need.Quilting, u), length(t.Need.Binding, u), length(t.Need.Total, u),
			length(t.Shelf, u), length(t.Buy, u), length(s.Spool, u), t.Spools(s.Spool), t.Need.Bobbins},
		list(reminders, func(r jsonReminder) jsonReminder { return r }),
	})
}

func jsonShopBattingOf(b planner.ShopBatting, u measure.Unit) jsonShopBatting {
	out := jsonShopBatting{Package: known(b.Package.Name), Size: jsonSizeOf(b.Size, u), Jobs: list(b.Jobs, func(j string) string { return j }), Need: b.Need, Shelf: b.Shelf, Buy: b.Buy}
	if b.Package.Size.Width > 0 {
		out.Pack = some(jsonSizeOf(b.Package.Size, u))
	}
	if b.Roll > 0 {
		out.Roll, out.Length = some(length(b.Roll, u)), some(length(b.Length, u))
	}
	return out
}

func jsonSizeOf(s measure.Size, u measure.Unit) jsonSize {
	return jsonSize{length(s.Width, u), length(s.Height, u)}
}

func jsonShopFabricOf(f planner.ShopFabric, u measure.Unit) jsonShopFabric {
	n := func(a planner.Amount) number { return stockNumber(a, f.Fabric.Form, u) }
	out := jsonShopFabric{
		Fabric: f.Fabric.Name, Form: string(f.Fabric.Form), Directional: f.Fabric.Directional,
		Jobs: list(f.Jobs, func(j string) string { return j }), Need: n(f.Need), Own: n(f.Own), Shelf: n(f.Shelf), Buy: n(f.Buy),
		Apart: n(f.Apart), Together: n(f.Together), Saves: n(f.Saves()), Pieces: n(f.Pieces), Tight: f.Tight(),
		Cuts: list(f.Cuts, func(c planner.ShopCut) jsonShopCut { return jsonShopCutOf(c, f.Fabric, u) }),
	}
	if f.Fabric.Form.Sheets() {
		size := jsonSizeOf(f.Fabric.Size, u)
		out.Size = &size
	} else {
		out.Width = some(length(f.Fabric.Width, u))
	}
	return out
}

func jsonShopCutOf(c planner.ShopCut, f planner.Fabric, u measure.Unit) jsonShopCut {
	out := jsonShopCut{Bought: c.Bought, Pieces: list(c.Pieces, func(p planner.PieceCount) jsonShopPiece {
		return jsonShopPiece{length(p.Size.Width, u), length(p.Size.Height, u), p.Count, p.For}
	})}
	if f.Form.Sheets() {
		size := jsonSizeOf(c.Sheets.Size, u)
		out.Size = &size
	} else {
		out.Length = some(length(c.Length, u))
	}
	return out
}
