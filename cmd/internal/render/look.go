package render

import "strings"

// Look is what the place of output can show.
type Look struct {
	Width   int  // columns; 0 where nothing limits them, as in a pipe: no line is wrapped
	Colour  bool // escape sequences for bold and the like are welcome; none is written otherwise
	Unicode bool // rules, boxes to tick, × and ≈; otherwise they are written in plain ASCII
}

// Rules are drawn this wide where nothing limits the width.
const usualWidth = 80

// narrowest is the width below which tables are not even tried.
const narrowest = 20

// ruleWidth is how wide a rule across the page is.
func (l Look) ruleWidth() int {
	if l.Width <= 0 {
		return usualWidth
	}
	return max(l.Width, narrowest)
}

// room is what an indent leaves of the width; 0 where nothing limits it.
func (l Look) room(indent int) int {
	if l.Width <= 0 {
		return 0
	}
	return max(max(l.Width, narrowest)-indent, 8)
}

// plain writes for a terminal that has ASCII only. A vulgar fraction gets a
// blank before it, so that 8½ does not become 81/2.
var plain = strings.NewReplacer(
	"☐", "[ ]", "≈", "~", "×", "x", "–", "-", "—", "-", "…", "...", "·", "-", "°", " deg",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⅓", " 1/3", "⅔", " 2/3", "’", "'", "‘", "'", "“", `"`, "”", `"`, "′", "'", "″", `"`,
	"→", ">", "←", "<", "↑", "^", "↓", "v", "─", "-", "−", "-",
)

// text makes s fit to print: control characters gone, and plain ASCII signs
// where the terminal has no others.
func (l Look) text(s string) string {
	if ascii(s) {
		return s
	}
	// A measure that a sentence calls about so long needs no mark as well.
	s = strings.ReplaceAll(clean(s), "about ≈ ", "about ")
	if !l.Unicode {
		s = plain.Replace(s)
	}
	return s
}

// box is a place to tick.
func (l Look) box() string { return l.text("☐") }
