package render

import (
	"cmp"
	"fmt"
	"io"
	"strings"
	"time"

	"quiltrun/tracker"
)

// saysItself are kinds whose text is in their telling already.
var saysItself = map[tracker.Kind]bool{tracker.Noted: true, tracker.Parked: true}

// tell is an event in words: what was done, how long it took, and its note.
func tell(s tracker.State, t tracker.Told) string {
	words, known := "", tellings[t.Kind]
	if known == nil {
		words = tellOther(s, t)
	} else {
		words = known(s, t)
	}
	if took := tookMinutes(t.Event); took > 0 {
		words += ", took " + spell(took)
	}
	if _, along := caughtUp(t); len(along) > 0 {
		words += "; along with it " + sumsWords(s, along)
	}
	if t.Reason != "" && !saysItself[t.Kind] {
		words += "; " + t.Reason
	}
	if t.UndoneBy != nil {
		words += fmt.Sprintf(" (taken back by entry %d)", t.UndoneBy.Seq)
	}
	return words
}

// tellOther is a kind that this table has no words for.
func tellOther(s tracker.State, t tracker.Told) string {
	words := string(t.Kind)
	if len(t.Parts) > 0 {
		words += ": " + partsWords(s, t.Parts)
	}
	switch {
	case t.Of != nil:
		words += fmt.Sprintf(" of entry %d", t.Of.Seq)
	case t.Target != "":
		words += " of " + t.Target
	}
	return words
}

// tellLogged is work, without what was logged along to catch up.
func tellLogged(s tracker.State, t tracker.Told) string {
	own, _ := caughtUp(t)
	return partsWords(s, own)
}

// caughtUp parts what was logged into what was asked for, which comes last or is
// timed, and what was logged along.
func caughtUp(t tracker.Told) (own, along []tracker.Part) {
	if !t.CatchUp || len(t.Parts) == 0 {
		return t.Parts, nil
	}
	asked := t.Parts[len(t.Parts)-1].Operation
	for _, p := range t.Parts {
		if p.Operation == asked || p.Minutes != nil {
			own = append(own, p)
		} else {
			along = append(along, p)
		}
	}
	return own, along
}

// partsWords is parts by operation: "chain-sew pairs: 4 pairs of tide, 2 of dune".
func partsWords(s tracker.State, parts []tracker.Part) string {
	var all []string
	for _, group := range grouped(len(parts), func(i int) string { return parts[i].Operation }) {
		o := operationOf(s, parts[group[0]].Operation)
		lots := make([]string, len(group))
		for i, at := range group {
			p := parts[at]
			amount := fmt.Sprint(p.Count)
			if i == 0 {
				amount = countedBy(p.Count, o)
			}
			lots[i] = amount + " of " + together(p.Lot.Name) + namedWords(p)
		}
		all = append(all, fmt.Sprintf("%s: %s", o.Name, strings.Join(lots, ", ")))
	}
	return strings.Join(all, "; ")
}

// namedWords is the blocks that a part names.
func namedWords(p tracker.Part) string {
	if len(p.Blocks) == 0 {
		return ""
	}
	ids := make([]string, len(p.Blocks))
	for i, b := range p.Blocks {
		ids[i] = b.Block
	}
	return " (" + idSpan(ids) + ")"
}

// sumsWords is parts by operation without their lots.
func sumsWords(s tracker.State, parts []tracker.Part) string {
	var all []string
	for _, group := range grouped(len(parts), func(i int) string { return parts[i].Operation }) {
		sum := 0
		for _, at := range group {
			sum += parts[at].Count
		}
		o := operationOf(s, parts[group[0]].Operation)
		all = append(all, o.Name+" "+countedBy(sum, o))
	}
	return strings.Join(all, ", ")
}

// countedBy is a number of what an operation counts, the number alone where the
// operation is gone.
func countedBy(n int, o tracker.Operation) string {
	if o.CountedIn == "" {
		return fmt.Sprint(n)
	}
	return counted(n, string(o.CountedIn))
}

// operationOf is an operation by its key; one that a revision took out of the
// route is called by that.
func operationOf(s tracker.State, key string) tracker.Operation {
	for _, o := range s.Ledger.Operations {
		if o.Key == key {
			o.Name = cmp.Or(o.Name, key)
			return o
		}
	}
	return tracker.Operation{Key: key, Name: key}
}

// shortID is an id as far as it takes to name it: ids that were made for the maker
// are long, and any beginning that only one has will do.
func shortID(id string) string {
	const made, enough = 36, 8
	if len(id) == made {
		return id[:enough]
	}
	return id
}

// stamp is when something happened, on the clock of whoever did it.
func stamp(t time.Time) string { return t.Format("2006-01-02" + tied + "15:04") }

// History writes a job's log, or what was asked of it, in plain words, oldest
// first.
func History(w io.Writer, s tracker.State, told []tracker.Told, look Look) error {
	p := &page{look: look}
	p.prose(strong, 0, "", "History of "+s.Ledger.Job)
	p.rule()
	if len(told) == 0 {
		p.para(0, "Nothing of that is in the log.")
		return p.writeTo(w)
	}
	g := &grid{columns: []column{{title: "No", right: true}, {title: "When"}, {title: "By"}, {title: "What", flexible: true}, {title: "Id"}}}
	for _, t := range told {
		g.add(fmt.Sprint(t.Seq), stamp(t.At), t.By, tell(s, t), shortID(t.ID))
	}
	nothing := func(int) {}
	if !p.columns(0, g, nothing, nothing) {
		for _, t := range told {
			p.hang(0, fmt.Sprintf("%3d  ", t.Seq), fmt.Sprintf("%s, %s: %s [%s]", stamp(t.At), t.By, tell(s, t), shortID(t.ID)))
		}
	}
	return p.writeTo(w)
}

// HistoryJSON writes the same for scripts.
func HistoryJSON(w io.Writer, s tracker.State, told []tracker.Told) error {
	return writeJSON(w, struct {
		Schema  int        `json:"schema"`
		Job     string     `json:"job"`
		Entries []jsonTold `json:"entries"`
	}{schema, s.Ledger.Job, list(told, func(t tracker.Told) jsonTold { return toldOf(s, t) })})
}

// jsonTold is one event. Minutes are person-minutes of the whole entry, null where
// nobody timed it.
type jsonTold struct {
	Seq         uint64     `json:"seq"`
	ID          string     `json:"id"`
	At          string     `json:"at"`
	By          string     `json:"by"`
	Kind        string     `json:"kind"`
	Words       string     `json:"words"`
	Minutes     *number    `json:"minutes"`
	Reason      *string    `json:"reason"`
	CatchUp     bool       `json:"catch_up"`
	TakenBackBy *string    `json:"taken_back_by"`
	TakesBack   *string    `json:"takes_back"`
	Parts       []jsonPart `json:"parts"`
}

// jsonPart is what an event says of one row of the route.
type jsonPart struct {
	Key     string           `json:"key"`
	Lot     string           `json:"lot"`
	LotKind string           `json:"lot_kind"`
	Count   int              `json:"count"`
	Blocks  []jsonBlockCount `json:"blocks"`
	Minutes *number          `json:"minutes"`
}

// jsonBlockCount is the counts of a block that was named.
type jsonBlockCount struct {
	Block string `json:"block"`
	Count int    `json:"count"`
}

// toldOf is an event as scripts read it.
func toldOf(s tracker.State, t tracker.Told) jsonTold {
	out := jsonTold{
		Seq: t.Seq, ID: t.ID, At: t.At.Format(time.RFC3339), By: t.By, Kind: string(t.Kind),
		Words: untied(tell(s, t)), Reason: known(t.Reason), CatchUp: t.CatchUp, Minutes: tookOf(t.Event),
		Parts: list(t.Parts, partOf),
	}
	if t.UndoneBy != nil {
		out.TakenBackBy = &t.UndoneBy.ID
	}
	if t.Of != nil && t.Kind == tracker.Undone {
		out.TakesBack = &t.Of.ID
	}
	return out
}

// partOf is a part as scripts read it.
func partOf(p tracker.Part) jsonPart {
	out := jsonPart{Key: p.Operation, Lot: p.Lot.Name, LotKind: string(p.Lot.Kind), Count: p.Count,
		Blocks: list(p.Blocks, func(b tracker.BlockCount) jsonBlockCount { return jsonBlockCount(b) })}
	if p.Minutes != nil {
		out.Minutes = some(minutes(*p.Minutes))
	}
	return out
}
