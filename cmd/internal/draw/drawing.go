package draw

import (
	"hash/fnv"
	"io"
	"strconv"
	"strings"

	"quiltrun/planner"
)

// opening is how every drawing begins, and no other file does.
const opening = `<svg xmlns="http://www.w3.org/2000/svg" data-made-by="quiltrun"`

// IsDrawing reports whether a file that begins so is a drawing that this package
// made, and may be drawn anew.
func IsDrawing(beginning []byte) bool { return strings.HasPrefix(string(beginning), opening) }

// drawing is one drawing in the making.
type drawing struct {
	plan  planner.Plan
	width span
	*cloths
	body canvas
}

// newDrawing begins a drawing of the plan. The name sets its ids apart from
// those of the job's other drawings, so that several can stand on one page.
func newDrawing(p planner.Plan, name string, width span, markScale int) *drawing {
	sum := fnv.New32a()
	_, _ = io.WriteString(sum, p.Job.ID+"\x00"+name) // a hash takes everything
	prefix := "q" + strconv.FormatUint(uint64(sum.Sum32()), 36) + "-"
	return &drawing{plan: p, width: width, cloths: newCloths(p, prefix, markScale)}
}

// writeTo writes the drawing with what it is called and what can be told of it
// in words, for those who do not see it.
func (d *drawing) writeTo(w io.Writer, title, description string, height span) error {
	var c canvas
	c.WriteString(opening)
	for _, a := range []attr{
		at("width", d.width), at("height", height),
		is("viewBox", "0 0 "+pair(d.width, height)),
		is("role", "img"), is("aria-labelledby", d.prefix+"t "+d.prefix+"d"),
		is("font-family", face), is("fill", ink),
	} {
		c.WriteString(" " + a.name + `="` + escaped(a.value) + `"`)
	}
	c.WriteString(">\n")
	c.words("title", title, is("id", d.prefix+"t"))
	c.words("desc", description, is("id", d.prefix+"d"))
	if d.defs.Len() > 0 {
		c.open("defs")
		c.WriteString(d.defs.String())
		c.shut("defs")
	}
	c.void("rect", at("width", d.width), at("height", height), is("fill", paper))
	c.WriteString(d.body.String())
	c.shut("svg")
	_, err := io.WriteString(w, c.String())
	return err
}
