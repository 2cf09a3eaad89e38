package render

import (
	"io"
	"time"

	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

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
