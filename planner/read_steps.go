package planner

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner/patchwork"
)

// mostSteps is how many steps a recipe may have. A block of 64 pieces cut, sewn,
// recut and turned needs a few dozen.
const mostSteps = 200

// stepRecipe is steps as they were read, once for all colourways that share
// them. Roles come in the order in which the steps first name them.
type stepRecipe struct {
	recipe patchwork.Recipe
	roles  []string
	good   bool // without a fault
}

// stepReader reads one recipe.
type stepReader struct {
	*jobReader
	names []string        // of all steps, in file order
	made  map[string]bool // the steps read so far
	roles []string
}

// steps reads a block's recipe: a map of steps by their names, in the order of
// work. What needs geometry, Make finds.
func (r *jobReader) steps(n *fileNode) stepRecipe {
	before := len(r.problems)
	pairs := r.named(n, "a step", "{cut: print, size: 7}")
	s := &stepReader{jobReader: r, made: map[string]bool{}}
	for _, pair := range pairs {
		s.names = append(s.names, pair.key)
	}
	if len(pairs) > mostSteps {
		r.fault(n, fmt.Sprintf("the recipe has %d steps; quiltrun makes blocks of at most %d", len(pairs), mostSteps), "make the block of fewer steps")
		return stepRecipe{}
	}
	var recipe patchwork.Recipe
	for _, pair := range pairs {
		s.checkName(pair)
		recipe.Steps = append(recipe.Steps, s.step(pair))
		s.made[pair.key] = true
	}
	return stepRecipe{recipe, s.roles, len(r.problems) == before}
}

// checkName refuses a step's name that cannot begin an operation's key.
func (s *stepReader) checkName(pair filePair) {
	tidy := tidyID(pair.key)
	if tidy == pair.key && len(tidy) <= longestID {
		return
	}
	hint := ""
	if tidy != "" && tidy != pair.key && len(tidy) <= longestID {
		hint = "such as " + tidy
	}
	what := "%s cannot be a step's name: names are small letters a to z, digits and hyphens, at most %d, and begin with no hyphen"
	s.report(pair.at, pair.value.path, fmt.Sprintf(what, said(pair.key), longestID), hint)
}

// action is one thing that a step can do: the key that says so, and the keys that
// go with it.
type action struct {
	key  string
	with []string
	read func(*stepReader, section, *patchwork.Step)
}

// actions lists what steps can do. Trim comes last: it is a key of triangles
// too.
func actions() []action {
	return []action{
		{"cut", []string{"size"}, (*stepReader).cutting},
		{"sew", nil, (*stepReader).sewing},
		{"recut", []string{"upright", "level"}, (*stepReader).recutting},
		{"turn", []string{"by", "exchange"}, (*stepReader).turning},
		{"subcut", []string{"every"}, (*stepReader).subcutting},
		{"half-square", []string{"size", "at-a-time", "trim"}, (*stepReader).halfSquares},
		{"quarter-square", []string{"size", "trim"}, (*stepReader).quarterSquares},
		{"trim", []string{"size"}, (*stepReader).trimming},
	}
}

// actionKeys is the words for what a step does.
func actionKeys() []string {
	var keys []string
	for _, a := range actions() {
		keys = append(keys, a.key)
	}
	return keys
}

// step reads one step.
func (s *stepReader) step(pair filePair) patchwork.Step {
	step := patchwork.Step{Name: pair.key}
	if pair.value.kind != fields || len(pair.value.pairs) == 0 {
		s.fault(pair.value, fmt.Sprintf("the step %s does not say what it does", said(pair.key)), "write it as in "+pair.key+": "+stepExample("cut"))
		return step
	}
	does, ok := s.action(pair)
	if !ok {
		return step
	}
	keys := append([]string{does.key}, does.with...)
	section := s.section(pair.value, "the step "+said(pair.key), keys...)
	for key, given := range section.by {
		given.value.example = key + ": " + stepExample(key)
	}
	does.read(s, section, &step)
	return step
}

// action finds what a step does.
func (s *stepReader) action(pair filePair) (action, bool) {
	var found []action
	for _, a := range actions() {
		says := func(p filePair) bool { key, _ := keyNamed(p.key, []string{a.key}); return key != "" }
		given := slices.ContainsFunc(pair.value.pairs, says)
		if given && (a.key != "trim" || !slices.ContainsFunc(found, func(f action) bool { return slices.Contains(f.with, "trim") })) {
			found = append(found, a)
		}
	}
	switch len(found) {
	case 1:
		return found[0], true
	case 0:
		first := pair.value.pairs[0]
		s.report(first.at, pair.value.path, fmt.Sprintf("the step %s does nothing that is known here: %s is not an action", said(pair.key), said(first.key)),
			cmp.Or(didYouMean(first.key, actionKeys()), "the actions are "+listed(actionKeys(), "and")))
	default:
		s.report(pair.at, pair.value.path, fmt.Sprintf("the step %s does two things: %s and %s", said(pair.key), found[0].key, found[1].key),
			"make two steps of it")
	}
	return action{}, false
}

// earlier reads the name of a step that comes before this one; "" for anything
// else, which is reported.
func (s *stepReader) earlier(n *fileNode) string {
	if n == nil {
		return ""
	}
	text, ok := s.scalarText(n, "the name of a step")
	if !ok {
		return ""
	}
	return s.known(n, text)
}

// known is the name of an earlier step, or "" where there is none.
func (s *stepReader) known(n *fileNode, name string) string {
	switch {
	case s.made[name]:
		return name
	case slices.Contains(s.names, name):
		s.fault(n, fmt.Sprintf("the step %s is not made yet here", said(name)), "a step uses what is made above it: move it up")
	default:
		s.fault(n, fmt.Sprintf("there is no step %s", said(name)), cmp.Or(didYouMean(name, s.names), "the steps are "+listed(s.names, "and")))
	}
	return ""
}

// role reads what a fabric does in the block.
func (s *stepReader) roleAt(n *fileNode) string {
	if n == nil {
		return ""
	}
	text, ok := s.scalarText(n, "a role")
	if !ok {
		return ""
	}
	role := roleNamed(text)
	switch tidy := tidyID(role); {
	case tidy != role || len(role) > longestID:
		s.fault(n, fmt.Sprintf("%s cannot be a role: roles are small letters a to z, digits and hyphens, and begin with no hyphen", said(text)), such(tidy))
		return ""
	case slices.Contains(notRoles(), role):
		s.fault(n, fmt.Sprintf("%s cannot be a role: it is a key of the block itself", said(text)), "say what the fabric does in the block, such as print or ground")
		return ""
	}
	if !slices.Contains(s.roles, role) {
		s.roles = append(s.roles, role)
	}
	return role
}

// such is the hint for a text that nearly is one.
func such(tidy string) string {
	if tidy == "" {
		return ""
	}
	return "such as " + tidy
}

// notRoles are the keys of a block or colourway that are not roles.
func notRoles() []string {
	keys := []string{"blocks", "was"}
	for _, key := range keysOfBlocks() {
		if !isRole(key) {
			keys = append(keys, key)
		}
	}
	return keys
}

// roleNamed is a role under its own word: background is ground.
func roleNamed(text string) string {
	if meant := keySynonyms()[text]; isRole(meant) {
		return meant
	}
	return text
}

// rolesInSteps is every role that steps of the file name, so that the keys of
// colourways are known before they are read. What is wrong with the steps is
// reported when they are.
func rolesInSteps(block *fileNode, colourways []filePair) []string {
	var roles []string
	add := func(n *fileNode) {
		if n.kind == scalar && !slices.Contains(roles, roleNamed(n.text)) && !slices.Contains(notRoles(), n.text) {
			roles = append(roles, roleNamed(n.text))
		}
	}
	nodes := []*fileNode{block}
	for _, pair := range colourways {
		nodes = append(nodes, pair.value)
	}
	for _, steps := range valuesAt(nodes, "steps") {
		for _, step := range steps.pairs {
			for _, n := range valuesAt([]*fileNode{step.value}, "cut", "half-square", "quarter-square") {
				add(n)
				for _, item := range n.items {
					add(item)
				}
			}
		}
	}
	return roles
}

// valuesAt is the values that groups of keys have at some keys.
func valuesAt(nodes []*fileNode, keys ...string) []*fileNode {
	var values []*fileNode
	for _, n := range nodes {
		if n == nil {
			continue
		}
		for _, pair := range n.pairs {
			if key, _ := keyNamed(pair.key, keys); key != "" {
				values = append(values, pair.value)
			}
		}
	}
	return values
}

// stepExample shows how a value of a step is written.
func stepExample(key string) string {
	switch key {
	case "cut":
		return "{cut: print, size: 7}"
	case "sew":
		return "[[print, ground], [ground, print@90]]"
	case "upright", "level":
		return "[-1, 1] (from the centre), [left 2 1/2, right 2], halves or thirds"
	case "by":
		return "[[0, 180], [180, 0]]"
	case "exchange":
		return "[[1, 9]]"
	case "half-square", "quarter-square":
		return "[print, ground]"
	case "at-a-time":
		return "2"
	case "size":
		return "7"
	case "every", "trim":
		return "2 1/2"
	}
	return strings.ToLower(key) + " of an earlier step"
}
