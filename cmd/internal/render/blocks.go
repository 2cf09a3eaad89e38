package render

import (
	"fmt"
	"io"
	"strings"

	"quiltrun/planner"
)

// Blocks lists the built-in blocks: what a job file may say of each.
func Blocks(w io.Writer, blocks []planner.BuiltIn, look Look) error {
	p := &page{look: look}
	p.prose(strong, 0, "", "Built-in blocks")
	p.rule()
	g := &grid{columns: []column{{title: "make", flexible: true}, {title: "Roles", flexible: true}, {title: "Measures", flexible: true}, {title: "turn"}}}
	for _, b := range blocks {
		turn := ""
		if b.Rows > 0 {
			turn = together(counted(b.Rows, "row") + " of " + counted(b.Across, "piece"))
		}
		g.add(together(b.Name), enumerate(b.Roles), strings.Join(blockMeasures(b), ", "), turn)
	}
	if err := p.table(g); err != nil {
		return err
	}
	p.gap()
	for _, note := range blockNotes {
		p.hang(0, padded(note[0], 8), note[1])
	}
	p.gap()
	p.para(0, "quiltrun blocks NAME prints the recipe of one as the part of a job file that makes it: a start for steps of your own.")
	return p.writeTo(w)
}

// blockNotes says what the measures of built-in blocks mean.
var blockNotes = [][2]string{
	{"square", "side of a piece as it is cut; W x H for pieces that are no squares"},
	{"strip", "width of a strip as it is cut, and length its length"},
	{"unit", "raw side of a triangle unit once it is trimmed"},
	{"method", "half-square triangles at a time: two, four or eight"},
	{"offset", "how far either side of the centre it is recut; in equal thirds where it may be left out"},
	{"turn", "degrees clockwise for each piece that is recut, row by row"},
}

// blockMeasures are the keys of a block's measures; what may be left out stands in
// brackets.
func blockMeasures(b planner.BuiltIn) []string {
	var keys []string
	for _, m := range b.Measures {
		key := m.Name
		if m.Optional {
			key = "(" + key + ")"
		}
		keys = append(keys, key)
	}
	if b.Method {
		keys = append(keys, "(method)")
	}
	return keys
}

// jsonBlockKind is what a job file may say of a built-in block.
type jsonBlockKind struct {
	Name     string        `json:"name"`
	Roles    []string      `json:"roles"`
	Measures []jsonMeasure `json:"measures"`
	Method   bool          `json:"method"` // half-square triangles two, four or eight at a time
	Strips   bool          `json:"strips"` // its role lists fabrics from left to right
	Turn     *jsonPieces   `json:"turn"`   // the pieces that may be turned, null where nothing is recut
}

// jsonMeasure is a key of a built-in block.
type jsonMeasure struct {
	Key      string `json:"key"`
	Required bool   `json:"required"`
	Sides    bool   `json:"sides"` // may be a width and a height
}

// jsonPieces is how many pieces a block is recut into.
type jsonPieces struct {
	Rows   int `json:"rows"`
	Across int `json:"across"`
}

func blockKindOf(b planner.BuiltIn) jsonBlockKind {
	kind := jsonBlockKind{
		Name: b.Name, Roles: b.Roles, Method: b.Method, Strips: b.Strips,
		Measures: list(b.Measures, func(m planner.Measure) jsonMeasure { return jsonMeasure{m.Name, !m.Optional, m.Sides} }),
	}
	if b.Rows > 0 {
		kind.Turn = &jsonPieces{b.Rows, b.Across}
	}
	return kind
}

// BlocksJSON lists the built-in blocks for scripts.
func BlocksJSON(w io.Writer, blocks []planner.BuiltIn) error {
	return writeJSON(w, struct {
		Schema int             `json:"schema"`
		Blocks []jsonBlockKind `json:"blocks"`
	}{schema, list(blocks, blockKindOf)})
}

// BlockRecipe writes a built-in's recipe as a part of a job file, with sample
// measures. It is never wrapped: it is to be pasted.
func BlockRecipe(w io.Writer, b planner.BuiltIn) error {
	sample := b.Sample()
	_, err := fmt.Fprintf(w, "# %s with %s, as steps.\n# Each colourway names a fabric for %s.\n%s",
		b.Name, strings.Join(sample.Measures, ", "), strings.Join(sample.Roles, ", "), planner.Fragment(sample.Recipe))
	return err
}

// BlockRecipeJSON writes the same for scripts.
func BlockRecipeJSON(w io.Writer, b planner.BuiltIn) error {
	sample := b.Sample()
	return writeJSON(w, struct {
		Schema int `json:"schema"`
		jsonBlockKind
		Sample      []string `json:"sample"`       // the measures, as a job file gives them
		SampleRoles []string `json:"sample_roles"` // that the steps name
		Fragment    string   `json:"fragment"`     // the part of a job file
	}{schema, blockKindOf(b), sample.Measures, sample.Roles, planner.Fragment(sample.Recipe)})
}
