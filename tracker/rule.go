package tracker

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner"
)

// ruleSort is how far a row has to be before another can go on.
type ruleSort uint8

const (
	eachBlock   ruleSort = iota + 1 // every block that is touched has to be through the earlier row
	firstBlock                      // the lot's first block has to be: it is the one that is tested
	pool                            // blocks, or the row as a whole, take cut pieces or units, and only what is made can be taken
	quiltBlocks                     // as large a share of the quilt's blocks as is worked on
	proportion                      // as large a share of the earlier row as of the later
)

// rule is one thing that a row waits for.
type rule struct {
	sort    ruleSort
	later   int
	earlier []int          // one row; for quiltBlocks one per colourway
	takes   map[string]int // pool: pieces that each block takes; at "" what the whole row takes
	makes   int            // pool of a whole row: its counts that come of one piece, 0 for in proportion
	quilt   int            // quiltBlocks: which quilt, 0 for all
}

// rulesFor turns what a row comes after into rules. Rows of several colourways
// that one quilt waits for are one rule.
func (r *route) rulesFor(later int) ([]*rule, error) {
	var rules []*rule
	seen := map[int]bool{}
	for _, ref := range r.rows[later].After {
		earlier, ok := r.index[rowKey{ref.Key, ref.Lot}]
		if !ok {
			return nil, fmt.Errorf("%s of %s waits for %s of %s, which is not in the route",
				r.rows[later].Key, r.rows[later].Lot.Name, ref.Key, ref.Lot.Name)
		}
		if seen[earlier] {
			continue
		}
		seen[earlier] = true
		made := r.ruleFor(later, earlier, ref)
		if made.sort == quiltBlocks && r.joined(rules, made) {
			continue
		}
		rules = append(rules, made)
	}
	return rules, nil
}

// ruleFor picks the rule by what the two rows count: block by block where both
// do, from the pool where pieces become blocks, else in proportion.
func (r *route) ruleFor(later, earlier int, ref Ref) *rule {
	made := &rule{sort: proportion, later: later, earlier: []int{earlier}}
	sameLot := r.rows[later].Lot == r.rows[earlier].Lot
	switch {
	case r.byBlock(earlier) && r.byBlock(later) && sameLot:
		made.sort = eachBlock
	case r.byBlock(earlier) && sameLot:
		made.sort = firstBlock
	case len(ref.Takes) > 0 && (r.byBlock(later) || ref.Takes[0].Block == ""):
		made.sort, made.makes = pool, ref.Makes
		made.takes = make(map[string]int, len(ref.Takes))
		for _, t := range ref.Takes {
			made.takes[t.Block] += t.Count
		}
	case r.byBlock(earlier) && r.rows[later].Lot.Kind == planner.QuiltLot:
		made.sort = quiltBlocks
		made.quilt = quiltNumber(r.rows[later].Lot)
	}
	return made
}

// joined puts a rule about another colourway's blocks together with its like.
func (r *route) joined(rules []*rule, made *rule) bool {
	key := r.rows[made.earlier[0]].Key
	at := slices.IndexFunc(rules, func(have *rule) bool {
		return have.sort == quiltBlocks && r.rows[have.earlier[0]].Key == key
	})
	if at < 0 {
		return false
	}
	rules[at].earlier = append(rules[at].earlier, made.earlier...)
	return true
}

// quiltNumber is the number of a quilt lot, 0 where its name has none.
func quiltNumber(lot Lot) int {
	n, err := strconv.Atoi(strings.TrimPrefix(lot.Name, "quilt-"))
	if lot.Kind != planner.QuiltLot || err != nil {
		return 0
	}
	return n
}
