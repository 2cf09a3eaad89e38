package tick

import (
	"fmt"
	"slices"
	"time"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
)

// Settings are how a screen was asked for.
type Settings struct {
	Look    render.Look
	Keys    []string      // that check off beside space and enter, as a pedal types them
	Apart   time.Duration // presses of one key closer than this are one press
	CatchUp bool          // log what comes before along
}

// Screen is what the maker has before her: one row of the route, what she has
// typed, and what is on its way to the log. It changes by Press, Answered and
// Seen alone, and reads no clock.
type Screen struct {
	Settings
	guide   Guide
	state   tracker.State
	at      place
	marks   sitting
	mine    []Request // ticks of this screen that were not taken back, in order
	typed   string    // digits, before the key that uses them
	note    *[]rune   // being written; nil: none is
	ask     string    // the entry that the next press takes back
	paused  bool
	whole   bool // the instruction fills the screen
	reports bool // the terminal says by itself which keys are held
	last    map[string]time.Duration
	waiting []Request // not yet written, the first of them on its way
	held    bool      // somebody else has the log
	said    string
	heard   string   // what the log says of a wait, while something waits
	late    []string // refusals that came when the screen was being left
	leaving bool
	// scripted says that lines come from a pipe, which may have sent them before:
	// whether there is room, or something to take back, is for the log to say.
	scripted bool
	forced   bool // leaves although something waits
}

// NewScreen shows a row of a job.
func NewScreen(state tracker.State, guide Guide, row tracker.Operation, settings Settings) *Screen {
	return &Screen{Settings: settings, guide: guide, state: state, at: placeOf(row), last: map[string]time.Duration{}}
}

// KeysReported notes that the terminal says by itself which keys are held down.
func (s *Screen) KeysReported() { s.reports = true }

// row is the row on the screen, false where a revision took it out of the route.
func (s *Screen) row() (tracker.Row, bool) { return s.state.Row(s.at.key, s.at.lot) }

// onTheWay is the counts of a row that are not yet written.
func (s *Screen) onTheWay(row place) int {
	n := 0
	for _, r := range s.waiting {
		if r.do == checkOff && r.row == row {
			n += r.count
		}
	}
	return n
}

// Send is the request to write now, false where none is waiting or one is under
// way: the log is written in the order of the keys.
func (s *Screen) Send() (Request, bool) {
	if len(s.waiting) == 0 {
		return Request{}, false
	}
	return s.waiting[0], true
}

// Over reports that the screen is to be left.
func (s *Screen) Over() bool { return s.leaving && len(s.waiting) == 0 || s.forced }

// Unwritten is what would be lost.
func (s *Screen) Unwritten() []Request { return slices.Clone(s.waiting) }

// Seen takes in what the job is like now, as another screen or shell left it. What
// was written here meanwhile is newer.
func (s *Screen) Seen(news News) {
	if len(news.State.Events()) >= len(s.state.Events()) {
		s.state = news.State
	}
	if news.Guide != nil {
		s.guide = *news.Guide
	}
}

// Say shows a sentence until the next key.
func (s *Screen) Say(text string) { s.said = text }

// Told shows a sentence of the log's, while something waits for it.
func (s *Screen) Told(text string) { s.heard = text }

// Refusals is what was refused when nobody looked any more.
func (s *Screen) Refusals() []string { return s.late }

// Answered takes in what became of the request that was sent.
func (s *Screen) Answered(a Answer) {
	s.held = a.Held
	if a.Held {
		return
	}
	s.heard = ""
	s.waiting = slices.DeleteFunc(s.waiting, func(r Request) bool { return r.ID == a.Request.ID })
	if a.State.Booked() {
		s.state = a.State
	}
	if a.Trouble != "" {
		s.refused(a)
		return
	}
	switch a.Request.do {
	case checkOff:
		if a.Request.count > 1 {
			s.said = render.Counted(a.Request.count, s.countedIn(a.Request.row)) + " checked off"
		}
	case takeBack:
		s.tookBack(a.Request.target)
	case newBobbin:
		s.said = "a full bobbin is in"
	case keepNote:
		s.said = "the note is kept"
	case goOn:
		s.said = "going on"
	}
}

// refused says why nothing was written, and forgets what was not.
func (s *Screen) refused(a Answer) {
	s.said = a.Trouble
	if s.leaving {
		s.late = append(s.late, a.Trouble)
	}
	s.marks.takeBack(a.Request.ID)
	s.mine = slices.DeleteFunc(s.mine, func(r Request) bool { return r.ID == a.Request.ID })
}

// tookBack says what was taken back, and shows the row that it was of.
func (s *Screen) tookBack(target string) {
	s.marks.takeBack(target)
	for _, e := range s.state.Entries {
		if e.ID != target {
			continue
		}
		p := e.Parts[len(e.Parts)-1]
		s.at = place{p.Operation, p.Lot}
		s.said = fmt.Sprintf("taken back: %s of %s", render.Counted(p.Count, s.countedIn(s.at)), p.Lot.Name)
	}
}

func (s *Screen) countedIn(row place) planner.CountUnit {
	r, ok := s.state.Row(row.key, row.lot)
	if !ok {
		return "count"
	}
	return r.CountedIn
}

// mostSummed is how many rows are summed up when the screen is left.
const mostSummed = 8

// Sitting is what was checked off on this screen and stands, row by row; of very
// many rows the last.
func (s *Screen) Sitting() []string {
	var rows []place
	counts := map[place]int{}
	for _, r := range s.mine {
		if s.written(r.ID) {
			if counts[r.row] == 0 {
				rows = append(rows, r.row)
			}
			counts[r.row] += r.count
		}
	}
	var said []string
	if more := len(rows) - mostSummed; more > 0 {
		said, rows = append(said, fmt.Sprintf("%s before these:", render.Counted(more, "row"))), rows[more:]
	}
	for _, at := range rows {
		row, ok := s.state.Row(at.key, at.lot)
		if ok {
			said = append(said, fmt.Sprintf("%d %s, %s: %s checked off; %d of %d made, %d left", row.Number, row.Name, row.Lot.Name,
				render.Counted(counts[at], row.CountedIn), row.Done, row.Count, row.Left()))
		}
	}
	return said
}

// written reports that an entry is in the log and stands.
func (s *Screen) written(id string) bool {
	return slices.ContainsFunc(s.state.Entries, func(e tracker.Entry) bool { return e.ID == id && e.Standing() })
}
