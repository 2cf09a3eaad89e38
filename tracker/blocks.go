package tracker

import (
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner"
)

// lotBlocks is blocks of one colourway that were named, in that order.
type lotBlocks struct {
	lot Lot
	ids []string
}

// namedBlocks finds the blocks that were typed and puts those of one colourway
// together.
func (s State) namedBlocks(typed []string, run []string, lots []Lot) ([]lotBlocks, error) {
	var all []lotBlocks
	for _, text := range typed {
		id, err := s.block(text)
		if err != nil {
			return nil, err
		}
		lot := Lot{planner.ColourwayLot, s.board.live[id].Colourway}
		if !slices.Contains(lots, lot) {
			return nil, s.noLot(lot, run, lots)
		}
		at := slices.IndexFunc(all, func(have lotBlocks) bool { return have.lot == lot })
		if at < 0 {
			at = len(all)
			all = append(all, lotBlocks{lot: lot})
		}
		if slices.Contains(all[at].ids, id) {
			return nil, &Refusal{Kind: Ambiguous, What: fmt.Sprintf("block %s is named twice", id)}
		}
		all[at].ids = append(all[at].ids, id)
	}
	return all, nil
}

// block finds a block by its id; tide-3 is tide-03.
func (s State) block(typed string) (string, error) {
	text := strings.TrimSpace(typed)
	if _, ok := s.board.live[text]; ok {
		return text, nil
	}
	stem, n := splitID(text)
	var retired string
	for _, b := range s.Ledger.Blocks {
		name, number := splitID(b.ID)
		if n < 0 || number != n || !strings.EqualFold(name, stem) {
			continue
		}
		if !b.Retired {
			return b.ID, nil
		}
		retired = b.ID
	}
	if retired != "" {
		return "", &Refusal{Kind: UnknownBlock, What: fmt.Sprintf("block %s is no longer in the job: it was revised without it", retired)}
	}
	return "", s.noBlock(typed, stem)
}

// noBlock is a text that is no block. The colourway is looked at first: whoever
// mistypes it knows the number.
func (s State) noBlock(typed, stem string) *Refusal {
	r := &Refusal{Kind: UnknownBlock}
	none := "there is no block " + quoted(typed)
	_, number := splitID(typed)
	for _, c := range Nearest(stem, s.Ledger.Colourways) {
		ids := s.board.blocks[c]
		if len(ids) == 0 {
			continue
		}
		if strings.EqualFold(c, stem) {
			r.Near = []string{ids[0], ids[len(ids)-1]}
			r.What = fmt.Sprintf("%s: %s has %d, from %s to %s", none, c, len(ids), ids[0], ids[len(ids)-1])
			return r
		}
		for _, id := range ids {
			if _, n := splitID(id); n == number {
				r.Near = append(r.Near, id)
			}
		}
	}
	switch {
	case len(r.Near) > 0:
		r.What = none + "; " + thereIs(r.Near)
	case len(s.board.order) > 0:
		r.What = none + ": a block is called such as " + s.board.order[0]
	default:
		r.What = none
	}
	return r
}
