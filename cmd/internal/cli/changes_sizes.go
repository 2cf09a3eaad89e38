package cli

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// measures says which colourways are made to other measures, such as another
// offset, which changes no size of a block.
func (p plans) measures() []string {
	var texts []string
	named := map[string][]string{}
	for _, c := range p.now.Job.Colourways {
		was, known := p.before(c)
		if !known {
			continue
		}
		for _, text := range p.measuresOf(was.Block, c.Block) {
			if named[text] == nil {
				texts = append(texts, text)
			}
			named[text] = append(named[text], c.Name)
		}
	}
	for i, text := range texts {
		texts[i] = shortList(named[text]) + ": " + text
	}
	return texts
}

// before is a colourway of the new file as it was in the former one.
func (p plans) before(c planner.Colourway) (planner.Colourway, bool) {
	for _, name := range []string{c.Name, c.Was} {
		at := slices.IndexFunc(p.old.Job.Colourways, func(o planner.Colourway) bool { return o.Name == name })
		if name != "" && at >= 0 {
			return p.old.Job.Colourways[at], true
		}
	}
	return planner.Colourway{}, false
}

// measuresOf compares two blocks by what the file says of them.
func (p plans) measuresOf(old, now planner.BlockSpec) []string {
	u := p.units()
	var said []string
	differs := func(what, was, is string) {
		if was != is {
			said = append(said, fmt.Sprintf("%s %s, was %s", what, is, was))
		}
	}
	if old.Make != now.Make {
		differs("made as", makeWords(old), makeWords(now))
		return said
	}
	if old.Square != now.Square {
		differs("square", sideWords(old.Square, u), sideWords(now.Square, u))
	}
	names := maps.Clone(old.Measures)
	if names == nil {
		names = map[string]measure.Length{}
	}
	maps.Copy(names, now.Measures)
	for _, name := range slices.Sorted(maps.Keys(names)) {
		differs(name, lengthWords(old.Measures, name, u), lengthWords(now.Measures, name, u))
	}
	if old.Method != 0 || now.Method != 0 {
		differs("half-square triangles at a time", fmt.Sprint(old.Method), fmt.Sprint(now.Method))
	}
	return said
}

func makeWords(b planner.BlockSpec) string {
	if b.Make == "" {
		return "steps of its own"
	}
	return b.Make
}

func lengthWords(measures map[string]measure.Length, name string, u measure.Unit) string {
	if l, given := measures[name]; given {
		return l.Show(u)
	}
	return "not given"
}

// sideWords is a size where the word square is said already.
func sideWords(s measure.Size, u measure.Unit) string {
	return strings.TrimSuffix(s.Words(u), " square")
}

// resized is the pieces of one fabric, cut for one thing, whose sizes are other
// ones now.
type resized struct {
	fabric, purpose string
	was, is         []planner.PieceCount // of the sizes that only the one plan has
}

// resizings are all of them, in the new file's order. A fabric or purpose that
// is gone is among the operations that are.
func (p plans) resizings() []resized {
	var all []resized
	for _, need := range p.now.Fabrics {
		was, known := p.oldNeed(need.Fabric.Name)
		if !known {
			continue
		}
		for _, purpose := range purposes {
			r := resized{fabric: need.Fabric.Name, purpose: purpose.of}
			r.was, r.is = onlyIn(was.Pieces, need.Pieces, purpose.of), onlyIn(need.Pieces, was.Pieces, purpose.of)
			if len(r.was) > 0 || len(r.is) > 0 {
				all = append(all, r)
			}
		}
	}
	return all
}

// purposes are what pieces are cut for, and the operation that cuts them.
var purposes = []struct{ of, key, words string }{
	{"blocks", "cut", "pieces"}, {"border", "cut-borders", "border strips"}, {"binding", "cut-binding", "binding strips"},
	{"sashing", "cut-sashing", "sashing"}, {"cornerstones", "cut-cornerstones", "cornerstones"},
	{"setting triangles", "cut-setting-triangles", "squares for setting triangles"},
}

// purposeOf is what is known of a purpose.
func purposeOf(name string) (key, words string) {
	for _, p := range purposes {
		if p.of == name {
			return p.key, p.words
		}
	}
	return "", ""
}

// onlyIn is the pieces for one purpose of sizes that the other list has none of.
func onlyIn(these, others []planner.PieceCount, purpose string) []planner.PieceCount {
	has := func(list []planner.PieceCount, size measure.Size) bool {
		return slices.ContainsFunc(list, func(p planner.PieceCount) bool { return p.Size == size && p.For == purpose })
	}
	var only []planner.PieceCount
	for _, p := range these {
		if p.For == purpose && !has(others, p.Size) {
			only = append(only, p)
		}
	}
	return only
}

// cuts says which sizes are cut in place of which.
func (p plans) cuts() []string {
	all := map[string]*alike{}
	for _, r := range p.resizings() {
		if all[r.purpose] == nil {
			all[r.purpose] = &alike{}
		}
		all[r.purpose].add(r.fabric, orNone(p.counted(r.was)), orNone(p.counted(r.is)))
	}
	var said []string
	for _, purpose := range purposes {
		if a := all[purpose.of]; a != nil {
			said = append(said, a.said(purpose.words+" of ")...)
		}
	}
	return said
}

// counted is pieces with their sizes.
func (p plans) counted(pieces []planner.PieceCount) string {
	each := make([]string, len(pieces))
	for i, piece := range pieces {
		each[i] = fmt.Sprintf("%d of %s", piece.Count, piece.Size.Words(p.units()))
	}
	return strings.Join(each, ", ")
}

// sizes is the sizes of pieces alone.
func (p plans) sizes(pieces []planner.PieceCount) string {
	each := make([]string, len(pieces))
	for i, piece := range pieces {
		each[i] = piece.Size.Words(p.units())
	}
	return strings.Join(each, " and ")
}

// madeBefore says what was logged as made to sizes that are wanted no longer:
// it counts on, and lies on the table too small or too large.
func (p plans) madeBefore() []string {
	var said []string
	for _, r := range p.resizings() {
		if text := p.cutBefore(r); text != "" {
			said = append(said, text)
		}
	}
	for _, c := range p.now.Job.Colourways {
		if text := p.sewnBefore(c); text != "" {
			said = append(said, text)
		}
	}
	return said
}

// cutBefore is about cut pieces. Where a fabric has several sizes the log does
// not say which of them were cut.
func (p plans) cutBefore(r resized) string {
	key, words := purposeOf(r.purpose)
	row, _ := p.after.Row(key, tracker.Lot{Kind: planner.FabricLot, Name: r.fabric})
	done := row.Done + row.Spare
	if done == 0 || len(r.was) == 0 {
		return ""
	}
	was, _ := p.oldNeed(r.fabric)
	all := onlyIn(was.Pieces, nil, r.purpose)
	what := fmt.Sprintf("%d %s of %s are logged as cut", done, words, r.fabric)
	if done == 1 {
		what = fmt.Sprintf("1 of the %s of %s is logged as cut", words, r.fabric)
	}
	switch {
	case len(all) > len(r.was):
		what += fmt.Sprintf("; those of %s", p.sizes(r.was))
	default:
		what += " at " + p.sizes(r.was) + "; they"
	}
	if len(r.is) == 0 {
		return what + " are not wanted any more"
	}
	return what + " are now " + p.sizes(r.is)
}

// sewnBefore is about blocks on which work was logged to other measures.
func (p plans) sewnBefore(c planner.Colourway) string {
	was, known := p.before(c)
	if !known {
		return ""
	}
	old, now := rawOf(p.old, was.Name), rawOf(p.now, c.Name)
	other := p.measuresOf(was.Block, c.Block)
	if old == now && len(other) == 0 {
		return ""
	}
	row, begun := p.farthest(c.Name, len(other) == 1 && strings.HasPrefix(other[0], "offset "))
	if !begun {
		return ""
	}
	u := p.units()
	text := fmt.Sprintf("work on %s is logged up to %s (%s) to the former measures", c.Name, row.Title(),
		english.Count(row.Done+row.Spare, string(row.CountedIn)))
	if old != now {
		text += fmt.Sprintf(": its blocks were %s, they are now %s", old.Words(u), now.Words(u))
	}
	return text
}

func rawOf(plan planner.Plan, colourway string) measure.Size {
	at := slices.IndexFunc(plan.Colourways, func(c planner.ColourwayPlan) bool { return c.Name == colourway })
	if at < 0 {
		return measure.Size{}
	}
	return plan.Colourways[at].Raw
}

// farthest is the last operation on a colourway's blocks that has anything done;
// stacks of cut pieces are not sewn yet. Another offset matters from the first
// recut on alone.
func (p plans) farthest(colourway string, offset bool) (last tracker.Row, begun bool) {
	from := !offset
	for _, row := range p.after.Rows() {
		if row.Lot != (tracker.Lot{Kind: planner.ColourwayLot, Name: colourway}) {
			continue
		}
		from = from || strings.HasPrefix(row.Key, "recut")
		if from && row.Key != "kit" && row.Done+row.Spare > 0 {
			last, begun = row, true
		}
	}
	return last, begun
}
