package planner

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
	Computed bool      // the planner can make it now; others are read and refused by name
}

// Measure is one measure of a built-in.
type Measure struct {
	Name     string // the job file's key
	Optional bool
}

// builtIns is the table of the built-in blocks, from the plain square to what is
// cut again.
var builtIns = []BuiltIn{
	{
		Name: "plain square", Roles: []string{"print"},
		Measures: needed("square"), Computed: true,
	},
	{
		Name: "four-patch", Roles: []string{"print", "ground"},
		Measures: needed("square"), Computed: true,
	},
	{
		Name: "nine-patch", Roles: []string{"corner", "side", "centre"},
		Measures: needed("square"), Computed: true,
	},
	{
		Name: "rail", Roles: []string{"strips"},
		Measures: needed("strip", "length"), Strips: true,
	},
	{
		Name: "half-square triangle", Roles: []string{"print", "ground"},
		Measures: needed("unit"), Method: true,
	},
	{
		Name: "pinwheel", Roles: []string{"print", "ground"},
		Measures: needed("unit"), Method: true,
	},
	{
		Name: "hourglass", Roles: []string{"print", "ground"},
		Measures: needed("unit"),
	},
	{
		Name: "four-patch recut", Roles: []string{"print", "ground"},
		Measures: needed("square", "offset"), Rows: 3, Across: 3, Computed: true,
	},
	{
		Name: "nine-patch recut", Roles: []string{"corner", "side", "centre"},
		Measures: needed("square"), Rows: 2, Across: 2, Computed: true,
	},
	{
		Name: "pinwheel recut", Roles: []string{"print", "ground"},
		Measures: thirds(), Method: true, Rows: 3, Across: 3,
	},
	{
		Name: "hourglass recut", Roles: []string{"print", "ground"},
		Measures: thirds(), Method: true, Rows: 3, Across: 3,
	},
}

// needed is measures that a block cannot do without.
func needed(names ...string) []Measure {
	all := make([]Measure, len(names))
	for i, name := range names {
		all[i] = Measure{Name: name}
	}
	return all
}

// thirds is the measures of a block that is recut in equal thirds unless the
// file says otherwise.
func thirds() []Measure {
	return append(needed("unit"), Measure{Name: "offset", Optional: true})
}

// BuiltIns returns the table of built-in blocks, simple ones first.
func BuiltIns() []BuiltIn { return append([]BuiltIn(nil), builtIns...) }

// BuiltInNamed finds a built-in by its full name, as BlockSpec.Make holds it.
func BuiltInNamed(name string) (BuiltIn, bool) {
	for _, b := range builtIns {
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
	names := make([]string, len(builtIns))
	for i, b := range builtIns {
		names[i] = b.Name
	}
	return names
}

// computedNames is the full names of the blocks that can be made now.
func computedNames() []string {
	var names []string
	for _, b := range builtIns {
		if b.Computed {
			names = append(names, b.Name)
		}
	}
	return names
}
