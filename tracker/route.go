package tracker

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner"
)

// rowKey names one row of a route: an operation for one lot.
type rowKey struct {
	key string
	lot Lot
}

// route is a ledger with everything found: it is made once a revision and
// never changed.
type route struct {
	rows   []Operation
	index  map[rowKey]int
	rules  [][]*rule           // by row: what has to come before it
	next   [][]int             // by row: the rows that have a rule about it
	blocks map[string][]string // by colourway: its live blocks in order of their ids
	live   map[string]Block
	known  map[string]Block // retired ones too
	order  []string         // live blocks by quilt, then place
}

// newRoute finds everything in a ledger. Its errors are those of a ledger that
// no planner made.
func newRoute(l Ledger) (*route, error) {
	r := &route{
		rows: l.Operations, index: make(map[rowKey]int, len(l.Operations)),
		rules: make([][]*rule, len(l.Operations)), next: make([][]int, len(l.Operations)),
		blocks: map[string][]string{}, live: map[string]Block{}, known: map[string]Block{},
	}
	if err := r.findBlocks(l.Blocks); err != nil {
		return nil, err
	}
	for i, o := range r.rows {
		k := rowKey{o.Key, o.Lot}
		if _, twice := r.index[k]; twice {
			return nil, fmt.Errorf("%s has two rows for %s", o.Key, o.Lot.Name)
		}
		if o.Count < 0 || o.PerBlock < 0 {
			return nil, fmt.Errorf("%s of %s has a count below 0", o.Key, o.Lot.Name)
		}
		if blocks := len(r.blocks[o.Lot.Name]); r.byBlock(i) && o.Count != o.PerBlock*blocks {
			return nil, fmt.Errorf("%s of %s has %d counts for %d blocks of %d", o.Key, o.Lot.Name, o.Count, blocks, o.PerBlock)
		}
		r.index[k] = i
	}
	if err := r.findRules(); err != nil {
		return nil, err
	}
	return r, r.noCircle()
}

// findBlocks sorts out which blocks are live and in which order counts reach
// them.
func (r *route) findBlocks(blocks []Block) error {
	for _, b := range blocks {
		if _, twice := r.known[b.ID]; twice {
			return fmt.Errorf("two blocks are called %s", b.ID)
		}
		r.known[b.ID] = b
		if b.Retired {
			continue
		}
		r.live[b.ID] = b
		r.order = append(r.order, b.ID)
		r.blocks[b.Colourway] = append(r.blocks[b.Colourway], b.ID)
	}
	for _, ids := range r.blocks {
		slices.SortFunc(ids, compareIDs)
	}
	return nil
}

// compareIDs orders block ids by number, then text: tide-99 is before
// tide-100, whatever name the colourway had when each was given.
func compareIDs(a, b string) int {
	_, m := splitID(a)
	_, n := splitID(b)
	return cmp.Or(cmp.Compare(m, n), cmp.Compare(a, b))
}

// splitID parts a block id into its colourway and its number, which is -1
// where the id has none.
func splitID(id string) (string, int) {
	hyphen := strings.LastIndexByte(id, '-')
	n, err := strconv.Atoi(id[hyphen+1:])
	if hyphen < 0 || err != nil || n < 0 {
		return id, -1
	}
	return id[:hyphen], n
}

// byBlock reports whether a row's counts belong to blocks.
func (r *route) byBlock(row int) bool {
	o := r.rows[row]
	return o.Lot.Kind == planner.ColourwayLot && o.PerBlock > 0
}

// blocksOf is the live blocks of a row's lot in order of their ids.
func (r *route) blocksOf(row int) []string {
	return r.blocks[r.rows[row].Lot.Name]
}

// findRules turns every After into rules, and notes who waits for whom.
func (r *route) findRules() error {
	for i := range r.rows {
		rules, err := r.rulesFor(i)
		if err != nil {
			return err
		}
		r.rules[i] = rules
		for _, rule := range rules {
			for _, earlier := range rule.earlier {
				r.next[earlier] = append(r.next[earlier], i)
			}
		}
	}
	return nil
}

var errCircle = errors.New("its operations wait for each other in a circle")

// noCircle makes sure that the rules can be followed back to a beginning.
func (r *route) noCircle() error {
	const onTheWay, done = 1, 2
	state := make([]int, len(r.rows))
	var visit func(row int) error
	visit = func(row int) error {
		switch state[row] {
		case onTheWay:
			return fmt.Errorf("%w through %s", errCircle, r.rows[row].Key)
		case done:
			return nil
		}
		state[row] = onTheWay
		for _, next := range r.next[row] {
			if err := visit(next); err != nil {
				return err
			}
		}
		state[row] = done
		return nil
	}
	for row := range r.rows {
		if err := visit(row); err != nil {
			return err
		}
	}
	return nil
}
