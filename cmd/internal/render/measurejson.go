package render

import (
	"io"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// jsonSides is a raw or finished size; a side is null where it was not measured.
type jsonSides struct {
	Width  *number `json:"width"`
	Height *number `json:"height"`
}

func sidesOf(s measure.Size, u measure.Unit) jsonSides {
	return jsonSides{lengthOrNull(s.Width, u), lengthOrNull(s.Height, u)}
}

func lengthOrNull(l measure.Length, u measure.Unit) *number {
	if l == 0 {
		return nil
	}
	return some(length(l, u))
}

// jsonMeasuredSize is how many pieces measured so much.
type jsonMeasuredSize struct {
	jsonSides
	Count  int      `json:"count"`
	Blocks []string `json:"blocks"`
}

// jsonWay is one way that a piece was measured.
type jsonWay struct {
	Way    string  `json:"way"` // across | down
	Should number  `json:"should"`
	Is     number  `json:"is"`
	Off    number  `json:"off"`
	Seams  number  `json:"seams"`
	Each   *number `json:"each"` // what one seam is off, both layers
	Seam   *number `json:"seam"` // what it takes from each side
}

// jsonSewn is what a block and a quilt measure with one seam all through.
type jsonSewn struct {
	Seam  number    `json:"seam"`
	Raw   jsonSides `json:"raw"`
	Block jsonSides `json:"block"`
	Quilt jsonSides `json:"quilt"`
}

func sewnOf(s planner.Sewn, u measure.Unit) *jsonSewn {
	if s.Seam == 0 {
		return nil
	}
	return &jsonSewn{length(s.Seam, u), sidesOf(s.Raw, u), sidesOf(s.Block, u), sidesOf(s.Quilt, u)}
}

// jsonCrossed is over how many seams piece, block and quilt are measured.
type jsonCrossed struct {
	PieceAcross number `json:"piece_across"`
	PieceDown   number `json:"piece_down"`
	BlockAcross number `json:"block_across"`
	BlockDown   number `json:"block_down"`
	QuiltAcross number `json:"quilt_across"`
	QuiltDown   number `json:"quilt_down"`
}

// jsonBorderChange is the outermost border's strips cut otherwise.
type jsonBorderChange struct {
	Strips  string `json:"strips"` // sides | top and bottom
	Planned number `json:"planned"`
	Cut     number `json:"cut"`
}

// jsonMeasuredPiece is everything that measure shows.
type jsonMeasuredPiece struct {
	Schema     int                `json:"schema"`
	Job        string             `json:"job"`
	Unit       string             `json:"unit"`
	ID         *string            `json:"id"`  // null for a job file
	Seq        *uint64            `json:"seq"` // null for a job file
	Repeated   bool               `json:"repeated"`
	By         *string            `json:"by"`
	Machine    *string            `json:"machine"`
	Step       string             `json:"step"`
	Operation  *string            `json:"operation"`
	Piece      string             `json:"piece"`
	Colourways []string           `json:"colourways"`
	Should     jsonSides          `json:"should"`
	Sizes      []jsonMeasuredSize `json:"sizes"`
	Ways       []jsonWay          `json:"ways"`
	Tolerance  number             `json:"tolerance"`
	Within     bool               `json:"within"`
	Off        *number            `json:"off"` // of a block, raw; null where it cannot be made
	Problem    *string            `json:"problem"`
	Planned    *jsonSewn          `json:"planned"`
	Would      *jsonSewn          `json:"would"`
	Seams      jsonCrossed        `json:"seams"`
	Borders    []jsonBorderChange `json:"borders"`
	Remedies   []string           `json:"remedies"`
	Uneven     *jsonUneven        `json:"uneven"`
	Readings   int                `json:"readings"`
	Drift      *jsonTrend         `json:"drift"`
	Revision   *int               `json:"revision"` // of the job planned anew
	Changes    []string           `json:"changes"`
}

// MeasuredJSON writes the same for scripts.
func MeasuredJSON(w io.Writer, m Measure) error {
	u, f := m.Job.Units, m.First
	out := jsonMeasuredPiece{
		Schema: schema, Job: m.Job.ID, Unit: u.String(), Repeated: m.Repeated,
		By: known(m.Event.By), Machine: known(m.Kept.Machine), Step: m.Kept.Step, Operation: known(m.Kept.Operation),
		Piece: m.Kept.Name, Colourways: list(m.Kept.Colourways, same[string]), Should: sidesOf(m.Kept.Should, u),
		Sizes: list(m.Kept.Sizes, func(s tracker.MeasuredSize) jsonMeasuredSize {
			return jsonMeasuredSize{sidesOf(s.Size, u), s.Count, list(s.Blocks, same[string])}
		}),
		Ways:      list(f.Ways, func(way planner.Way) jsonWay { return wayOf(way, u) }),
		Tolerance: length(f.Tolerance, u), Within: f.Within(), Planned: sewnOf(f.Planned, u), Would: sewnOf(f.Would, u),
		Seams: crossedOf(f),
		Borders: list(f.Borders, func(b planner.BorderChange) jsonBorderChange {
			return jsonBorderChange{stripsName(b), length(b.Planned, u), length(b.Cut, u)}
		}),
		Remedies: list(f.Remedies(m.Job), same[string]), Readings: m.Readings, Changes: list(m.Changes, same[string]),
	}
	if m.Event.Seq > 0 {
		out.ID, out.Seq = &m.Event.ID, &m.Event.Seq
	}
	if f.Problem != nil {
		out.Problem = known(problemWords(f.Problem))
	} else {
		out.Off = some(length(f.Off(), u))
	}
	if m.Uneven != nil {
		out.Uneven = unevenOf(*m.Uneven, u)
	}
	if m.Drift != nil {
		out.Drift = trendOf(m.Drift.Series)
	}
	if m.Revision > 0 {
		out.Revision = &m.Revision
	}
	return writeJSON(w, out)
}

func crossedOf(f planner.FirstPiece) jsonCrossed {
	return jsonCrossed{
		decimal(f.Piece.SeamsAcross(), 2), decimal(f.Piece.SeamsDown(), 2),
		decimal(f.Seams.BlockAcross, 2), decimal(f.Seams.BlockDown, 2), decimal(f.Seams.QuiltAcross, 2), decimal(f.Seams.QuiltDown, 2),
	}
}

func same[T any](t T) T { return t }

func wayOf(way planner.Way, u measure.Unit) jsonWay {
	out := jsonWay{Way: "across", Should: length(way.Should, u), Is: length(way.Is, u), Off: length(way.Off(), u), Seams: decimal(way.Seams, 2)}
	if way.Down {
		out.Way = "down"
	}
	if way.Seam > 0 {
		out.Each, out.Seam = some(length(way.Each, u)), some(length(way.Seam, u))
	}
	return out
}

func stripsName(b planner.BorderChange) string {
	if b.Sides {
		return "sides"
	}
	return "top and bottom"
}
