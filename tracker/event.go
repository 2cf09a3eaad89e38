package tracker

import (
	"time"

	"quiltrun/planner"
)

// EventSchema is the version of the event envelope that this program writes.
const EventSchema = 1

// Kind says what an event records. New kinds may come; a kind never changes
// its meaning.
type Kind string

// The kinds of event.
const (
	Booked  Kind = "book"    // a job was taken on: Job and Ledger are set
	Revised Kind = "revise"  // a booked job was planned anew: Job and Ledger are set
	Logged  Kind = "log"     // work was done: Parts are set
	Undone  Kind = "undo"    // the entry Target no longer counts
	Recount Kind = "recount" // Parts say what lies on the table, whatever was logged before
	Started Kind = "start"   // somebody began to work at the rows of Parts
	Stopped Kind = "stop"    // whoever began stopped, at End where it is set
	Paused  Kind = "pause"   // whoever was at work does something else for a while
	Resumed Kind = "resume"  // and goes on
	Spoilt  Kind = "scrap"   // Parts say how many counts are spoilt beyond use, and what they were made of
	Ripped  Kind = "rip"     // Parts say how many counts were taken apart again, and how long that took
	Settled Kind = "time"    // Parts say how many minutes Target really took; without a target Limits are set
	Noted   Kind = "note"    // Reason is a note about the job
	Parked  Kind = "park"    // Reason says where the job's things lie; "" that they were taken up

	// A piece was measured: Measure is set.
	Measured Kind = "measure"
	// The making changed something about the job beside its file: Amendment is
	// set, and Ledger where the job was planned anew with it. Measure may be set
	// too: the piece that led to it.
	Amended Kind = "amend"

	Hours Kind = "hours" // the maker's working time from a date on: Week or Days is set
	InUse Kind = "use"   // the maker's own: Target is the job that is meant where none is named; "" is none
	// The maker's stock of cloth, batting and thread has changed: Shelf is set.
	Shelved Kind = "shelf"
)

// Event is one thing that happened. Events are appended and never changed.
type Event struct {
	Schema   int        `json:"schema"`
	ID       string     `json:"id"`  // made by the sender; the same id twice counts once
	Seq      uint64     `json:"seq"` // given by the store, from 1, per job
	At       time.Time  `json:"at"`  // with the sender's offset
	By       string     `json:"by"`
	Kind     Kind       `json:"kind"`
	Revision int        `json:"revision"` // of the job's ledger that it was made against; 0 for the maker's own
	Parts    []Part     `json:"parts,omitempty"`
	CatchUp  bool       `json:"catch_up,omitempty"` // the operations before were logged along, without times
	Ticked   bool       `json:"ticked,omitempty"`   // made at the machine at that very moment, so that the time between two says how long the work took
	Since    *time.Time `json:"since,omitempty"`    // of a tick: the last sign of the maker at the screen before it that no entry tells of
	Reason   string     `json:"reason,omitempty"`
	Target   string     `json:"target,omitempty"` // id of the entry that is undone
	File     string     `json:"file,omitempty"`   // the job file's bytes
	Ledger   *Ledger    `json:"ledger,omitempty"`
	End      *time.Time `json:"end,omitempty"`    // when work ended, where that was before At
	Limits   *Limits    `json:"limits,omitempty"` // what is taken for work from here on
	Week     []DayTime  `json:"week,omitempty"`
	Days     []DateTime `json:"days,omitempty"`

	Measure   *Measurement `json:"measure,omitempty"`
	Amendment *Amendment   `json:"amendment,omitempty"`
	Shelf     *Shelf       `json:"shelf,omitempty"`
}

// Part is what one event says of one row of the route. Minutes is nil where
// nobody timed it.
type Part struct {
	Operation string           `json:"operation"` // its key
	Lot       Lot              `json:"lot"`
	Count     int              `json:"count"`
	Blocks    []BlockCount     `json:"blocks,omitempty"` // named blocks; Count is their sum
	Minutes   *planner.Minutes `json:"minutes"`
}

// BlockCount is how many counts of a part belong to a named block.
type BlockCount struct {
	Block string `json:"block"`
	Count int    `json:"count"`
}

// DayTime is the working time on a day of the week from a date on.
type DayTime struct {
	From    planner.Date    `json:"from"`
	Day     time.Weekday    `json:"day"` // 0 is Sunday
	Minutes planner.Minutes `json:"minutes"`
}

// DateTime is the working time on one calendar date, instead of its weekday's.
type DateTime struct {
	Date    planner.Date    `json:"date"`
	Minutes planner.Minutes `json:"minutes"`
}
