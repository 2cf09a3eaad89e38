package tick

import (
	"fmt"
	"strings"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
)

// mostScale bounds the figures: beyond it they are read no better.
const mostScale = 8

// figuresHigh is the lines that figures take with the words below them.
func (s *Screen) figuresHigh(scale int) int { return figureHigh(scale, s.Look.Unicode) + 1 }

// columnsWide is the columns of what is made and of what is left, as wide as the
// whole count needs so that nothing jumps when a digit comes or goes, the words
// below them in mind, and the gap between.
func (s *Screen) columnsWide(row tracker.Row, scale int) (made, left, gap int) {
	madeWords, leftWords := figureWords(row)
	made = max(figureWide(row.Count, scale), render.Columns(madeWords))
	left = max(figureWide(row.Count, scale), render.Columns(leftWords))
	return made, left, max(3, 2*scale)
}

// largest is the largest scale that fits, 1 where even that is too large.
func (s *Screen) largest(row tracker.Row, wide, high int) int {
	scale := 1
	for scale < mostScale {
		made, left, gap := s.columnsWide(row, scale+1)
		if made+gap+left > wide || s.figuresHigh(scale+1) > high {
			break
		}
		scale++
	}
	return scale
}

// figures is what is made and what is left, side by side, and under them what
// they are. Where they are too wide it is a line.
func (s *Screen) figures(row tracker.Row, scale, wide int) []Line {
	made, left, gap := s.columnsWide(row, scale)
	madeWords, leftWords := figureWords(row)
	if made+gap+left > wide {
		return []Line{{Text: s.Look.Cut(fmt.Sprintf("%d %s, %d %s", row.Done, madeWords, row.Left(), leftWords), wide), Strong: true}}
	}
	margin := strings.Repeat(" ", (wide-made-gap-left)/2)
	between := strings.Repeat(" ", gap)
	var lines []Line
	a, b := figure(row.Done, scale, s.Look.Unicode), figure(row.Left(), scale, s.Look.Unicode)
	for i := range a {
		lines = append(lines, Line{Text: strings.TrimRight(margin+centred(a[i], made)+between+centred(b[i], left), " ")})
	}
	return append(lines, Line{Text: strings.TrimRight(margin+centred(madeWords, made)+between+centred(leftWords, left), " ")})
}

// figureWords is what stands below the figures.
func figureWords(row tracker.Row) (made, left string) {
	return "made", "left of " + render.Counted(row.Count, row.CountedIn)
}

// centred is a text in the middle of so many columns.
func centred(text string, wide int) string {
	room := max(0, wide-render.Columns(text))
	return strings.Repeat(" ", room/2) + text + strings.Repeat(" ", room-room/2)
}
