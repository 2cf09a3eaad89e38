package tick

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"quiltrun/tracker"
)

// longestInput bounds a line from a pipe, in bytes.
const longestInput = 4096

// Piped is what lines from a pipe need of the world. Wrote is told of every entry
// as it is written, and Refused of every line that came to none.
type Piped struct {
	In      io.Reader
	Now     func() time.Time
	NewID   func() (string, error)
	Write   func(Request) Answer
	Wrote   func(Answer) error
	Refused func(line int, words string)
	Moved   func(tracker.Row) error // another row came up
}

// Lines works line by line until the input ends or says done: an empty line is one,
// a number is many, and the words of WordList are the other keys. It gives back how many lines
// were refused; what was accepted before and after them counts.
func Lines(screen *Screen, on Piped) (refused int, err error) {
	screen.scripted = true
	input := bufio.NewScanner(on.In)
	input.Buffer(make([]byte, 0, longestInput), longestInput)
	for line := 1; input.Scan() && !screen.leaving; line++ {
		words, err := screen.line(strings.TrimSpace(input.Text()), on)
		if err != nil {
			return refused, err
		}
		if words != "" {
			refused++
			on.Refused(line, words)
		}
	}
	if err := input.Err(); err != nil {
		return refused, fmt.Errorf("the input cannot be read: %w", err)
	}
	return refused, nil
}

// lineKeys is the keys that words of a line stand for. A word may be written as
// the key itself too.
var lineKeys = []struct{ word, key string }{
	{"back", "t"}, {"next", "n"}, {"bobbin", "b"}, {"pause", "p"}, {"go on", "p"}, {"done", "d"},
}

// WordList is the words that a line may be, for a sentence.
func WordList() string {
	return "an empty line for one, a number for many, back, next, pause, go on, bobbin, note and its text, or done"
}

// line does what a line says; words are why not.
func (s *Screen) line(text string, on Piped) (words string, err error) {
	id, err := on.NewID()
	if err != nil {
		return "", err
	}
	p := Press{At: on.Now(), ID: id, Since: time.Duration(len(s.marks)) * time.Hour}
	before := s.at
	if rest, ok := strings.CutPrefix(text, "note "); ok {
		s.wait(Request{ID: id, At: p.At, do: keepNote, row: s.at, text: string(typedRunes(strings.TrimSpace(rest)))})
	} else if words := s.lineKey(text, p); words != "" {
		return words, nil
	}
	r, asked := s.Send()
	if !asked {
		if row, ok := s.row(); ok && s.at != before {
			return "", on.Moved(row)
		}
		return s.said, nil
	}
	s.said = ""
	// Each line is on disk before the next is read: who stops a script knows how far
	// it came.
	answer := on.Write(r)
	s.Answered(answer)
	if answer.Trouble != "" {
		s.waiting = nil
		return answer.Trouble, nil
	}
	return "", on.Wrote(answer)
}

// lineKey presses the key that a line stands for.
func (s *Screen) lineKey(text string, p Press) (words string) {
	s.said, s.typed = "", ""
	if n, err := strconv.ParseUint(text, 10, 31); err == nil {
		s.typed, text = strconv.FormatUint(n, 10), ""
	}
	p.Key = "enter"
	if text != "" {
		at := slices.IndexFunc(lineKeys, func(k struct{ word, key string }) bool { return text == k.word || text == k.key })
		if at < 0 {
			return fmt.Sprintf("%q is no word for tick: say %s", text, WordList())
		}
		p.Key = lineKeys[at].key
	}
	ask := ""
	if e, ok := s.newestHere(); ok && p.Key == "t" {
		ask = e.ID // a script does not say it twice
	}
	s.command(p, ask)
	return ""
}
