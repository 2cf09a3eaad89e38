package cloth

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner/cloth/guillotine"
	"quiltrun/planner/measure"
)

// Step is one kind of ruler work: alike pieces of cloth, cut alike, some of
// them at once in a stack.
type Step struct {
	Bolt    bool         // what is cut is the bolt itself
	Hand    bool         // what is cut is a piece on hand
	Upright bool         // the ruler lies along the height of From, not across
	From    measure.Size // what is cut
	Count   int          // how many of those
	Layers  int          // the most in one stack
	Stacks  int          // how many stacks
	Cuts    int          // ruler cuts for all stacks, squaring up included
	Makes   []Make       // in the order in which they come off
}

// Make is what a step cuts.
type Make struct {
	Size  measure.Size
	Count int
	Want  int   // which of the wants: Further where it is cut again, Left where it is left over
	Of    []int // where it is cut again: the wants that come of it
}

// What a step makes beside wanted pieces.
const (
	Further = -1
	Left    = -2
)

// cutter lists the work, stage by stage.
type cutter struct {
	settings Settings
	steps    []Step
	shares   []int // of the cuts, among the wants
}

// stack is parts that are cut alike: the first has all the cuts, the others
// have them or the first few of them.
type stack struct {
	parts []*part
	cuts  []int
}

// steps lists the work: first all cuts across the cloths, then those across
// what they made, and so on; in each stage the longest pieces first.
func (c *cutter) work(cloths []*part) {
	for stage, now := 1, uncut(cloths); len(now) > 0; stage++ {
		var next []*part
		for _, s := range c.stacks(now, stage) {
			c.step(s)
			for _, p := range s.parts {
				next = append(next, uncut(p.parts)...)
			}
		}
		now = next
	}
}

// uncut are the parts that still have to be cut.
func uncut(parts []*part) []*part {
	return slices.DeleteFunc(slices.Clone(parts), func(p *part) bool { return p.cut == guillotine.None })
}

// stacks puts parts that can be cut together in stacks, the longest pieces
// first, those with most cuts before their like.
func (c *cutter) stacks(parts []*part, stage int) []stack {
	slices.SortStableFunc(parts, func(a, b *part) int {
		return cmp.Or(longestFirst(a, b), cmp.Compare(len(b.parts), len(a.parts)))
	})
	var out []stack
	at := map[string]int{} // stacks by what they are cut from, and by every beginning of their cuts
	for _, p := range parts {
		keys := c.beginnings(p)
		whole := keys[len(keys)-1]
		k, ok := at[whole]
		if !ok {
			k = len(out)
			out = append(out, stack{})
			for _, key := range keys {
				if _, taken := at[key]; !taken {
					at[key] = k
				}
			}
		}
		out[k].parts = append(out[k].parts, p)
		out[k].cuts = append(out[k].cuts, rulerCuts(p, stage))
	}
	return out
}

// beginnings are keys for the cuts of a part: for the first of what it is cut
// into, for the first two, and so on. Only pieces of whole strips stack with
// strips that are not so full.
func (c *cutter) beginnings(p *part) []string {
	var key strings.Builder
	number := func(n int64) { key.WriteString(strconv.FormatInt(n, 36)); key.WriteByte(' ') }
	number(int64(p.cut))
	number(int64(p.size.Width))
	number(int64(p.size.Height))
	if p.hand {
		number(-1) // told apart from other cloth of its size
	}
	var out []string
	for _, q := range p.parts {
		if q.long == 0 {
			break
		}
		c.describe(q, number)
		out = append(out, key.String())
	}
	return out
}

// describe writes down a part's kind, or its size and everything in it.
func (c *cutter) describe(p *part, number func(int64)) {
	number(int64(min(p.kind, 0))) // a piece or not: which piece, its size says
	number(int64(p.size.Width))
	number(int64(p.size.Height))
	number(int64(len(p.parts)))
	for _, q := range p.parts {
		c.describe(q, number)
	}
}

// rulerCuts is how many cuts part a stack of parts like this one. Cloth has raw
// edges all round, and strips across it at both ends: one cut squares the first
// and each piece takes one, even the last. Further on all edges are cut.
func rulerCuts(p *part, stage int) int {
	const raw = 2 // stages that meet raw edges
	pieces := 0
	for _, q := range p.parts {
		if q.long > 0 {
			pieces++
		}
	}
	if stage <= raw {
		return pieces + 1
	}
	return len(p.parts) - 1
}

// step enters a stack's work. Layers are cut at once, as many as a blade goes
// through, and only one where a piece is directional.
func (c *cutter) step(s stack) {
	first := s.parts[0]
	layers := c.settings.layers()
	if slices.ContainsFunc(s.parts, func(p *part) bool { return p.oneWay }) {
		layers = 1
	}
	out := Step{
		Bolt: first.bolt, Hand: first.hand, Upright: first.cut == guillotine.Upright, From: first.size, Count: len(s.parts), Layers: min(layers, len(s.parts)),
	}
	for k := 0; k < len(s.parts); k += layers {
		out.Stacks++
		out.Cuts += slices.Max(s.cuts[k:min(k+layers, len(s.cuts))])
	}
	var freed []int // the want of each part that a cut frees
	for _, p := range s.parts {
		p.step = len(c.steps) + 1
		for _, q := range p.parts {
			out.make(q)
			if q.long > 0 {
				freed = append(freed, q.first())
			}
		}
	}
	c.share(out.Cuts, freed)
	slices.SortStableFunc(out.Makes, func(a, b Make) int { return cmp.Compare(min(b.Want, Further), min(a.Want, Further)) })
	c.steps = append(c.steps, out)
}

// make counts a part with its like.
func (s *Step) make(q *part) {
	m := Make{Size: q.size, Count: 1, Want: q.want}
	switch {
	case q.cut != guillotine.None:
		m.Want, m.Of = Further, q.wants()
	case q.kind == guillotine.Offcut:
		m.Want = Left
	}
	for k := range s.Makes {
		if s.Makes[k].Size == m.Size && s.Makes[k].Want == m.Want {
			s.Makes[k].Count++
			s.Makes[k].Of = together(s.Makes[k].Of, m.Of)
			return
		}
	}
	s.Makes = append(s.Makes, m)
}

// first is the want of the piece in a part that comes off first.
func (p *part) first() int {
	for len(p.parts) > 0 {
		p = p.parts[0]
	}
	return p.want
}

// wants are those that the pieces of a part are for.
func (p *part) wants() []int {
	var out []int
	p.leaves(func(q *part) {
		if q.kind != guillotine.Offcut {
			out = together(out, []int{q.want})
		}
	})
	return out
}

// together joins two lists of wants, each want once, in order.
func together(a, b []int) []int {
	for _, want := range b {
		if at, there := slices.BinarySearch(a, want); !there {
			a = slices.Insert(a, at, want)
		}
	}
	return a
}

// share counts the cuts of a step for the wants of what they free, in proportion
// and in whole cuts: each want gets what is due to it and those before it, less
// what those have.
func (c *cutter) share(cuts int, freed []int) {
	slices.Sort(freed)
	given := 0
	for k, want := range freed {
		due := cuts * (k + 1) / len(freed)
		c.shares[want] += due - given
		given = due
	}
}
