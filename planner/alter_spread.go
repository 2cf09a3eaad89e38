package planner

import (
	"slices"
	"strconv"
)

// spread gives the colourways as many blocks as the layout holds, where that is
// another number. What cannot be read is left for the reading to report.
func (a *altering) spread(file string) bool {
	r := &jobReader{file: file, at: Positions{}}
	r.readJob(a.root)
	l := r.job.Layout
	colourways := r.job.Colourways
	if l.Across == 0 || l.Down == 0 || l.Setting == "" || !r.blocks.counts || len(colourways) == 0 {
		return false
	}
	room, blocks := placesOf(l), 0
	var free []int // counts that may change
	for _, c := range colourways {
		blocks += c.Blocks
		if a.fixed[c.Name] {
			room -= c.Blocks
		} else {
			free = append(free, c.Blocks)
		}
	}
	if blocks == placesOf(l) || room < len(free) || len(free) == 0 || room > MostBlocks {
		return false
	}
	shares := Shares(free, room)
	for _, c := range colourways {
		if !a.fixed[c.Name] {
			a.count(c, shares[0])
			shares = shares[1:]
		}
	}
	return true
}

// count gives a colourway its number of blocks, and shares the counts of its
// fabrics out likewise.
func (a *altering) count(c Colourway, blocks int) {
	own := a.root.field("colourways").field(c.Name)
	own.field("blocks").text = strconv.Itoa(blocks)
	for _, role := range c.Roles {
		if !role.Counted {
			continue
		}
		n := own.field(role.Role)
		if n == nil {
			n = a.root.field("block").field(role.Role)
		}
		if n == nil || n.kind != fields {
			continue
		}
		var counts []int
		for _, f := range role.Fabrics {
			counts = append(counts, f.Blocks)
		}
		shared := *n
		shared.pairs = nil
		for i, share := range remainders(counts, blocks) {
			if share > 0 {
				value := *n.pairs[i].value
				value.text = strconv.Itoa(share)
				shared.pairs = append(shared.pairs, filePair{key: n.pairs[i].key, at: n.pairs[i].at, value: &value})
			}
		}
		own.key(role.Role, true, &shared)
	}
}

// Shares parts a total among counts in their proportions by largest remainder,
// each at least 1; the total is no less than how many there are.
func Shares(counts []int, total int) []int {
	shares := remainders(counts, total)
	for i, share := range shares {
		if share == 0 {
			most := slices.Index(shares, slices.Max(shares))
			shares[most]--
			shares[i]++
		}
	}
	return shares
}

// remainders parts a total among counts: each gets the whole number of its
// share, and of what is over one goes to each of the largest remainders, the
// first of equal ones before others.
func remainders(counts []int, total int) []int {
	sum := 0
	for _, n := range counts {
		sum += n
	}
	shares := make([]int, len(counts))
	if sum == 0 {
		return shares
	}
	order := make([]int, len(counts))
	over := total
	for i, n := range counts {
		order[i] = i
		shares[i] = n * total / sum
		over -= shares[i]
	}
	slices.SortStableFunc(order, func(i, j int) int { return counts[j]*total%sum - counts[i]*total%sum })
	for _, i := range order[:over] {
		shares[i]++
	}
	return shares
}
