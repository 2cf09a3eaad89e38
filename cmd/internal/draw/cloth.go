package draw

import (
	"strconv"

	"quiltrun/planner"
)

// The colours of everything that is not cloth.
const (
	ink   = "#26323a" // lettering and lines
	faint = "#5d6a72" // what stands behind
	paper = "#ffffff"
)

// tones are the greys of fabrics whose colour the job file does not give, each
// well apart from the one before it.
var tones = []string{"a8a299", "e6e1d7", "7f7a72", "cfc8bb", "f3f0e9", "938d84", "dbd5c9", "6a665f"}

// mark is the drawing of a role on its cloth: a small figure, repeated. It is
// what tells roles apart where colours do not.
type mark struct {
	width, height span
	path          string
	turns         bool // it shows which way up the cloth lies
}

// marks are the roles' in order; a role has none where its path is empty. The
// second role is most often the ground, and stays plain. A ninth role begins
// anew: neighbours differ even then.
var marks = []mark{
	{12 * unit, 10 * unit, "M2 6q2-3.4 4 0q2-3.4 4 0", true}, // a gull
	{},
	{10 * unit, 10 * unit, "M2.5 2.5h.01M7.5 7.5h.01", false},                     // sand
	{7 * unit, 8 * unit, "M3.5 1.5v4", true},                                      // reeds
	{12 * unit, 12 * unit, "M3 4.5l3-3 3 3M-3 10.5l3-3 3 3M9 10.5l3-3 3 3", true}, // marram
	{12 * unit, 8 * unit, "M0 2H5M6 6H11", true},                                  // slack water
	{11 * unit, 11 * unit, "M3.5 5.5h4M5.5 3.5v4", false},                         // stars
	{13 * unit, 13 * unit, "M3.5 6.5a3 3 0 1 0 6 0a3 3 0 1 0-6 0", false},         // pebbles
}

// cloths gives fabrics their colours and roles their marks, and keeps the
// definitions that the drawing needs for them.
type cloths struct {
	prefix string // of all ids
	colour map[string]string
	role   map[string]int
	scale  int // of the marks, in hundredths
	defs   canvas
	known  map[string]bool
}

// newCloths numbers roles as the job's colourways first name them, so that a
// role looks the same in every drawing of the job.
func newCloths(p planner.Plan, prefix string, markScale int) *cloths {
	k := &cloths{
		prefix: prefix, scale: markScale,
		colour: map[string]string{}, role: map[string]int{}, known: map[string]bool{},
	}
	bare := 0
	for _, f := range p.Job.Fabrics {
		k.colour[f.Name] = f.Hex()
		if f.Hex() == "" {
			k.colour[f.Name] = tones[bare%len(tones)]
			bare++
		}
	}
	for _, c := range p.Job.Colourways {
		for _, r := range c.Roles {
			if _, ok := k.role[r.Role]; !ok {
				k.role[r.Role] = len(k.role)
			}
		}
	}
	return k
}

// fill is the plain colour of a fabric.
func (k *cloths) fill(fabric string) string {
	if hex := k.colour[fabric]; hex != "" {
		return "#" + hex
	}
	return "#" + tones[0]
}

// dark reports that a fabric needs light marks, by the luma of Recommendation
// ITU-R BT.601.
func (k *cloths) dark(fabric string) bool {
	rgb, err := strconv.ParseUint(k.fill(fabric)[1:], 16, 32)
	if err != nil {
		return false
	}
	return 299*(rgb>>16)+587*(rgb>>8&255)+114*(rgb&255) < 128_000
}

// over is the id of the pattern that marks a role on a fabric whose piece has
// been given quarter turns since it was cut; "" where the role has no mark.
func (k *cloths) over(fabric, role string, quarters int) string {
	number, ok := k.role[role]
	m := marks[number%len(marks)]
	if !ok || m.path == "" {
		return ""
	}
	if !m.turns {
		quarters = 0
	}
	id := k.prefix + "m" + strconv.Itoa(number%len(marks)) + strconv.Itoa(quarters)
	colour := ink
	if k.dark(fabric) {
		id, colour = id+"w", paper
	}
	if !k.known[id] {
		k.known[id] = true
		k.pattern(id, m, quarters, colour)
	}
	return id
}

// pattern defines a mark turned with its cloth. It has no ground of its own: tiles
// that are filled show hairlines between them at some sizes.
func (k *cloths) pattern(id string, m mark, quarters int, colour string) {
	attrs := []attr{is("id", id), is("patternUnits", "userSpaceOnUse"), at("width", m.width), at("height", m.height)}
	transform := ""
	if quarters != 0 {
		transform = "rotate(" + strconv.Itoa(90*quarters) + ")"
	}
	if k.scale != 100 {
		transform += "scale(" + span(k.scale).String() + ")"
	}
	if transform != "" {
		attrs = append(attrs, is("patternTransform", transform))
	}
	k.defs.open("pattern", attrs...)
	k.defs.void("path", is("d", m.path), is("fill", "none"), is("stroke", colour), is("stroke-width", "1.3"),
		is("stroke-linecap", "round"), is("stroke-linejoin", "round"), is("opacity", ".55"))
	k.defs.shut("pattern")
}
