package planner

import (
	"slices"
	"sync"
)

// BuiltIn is what a job file may say about a block that is named rather than
// described step by step.
type BuiltIn struct {
	Name     string    // the trade's full name
	Roles    []string  // every role must be given, in this order
	Measures []Measure // in the order in which the job file's keys are listed
	Method   bool      // takes `method`: half-square triangles two, four or eight at a time
	Rows     int       // rows of pieces that may be turned; 0 where nothing is recut
	Across   int       // pieces in each of these rows
	Strips   bool      // its one role lists fabrics left to right instead of dealing them
}

// Measure is one measure of a built-in.
type Measure struct {
	Name     string // the job file's key
	Optional bool
	Sides    bool // may be a width and a height: the pieces, and so the block, need not be square
}

// BuiltIns returns the table of built-in blocks, from the plain square to what
// is cut again.
func BuiltIns() []BuiltIn { return slices.Clone(builtIns()) }

// builtIns is the table, made when it is first asked for.
var builtIns = sync.OnceValue(func() []BuiltIn {
	patches, triangles := []string{"print", "ground"}, []string{"print", "ground"}
	nine := []string{"corner", "side", "centre"}
	square := Measure{Name: "square", Sides: true}
	unit, offset := Measure{Name: "unit"}, Measure{Name: "offset"}
	thirds := Measure{Name: "offset", Optional: true}
	return []BuiltIn{
		{Name: "plain square", Roles: []string{"print"}, Measures: []Measure{square}},
		{Name: "four-patch", Roles: patches, Measures: []Measure{square}},
		{Name: "nine-patch", Roles: nine, Measures: []Measure{square}},
		{Name: "rail", Roles: []string{"strips"}, Measures: []Measure{{Name: "strip"}, {Name: "length"}}, Strips: true},
		{Name: "half-square triangle", Roles: triangles, Measures: []Measure{unit}, Method: true},
		{Name: "pinwheel", Roles: triangles, Measures: []Measure{unit}, Method: true},
		{Name: "hourglass", Roles: triangles, Measures: []Measure{unit}},
		{Name: "four-patch recut", Roles: patches, Measures: []Measure{square, offset}, Rows: 3, Across: 3},
		{Name: "nine-patch recut", Roles: nine, Measures: []Measure{square}, Rows: 2, Across: 2},
		{Name: "pinwheel recut", Roles: triangles, Measures: []Measure{unit, thirds}, Method: true, Rows: 3, Across: 3},
		{Name: "hourglass recut", Roles: triangles, Measures: []Measure{unit, thirds}, Method: true, Rows: 3, Across: 3},
	}
})

// BuiltInNamed finds a built-in by its full name, as BlockSpec.Make holds it.
func BuiltInNamed(name string) (BuiltIn, bool) {
	for _, b := range builtIns() {
		if b.Name == name {
			return b, true
		}
	}
	return BuiltIn{}, false
}

// keys is every key of a job file that has a meaning for this block.
func (b BuiltIn) keys() []string {
	all := b.measureNames()
	if b.Method {
		all = append(all, "method")
	}
	if b.Rows > 0 {
		all = append(all, "turn")
	}
	return append(all, b.Roles...)
}

// measureNames is the keys of the measures, needed or not.
func (b BuiltIn) measureNames() []string {
	names := make([]string, len(b.Measures))
	for i, m := range b.Measures {
		names[i] = m.Name
	}
	return names
}

// blockNames is the full names of all built-ins.
func blockNames() []string {
	var names []string
	for _, b := range builtIns() {
		names = append(names, b.Name)
	}
	return names
}
