package draw

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// span is a length on the page in hundredths of a drawing unit. Shown at its own
// size, a drawing has one unit to a pixel.
type span int

// unit is one drawing unit.
const unit span = 100

// String writes the span as SVG reads it, with no more digits than it has.
func (n span) String() string {
	if n%unit == 0 {
		return strconv.Itoa(int(n / unit))
	}
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, part := int(n/unit), int(n%unit)
	digits := strconv.Itoa(part)
	if part < 10 {
		digits = "0" + digits
	}
	return sign + strconv.Itoa(whole) + "." + strings.TrimRight(digits, "0")
}

// attr is an attribute of an element.
type attr struct{ name, value string }

// at is an attribute that is a length, is any other, ref one that points at an id
// and painted one that fills with what the id defines.
func at(name string, n span) attr  { return attr{name, n.String()} }
func is(name, value string) attr   { return attr{name, value} }
func ref(name, id string) attr     { return attr{name, "#" + id} }
func painted(name, id string) attr { return attr{name, "url(#" + id + ")"} }

// shifted is a transform that moves by x and y.
func shifted(x, y span) attr { return attr{"transform", "translate(" + pair(x, y) + ")"} }

// pair is a place as SVG writes it.
func pair(x, y span) string { return x.String() + " " + y.String() }

// canvas gathers the elements of a drawing.
type canvas struct{ strings.Builder }

// tag begins an element and ends its tag as it is told to.
func (c *canvas) tag(name, end string, attrs []attr) {
	c.WriteString("<" + name)
	for _, a := range attrs {
		c.WriteString(" " + a.name + `="` + escaped(a.value) + `"`)
	}
	c.WriteString(end)
}

// open begins an element that holds others.
func (c *canvas) open(name string, attrs ...attr) { c.tag(name, ">", attrs) }

// shut ends it. The line end keeps long files fit for reading and comparing.
func (c *canvas) shut(name string) { c.WriteString("</" + name + ">\n") }

// void adds an element that holds nothing.
func (c *canvas) void(name string, attrs ...attr) { c.tag(name, "/>\n", attrs) }

// words adds an element that holds a text.
func (c *canvas) words(name, text string, attrs ...attr) {
	c.tag(name, ">", attrs)
	c.WriteString(escaped(text))
	c.shut(name)
}

// escaped makes any text fit to stand in an element or an attribute. Names come
// from files that anybody may have written: what XML 1.0 does not allow becomes
// U+FFFD, line ends become blanks, and overrides of the writing direction go.
func escaped(text string) string {
	if isPlain(text) {
		return text
	}
	var out strings.Builder
	for _, r := range text {
		switch {
		case r == '&':
			out.WriteString("&amp;")
		case r == '<':
			out.WriteString("&lt;")
		case r == '>':
			out.WriteString("&gt;")
		case r == '"':
			out.WriteString("&quot;")
		case r == '\t' || r == '\n' || r == '\r' || r == '\u2028' || r == '\u2029':
			out.WriteByte(' ')
		case unicode.IsControl(r) || r == '\uFFFE' || r == '\uFFFF' || r == utf8.RuneError:
			out.WriteRune(utf8.RuneError)
		case unicode.Is(unicode.Bidi_Control, r):
		default:
			out.WriteRune(r)
		}
	}
	return out.String()
}

// isPlain reports that a text needs no escaping, which most texts do not.
func isPlain(text string) bool {
	for i := range len(text) {
		switch b := text[i]; {
		case b < ' ' || b > '~', b == '&', b == '<', b == '>', b == '"':
			return false
		}
	}
	return true
}

// path is the data of an SVG path.
type path struct {
	data strings.Builder
	x, y span // where it has come to
}

// move begins a new line.
func (p *path) move(x, y span) {
	p.data.WriteString("M" + pair(x, y))
	p.x, p.y = x, y
}

// line goes on in a straight line, in the shortest way of saying so.
func (p *path) line(x, y span) {
	switch {
	case x == p.x:
		p.data.WriteString("V" + y.String())
	case y == p.y:
		p.data.WriteString("H" + x.String())
	default:
		p.data.WriteString("L" + pair(x, y))
	}
	p.x, p.y = x, y
}

// close goes back to where the line began.
func (p *path) close() { p.data.WriteByte('Z') }

// stroke adds a line of its own.
func (p *path) stroke(x1, y1, x2, y2 span) {
	p.move(x1, y1)
	p.line(x2, y2)
}

// d is the attribute that holds the path.
func (p *path) d() attr { return attr{"d", p.data.String()} }

func (p *path) empty() bool { return p.data.Len() == 0 }
