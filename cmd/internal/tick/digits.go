package tick

import (
	"strconv"
	"strings"
)

// The shapes of the large figures, five wide and six high, with stems of two: they
// are read from the machine, not from the chair.
const glyphWide, glyphHigh = 5, 6

var glyphs = [10][glyphHigh]string{
	{".###.", "##.##", "##.##", "##.##", "##.##", ".###."},
	{"..##.", ".###.", "..##.", "..##.", "..##.", ".####"},
	{".###.", "##.##", "...##", "..##.", ".##..", "#####"},
	{"####.", "...##", ".###.", "...##", "...##", "####."},
	{"##.##", "##.##", "##.##", "#####", "...##", "...##"},
	{"#####", "##...", "####.", "...##", "...##", "####."},
	{".###.", "##...", "####.", "##.##", "##.##", ".###."},
	{"#####", "...##", "..##.", "..##.", ".##..", ".##.."},
	{".###.", "##.##", ".###.", "##.##", "##.##", ".###."},
	{".###.", "##.##", "##.##", ".####", "...##", ".###."},
}

// figureWide is how many columns a number takes at a scale.
func figureWide(n, scale int) int {
	digits := len(strconv.Itoa(n))
	return scale * (digits*(glyphWide+1) - 1)
}

// figureHigh is how many lines a number takes at a scale. Block elements halve a
// line; ASCII cannot.
func figureHigh(scale int, blocks bool) int {
	if blocks {
		return scale * glyphHigh / 2
	}
	return glyphHigh * max(1, scale/2)
}

// figure draws a number from 0: each point of its shape is scale columns wide and
// half as many lines high, which is square on most terminals.
func figure(n, scale int, blocks bool) []string {
	text := strconv.Itoa(n)
	lines := make([]string, figureHigh(scale, blocks))
	for i := range lines {
		var line strings.Builder
		for d, digit := range text {
			if d > 0 {
				line.WriteString(strings.Repeat(" ", scale))
			}
			shape := glyphs[digit-'0']
			for x := range glyphWide {
				line.WriteString(strings.Repeat(cell(shape, x, i, scale, blocks), scale))
			}
		}
		lines[i] = line.String()
	}
	return lines
}

// cell is what one column of a line shows of a shape.
func cell(shape [glyphHigh]string, x, line, scale int, blocks bool) string {
	if !blocks {
		if shape[line/max(1, scale/2)][x] == '#' {
			return "#"
		}
		return " "
	}
	upper := shape[2*line/scale][x] == '#'
	lower := shape[(2*line+1)/scale][x] == '#'
	switch {
	case upper && lower:
		return "█"
	case upper:
		return "▀"
	case lower:
		return "▄"
	}
	return " "
}
