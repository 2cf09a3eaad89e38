package planner

import (
	"cmp"
	"fmt"
	"slices"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// blockReader is what reading the colourways needs to remember of them all.
type blockReader struct {
	shared section   // the keys that they share
	own    []section // theirs
	kinds  []BuiltIn // of their blocks, each once
	counts bool      // each one's number of blocks is known

	roles   []string                 // that the file's own steps name
	recipes map[*fileNode]stepRecipe // steps that have been read, by where they stand
}

// keysOfBlocks are the keys that say what a block is made from, of any built-in
// block.
func keysOfBlocks() []string {
	keys := []string{"make", "steps"}
	for _, b := range builtIns() {
		for _, key := range b.keys() {
			if !slices.Contains(keys, key) {
				keys = append(keys, key)
			}
		}
	}
	return keys
}

// readColourways reads what all colourways share, and each of them.
func (r *jobReader) readColourways(block, colourways *fileNode) {
	pairs := r.named(colourways, "a colourway", "{blocks: 8, print: Kelp, ground: Foam}")
	r.blocks.counts = len(pairs) > 0 && len(pairs) == len(colourways.pairs)
	r.blocks.roles = rolesInSteps(block, pairs)
	keys := keysOfBlocks()
	for _, role := range r.blocks.roles {
		if !slices.Contains(keys, role) {
			keys = append(keys, role)
		}
	}
	r.blocks.shared = r.section(block, "the block", keys...)
	keys = append([]string{"blocks", "was"}, keys...)
	for _, pair := range pairs {
		r.blocks.own = append(r.blocks.own, r.section(pair.value, "colourway "+said(pair.key), keys...))
	}
	for i, pair := range pairs {
		r.job.Colourways = append(r.job.Colourways, r.colourway(pair.key, r.blocks.own[i]))
	}
	if r.blocks.shared.node != nil && len(r.blocks.kinds) > 0 {
		r.reportForeign(r.blocks.shared, r.blocks.kinds)
	}
}

// colourway reads one colourway, with what it shares filled in. Roles come in the
// order of the block's table or steps, wherever the file gives them.
func (r *jobReader) colourway(name string, own section) Colourway {
	c := Colourway{Name: name, Was: r.line(own.get("was")), Blocks: r.blockCount(own)}
	b, steps, ok := r.kind(own)
	if !ok || own.node == nil {
		return c
	}
	c.Block = r.spec(own, b)
	c.Block.Steps = steps
	for _, role := range b.Roles {
		n := r.either(own, role)
		switch {
		case n == nil:
			r.report(own.node.at, own.path(role), fmt.Sprintf("%s has no fabric for its %s", own.what, said(role)), fabricFor(role))
		case b.Strips:
			c.Roles = r.strips(n)
			c.Block.Strips = len(c.Roles)
		default:
			c.Roles = append(c.Roles, r.role(n, role, c.Blocks))
		}
	}
	r.reportForeign(own, []BuiltIn{b})
	return c
}

// fabricFor shows how a role is given its fabric.
func fabricFor(role string) string {
	if example := keyExamples()[role]; example != "" && isRole(role) {
		return writeAs(example)
	}
	return writeAs(role + ": Foam")
}

// blockCount reads a colourway's number of blocks.
func (r *jobReader) blockCount(own section) int {
	count, n := 0, own.get("blocks")
	switch {
	case n == nil && own.node != nil:
		r.report(own.node.at, own.path("blocks"), own.what+" does not say how many blocks it has", writeAs(keyExamples()["blocks"]))
	case n != nil && n.kind == scalar && n.text == "0":
		r.fault(n, own.what+" has no blocks", "give it at least 1, or take the colourway out")
	case n != nil:
		count = r.count(n, 1)
	}
	if count == 0 {
		r.blocks.counts = false
	}
	return count
}

// kind finds the block that a colourway makes: its own or the shared one, a
// built-in or steps. Steps come back as a block without a name.
func (r *jobReader) kind(own section) (BuiltIn, patchwork.Recipe, bool) {
	for _, s := range []section{own, r.blocks.shared} {
		steps, name := s.get("steps"), s.get("make")
		switch {
		case steps != nil && name != nil:
			r.fault(steps, s.what+` has both "make" and "steps"`, "keep the name of a block or the steps of one")
			return BuiltIn{}, patchwork.Recipe{}, false
		case steps != nil:
			return r.ownSteps(own, r.either(own, "steps"))
		case name != nil:
			b, ok := r.builtIn(r.either(own, "make"))
			return b, patchwork.Recipe{}, ok
		}
	}
	r.blocks.shared.need("make")
	return BuiltIn{}, patchwork.Recipe{}, false
}

// ownSteps is a block made by steps.
func (r *jobReader) ownSteps(own section, n *fileNode) (BuiltIn, patchwork.Recipe, bool) {
	read, known := r.blocks.recipes[n]
	if !known {
		read = r.steps(n)
		if r.blocks.recipes == nil {
			r.blocks.recipes = map[*fileNode]stepRecipe{}
		}
		r.blocks.recipes[n] = read
	}
	b := BuiltIn{Roles: read.roles}
	if read.good {
		r.blocks.kinds = append(r.blocks.kinds, b)
	}
	return b, read.recipe, read.good
}

// builtIn is a block by its name.
func (r *jobReader) builtIn(n *fileNode) (BuiltIn, bool) {
	text, ok := r.scalarText(n, "the name of a block")
	if !ok {
		return BuiltIn{}, false
	}
	b, ok := BuiltInCalled(text)
	if !ok {
		r.fault(n, said(text)+" is not a block that is known here", cmp.Or(didYouMean(cmp.Or(NearBuiltIn(text), text), blockNames()), "the blocks are "+listed(blockNames(), "and")))
		return BuiltIn{}, false
	}
	if !slices.ContainsFunc(r.blocks.kinds, func(k BuiltIn) bool { return k.Name == b.Name }) {
		r.blocks.kinds = append(r.blocks.kinds, b)
	}
	return b, true
}

// either is the value that counts for a colourway: its own, else the shared one,
// nil where there is neither. The place of a shared value is kept under the
// colourway's path too, so that later faults of this colourway point at it.
func (r *jobReader) either(own section, key string) *fileNode {
	if n := own.get(key); n != nil {
		return n
	}
	n := r.blocks.shared.get(key)
	if n != nil && own.node != nil {
		r.at[own.path(key)] = n.at
	}
	return n
}

// spec reads the measures of a colourway's block.
func (r *jobReader) spec(own section, b BuiltIn) BlockSpec {
	if b.Name == "" {
		return BlockSpec{}
	}
	spec := BlockSpec{Make: b.Name, Measures: map[string]measure.Length{}}
	for _, m := range b.Measures {
		switch n := r.either(own, m.Name); {
		case n == nil && !m.Optional:
			r.reportNoMeasure(own, b, m.Name)
		case n == nil:
		case m.Sides:
			spec.Square = r.rawSize(n)
		default:
			spec.Measures[m.Name] = r.rawLength(n)
		}
	}
	if b.Method {
		spec.Method = r.method(r.either(own, "method"))
	}
	if n := r.turnOf(own, b); n != nil {
		spec.Turn = r.pieceTurns(n, b)
	}
	return spec
}

// reportNoMeasure reports a measure that is missing: at the shared block where
// no colourway has a block or such a measure of its own, else at the colourway.
func (r *jobReader) reportNoMeasure(own section, b BuiltIn, name string) {
	s := r.blocks.shared
	differs := func(c section) bool { return c.get(name) != nil || c.get("make") != nil }
	if s.node == nil || slices.ContainsFunc(r.blocks.own, differs) {
		s = own
	}
	r.report(s.node.at, s.path(name), fmt.Sprintf("%s has no %s, which a %s needs", s.what, said(name), b.Name), writeAs(keyExamples()[name]))
}

// reportForeign reports keys that mean something for other blocks only.
func (r *jobReader) reportForeign(s section, kinds []BuiltIn) {
	for _, key := range s.order {
		takes := func(b BuiltIn) bool { return slices.Contains(b.keys(), key) }
		if slices.Contains([]string{"blocks", "was", "make", "steps"}, key) || slices.ContainsFunc(kinds, takes) {
			continue
		}
		what, hint := r.foreignKey(key, kinds[0])
		r.fault(s.get(key), what, hint)
	}
}

// foreignKey words a key that a block has no use for.
func (r *jobReader) foreignKey(key string, b BuiltIn) (what, hint string) {
	block, isOne := "a "+b.Name, b.Name != ""
	if !isOne {
		block = "a block with steps of its own"
	}
	switch {
	case !isOne && !isRole(key) && !slices.Contains(r.blocks.roles, key):
		return fmt.Sprintf("%s takes no %s", block, said(key)), "sizes, methods and turns stand in its steps"
	case key == "turn":
		return block + " is not recut, so it has no pieces to turn", "take the line out; layout has a turn of its own"
	case isRole(key) || slices.Contains(r.blocks.roles, key):
		return fmt.Sprintf("%s has no role %s", block, said(key)), "its roles: " + listed(b.Roles, "and")
	default:
		return fmt.Sprintf("%s takes no %s", block, said(key)), "its measures: " + listed(b.measureNames(), "and")
	}
}

// isRole reports whether a key is a role of some built-in block.
func isRole(key string) bool {
	return slices.ContainsFunc(builtIns(), func(b BuiltIn) bool { return slices.Contains(b.Roles, key) })
}

// method reads how many half-square triangles are made at a time; 0 for nil.
func (r *jobReader) method(n *fileNode) int {
	if n == nil {
		return 0
	}
	word, _ := r.choose(n, methodWords)
	return map[string]int{"two": 2, "four": 4, "eight": 8}[word]
}
