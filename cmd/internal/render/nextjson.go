package render

import (
	"io"

	"quiltrun/tracker"
)

// NextJSON writes an agenda for scripts.
func NextJSON(w io.Writer, states []tracker.State, r tracker.AgendaRequest, a tracker.Agenda) error {
	out := jsonAgenda{
		Schema: schema, AsOf: r.Today.String(), At: known(string(r.At)), Minutes: minutes(a.Minutes),
		Parked: []jsonJobParked{}, Batches: list(a.Batches, batchOf), Longer: list(a.Longer, taskOf), Held: []jsonHeld{},
	}
	if r.For > 0 {
		out.For = some(minutes(r.For))
	}
	for _, s := range states {
		if parked := parkedOf(s); parked != nil {
			out.Parked = append(out.Parked, jsonJobParked{s.Ledger.Job, *parked})
		}
	}
	for _, j := range a.Held {
		out.Held = append(out.Held, list(j.Held, func(h tracker.Held) jsonHeld { return heldOf(j.Job, h) })...)
	}
	return writeJSON(w, out)
}

// jsonAgenda is what can be done. For is the time that there is, in minutes, and at
// the place; both null where any will do.
type jsonAgenda struct {
	Schema  int             `json:"schema"`
	AsOf    string          `json:"as_of"`
	For     *number         `json:"for"`
	At      *string         `json:"at"`
	Minutes number          `json:"minutes"`
	Parked  []jsonJobParked `json:"parked"`
	Batches []jsonBatch     `json:"batches"`
	Longer  []jsonTask      `json:"longer"`
	Held    []jsonHeld      `json:"held"`
}

// jsonJobParked is a job with where its things lie.
type jsonJobParked struct {
	Job string `json:"job"`
	jsonParked
}

// jsonBatch is tasks that share a set-up: its minutes are among the batch's once.
type jsonBatch struct {
	Place        string     `json:"place"`
	Setup        string     `json:"setup"`
	SetupMinutes number     `json:"setup_minutes"`
	Minutes      number     `json:"minutes"`
	Operations   []jsonTask `json:"operations"`
}

// batchOf is a batch as scripts read it.
func batchOf(b tracker.Batch) jsonBatch {
	return jsonBatch{string(b.Place), b.Kind, minutes(b.SetupMinutes), minutes(b.Minutes), list(b.Tasks, taskOf)}
}

// jsonTask is counts of one operation for one lot; its minutes are without setting
// up. Test_blocks are those that it is for: they are to be measured before the run
// goes on.
type jsonTask struct {
	Job        string   `json:"job"`
	Due        *string  `json:"due"`
	Number     int      `json:"number"`
	Key        string   `json:"key"`
	Name       string   `json:"name"`
	Lot        string   `json:"lot"`
	LotKind    string   `json:"lot_kind"`
	CountedIn  string   `json:"counted_in"`
	Count      int      `json:"count"`
	Left       int      `json:"left"`
	TestBlocks []string `json:"test_blocks"`
	Minutes    number   `json:"minutes"`
}

// taskOf is a task as scripts read it.
func taskOf(t tracker.Task) jsonTask {
	return jsonTask{t.Job, date(t.Due), t.Number, t.Key, t.Name, t.Lot.Name, string(t.Lot.Kind), string(t.CountedIn),
		t.Count, t.Left, list(t.Tests, func(id string) string { return id }), minutes(t.Minutes)}
}

// jsonHeld is work that is held up: behind is what has to come first, waits_for
// what all of it waits for in the end, why says it in words. Back is the day on which a quilt that was sent out is expected.
type jsonHeld struct {
	Job       string     `json:"job"`
	Number    int        `json:"number"`
	Key       string     `json:"key"`
	Name      string     `json:"name"`
	Lot       string     `json:"lot"`
	LotKind   string     `json:"lot_kind"`
	CountedIn string     `json:"counted_in"`
	Left      int        `json:"left"`
	By        string     `json:"by"` // order, test, wait; may grow
	Behind    jsonBehind `json:"behind"`
	WaitsFor  jsonBehind `json:"waits_for"`
	Why       string     `json:"why"`
	Back      *string    `json:"back"`
}

// jsonBehind is the operation that has to come first.
type jsonBehind struct {
	Number  int    `json:"number"`
	Key     string `json:"key"`
	Lot     string `json:"lot"`
	LotKind string `json:"lot_kind"`
}

// heldOf is held-up work as scripts read it.
func heldOf(job string, h tracker.Held) jsonHeld {
	return jsonHeld{job, h.Number, h.Key, h.Name, h.Lot.Name, string(h.Lot.Kind), string(h.CountedIn), h.Left,
		string(h.By), behindOf(h.Behind), behindOf(h.Waits), h.Why, date(h.Back)}
}

// behindOf is a row that is waited for as scripts read it.
func behindOf(o tracker.Operation) jsonBehind {
	return jsonBehind{o.Number, o.Key, o.Lot.Name, string(o.Lot.Kind)}
}
