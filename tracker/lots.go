package tracker

import (
	"fmt"
	"slices"
	"strings"
)

// lotShare is what a request says of one lot.
type lotShare struct {
	lot    Lot
	count  CountAsked
	blocks []string // ids, in the order in which they were named
}

// shares finds the lots that a request is about. A count for no lot goes to
// the lot or the blocks that were named, else to the only lot with work left.
func (s State) shares(run []string, r LogRequest) ([]lotShare, error) {
	lots := s.lotsOf(run)
	if len(lots) == 0 {
		return nil, s.mixedRun(run)
	}
	var named *Lot
	if r.Lot != nil {
		lot, err := s.namedLot(*r.Lot, run, lots)
		if err != nil {
			return nil, err
		}
		named = &lot
	}
	blocks, err := s.namedBlocks(r.Blocks, run, lots)
	if err != nil {
		return nil, err
	}
	var shares []lotShare
	if len(r.Counts) > 0 && r.Counts[0].Lot != "" {
		shares, err = s.sharesByName(run, lots, named, r.Counts)
	} else {
		shares, err = s.onlyShare(run, lots, named, blocks, r.Counts)
	}
	if err != nil {
		return nil, err
	}
	return s.withBlocks(shares, blocks, run)
}

// lotsOf is the lots that have rows at both ends of a run, in the order of the
// first row's.
func (s State) lotsOf(run []string) []Lot {
	var lots []Lot
	for _, o := range s.Ledger.Operations {
		if o.Key != run[0] {
			continue
		}
		if _, ok := s.find(run[len(run)-1], o.Lot); ok {
			lots = append(lots, o.Lot)
		}
	}
	return lots
}

// namedLot is the lot of a run that was typed; of any kind where none was typed
// with its name. Between two it never guesses.
func (s State) namedLot(typed Lot, run []string, lots []Lot) (Lot, error) {
	found := lotsCalled(typed, lots)
	switch len(found) {
	case 0:
		return Lot{}, s.noLot(typed, run, lots)
	case 1:
		return found[0], nil
	}
	return Lot{}, s.manyLots(typed, run, found)
}

// lotsCalled is the lots of that name, and of that kind where one is given; in
// other capitals only where none has the name exactly.
func lotsCalled(typed Lot, lots []Lot) []Lot {
	var exact, folded []Lot
	for _, l := range lots {
		switch {
		case typed.Kind != "" && l.Kind != typed.Kind:
		case l.Name == typed.Name:
			exact = append(exact, l)
		case strings.EqualFold(l.Name, typed.Name):
			folded = append(folded, l)
		}
	}
	if len(exact) > 0 {
		return exact
	}
	return folded
}

// kindsOf is the kinds that there are among lots, each once.
func kindsOf(lots []Lot) []string {
	var kinds []string
	for _, l := range lots {
		if !slices.Contains(kinds, string(l.Kind)) {
			kinds = append(kinds, string(l.Kind))
		}
	}
	return kinds
}

// commonKind is the kind of all lots, "lot" where they are of several.
func commonKind(lots []Lot) string {
	if kinds := kindsOf(lots); len(kinds) == 1 {
		return kinds[0]
	}
	return "lot"
}

// sharesByName is one share for each lot that a count names.
func (s State) sharesByName(run []string, lots []Lot, named *Lot, counts []CountAsked) ([]lotShare, error) {
	if named != nil {
		return nil, &Refusal{Kind: WhichLot, What: fmt.Sprintf("%s is named, and so is %s in the count: name lots in one way only", named.Name, counts[0].Lot)}
	}
	var shares []lotShare
	for _, c := range counts {
		lot, err := s.namedLot(Lot{Name: c.Lot}, run, lots)
		if err != nil {
			return nil, err
		}
		if slices.ContainsFunc(shares, func(have lotShare) bool { return have.lot == lot }) {
			return nil, &Refusal{Kind: Ambiguous, What: fmt.Sprintf("%s has two counts: write one", lot.Name)}
		}
		shares = append(shares, lotShare{lot: lot, count: c})
	}
	return shares, nil
}

// onlyShare is the share of a count that names no lot.
func (s State) onlyShare(run []string, lots []Lot, named *Lot, blocks []lotBlocks, counts []CountAsked) ([]lotShare, error) {
	if named == nil && len(blocks) > 1 {
		return nil, &Refusal{Kind: WhichLot, What: fmt.Sprintf("the blocks are of %s and %s: write a count for each", blocks[0].lot.Name, blocks[1].lot.Name)}
	}
	if named == nil && len(blocks) == 1 {
		named = &blocks[0].lot
	}
	if named != nil {
		lots = []Lot{*named}
	}
	open := s.withWork(run, lots)
	switch {
	case len(open) == 0:
		return nil, s.noneLeft(run, sharesOf(lots))
	case len(counts) == 0:
		return nil, s.whatIsLeft(MissingCount, "how many?", run, open)
	case len(open) > 1:
		return nil, s.whatIsLeft(WhichLot, fmt.Sprintf("which %s?", commonKind(open)), run, open)
	}
	return []lotShare{{lot: open[0], count: counts[0]}}, nil
}

// withWork is the lots that have work left in a run.
func (s State) withWork(run []string, lots []Lot) []Lot {
	var open []Lot
	for _, lot := range lots {
		if s.firstOpen(run, lot) >= 0 {
			open = append(open, lot)
		}
	}
	return open
}

// firstOpen is the lot's first row of a run with work left, -1 where it has
// none.
func (s State) firstOpen(run []string, lot Lot) int {
	for _, key := range run {
		if at, ok := s.find(key, lot); ok && s.board.left(at) > 0 {
			return at
		}
	}
	return -1
}

// withBlocks gives each share the blocks that were named of its lot.
func (s State) withBlocks(shares []lotShare, blocks []lotBlocks, run []string) ([]lotShare, error) {
	for _, named := range blocks {
		at := slices.IndexFunc(shares, func(share lotShare) bool { return share.lot == named.lot })
		if at < 0 {
			return nil, &Refusal{Kind: UnknownBlock, What: fmt.Sprintf("%s is a block of %s, and the count is of %s",
				named.ids[0], named.lot.Name, shares[0].lot.Name)}
		}
		shares[at].blocks = named.ids
	}
	for _, share := range shares {
		if err := s.oneMeaning(run, share); err != nil {
			return nil, err
		}
	}
	return shares, nil
}

// oneMeaning refuses a bare number for a run whose operations count different
// things.
func (s State) oneMeaning(run []string, share lotShare) error {
	if share.count.All || share.count.Blocks {
		return nil
	}
	first := -1
	for _, key := range run {
		at, ok := s.find(key, share.lot)
		if !ok {
			continue
		}
		if first < 0 {
			first = at
		}
		a, b := s.board.rows[first], s.board.rows[at]
		if a.CountedIn != b.CountedIn || a.PerBlock != b.PerBlock {
			return &Refusal{Kind: MissingCount, Hint: "write the count in blocks, such as 4 blocks, or all",
				What: fmt.Sprintf("%d of what? %s counts %s, %s counts %s", share.count.Number,
					a.Title(), counted(a), b.Title(), counted(b))}
		}
	}
	return nil
}

// counted is what a row counts, and how many of it make a block.
func counted(o Operation) string {
	unit := plural(2, o.CountedIn)
	if o.PerBlock > 0 {
		return fmt.Sprintf("%s, %d a block", unit, o.PerBlock)
	}
	return unit
}

// sharesOf is lots of which nothing was asked yet.
func sharesOf(lots []Lot) []lotShare {
	shares := make([]lotShare, len(lots))
	for i, lot := range lots {
		shares[i] = lotShare{lot: lot}
	}
	return shares
}
