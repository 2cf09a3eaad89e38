package tick

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
)

// Apart is how close two presses of a key are taken for one where the terminal
// cannot say that a key is held. It has to be longer than the time after which a
// held key begins to repeat: 250 ms in the Linux kernel (input_register_device),
// 660 ms in the X server (xset, "r rate"), and from 250 ms on under Windows
// (SPI_SETKEYBOARDDELAY, whose slowest setting of 1 s wants --apart 1.2s).
const Apart = 700 * time.Millisecond

// longestNumber is how many digits may be typed before a key.
const longestNumber = 5

// Press is a key that went down.
type Press struct {
	Key    string        // its name: what it types, or space, enter, backspace, esc, left, pgdown …
	Text   string        // what it types, "" for a key that types nothing
	Repeat bool          // the terminal says that it is being held
	Since  time.Duration // since the screen was opened
	At     time.Time     // for the log
	ID     string        // for the entry that may come of it
}

// Press takes in a key.
func (s *Screen) Press(p Press) {
	switch {
	case s.note != nil:
		s.write(p)
	case s.isHeld(p):
		s.said = s.heldWords(p.Key)
	default:
		ask := s.ask
		s.said, s.ask = "", ""
		if !s.isPartOfWork(p.Key) {
			s.sign(p)
		}
		s.command(p, ask)
	}
}

// command does what a key is for. Ask is the entry that was asked about before.
func (s *Screen) command(p Press, ask string) {
	switch key := strings.ToLower(p.Key); {
	case s.checksOff(p.Key):
		s.tick(p)
	case isDigit(p.Key):
		s.digit(p.Key)
	case key == "backspace":
		s.typed = s.typed[:max(0, len(s.typed)-1)]
	case key == "esc":
		s.typed, s.whole = "", false
	case key == "t":
		s.takeBack(p, ask)
	case key == "p":
		s.pause(p)
	case key == "n", key == "right":
		s.turn(p, 1)
	case key == "left":
		s.turn(p, -1)
	case key == "b":
		s.wait(Request{ID: p.ID, At: p.At, do: newBobbin, row: s.at})
	case key == "w":
		s.note = &[]rune{}
	case key == "i":
		s.whole = !s.whole
	case key == "d", key == "ctrl+c":
		s.forced = s.leaving
		s.leaving = true
	}
}

// checksOff reports that a key is one of those that check off.
func (s *Screen) checksOff(key string) bool {
	return key == "space" || key == "enter" || slices.Contains(s.Keys, key)
}

func isDigit(key string) bool { return len(key) == 1 && key[0] >= '0' && key[0] <= '9' }

// isHeld reports that a press is the same as the last: the terminal says so, or,
// where it cannot, the two are too close for fingers that were lifted. Digits are
// shown before they are used, and typing 11 is no holding.
func (s *Screen) isHeld(p Press) bool {
	last, known := s.last[p.Key]
	s.last[p.Key] = p.Since
	switch {
	case p.Repeat:
		return true
	case s.reports, isDigit(p.Key), p.Key == "backspace":
		return false
	}
	return known && p.Since-last < s.Apart
}

func (s *Screen) heldWords(key string) string {
	if s.checksOff(key) {
		return "held key: counted once; type 2, then " + key + ", for two"
	}
	return "held key: taken once"
}

// digit adds to the number that the next key is for.
func (s *Screen) digit(d string) {
	if s.typed += d; len(s.typed) > longestNumber {
		s.typed = ""
		s.said = "that number is too long; type it anew"
	}
}

// tick checks off one, or as many as were typed.
func (s *Screen) tick(p Press) {
	n := 1
	if s.typed != "" {
		n, _ = strconv.Atoi(s.typed) // digits, and few
	}
	typed := s.typed
	s.typed = ""
	row, ok := s.row()
	room := row.Left() - s.onTheWay(s.at)
	switch {
	case !ok:
		s.said = "this row is no longer in the route; n for the next"
	case n == 0:
		s.said = "0 is nothing to check off"
	case room <= 0 && !s.scripted:
		s.said = fmt.Sprintf("%s made: n for the next", allOf(row))
	case n > room && !s.scripted:
		s.said = fmt.Sprintf("%s typed, and %d left: nothing was checked off", typed, room)
	default:
		r := Request{ID: p.ID, At: p.At, since: s.marks.begun(), do: checkOff, row: s.at, count: n, catchUp: s.CatchUp}
		s.paused = false // work ends a pause, though nobody knows when it began
		s.marks = append(s.marks, mark{since: p.Since, row: s.at, id: p.ID, count: n})
		s.mine = append(s.mine, r)
		s.wait(r)
	}
}

// allOf says that a row is done: "all 12 pairs are", "the one unit is".
func allOf(row tracker.Row) string {
	if row.Count == 1 {
		return "the one " + string(row.CountedIn) + " is"
	}
	return "all " + render.Counted(row.Count, row.CountedIn) + " are"
}

// wait puts a request behind those that are on their way.
func (s *Screen) wait(r Request) { s.waiting = append(s.waiting, r) }

// takeBack undoes the newest tick of this screen. Where there is none it is the
// newest entry standing of the row, and then it asks first.
func (s *Screen) takeBack(p Press, ask string) {
	if s.typed != "" {
		s.typed = ""
		return
	}
	for len(s.mine) > 0 {
		last := s.mine[len(s.mine)-1]
		s.mine = s.mine[:len(s.mine)-1]
		if s.scripted || s.written(last.ID) || slices.ContainsFunc(s.waiting, func(r Request) bool { return r.ID == last.ID }) {
			s.wait(Request{ID: p.ID, At: p.At, do: takeBack, row: last.row, target: last.ID})
			return
		}
	}
	e, ok := s.newestHere()
	switch {
	case !ok:
		s.said = "there is nothing to take back here"
	case ask == e.ID:
		s.wait(Request{ID: p.ID, At: p.At, do: takeBack, row: s.at, target: e.ID})
	default:
		s.ask = e.ID
		s.said = fmt.Sprintf("t again takes back entry %d of %s: %s", e.Seq, e.At.Format("2 Jan 15:04"), s.partWords(e))
	}
}

// newestHere is the newest entry standing that says something of the row.
func (s *Screen) newestHere() (tracker.Entry, bool) {
	for _, e := range slices.Backward(s.state.Entries) {
		if e.Standing() && slices.ContainsFunc(e.Parts, func(p tracker.Part) bool { return place{p.Operation, p.Lot} == s.at }) {
			return e, true
		}
	}
	return tracker.Entry{}, false
}

// partWords is what an entry says, by the part that was asked for last.
func (s *Screen) partWords(e tracker.Entry) string {
	p := e.Parts[len(e.Parts)-1]
	words := render.Counted(p.Count, s.countedIn(place{p.Operation, p.Lot})) + " of " + p.Lot.Name
	if more := len(e.Parts) - 1; more > 0 {
		words += fmt.Sprintf(", and %d more with it", more)
	}
	return words
}

// pause says that something else is done for a while, or that work goes on.
func (s *Screen) pause(p Press) {
	do := pauseWork
	if s.paused {
		do = goOn
	}
	s.paused = !s.paused
	s.marks = append(s.marks, mark{since: p.Since, row: s.at, rests: s.paused})
	s.wait(Request{ID: p.ID, At: p.At, do: do, row: s.at})
}

// turn shows the next row that can go on, in the order of the route, or the one
// before; after the last comes the first.
func (s *Screen) turn(p Press, by int) {
	open := slices.DeleteFunc(s.goingOn(), func(r tracker.Row) bool { return placeOf(r.Operation) == s.at })
	if len(open) == 0 {
		s.said = "nothing else can go on now"
		if len(s.state.Remaining()) == 0 {
			s.said = "nothing is left of this job: d is done"
		}
		return
	}
	here := slices.IndexFunc(s.state.Ledger.Operations, func(o tracker.Operation) bool { return placeOf(o) == s.at })
	after := slices.IndexFunc(open, func(r tracker.Row) bool { return s.position(r.Operation) > here })
	if after < 0 {
		after = len(open)
	}
	if by < 0 {
		after--
	}
	s.show(placeOf(open[(after+len(open))%len(open)].Operation), p)
}

// show turns to a row.
func (s *Screen) show(row place, p Press) {
	s.at, s.typed, s.whole = row, "", false
	s.marks = append(s.marks, mark{since: p.Since, at: p.At, row: s.at, rests: s.paused, begins: !s.paused && !s.scripted})
}

// goingOn is the rows that can go on; where what comes before is logged along,
// all that have work left.
func (s *Screen) goingOn() []tracker.Row {
	if s.CatchUp {
		return slices.DeleteFunc(s.state.Rows(), func(r tracker.Row) bool { return r.Left() == 0 })
	}
	return s.state.Next(len(s.state.Ledger.Operations))
}

// position is the place of a row in the ledger.
func (s *Screen) position(of tracker.Operation) int {
	return slices.IndexFunc(s.state.Ledger.Operations, func(o tracker.Operation) bool { return placeOf(o) == placeOf(of) })
}
