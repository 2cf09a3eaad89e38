package render

import (
	"io"
	"time"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// LeftJSON writes what remains of one job at a time for scripts.
func LeftJSON(w io.Writer, s tracker.State, now time.Time) error {
	return writeJSON(w, leftOf(s, now))
}

// LeftAllJSON writes what remains of every booked job for scripts.
func LeftAllJSON(w io.Writer, states []tracker.State, now time.Time) error {
	return writeJSON(w, struct {
		Schema int        `json:"schema"`
		Jobs   []jsonLeft `json:"jobs"`
	}{schema, list(states, func(s tracker.State) jsonLeft { return leftOf(s, now) })})
}

// jsonLeft is one job. Counts are for the run, minutes_left is the expected time
// of all that is left: nothing once all quilts are handed over, whatever rows
// were never logged to their end.
type jsonLeft struct {
	Schema         int         `json:"schema"`
	Job            string      `json:"job"`
	Blocks         int         `json:"blocks"`
	FinishedBlocks int         `json:"finished_blocks"`
	Quilts         int         `json:"quilts"`
	FinishedQuilts int         `json:"finished_quilts"`
	MinutesLeft    number      `json:"minutes_left"`
	Lots           []jsonLot   `json:"lots"`
	Title          string      `json:"title"`
	Due            *string     `json:"due"`
	InHand         int         `json:"in_hand"` // blocks begun and not made
	Next           *jsonNext   `json:"next"`
	Parked         *jsonParked `json:"parked"`

	Drifts []*jsonTrend  `json:"drifts"` // seams that drift, of work that is left
	Doubts []jsonSitting `json:"doubts"` // times at work that wait for a word of the maker's
}

// jsonLot is one lot with all its operations, those that are done too.
type jsonLot struct {
	Lot            string    `json:"lot"`
	LotKind        string    `json:"lot_kind"`
	Blocks         *int      `json:"blocks"` // null of a fabric
	FinishedBlocks *int      `json:"finished_blocks"`
	Operations     []jsonRow `json:"operations"`
	InHand         *int      `json:"in_hand"`
}

// jsonRow is one operation of a lot: done and left make the count.
type jsonRow struct {
	Number    int    `json:"number"`
	Key       string `json:"key"`
	CountedIn string `json:"counted_in"`
	Count     int    `json:"count"`
	Done      int    `json:"done"`
	Left      int    `json:"left"`
	Name      string `json:"name"`
	Spare     int    `json:"spare"` // logged beyond the count
}

// leftOf is a state as scripts read it.
func leftOf(s tracker.State, now time.Time) jsonLeft {
	return jsonLeft{
		Schema: schema, Job: s.Ledger.Job, Title: s.Ledger.Title, Due: date(s.Ledger.Due),
		Blocks: s.Blocks(tracker.Lot{}), FinishedBlocks: s.FinishedBlocks(tracker.Lot{}),
		Quilts: s.Ledger.Quantity, FinishedQuilts: s.FinishedQuilts(), MinutesLeft: minutes(remainingMinutes(s)),
		InHand: s.InHand(tracker.Lot{}), Next: nextOf(s, planner.DateOf(now)), Parked: parkedOf(s),
		Lots: list(lotsOf(s), func(l lotRows) jsonLot {
			lot := jsonLot{Lot: l.Name, LotKind: string(l.Kind), Operations: list(l.rows, rowOf)}
			if l.Kind != planner.FabricLot {
				lot.Blocks, lot.FinishedBlocks, lot.InHand = some(s.Blocks(l.Lot)), some(s.FinishedBlocks(l.Lot)), some(s.InHand(l.Lot))
			}
			return lot
		}),
		Drifts: list(s.Drifts(), func(d tracker.Drift) *jsonTrend { return trendOf(d.Series) }),
		Doubts: doubtsOf(s, now),
	}
}

func rowOf(r tracker.Row) jsonRow {
	return jsonRow{Number: r.Number, Key: r.Key, CountedIn: string(r.CountedIn),
		Count: r.Count, Done: r.Done, Left: r.Left(), Name: r.Name, Spare: r.Spare}
}
