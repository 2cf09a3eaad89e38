package planner

import (
	"cmp"
	"slices"
	"strings"
)

// Spot is a place in a run's tops. Row and Column count from 1 in its quilt.
type Spot struct{ Quilt, Row, Column int }

// Spot is where the block lies.
func (b Block) Spot() Spot { return Spot{b.Quilt, b.Row, b.Column} }

// Exchanged puts two blocks into each other's places, with the turn that belongs
// there. It returns new values; how the blocks are pressed stays theirs.
func Exchanged(a, b Block) (Block, Block) {
	a.Quilt, b.Quilt = b.Quilt, a.Quilt
	a.Row, b.Row = b.Row, a.Row
	a.Column, b.Column = b.Column, a.Column
	a.Turn, b.Turn = b.Turn, a.Turn
	return a, b
}

// TurnWords says which blocks lie on their heads, "" for none.
func (e SwapEffect) TurnWords() string {
	if len(e.Overturned) == 0 {
		return ""
	}
	verb := "lie on their heads"
	if len(e.Overturned) == 1 {
		verb = "lies on its head"
	}
	return listed(e.Overturned, "and") + " " + verb + " now: the place has half a turn for seams to nest, which the blocks planned there do not show"
}

// SewsBlocks reports whether an operation, by its key, is the first that sews a top's
// blocks to something: after it they do not change places without the ripper.
func SewsBlocks(key string) bool {
	return key == keySewRows || key == keySewSashing || key == keySewBorder
}

// swap has blocks change places that did so on the floor. It comes last: cards,
// kits and counts are those of the layout as it was dealt, since blocks are cut,
// pressed and counted by their ids wherever they lie.
func (m *maker) swap() {
	if len(m.prior.Amend.Swaps) == 0 {
		return
	}
	dealt := m.plan
	dealt.Blocks = slices.Clone(m.plan.Blocks)
	at := make(map[string]int, len(m.plan.Blocks))
	for i, b := range m.plan.Blocks {
		at[b.ID] = i
	}
	for _, s := range m.prior.Amend.Swaps {
		a, there := at[s.A]
		b, too := at[s.B]
		if !there || !too || a == b {
			m.warn(warnSwapGone, "", "%s and %s no longer change places: %s", s.A, s.B, gone(s, there, too))
			continue
		}
		blocks := m.plan.Blocks
		blocks[a], blocks[b] = Exchanged(blocks[a], blocks[b])
		m.plan.Press.Half = halfTurns(m.plan.Press.Half, s)
		m.plan.Swaps = append(m.plan.Swaps, s)
	}
	slices.SortFunc(m.plan.Blocks, func(a, b Block) int {
		return cmp.Or(cmp.Compare(a.Quilt, b.Quilt), cmp.Compare(a.Row, b.Row), cmp.Compare(a.Column, b.Column))
	})
	effect := Swapped(dealt, m.plan, m.swapped()...)
	m.rejoin(effect)
	m.warnSwapped(effect)
}

// rejoin counts the first quilt's joins anew where blocks changed places.
func (m *maker) rejoin(effect SwapEffect) {
	m.plan.Joins = slices.Clone(m.plan.Joins)
	for i := range m.plan.Joins {
		t := &m.plan.Joins[i].Matches
		for n, now := range effect.is {
			was := effect.was[n].Matches
			if now.At.Quilt == 1 && now.kind == m.plan.Joins[i].Between {
				t.Clash += now.Matches.Clash - was.Clash
				t.Nest += now.Matches.Nest - was.Nest
				t.Open += now.Matches.Open - was.Open
				t.Near += now.Matches.Near - was.Near
			}
		}
	}
}

// gone says which of two blocks the job no longer has.
func gone(s Swap, first, second bool) string {
	switch {
	case !first && !second:
		return "neither is in the job any more"
	case !first:
		return s.A + " is no longer in the job"
	}
	return s.B + " is no longer in the job"
}

// halfTurns is the blocks with half a turn after two have changed places: the turn
// stays where it is.
func halfTurns(half []string, s Swap) []string {
	a, b := slices.Index(half, s.A), slices.Index(half, s.B)
	if (a < 0) == (b < 0) {
		return half
	}
	half = slices.Clone(half)
	if a >= 0 {
		half[a] = s.B
	} else {
		half[b] = s.A
	}
	return half
}

// warnSwapped says where blocks that changed places clash more than those that
// were planned there, and what helps.
func (m *maker) warnSwapped(effect SwapEffect) {
	if len(effect.Overturned) > 0 {
		m.warn(warnSwapTurned, "", "%s", effect.TurnWords())
	}
	if len(effect.Worse) == 0 {
		return
	}
	text := "blocks that changed places clash with their neighbours: " + effect.JoinWords()
	if help := effect.HelpWords(); help != "" {
		text += ". " + help
	}
	m.warn(warnSwapClash, "", "%s", text)
}

// swapped is the blocks that changed places, each once.
func (m *maker) swapped() []string {
	var ids []string
	for _, s := range m.plan.Swaps {
		for _, id := range [...]string{s.A, s.B} {
			if !slices.Contains(ids, id) {
				ids = append(ids, id)
			}
		}
	}
	return ids
}

// The codes of warnings about swaps.
const (
	warnSwapGone  = "swap-gone"
	warnSwapClash = "swap-clash"

	warnSwapTurned = "swap-turned"
)

// JoinWords says which joins clash more than before, one after another.
func (e SwapEffect) JoinWords() string {
	said := make([]string, len(e.Worse))
	for i, j := range e.Worse {
		said[i] = j.Words()
	}
	return strings.Join(said, "; ")
}
