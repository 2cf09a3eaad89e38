package render

import (
	"io"
	"time"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// jsonSitting is a time at work. Minutes are not among the job's where counted is
// false. Source is clock, ticks, told or ripping; of the last two from and to
// are null.
type jsonSitting struct {
	Entry    uint64         `json:"entry"` // by which it is put right
	ID       string         `json:"id"`
	By       string         `json:"by"`
	Source   string         `json:"source"`
	From     *string        `json:"from"`
	To       *string        `json:"to"` // null while it runs
	Running  bool           `json:"running"`
	Minutes  number         `json:"minutes"`
	Counted  bool           `json:"counted"`
	PutRight bool           `json:"put_right"`
	Doubt    *string        `json:"doubt"`
	Offer    *string        `json:"offer"` // an earlier end that the log suggests
	Rows     []jsonTimeSpan `json:"rows"`
}

// jsonTimeSpan is what a sitting gave to a row.
type jsonTimeSpan struct {
	Number  *int   `json:"number"` // null of one that left the route
	Key     string `json:"key"`
	Lot     string `json:"lot"`
	LotKind string `json:"lot_kind"`
	Count   int    `json:"count"`
	Minutes number `json:"minutes"`
}

func instant(t time.Time) *string {
	if t.IsZero() {
		return nil
	}
	return known(t.Format(time.RFC3339))
}

func sittingOf(s tracker.State, sitting tracker.Sitting) jsonSitting {
	out := jsonSitting{
		Entry: sitting.Seq, ID: sitting.ID, By: sitting.By, Source: "clock",
		From: instant(sitting.From), To: instant(sitting.To), Running: sitting.Running(),
		Minutes: minutes(sitting.Minutes()), Counted: sitting.Counted(), PutRight: sitting.Settled != nil,
		Doubt: known(string(sitting.Doubt)), Offer: instant(sitting.Offer),
		Rows: list(sitting.Shares, func(share tracker.Share) jsonTimeSpan {
			return timeSpanOf(s, share.Operation, share.Lot, share.Count, share.Minutes)
		}),
	}
	if sitting.Ticks {
		out.Source = "ticks"
	}
	return out
}

func timeSpanOf(s tracker.State, key string, lot tracker.Lot, count int, took planner.Minutes) jsonTimeSpan {
	out := jsonTimeSpan{Key: key, Lot: lot.Name, LotKind: string(lot.Kind), Count: count, Minutes: minutes(took)}
	if o := operationOf(s, key); o.Number > 0 {
		out.Number = some(o.Number)
	}
	return out
}

// jsonDoubts is the times at work of a job that wait for a word of the maker's.
type jsonDoubts struct {
	Doubts []jsonSitting `json:"doubts"`
}

// doubtsOf is what waits for a word of the maker's.
func doubtsOf(s tracker.State, now time.Time) []jsonSitting {
	return list(s.Doubts(now), func(sitting tracker.Sitting) jsonSitting { return sittingOf(s, sitting) })
}

// toldTime is an entry whose time somebody said.
func toldTime(s tracker.State, e tracker.Entry) jsonSitting {
	out := jsonSitting{Entry: e.Seq, ID: e.ID, By: e.By, Source: "told", Minutes: minutes(s.Told(e)), Counted: true,
		PutRight: s.Told(e) != tookMinutes(e.Event)}
	if e.Kind == tracker.Ripped {
		out.Source = "ripping"
	}
	all := tookMinutes(e.Event)
	out.Rows = list(timedParts(e), func(p tracker.Part) jsonTimeSpan {
		share := s.Told(e)
		if p.Minutes != nil && all > 0 {
			share = share * *p.Minutes / all
		}
		return timeSpanOf(s, p.Operation, p.Lot, p.Count, share)
	})
	return out
}

// TimesJSON writes who was at work for scripts.
func TimesJSON(w io.Writer, s tracker.State, now time.Time) error {
	type jsonPerson struct {
		By      string `json:"by"`
		Minutes number `json:"minutes"`
	}
	type jsonDay struct {
		Date    *string `json:"date"`
		Minutes number  `json:"minutes"`
	}
	sum := s.Worked()
	gap, quiet := s.Limits()
	sittings := list(s.Sittings(now), func(sitting tracker.Sitting) jsonSitting { return sittingOf(s, sitting) })
	for _, e := range s.Entries {
		if s.Told(e) > 0 {
			sittings = append(sittings, toldTime(s, e))
		}
	}
	return writeJSON(w, struct {
		Schema   int           `json:"schema"`
		Job      string        `json:"job"`
		Minutes  number        `json:"minutes"` // of all persons
		Elapsed  number        `json:"elapsed"` // in which somebody was at work
		Ripping  number        `json:"ripping"` // of the minutes
		Gap      number        `json:"gap"`
		Longest  number        `json:"longest"`
		People   []jsonPerson  `json:"people"`
		Days     []jsonDay     `json:"days"`
		Sittings []jsonSitting `json:"sittings"`
		Doubts   []jsonSitting `json:"doubts"`
	}{schema, s.Ledger.Job, minutes(sum.Minutes), minutes(sum.Elapsed), minutes(sum.Ripping), minutes(gap), minutes(quiet),
		list(peopleOf(s, now), func(p personTime) jsonPerson { return jsonPerson{p.By, minutes(p.Minutes)} }),
		list(daysOf(s, now), func(d tracker.DayMinutes) jsonDay { return jsonDay{date(d.Date), minutes(d.Minutes)} }),
		sittings, doubtsOf(s, now)})
}

// ClockedJSON writes what was begun, stopped or put right for scripts: the sitting
// that it is about, null where it is about an entry or the limits, and whatever
// else waits for a word.
func ClockedJSON(w io.Writer, after tracker.State, ev tracker.Event, sitting *tracker.Sitting, now time.Time, repeated bool) error {
	out := struct {
		jsonReceipt
		Sitting *jsonSitting  `json:"sitting"`
		Target  *string       `json:"target"`
		Minutes *number       `json:"minutes"` // of the sitting, or of the entry that was put right
		Doubts  []jsonSitting `json:"doubts"`
	}{jsonReceipt: receiptOf(after.Ledger.Job, ev, repeated), Target: known(ev.Target), Doubts: doubtsOf(after, now)}
	if sitting != nil {
		out.Sitting = some(sittingOf(after, *sitting))
		out.Minutes = some(minutes(sitting.Minutes()))
	} else if ev.Target != "" {
		out.Minutes = some(minutes(tookMinutes(ev)))
	}
	return writeJSON(w, out)
}
