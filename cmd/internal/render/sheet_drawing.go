package render

import (
	"strings"

	"quiltrun/cmd/internal/draw"
	"quiltrun/planner"
)

// drawnFor is the width that a block is drawn for where no terminal says one.
const drawnFor = 80

// leastDrawn is the least width at which a character drawing is worth its room.
const leastDrawn = 60

// drawing shows the finished block of colourways that share a table, the first
// of them where their measures differ, with the way its seams are pressed. A
// plain square shows nothing that its name does not say.
func (s *sheet) drawing(like []planner.ColourwayPlan) {
	c, width := like[0], s.look.Width
	if width == 0 {
		width = drawnFor
	}
	if width < leastDrawn || len(c.Build.Choices) == 0 {
		return
	}
	lines := draw.Characters(c.Build, c.Press, min(width, drawnFor)-4, s.look.Unicode)
	if lines == nil {
		return
	}
	s.gap()
	card := ""
	if c.PressB != nil {
		card = " by card a"
	}
	s.para(1, "The finished block of "+c.Name+", not to scale: each arrow shows which way a seam's allowance is pressed"+card+".")
	for _, l := range lines {
		s.line(ordinary, strings.TrimRight("    "+l, " "))
	}
}
