package render

import (
	"io"
	"strings"
)

// style is how a line stands out where colour is welcome. It never carries
// meaning of its own.
type style uint8

// The styles of a line.
const (
	ordinary style = iota
	strong
	faint
)

// escapes begin a style where the terminal takes them; reset ends it.
var escapes = [...]string{strong: "\x1b[1m", faint: "\x1b[2m"}

const reset = "\x1b[0m"

// page collects the lines of one output.
type page struct {
	look Look
	out  strings.Builder
}

// line adds one line as it is.
func (p *page) line(s style, text string) {
	text = strings.TrimRight(strings.ReplaceAll(text, tied, " "), " ")
	if p.look.Colour && s != ordinary && text != "" {
		text = escapes[s] + text + reset
	}
	p.out.WriteString(text)
	p.out.WriteByte('\n')
}

// gap is an empty line.
func (p *page) gap() { p.out.WriteByte('\n') }

// rule draws a light line across the page.
func (p *page) rule() {
	p.line(faint, strings.Repeat(p.look.text("─"), p.look.ruleWidth()))
}

// heading opens a section: its name set into a rule.
func (p *page) heading(text string) {
	p.gap()
	dash := p.look.text("─")
	text = dash + dash + " " + p.look.text(text) + " "
	if rest := p.look.ruleWidth() - width(text); rest >= 2 {
		p.line(strong, text+strings.Repeat(dash, rest))
		return
	}
	p.prose(strong, 0, "", strings.TrimSpace(text))
}

// para adds text wrapped at an indent; no text is no line.
func (p *page) para(indent int, text string) {
	if text != "" {
		p.prose(ordinary, indent, "", text)
	}
}

// hang adds text wrapped beside a lead: its further lines stand under its
// first, not under the lead.
func (p *page) hang(indent int, lead, text string) { p.prose(ordinary, indent, lead, text) }

// prose is what para and hang share.
func (p *page) prose(s style, indent int, lead, text string) {
	lead, text = p.look.text(lead), p.look.text(text)
	margin := indent + width(lead)
	blank := strings.Repeat(" ", margin)
	for i, l := range wrap(text, p.look.room(margin)) {
		if i == 0 {
			p.line(s, strings.Repeat(" ", indent)+lead+l)
			continue
		}
		p.line(s, blank+l)
	}
}

// fact adds a named value, values lined up at the given column.
func (p *page) fact(name string, at int, value string) {
	if value != "" {
		p.hang(0, padded(name, at), value)
	}
}

// flow adds items side by side in columns of equal width, filled row by row;
// one long line where nothing limits the width.
func (p *page) flow(indent int, items []string) {
	widest := 0
	for i, item := range items {
		items[i] = p.look.text(item)
		widest = max(widest, width(items[i]))
	}
	room := p.look.room(indent)
	across := len(items)
	if room > 0 {
		across = max(1, (room+2)/(widest+2))
	}
	for start := 0; start < len(items); start += across {
		line := strings.Repeat(" ", indent)
		for _, item := range items[start:min(start+across, len(items))] {
			line += padded(item, widest+2)
		}
		if room > 0 && width(strings.TrimRight(line, " ")) > indent+room {
			p.para(indent, strings.TrimSpace(line))
			continue
		}
		p.line(ordinary, line)
	}
}

// writeTo hands the page over in one write.
func (p *page) writeTo(w io.Writer) error {
	_, err := io.WriteString(w, p.out.String())
	return err
}
