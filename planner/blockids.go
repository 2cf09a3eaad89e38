package planner

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// ids gives out block ids. An id once given stays with its quilt and its
// colourway; a new block takes the next number never used before.
type ids struct {
	kept map[key][]string
	next map[string]int    // by colourway, the last number given
	was  map[string]string // the name a colourway's blocks were booked under
	gone map[string]bool   // names whose blocks another colourway has taken over
}

type key struct {
	quilt     int
	colourway string
}

func newIDs(j Job, prior Prior) *ids {
	g := &ids{kept: map[key][]string{}, next: map[string]int{}, was: map[string]string{}, gone: map[string]bool{}}
	for _, c := range j.Colourways {
		if c.Was != "" {
			g.was[c.Name] = c.Was
			g.gone[c.Was] = true
		}
	}
	for _, b := range prior.Blocks {
		if !b.Retired {
			k := key{b.Quilt, b.Colourway}
			g.kept[k] = append(g.kept[k], b.ID)
		}
		hyphen := strings.LastIndex(b.ID, "-")
		if n, err := strconv.Atoi(b.ID[hyphen+1:]); err == nil && hyphen > 0 {
			stem := b.ID[:hyphen]
			g.next[stem] = max(g.next[stem], n)
			g.next[b.Colourway] = max(g.next[b.Colourway], n)
		}
	}
	for name, was := range g.was { // numbers run on under the new name
		g.next[name] = max(g.next[name], g.next[was])
	}
	return g
}

// take is the id of the quilt's next block of a colourway.
func (g *ids) take(quilt int, colourway string) string {
	for _, name := range [...]string{colourway, g.was[colourway]} {
		if len(g.kept) == 0 || name == colourway && g.gone[name] {
			continue
		}
		k := key{quilt, name}
		if kept := g.kept[k]; len(kept) > 0 {
			g.kept[k] = kept[1:]
			return kept[0]
		}
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
// by row.
func blocksOf(j Job, layout []place, prior Prior) []Block {
	give := newIDs(j, prior)
	fabrics := make([][]RoleFabric, 0, len(layout))
	nth := make([]int, len(j.Colourways))
	deals := dealtRoles(j)
	for _, p := range layout {
		fabrics = append(fabrics, deals[p.colourway][nth[p.colourway]])
		nth[p.colourway]++
	}
	blocks := make([]Block, 0, j.Quantity*len(layout))
	for quilt := 1; quilt <= j.Quantity; quilt++ {
		for i, p := range layout {
			name := j.Colourways[p.colourway].Name
			blocks = append(blocks, Block{
				ID: give.take(quilt, name), Quilt: quilt, Colourway: name, Fabrics: fabrics[i],
				Row: p.row + 1, Column: p.column + 1, Turn: p.turn,
			})
		}
	}
	return blocks
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
