package tick

import (
	"fmt"
	"time"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
)

// deed is what a request asks of the log.
type deed uint8

// The deeds.
const (
	checkOff deed = iota + 1
	takeBack
	newBobbin
	keepNote
	pauseWork
	goOn
)

// Request is an entry that is to be written. Its id was made when the key went
// down, so that sending it again after trouble cannot count twice.
type Request struct {
	ID      string
	At      time.Time  // of the key
	since   *time.Time // when the maker was last seen before it, nil where the log says so
	do      deed
	row     place
	count   int    // to check off
	catchUp bool   // and what comes before it along
	target  string // the entry to take back
	text    string // the note
}

// Decide is the event that a request comes to, from what the job is like while
// nobody else can change it.
func (r Request) Decide(state tracker.State, by string) (tracker.Event, error) {
	switch r.do {
	case takeBack:
		return state.Undo(r.target, r.ID, r.At, by)
	case newBobbin:
		return state.NewBobbin(r.ID, r.At, by)
	case keepNote:
		return state.Note(r.text, r.ID, r.At, by)
	case pauseWork:
		return state.Pause(r.ID, r.At, by)
	case goOn:
		return state.Resume(r.ID, r.At, by)
	}
	lot := r.row.lot
	return state.Log(tracker.LogRequest{
		Operation: r.row.key, Counts: []tracker.CountAsked{{Number: r.count}}, Lot: &lot,
		CatchUp: r.catchUp, Ticked: true, Since: r.since, ID: r.ID, At: r.At, By: by,
	})
}

// Command is the call that would make the entry by hand, for a request that could
// not be written.
func (r Request) Command(job string) string {
	switch r.do {
	case takeBack:
		return fmt.Sprintf("quiltrun undo %s --entry %s --id %s", job, r.target, r.ID)
	case keepNote:
		return fmt.Sprintf("echo %s | quiltrun tick %s", render.ShellWord("note "+r.text), job)
	case newBobbin, pauseWork, goOn:
		word := map[deed]string{newBobbin: "bobbin", pauseWork: "pause", goOn: "'go on'"}[r.do]
		return fmt.Sprintf("echo %s | quiltrun tick %s", word, job)
	}
	call := fmt.Sprintf("quiltrun log %s %s %d --lot %s --id %s", job, r.row.key, r.count, render.ShellWord(string(r.row.lot.Kind)+":"+r.row.lot.Name), r.ID)
	if r.catchUp {
		call += " --catch-up"
	}
	return call
}

// Answer is what became of a request. Where the log was held by somebody else
// nothing became of it yet: it is to be sent again.
type Answer struct {
	Request  Request
	State    tracker.State // as the log was then, with the event in it where it was written
	Event    tracker.Event
	Repeated bool   // it was there before
	Trouble  string // why nothing was written, "" where it was
	Held     bool
}
