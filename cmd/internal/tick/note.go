package tick

import "unicode"

// longestLine bounds a note that is typed at the machine, in characters.
const longestLine = 200

// write takes a key in while a note is being written.
func (s *Screen) write(p Press) {
	text := *s.note
	switch p.Key {
	case "enter":
		s.keep(p)
		return
	case "esc", "ctrl+c":
		s.note, s.said = nil, "no note was kept"
		return
	case "backspace":
		text = text[:max(0, len(text)-1)]
	case "ctrl+u":
		text = text[:0]
	default:
		text = append(text, typedRunes(p.Text)...)
	}
	text = text[:min(len(text), longestLine)]
	s.note = &text
}

// Paste puts a piece of text into the note that is being written.
func (s *Screen) Paste(text string) {
	if s.note != nil {
		s.write(Press{Text: text})
	}
}

// keep hands the note over to the log.
func (s *Screen) keep(p Press) {
	text := string(*s.note)
	s.note, s.said = nil, ""
	s.sign(p)
	if text == "" {
		s.said = "there was nothing in the note"
		return
	}
	s.wait(Request{ID: p.ID, At: p.At, do: keepNote, row: s.at, text: text})
}

// typedRunes is the letters and signs of a text: nothing that steers a terminal.
func typedRunes(text string) []rune {
	var runes []rune
	for _, r := range text {
		if unicode.IsGraphic(r) {
			runes = append(runes, r)
		}
	}
	return runes
}
