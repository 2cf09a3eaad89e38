package draw

import (
	"strings"

	"github.com/clipperhouse/displaywidth"
)

// face is the family of all lettering: what the reader's system reads best in.
const face = "system-ui, -apple-system, 'Segoe UI', 'Noto Sans', 'DejaVu Sans', sans-serif"

// The sizes of lettering.
const (
	titleSize   = 26 * unit
	headingSize = 17 * unit
	textSize    = 15 * unit
	measureSize = 14 * unit
)

// leading is the distance from one line of text to the next.
func leading(size span) span { return size * 135 / 100 }

// A column of a text, as a terminal counts them, takes about this part of the
// size; no drawing can know its reader's fonts, so it is a wide guess.
const columnPercent = 57

// textWidth is about how wide a text is shown.
func textWidth(text string, size span) span {
	return span(displaywidth.String(text)) * size * columnPercent / 100
}

// wrapped parts a text into lines no wider than limit, at blanks where it has
// any, and within a word that is too long for a line.
func wrapped(text string, size, limit span) []string {
	columns := max(1, int(limit*100/columnPercent/size))
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' }) {
		// A long word may be all wide letters, with no blanks to make up for them.
		for _, part := range parted(word, max(1, columns*9/10)) {
			switch {
			case line == "":
				line = part
			case displaywidth.String(line)+1+displaywidth.String(part) <= columns:
				line += " " + part
			default:
				lines = append(lines, line)
				line = part
			}
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	for i := range lines {
		lines[i] = strings.ReplaceAll(lines[i], tied, " ")
	}
	return lines
}

// tied is a blank that holds two words together on a line, as a measure's are;
// the drawing shows it as an ordinary one.
const tied = "\u00a0"

// together ties the words of a measure or a name.
func together(text string) string { return strings.ReplaceAll(text, " ", tied) }

// parted cuts a word into parts of at most so many columns, between clusters.
func parted(word string, columns int) []string {
	if displaywidth.String(word) <= columns {
		return []string{word}
	}
	var parts []string
	part := ""
	for g := displaywidth.StringGraphemes(word); g.Next(); {
		if part != "" && displaywidth.String(part)+g.Width() > columns {
			parts = append(parts, part)
			part = ""
		}
		part += g.Value()
	}
	return append(parts, part)
}

// para writes lines one below the other from y, the top of the first, and
// returns the bottom of the last.
func (c *canvas) para(lines []string, x, y, size span, attrs ...attr) span {
	for _, l := range lines {
		c.words("text", l, append([]attr{at("x", x), at("y", y+size), at("font-size", size)}, attrs...)...)
		y += leading(size)
	}
	return y
}
