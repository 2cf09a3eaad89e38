package render

import (
	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// jsonUneven is blocks of several sizes, and both ways out.
type jsonUneven struct {
	Planned jsonSides `json:"planned"`
	Short   int       `json:"short"`
	Trim    struct {
		To      jsonSides `json:"to"`
		Block   jsonSides `json:"block"` // finished
		Quilt   jsonSides `json:"quilt"`
		Was     jsonSides `json:"was"` // the quilt as planned
		Blocks  int       `json:"blocks"`
		Minutes number    `json:"minutes"`
	} `json:"trim"`
	Remake struct {
		Blocks     int              `json:"blocks"`
		Colourways []string         `json:"colourways"`
		Minutes    number           `json:"minutes"`
		Cloth      []jsonRemadeFrom `json:"cloth"`
		Left       []jsonRemadeWork `json:"left"` // goes back to what is left
	} `json:"remake"`
}

// jsonRemadeFrom is what is cut again of a fabric: a length of yardage, or
// sheets.
type jsonRemadeFrom struct {
	Fabric string          `json:"fabric"`
	Pieces []jsonCutPieces `json:"pieces"`
	Length *number         `json:"length"`
	Sheets *int            `json:"sheets"`
}

// jsonCutPieces is pieces of one size.
type jsonCutPieces struct {
	jsonSides
	Count int `json:"count"`
}

// jsonRemadeWork is what goes back to an operation.
type jsonRemadeWork struct {
	Number int    `json:"number"`
	Key    string `json:"key"`
	Lot    string `json:"lot"`
	Count  int    `json:"count"`
}

func unevenOf(un planner.Uneven, u measure.Unit) *jsonUneven {
	out := &jsonUneven{Planned: sidesOf(un.Planned, u), Short: un.Short}
	t, r := un.Trim, un.Remake
	out.Trim.To, out.Trim.Block, out.Trim.Quilt, out.Trim.Was = sidesOf(t.To, u), sidesOf(t.Block, u), sidesOf(t.Now.Quilt, u), sidesOf(t.Was.Quilt, u)
	out.Trim.Blocks, out.Trim.Minutes = t.Blocks, minutes(t.Minutes)
	out.Remake.Blocks, out.Remake.Minutes, out.Remake.Colourways = r.Blocks, minutes(r.Minutes), list(r.Of, same[string])
	out.Remake.Cloth = list(r.Pieces, func(p planner.RemadePieces) jsonRemadeFrom {
		from := jsonRemadeFrom{Fabric: p.Fabric, Length: lengthOrNull(p.Length, u), Pieces: list(p.Pieces, func(c planner.PieceCount) jsonCutPieces {
			return jsonCutPieces{sidesOf(c.Size, u), c.Count}
		})}
		if p.Sheets > 0 {
			from.Sheets = &p.Sheets
		}
		return from
	})
	out.Remake.Left = list(r.Work, func(w planner.RemadeWork) jsonRemadeWork { return jsonRemadeWork{w.Number, w.Key, w.Lot.Name, w.Count} })
	return out
}
