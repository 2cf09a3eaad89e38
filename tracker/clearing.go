package tracker

import (
	"fmt"
	"maps"
)

// mostBuiltOn is how many entries a refusal to undo names.
const mostBuiltOn = 5

// clearing looks for what has to be undone before an entry can be.
type clearing struct {
	s       State
	gone    map[string]bool // ids of entries that are undone, or are to be first
	waiting map[string]bool // ids of entries that are being cleared
	first   []Entry         // to be undone first, in that order
	more    bool            // and there are more
}

// clear finds what has to be undone before target. Each entry that it finds was
// looked at in the same way first: undone in that order, none of them is refused.
func (s State) clear(target Entry) *clearing {
	c := &clearing{s: s, gone: s.undone(), waiting: map[string]bool{}}
	c.clear(target)
	return c
}

// clear finds what rests on an entry, and before that what rests on those.
func (c *clearing) clear(target Entry) {
	c.waiting[target.ID] = true
	for !c.more {
		e, found := c.newestOn(c.brokenWithout(target))
		if !found {
			return
		}
		c.clear(e)
		if len(c.first) == mostBuiltOn {
			c.more = true
			return
		}
		c.gone[e.ID] = true
		c.first = append(c.first, e)
	}
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

// newestOn is the newest entry that stands and says something of one of the
// rows.
func (c *clearing) newestOn(rows map[rowKey]bool) (Entry, bool) {
	for i := len(c.s.Entries) - 1; i >= 0 && len(rows) > 0; i-- {
		e := c.s.Entries[i]
		if c.gone[e.ID] || c.waiting[e.ID] {
			continue
		}
		for _, p := range e.Parts {
			if rows[rowKey{p.Operation, p.Lot}] {
				return e, true
			}
		}
	}
	return Entry{}, false
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

// refusal names what has to be undone first.
func (c *clearing) refusal(target Entry) *Refusal {
	r := &Refusal{Kind: BuiltOn}
	var names []string
	for _, e := range c.first {
		r.Near = append(r.Near, e.ID)
		names = append(names, c.s.describe(e))
	}
	if c.more {
		names = append(names, "more")
	}
	r.What = fmt.Sprintf("other work rests on %s: undo first %s", c.s.describe(target), andList(names))
	return r
}
