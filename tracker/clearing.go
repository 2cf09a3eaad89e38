package tracker

import (
	"fmt"
	"maps"
	"slices"
)

// mostBuiltOn is how many entries a refusal to undo names.
const mostBuiltOn = 5

// clearing looks for what has to be undone before an entry can be.
type clearing struct {
	s       State
	gone    map[string]bool // ids of entries that are undone, or are to be first
	waiting map[string]bool // ids of entries that are being cleared
	tied    []Entry         // that cannot be cleared: they rest on what rests on them
	first   []Entry         // to be undone first, in that order
	more    bool            // and there are more
	knot    bool            // nothing that is undone first would do
}

// clear finds what has to be undone before target. Each entry that it finds was
// looked at in the same way first: undone in that order, none of them is refused.
func (s State) clear(target Entry) *clearing {
	c := &clearing{s: s, gone: s.undone(), waiting: map[string]bool{}}
	c.knot = !c.clear(target)
	return c
}

// clear finds what rests on an entry, and before that what rests on those. It
// reports false, and has found nothing, where all that could be undone first rests
// on the entry itself: once a third that covered for both is undone, each of two
// may need the other.
func (c *clearing) clear(target Entry) bool {
	c.waiting[target.ID] = true
	defer delete(c.waiting, target.ID)
	for found := len(c.first); !c.more; {
		rows := c.brokenWithout(target)
		e, ok := c.newestOn(rows)
		switch {
		case !ok && c.tiedOn(rows):
			c.forget(found)
			return false
		case !ok:
			return true
		case !c.clear(e):
			c.tied = append(c.tied, e)
		case len(c.first) == mostBuiltOn:
			c.more = true
		default:
			c.gone[e.ID] = true
			c.first = append(c.first, e)
		}
	}
	return true
}

// forget takes back what was found beyond the first n.
func (c *clearing) forget(n int) {
	for _, e := range c.first[n:] {
		delete(c.gone, e.ID)
	}
	c.first = c.first[:n]
}

// brokenWithout is the rows that would break a rule without an entry. A rule
// that is broken now, or was when the entry came, was broken by a recount and
// is no reason to keep it.
func (c *clearing) brokenWithout(target Entry) map[rowKey]bool {
	gone := maps.Clone(c.gone)
	gone[target.ID] = true
	without, err := replay(c.s.events, gone)
	if err != nil { // not with events that were folded before
		return nil
	}
	broken := without.board.faults()
	forgive(broken, c.s.board.faults())
	if len(broken) > 0 {
		at, _ := c.s.at(target.ID)
		then, err := Fold(c.s.events[:at:at])
		if err != nil {
			return nil
		}
		forgive(broken, then.board.faults())
	}
	rows := map[rowKey]bool{}
	for f := range broken {
		rows[f.row] = true
	}
	return rows
}

// forgive leaves out what is no worse than it was known to be.
func forgive(broken, known map[fault]int) {
	maps.DeleteFunc(broken, func(f fault, n int) bool { return n <= known[f] })
}

// newestOn is the newest entry that stands, may be cleared and says something of
// one of the rows.
func (c *clearing) newestOn(rows map[rowKey]bool) (Entry, bool) {
	for i := len(c.s.Entries) - 1; i >= 0 && len(rows) > 0; i-- {
		e := c.s.Entries[i]
		if !c.gone[e.ID] && !c.waiting[e.ID] && !c.isTied(e) && e.isOf(rows) {
			return e, true
		}
	}
	return Entry{}, false
}

func (c *clearing) isTied(e Entry) bool {
	return slices.ContainsFunc(c.tied, func(t Entry) bool { return t.ID == e.ID })
}

// tiedOn reports whether entries that cannot be undone before the one that is
// being cleared say something of the rows.
func (c *clearing) tiedOn(rows map[rowKey]bool) bool {
	return slices.ContainsFunc(c.s.Entries, func(e Entry) bool {
		return !c.gone[e.ID] && (c.isTied(e) || c.waiting[e.ID]) && e.isOf(rows)
	})
}

// isOf reports whether the entry says something of one of the rows.
func (e Entry) isOf(rows map[rowKey]bool) bool {
	return slices.ContainsFunc(e.Parts, func(p Part) bool { return rows[rowKey{p.Operation, p.Lot}] })
}

// fault is a rule that a row breaks; without an earlier row, counts that it has
// no room for. It holds names, since the route may be revised between two
// looks at it.
type fault struct {
	row, earlier rowKey
	block        string
}

// faults is everything that is out of order, each with how much: 1 for a rule.
func (b *board) faults() map[fault]int {
	all := map[fault]int{}
	for row, o := range b.rows {
		key := rowKey{o.Key, o.Lot}
		if spare := b.spare(row); spare > 0 {
			all[fault{row: key}] = spare
		}
		for _, l := range b.lacks(row, nil) {
			earlier := b.rows[l.earlier()]
			all[fault{row: key, earlier: rowKey{earlier.Key, earlier.Lot}, block: l.block}] = 1
		}
	}
	return all
}

// refusal names what has to be undone first, or what stands in each other's way.
func (c *clearing) refusal(target Entry) *Refusal {
	r := &Refusal{Kind: BuiltOn}
	others := c.first
	if c.knot {
		others = c.tied
	}
	var names []string
	for _, e := range others {
		r.Near = append(r.Near, e.ID)
		names = append(names, c.s.describe(e))
	}
	if c.more {
		names = append(names, "more")
	}
	r.What = fmt.Sprintf("other work rests on %s: undo first %s", c.s.describe(target), andList(names))
	if c.knot {
		r.What = fmt.Sprintf("other work rests on %s, and none of it can be taken back first: %s", c.s.describe(target), andList(names))
		r.Hint = "set each operation to what lies on the table with recount"
	}
	return r
}
