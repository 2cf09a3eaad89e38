package render

import (
	"fmt"
	"io"
	"strings"

	"quiltrun/tracker"
)

// Ticked is one line about an entry that came line by line, or from the screen at
// the machine: what it says and how the row stands then. After is the state with
// the entry in it.
func Ticked(w io.Writer, after tracker.State, ev tracker.Event, repeated bool, look Look) error {
	text := tickedWords(after, ev)
	// Where a script sends its lines again after trouble, its log has to show which of
	// them were there.
	if repeated {
		text += "; sent before, and counts once"
	}
	_, err := io.WriteString(w, strings.Join(look.Fit(text, look.Width), "\n")+"\n")
	return err
}

// tickedWords is what an entry says.
func tickedWords(after tracker.State, ev tracker.Event) string {
	as := fmt.Sprintf("entry %d", ev.Seq)
	switch ev.Kind {
	case tracker.Noted:
		return fmt.Sprintf("%s: note: %s", as, ev.Reason)
	case tracker.Bobbin:
		return as + ": a full bobbin is in"
	case tracker.Paused:
		return as + ": paused"
	case tracker.Resumed:
		return as + ": going on"
	}
	did := "checked off"
	if ev.Kind == tracker.Undone {
		did = "taken back"
	}
	// One line an entry: the row that was asked for has the figures, and what was
	// logged along with it is counted alone.
	rows := entryRows(after, partsOf(after, ev))
	if len(rows) == 0 {
		return fmt.Sprintf("%s: %s", as, did)
	}
	last := rows[len(rows)-1]
	text := fmt.Sprintf("%s: %d %s, %s: %s %s; %d of %d made, %d left", as, last.row.Number, last.row.Name, last.row.Lot.Name,
		counted(last.part.Count, string(last.row.CountedIn)), did, last.row.Done, last.row.Count, last.row.Left())
	if more := len(rows) - 1; more > 0 {
		text += fmt.Sprintf("; %s before it along", counted(more, "row"))
	}
	return text
}

// partsOf is an entry with the parts that it is about: those of the entry that it
// takes back, where it takes one.
func partsOf(after tracker.State, ev tracker.Event) tracker.Event {
	if ev.Kind == tracker.Undone {
		return targetOf(after, ev).Event
	}
	return ev
}

// Turned is one line about the row that came up.
func Turned(w io.Writer, row tracker.Row, look Look) error {
	text := fmt.Sprintf("now %d %s, %s: %d of %d made, %d left", row.Number, row.Name, row.Lot.Name, row.Done, row.Count, row.Left())
	_, err := io.WriteString(w, strings.Join(look.Fit(text, look.Width), "\n")+"\n")
	return err
}

// TickedJSON writes the same as Ticked for scripts, one line an entry.
func TickedJSON(w io.Writer, after tracker.State, ev tracker.Event, repeated bool) error {
	return writeJSON(w, struct {
		jsonReceipt
		Kind    string      `json:"kind"`
		Target  *string     `json:"target"`
		Text    *string     `json:"text"`
		Entries []jsonEntry `json:"entries"`
	}{receiptOf(after.Ledger.Job, ev, repeated), string(ev.Kind), known(ev.Target), known(ev.Reason), list(entryRows(after, partsOf(after, ev)), entryOf)})
}

// TurnedJSON writes for scripts which row came up. It is no entry, and has neither
// id nor number.
func TurnedJSON(w io.Writer, job string, row tracker.Row) error {
	return writeJSON(w, struct {
		Schema int        `json:"schema"`
		Job    string     `json:"job"`
		Kind   string     `json:"kind"`
		Row    jsonTurned `json:"row"`
	}{schema, job, "next", jsonTurned{row.Number, row.Key, row.Lot.Name, string(row.Lot.Kind), string(row.CountedIn), row.Count, row.Done, row.Left()}})
}

// jsonTurned is a row of the route.
type jsonTurned struct {
	Number    int    `json:"number"`
	Key       string `json:"key"`
	Lot       string `json:"lot"`
	LotKind   string `json:"lot_kind"`
	CountedIn string `json:"counted_in"`
	Count     int    `json:"count"`
	Done      int    `json:"done"`
	Left      int    `json:"left"`
}
