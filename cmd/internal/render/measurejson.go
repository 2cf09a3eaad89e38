package render

import (
	"io"
	"time"

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

// jsonCrossed is over how many seams block and quilt are measured.
type jsonCrossed struct {
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
		Seams: jsonCrossed{decimal(f.Seams.BlockAcross, 2), decimal(f.Seams.BlockDown, 2), decimal(f.Seams.QuiltAcross, 2), decimal(f.Seams.QuiltDown, 2)},
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

// jsonTrend is what one person measured after one step on one machine.
type jsonTrend struct {
	By        string        `json:"by"`
	Machine   *string       `json:"machine"`
	Step      string        `json:"step"`
	Operation *string       `json:"operation"`
	Unit      string        `json:"unit"`
	Readings  []jsonReading `json:"readings"`
	Mean      *number       `json:"mean"`     // of the seams
	Spread    *number       `json:"spread"`   // their standard deviation; null for one
	Slope     *number       `json:"slope"`    // from one measure to the next; null for one
	SlopeSE   *number       `json:"slope_se"` // null for fewer than three
	Drifts    bool          `json:"drifts"`
}

// jsonReading is one measure of a series.
type jsonReading struct {
	Seq  uint64    `json:"seq"`
	At   string    `json:"at"`
	Size jsonSides `json:"size"`
	Seam number    `json:"seam"`
}

// trendPlaces is how many decimals a seam's change is given with.
const trendPlaces = 6

func trendOf(x tracker.Series) *jsonTrend {
	u, t := unitOf(x), x.Trend()
	in := func(inches float64) *number {
		if u == measure.Centimetres {
			inches *= 2.54
		}
		return some(decimal(inches, trendPlaces))
	}
	_, drifts := x.Drift()
	out := &jsonTrend{By: x.By, Machine: known(x.Machine), Step: x.Step, Operation: known(x.Operation), Unit: x.Unit, Drifts: drifts,
		Readings: list(x.Readings, func(r tracker.Reading) jsonReading {
			return jsonReading{r.Seq, r.At.Format(time.RFC3339), sidesOf(r.Size, u), length(r.Seam, u)}
		})}
	if t.N > 0 {
		out.Mean = in(t.Mean)
	}
	if t.N > 1 {
		out.Spread, out.Slope = in(t.Spread), in(t.Slope)
	}
	if t.N > 2 {
		out.SlopeSE = in(t.SlopeSE)
	}
	return out
}

// jsonMeasurement is one entry of the list.
type jsonMeasurement struct {
	ID         string             `json:"id"`
	Seq        uint64             `json:"seq"`
	At         string             `json:"at"`
	By         string             `json:"by"`
	Machine    *string            `json:"machine"`
	Step       string             `json:"step"`
	Operation  *string            `json:"operation"`
	Piece      string             `json:"piece"`
	Unit       string             `json:"unit"`
	Colourways []string           `json:"colourways"`
	Should     jsonSides          `json:"should"`
	Sizes      []jsonMeasuredSize `json:"sizes"`
	Seam       *number            `json:"seam"`
	Moved      bool               `json:"moved"`
}

func measurementOf(e tracker.Entry) jsonMeasurement {
	m := e.Measure
	u := unitOf(tracker.Series{Unit: m.Unit})
	return jsonMeasurement{
		ID: e.ID, Seq: e.Seq, At: e.At.Format(time.RFC3339), By: e.By, Machine: known(m.Machine), Step: m.Step,
		Operation: known(m.Operation), Piece: m.Name, Unit: m.Unit, Colourways: list(m.Colourways, same[string]),
		Should: sidesOf(m.Should, u), Seam: lengthOrNull(m.Seam, u), Moved: m.Moved,
		Sizes: list(m.Sizes, func(s tracker.MeasuredSize) jsonMeasuredSize {
			return jsonMeasuredSize{sidesOf(s.Size, u), s.Count, list(s.Blocks, same[string])}
		}),
	}
}

// MeasurementsJSON lists what was measured of a job for scripts.
func MeasurementsJSON(w io.Writer, s tracker.State) error {
	return writeJSON(w, struct {
		Schema   int               `json:"schema"`
		Job      string            `json:"job"`
		Measures []jsonMeasurement `json:"measures"`
		Series   []*jsonTrend      `json:"series"`
	}{schema, s.Ledger.Job, list(s.Measurements(), measurementOf), list(s.Series(), trendOf)})
}
