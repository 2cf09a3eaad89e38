package tracker

import (
	"fmt"
	"slices"
	"sort"
	"strings"
)

// refusal is one about a row, with its numbers.
func (b *board) refusal(kind RefusalKind, row int, what string) *Refusal {
	return &Refusal{Kind: kind, What: what, Done: b.done(row), Count: b.rows[row].Count, Left: b.left(row)}
}

// tooMany is more than a row has left: "tide has 4 pairs left to chain-sew (12
// of 16 made), not 5"; or it has none.
func (b *board) tooMany(row, n int) *Refusal {
	o, left := b.rows[row], b.left(row)
	if left == 0 {
		return b.refusal(NothingLeft, row, b.already(row))
	}
	return b.refusal(TooMany, row, fmt.Sprintf("%s has %s left %s (%d of %d made), not %d",
		o.Lot.Name, things(left, o.CountedIn), b.doing(row), b.done(row), o.Count, n))
}

// notByBlock is a block named for a row that does not count by block. The block
// that is tested may be named for its test.
func (b *board) notByBlock(row int, blocks []string) error {
	for _, rule := range b.rules[row] {
		if rule.sort != firstBlock {
			continue
		}
		first := b.blocksOf(rule.earlier[0])[0]
		if len(blocks) == 1 && blocks[0] == first {
			return nil
		}
		return b.refusal(UnknownBlock, row, fmt.Sprintf("%s is of %s, not of %s", b.rows[row].Title(), first, andList(blocks)))
	}
	return b.refusal(UnknownBlock, row, fmt.Sprintf("%s is not counted by block: leave the block out", b.rows[row].Title()))
}

// notIn is a count in things that a row does not count.
func (b *board) notIn(row int, word string) *Refusal {
	o := b.rows[row]
	return b.refusal(MissingCount, row, fmt.Sprintf("%s counts %s, not %s: %s has %s left",
		o.Title(), plural(2, o.CountedIn), word, o.Lot.Name, things(b.left(row), o.CountedIn)))
}

// nothingForBlock is a block that was named and gets nothing.
func (d *draft) nothingForBlock(row, n int, block string) *Refusal {
	o := d.rows[row]
	if d.roomAt(row, block) == 0 {
		return d.refusal(TooMany, row, fmt.Sprintf("block %s has all %s of %s already", block, things(o.PerBlock, o.CountedIn), o.Title()))
	}
	return d.refusal(MissingCount, row, fmt.Sprintf("%s %s not enough for %s too: %s takes %d a block",
		things(n, o.CountedIn), isOrAre(n), block, o.Title(), o.PerBlock))
}

// tooManyForBlocks is more than the named blocks have room for.
func (d *draft) tooManyForBlocks(row, n int, blocks []string) *Refusal {
	o, room := d.rows[row], 0
	for _, id := range blocks {
		room += d.roomAt(row, id)
	}
	has := "has"
	if len(blocks) > 1 {
		has = "have"
	}
	return d.refusal(TooMany, row, fmt.Sprintf("%s %s room for %s in %s, not %d", andList(blocks), has, things(room, o.CountedIn), o.Title(), n))
}

// outOfOrder is work whose turn has not come. Was is the row's tally without
// it.
func (d *draft) outOfOrder(row, n int, blocks []BlockCount, was tally, l lack) *Refusal {
	o := d.rows[row]
	reason := d.reason(l)
	d.tallies[row] = was
	what := fmt.Sprintf("%s is not ready for %s: %s", o.Lot.Name, o.Title(), reason)
	switch named := blockNames(blocks); {
	case len(named) > 0 && l.block != "" && !slices.Contains(named, l.block):
		what = fmt.Sprintf("naming %s moves other counts of %s on to %s, which is not ready: %s", andList(named), o.Title(), l.block, reason)
	case len(named) > 0:
		if l.block != "" {
			named = []string{l.block}
		}
		what = fmt.Sprintf("%s %s not ready for %s: %s", andList(named), isOrAre(len(named)), o.Title(), reason)
	default:
		if room := d.room(row, n-1); room > 0 {
			what = fmt.Sprintf("%s is ready for %d more %s in %s, not %d: %s", o.Lot.Name, room, plural(room, o.CountedIn), o.Title(), n, reason)
		}
	}
	r := d.refusal(OutOfOrder, row, what)
	r.Hint = fmt.Sprintf("log %s first, or catch up (--catch-up)", d.rows[l.earlier()].Title())
	if l.rule.sort == firstBlock {
		r.Hint = fmt.Sprintf("sew %s first: log its steps with --block %s, or catch up (--catch-up)", l.block, l.block)
	}
	return r
}

// blockNames is the ids of blocks that were named.
func blockNames(blocks []BlockCount) []string {
	names := make([]string, len(blocks))
	for i, b := range blocks {
		names[i] = b.Block
	}
	return names
}

// room is how many counts, at most most, a row could take now without a block
// being named.
func (d *draft) room(row, most int) int {
	was, before := d.tallies[row], d.at(row)
	defer func() { d.tallies[row] = was }()
	return sort.Search(most, func(n int) bool {
		d.tallies[row] = was.copied()
		d.tallies[row].put(n+1, nil)
		return len(d.lacks(row, before)) > 0
	})
}

// reason says what an earlier row is short of, with its numbers.
func (b *board) reason(l lack) string {
	o := b.rows[l.earlier()]
	all := things(o.Count, o.CountedIn)
	switch l.rule.sort {
	case pool:
		return fmt.Sprintf("%s has %d of %s of %s made, %d needed", o.Title(), l.have, all, o.Lot.Name, l.want)
	case quiltBlocks:
		return fmt.Sprintf("%s has %d of its blocks made, %d needed", o.Title(), l.have, l.want)
	case proportion:
		if o.Lot != b.rows[l.rule.later].Lot {
			all += " of " + o.Lot.Name
		}
		return fmt.Sprintf("%s has %d of %s made", o.Title(), l.have, all)
	}
	there := "none"
	if l.have > 0 {
		there = fmt.Sprintf("%d of %d", l.have, l.want)
	}
	return fmt.Sprintf("%s has %d of %s made, %s at %s", o.Title(), b.done(l.earlier()), all, there, l.block)
}

// beyondPlan is a catch-up that would take more from a row than it can have.
func (b *board) beyondPlan(l lack) *Refusal {
	r := b.refusal(OutOfOrder, l.earlier(), b.reason(l))
	r.Hint = "revise the job: its plan has too few"
	return r
}

// whatIsLeft asks for what the request leaves open, and says what is left.
func (s State) whatIsLeft(kind RefusalKind, question string, run []string, open []Lot) *Refusal {
	kinds := commonKind(open)
	name := func(lot Lot) string {
		if kinds == string(lot.Kind) {
			return lot.Name
		}
		return lot.words()
	}
	var items []string
	for _, lot := range open {
		at := s.firstOpen(run, lot)
		o := s.board.rows[at]
		item := fmt.Sprintf("%d of %s for %s", s.board.left(at), things(o.Count, o.CountedIn), name(lot))
		if len(run) > 1 {
			item += " in " + o.Title()
		}
		items = append(items, item)
	}
	r := &Refusal{Kind: kind, What: fmt.Sprintf("%s left in %s: %s", question, s.board.runTitle(run), andList(items))}
	if len(open) == 1 {
		r = s.board.refusal(kind, s.firstOpen(run, open[0]), r.What)
	}
	r.Near = lotNames(open)
	r.Hint = fmt.Sprintf("write a count such as 12, 4 blocks or all; for several lots such as %s=12", open[0].Name)
	if kind == WhichLot {
		r.Hint = fmt.Sprintf("say which, such as --lot %s:%s or %s=12", open[0].Kind, open[0].Name, open[0].Name)
	}
	return r
}

// noneLeft is a run that is done for all lots, or blocks of them, that are
// meant.
func (s State) noneLeft(run []string, shares []lotShare) *Refusal {
	if at, ok := s.find(run[0], shares[0].lot); ok && len(run) == 1 && len(shares) == 1 {
		return s.board.tooMany(at, 0)
	}
	var names []string
	for _, share := range shares {
		if len(share.blocks) > 0 {
			names = append(names, share.blocks...)
		} else {
			names = append(names, share.lot.Name)
		}
	}
	return &Refusal{Kind: NothingLeft, What: fmt.Sprintf("%s is done already for %s", s.board.runTitle(run), andList(names))}
}

// mixedRun is a run whose ends have no lot in common.
func (s State) mixedRun(run []string) *Refusal {
	kind := func(key string) string { return andList(kindsOf(s.lotsOf([]string{key}))) }
	first, last := run[0], run[len(run)-1]
	return &Refusal{Kind: WhichLot, Hint: "log them one after the other",
		What: fmt.Sprintf("%s goes by %s and %s by %s: no lot goes through both", s.board.titleOf(first), kind(first), s.board.titleOf(last), kind(last))}
}

// noLot is a lot that an operation does not have.
func (s State) noLot(typed Lot, run []string, lots []Lot) *Refusal {
	ofKind := slices.DeleteFunc(slices.Clone(lots), func(l Lot) bool { return typed.Kind != "" && l.Kind != typed.Kind })
	r := &Refusal{Kind: UnknownLot}
	if len(ofKind) == 0 {
		r.What = fmt.Sprintf("%s goes by %s, not by %s: %s", s.board.runTitle(run), andList(kindsOf(lots)), typed.Kind, andList(lotNames(lots)))
		return r
	}
	names := lotNames(ofKind)
	none := fmt.Sprintf("%s has no %s %s", s.board.runTitle(run), commonKind(ofKind), quoted(typed.Name))
	if r.Near = s.lotsNear(typed.Name, names); len(r.Near) > 0 {
		r.What = none + "; " + thereIs(r.Near)
	} else {
		r.What = none + ": it has " + andList(names)
	}
	return r
}

// manyLots is a name that several lots have.
func (s State) manyLots(typed Lot, run []string, found []Lot) *Refusal {
	r := &Refusal{Kind: Ambiguous}
	var names, forms []string
	for _, l := range found {
		names = append(names, l.words())
		forms = append(forms, fmt.Sprintf("--lot %s:%s", l.Kind, l.Name))
		r.Near = append(r.Near, l.Name)
	}
	r.Hint = "say which: " + strings.Join(forms, " or ")
	r.What = fmt.Sprintf("%s may be more than one lot of %s: %s", quoted(typed.Name), s.board.runTitle(run), andList(names))
	return r
}

// words is a lot where its name alone could be another's.
func (l Lot) words() string { return string(l.Kind) + " " + l.Name }

// lotNames is the names of lots.
func lotNames(lots []Lot) []string {
	names := make([]string, len(lots))
	for i, l := range lots {
		names[i] = l.Name
	}
	return names
}

// lotsNear is the names that may have been meant; first of all a colourway's
// present name where its old one was typed.
func (s State) lotsNear(typed string, names []string) []string {
	for _, name := range names {
		if was, ok := s.Ledger.Renamed[name]; ok && strings.EqualFold(was, typed) {
			return []string{name}
		}
	}
	return Nearest(typed, names)
}
