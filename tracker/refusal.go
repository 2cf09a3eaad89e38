package tracker

// RefusalKind says why an entry was not taken. Kinds may grow; a kind never
// changes its meaning.
type RefusalKind string

// The kinds of refusal.
const (
	UnknownJob       RefusalKind = "unknown job"
	UnknownOperation RefusalKind = "unknown operation"
	UnknownLot       RefusalKind = "unknown lot"
	UnknownBlock     RefusalKind = "unknown block"
	UnknownEntry     RefusalKind = "unknown entry"
	Ambiguous        RefusalKind = "ambiguous"     // what was typed means more than one thing
	MissingCount     RefusalKind = "missing count" // or one that cannot be reckoned in this operation
	WhichLot         RefusalKind = "which lot"     // several lots have work left
	TooMany          RefusalKind = "too many"
	NothingLeft      RefusalKind = "nothing left"
	OutOfOrder       RefusalKind = "out of order" // an operation before it is not far enough
	NothingToUndo    RefusalKind = "nothing to undo"
	BuiltOn          RefusalKind = "built on" // later entries rest on the one to be taken back
	IDTaken          RefusalKind = "id taken" // the same id came with another content
	BadTime          RefusalKind = "bad time"
	RunsAlready      RefusalKind = "runs already" // the clock that was to be started
	NothingRuns      RefusalKind = "nothing runs" // no clock that could be stopped
	WrongPlace       RefusalKind = "wrong place"  // what is asked cannot be told in this operation
	MissingText      RefusalKind = "missing text" // a note without words
)

// Refusal is an entry that was not taken, and why. It is an error whose text is
// one sentence for the maker. Done, Count and Left are the numbers of the row
// that it is about, 0 where it is about none.
type Refusal struct {
	Kind RefusalKind
	What string   // the sentence
	Hint string   // what to do instead, "" where the sentence says it
	Near []string // names or ids that may have been meant, nearest first

	Done, Count, Left int
}

// Error is the sentence, without the hint.
func (r *Refusal) Error() string { return r.What }

// NoSuchJob is the refusal of a job that is not booked. Known are the jobs
// that are.
func NoSuchJob(name string, known []string) *Refusal {
	near := Nearest(name, known)
	r := &Refusal{Kind: UnknownJob, Near: near}
	switch {
	case len(known) == 0:
		r.What = quoted(name) + " is not booked: no job is booked yet"
		r.Hint = "book it first"
	case len(near) > 0:
		r.What = quoted(name) + " is not booked; " + thereIs(near)
	default:
		r.What = quoted(name) + " is not booked; booked " + isOrAre(len(known)) + " " + andList(known)
	}
	return r
}
