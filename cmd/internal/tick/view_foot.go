package tick

import (
	"fmt"
	"strings"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
)

// foot is the bottom of the screen: what the last key came to or the next will
// do, and the keys.
func (s *Screen) foot(row tracker.Row, wide, high int) []Line {
	keys := s.keyLines(wide)
	lines := make([]Line, 0, len(keys)+2)
	if s.note != nil {
		return append(lines, s.noteLines(wide)...)
	}
	text := s.message()
	// On a low screen the line is too dear to lie empty until something is said.
	if text == "" && high < lowScreen && !s.whole {
		return append(append(lines, Line{Text: s.Look.Cut(s.Look.Text(s.restWords(row)), wide)}), keys...)
	}
	// More than two lines would push the figures about at every message.
	said := s.plain(text, wide)
	if len(said) > 2 {
		said = said[:2]
	}
	for _, l := range said {
		l.Turned = text != ""
		lines = append(lines, l)
	}
	return append(lines, keys...)
}

// lowScreen is the height below which the line for messages is not left empty.
const lowScreen = 15

// message is the one sentence of the screen: trouble before all else.
func (s *Screen) message() string {
	n := len(s.waiting)
	switch {
	case s.held && s.leaving:
		return fmt.Sprintf("%s for the log, which another has open: leaving as soon as written; d again leaves without", entriesWait(n))
	case s.held:
		return entriesWait(n) + " for the log, which another has open: nothing is lost, go on"
	case s.heard != "" && n > 0:
		return s.heard
	case s.said != "":
		return s.said
	case s.typed != "":
		return s.typed + " typed: space checks off, esc clears"
	case s.paused:
		return "paused: p goes on, and so does any tick"
	case s.leaving:
		return "leaving as soon as all is written"
	}
	return ""
}

func entriesWait(n int) string {
	if n == 1 {
		return "1 entry waits"
	}
	return fmt.Sprintf("%d entries wait", n)
}

// keyWord is a key and what it does, long and short.
type keyWord struct{ key, does, short string }

// keyList is the keys in the order of their use.
func (s *Screen) keyList() []keyWord {
	one := "space"
	if len(s.Keys) > 0 {
		one = s.Keys[0]
	}
	pause := keyWord{"p", "pause", "pause"}
	if s.paused {
		pause = keyWord{"p", "go on", "go on"}
	}
	return []keyWord{
		{one, "check off one", "one"}, {"12 " + one, "twelve", "12"}, {s.letter("t"), "take back", "back"}, pause,
		{s.letter("n"), "next lot", "next"}, {s.letter("b"), "bobbin changed", "bobbin"}, {s.letter("w"), "write a note", "note"},
		{s.letter("i"), "instruction", "more"}, {s.letter("d"), "done", "done"},
	}
}

// letter is how a command is typed: in capitals where a pedal has taken the small
// letter for itself.
func (s *Screen) letter(key string) string {
	if s.checksOff(key) {
		return strings.ToUpper(key)
	}
	return key
}

// keyLines lists the keys in as few lines as they take, in short words on a narrow
// screen.
func (s *Screen) keyLines(wide int) []Line {
	const narrow = 60
	var lines []Line
	line := ""
	for _, k := range s.keyList() {
		word, gap := k.key+" "+k.does, "   "
		if wide < narrow {
			word, gap = k.key+" "+k.short, ", "
		}
		if line != "" && render.Columns(line+gap+word) > wide {
			lines = append(lines, Line{Text: line})
			line = ""
		}
		if line != "" {
			line += gap
		}
		line += word
	}
	return append(lines, Line{Text: s.Look.Cut(line, wide)})
}

// noteLines is the note that is being written, its end in sight.
func (s *Screen) noteLines(wide int) []Line {
	text := s.Look.Text(string(*s.note))
	lines := s.plain("Note: "+text+"_", wide)
	if len(lines) > 3 {
		lines = lines[len(lines)-3:]
	}
	return append(lines, Line{Text: s.Look.Cut("enter keeps it, esc drops it", wide), Turned: true})
}
