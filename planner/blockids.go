package planner

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// ids gives out block ids. An id once given stays with its quilt and its
// colourway; a new block takes the next number never used before.
type ids struct {
	kept map[key][]string // by their numbers, whatever order they lie in
	next map[string]int   // by colourway, the last number given
}

// key is a quilt's blocks of a colourway, by the name that it bears now.
type key struct {
	quilt     int
	colourway string
}

func newIDs(j Job, prior Prior) *ids {
	g := &ids{kept: map[key][]string{}, next: map[string]int{}}
	now := map[string]string{}
	for _, c := range j.Colourways {
		if c.Was != "" {
			now[c.Was] = c.Name
		}
	}
	for _, b := range prior.Blocks {
		name := cmp.Or(now[b.Colourway], b.Colourway)
		if !b.Retired {
			k := key{b.Quilt, name}
			g.kept[k] = append(g.kept[k], b.ID)
		}
		if stem, n := idNumber(b.ID); n > 0 {
			for _, of := range [...]string{stem, b.Colourway, name} { // numbers run on under a new name
				g.next[of] = max(g.next[of], n)
			}
		}
	}
	for _, kept := range g.kept {
		slices.SortStableFunc(kept, func(a, b string) int {
			_, m := idNumber(a)
			_, n := idNumber(b)
			return cmp.Compare(m, n)
		})
	}
	return g
}

// idNumber is the two parts of a block id; 0 where it has no number.
func idNumber(id string) (stem string, n int) {
	hyphen := strings.LastIndex(id, "-")
	n, err := strconv.Atoi(id[hyphen+1:])
	if err != nil || hyphen < 1 {
		return id, 0
	}
	return id[:hyphen], n
}

// take is the id of the quilt's next block of a colourway.
func (g *ids) take(quilt int, colourway string) string {
	k := key{quilt, colourway}
	if kept := g.kept[k]; len(kept) > 0 {
		g.kept[k] = kept[1:]
		return kept[0]
	}
	g.next[colourway]++
	return BlockID(colourway, g.next[colourway])
}

// checkRenamed refuses a `was` that names no colourway of the booked job: its
// blocks would be retired and begun anew.
func (m *maker) checkRenamed() {
	if len(m.prior.Blocks) == 0 {
		return
	}
	var known []string
	for _, b := range m.prior.Blocks {
		if !slices.Contains(known, b.Colourway) {
			known = append(known, b.Colourway)
		}
	}
	for _, c := range m.job.Colourways {
		if c.Was == "" || slices.Contains(known, c.Was) || slices.Contains(known, c.Name) {
			continue
		}
		m.refuse("colourways."+c.Name+".was", fmt.Sprintf("no colourway of the booked job is called %q", c.Was), "its colourways are "+listed(known, "and"))
	}
}

// BlockID is the id of a colourway's n-th block, n from 1.
func BlockID(colourway string, n int) string {
	if n < 10 {
		return colourway + "-0" + strconv.Itoa(n)
	}
	return colourway + "-" + strconv.Itoa(n)
}

// blocksOf lays out the whole run, every quilt by the same layout: its blocks, row
// by row. An id goes with the fabrics that its block is dealt, wherever it lies.
func blocksOf(j Job, layout []place, prior Prior) []Block {
	give := newIDs(j, prior)
	deals := dealtRoles(j)
	blocks := make([]Block, 0, j.Quantity*len(layout))
	for quilt := 1; quilt <= j.Quantity; quilt++ {
		given := give.quilt(quilt, j)
		for _, p := range layout {
			blocks = append(blocks, Block{
				ID: given[p.colourway][p.dealt], Quilt: quilt, Colourway: j.Colourways[p.colourway].Name,
				Fabrics: deals[p.colourway][p.dealt],
				Row:     p.row + 1, Column: p.column + 1, Turn: p.turn,
			})
		}
	}
	return blocks
}

// quilt is the ids of one quilt's blocks, by colourway and the order of dealing.
func (g *ids) quilt(quilt int, j Job) [][]string {
	given := make([][]string, len(j.Colourways))
	for i, c := range j.Colourways {
		given[i] = make([]string, c.Blocks)
		for n := range given[i] {
			given[i][n] = g.take(quilt, c.Name)
		}
	}
	return given
}

// dealtRoles is, per colourway and block of a quilt, the fabric of each role.
func dealtRoles(j Job) [][][]RoleFabric {
	all := make([][][]RoleFabric, len(j.Colourways))
	for i, c := range j.Colourways {
		roles := len(c.Roles)
		room := make([]RoleFabric, roles*c.Blocks)
		all[i] = make([][]RoleFabric, c.Blocks)
		for n := range all[i] {
			all[i][n] = room[roles*n : roles*(n+1) : roles*(n+1)]
		}
		for r, role := range c.Roles {
			for n, fabric := range dealt(role, c.Blocks) {
				all[i][n][r] = RoleFabric{Role: role.Role, Fabric: fabric}
			}
		}
	}
	return all
}
