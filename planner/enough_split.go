package planner

import (
	"fmt"
	"slices"
	"strings"
)

// splits is other shares of a role's prints with which a colourway's blocks can
// all be made. Only prints that nothing else uses are shared anew.
func (a EnoughAsk) splits(e Enough) []EnoughWay {
	var ways []EnoughWay
	for c := range a.Plan.Job.Colourways {
		for r := range a.Plan.Job.Colourways[c].Roles {
			if way, ok := a.split(e, c, r); ok {
				ways = append(ways, way)
			}
		}
	}
	return ways
}

func (a EnoughAsk) split(e Enough, c, r int) (EnoughWay, bool) {
	job := a.Plan.Job
	own := job.Colourways[c]
	role := own.Roles[r]
	if len(role.Fabrics) < 2 || !slices.ContainsFunc(role.Fabrics, func(s Share) bool { return e.short(s.Fabric) }) {
		return EnoughWay{}, false
	}
	caps := make([]int, len(role.Fabrics))
	for i, s := range role.Fabrics {
		most, ok := a.mostOf(c, role.Role, s.Fabric)
		if !ok {
			return EnoughWay{}, false
		}
		caps[i] = most / job.Quantity
	}
	shares, ok := shareOut(own.Blocks, a.shares(c, role), caps)
	if !ok {
		return EnoughWay{}, false
	}
	job.Colourways = slices.Clone(job.Colourways)
	own.Roles = slices.Clone(own.Roles)
	own.Roles[r] = RoleFabrics{Role: role.Role, Counted: true}
	var parts []string
	for i, s := range role.Fabrics {
		if shares[i] > 0 {
			own.Roles[r].Fabrics = append(own.Roles[r].Fabrics, Share{s.Fabric, shares[i]})
			parts = append(parts, fmt.Sprintf("%s: %d", yamlName(s.Fabric), shares[i]))
		}
	}
	job.Colourways[c] = own
	after, ok := a.changed(job)
	if !ok || !e.relieved(after) {
		return EnoughWay{}, false
	}
	return EnoughWay{Kind: WaySplit, Colourway: own.Name, Buy: after.buys(), Spare: after.spares(),
		Lines: []string{yamlName(own.Name) + ":", "  " + role.Role + ": {" + strings.Join(parts, ", ") + "}"}}, true
}

// mostOf is how many blocks of a colourway the cloth of one print could do for in
// all, false where anything else takes of it.
func (a EnoughAsk) mostOf(c int, role, fabric string) (int, bool) {
	for _, w := range a.left(a.Plan).Fabrics {
		if w.Fabric.Name != fabric {
			continue
		}
		q := queueOf(a.Plan, w)
		have, said := a.Have[fabric]
		if w.Backing != nil || slices.ContainsFunc(w.Pieces, func(p PieceCount) bool { return p.For != forBlocks }) ||
			slices.ContainsFunc(q.of, func(of int) bool { return of != c }) || len(q.pooled[c]) > 0 {
			return 0, false
		}
		blocks := a.Plan.Job.Colourways[c].Blocks * a.Plan.Job.Quantity
		if !said {
			return blocks, true
		}
		q.stretch(c, blocks)
		most, err := q.most(have, blocks)
		return most, err == nil
	}
	return 0, false
}

// stretch lengthens the queue to so many blocks of one colourway.
func (q *queue) stretch(c, blocks int) {
	for len(q.of) < blocks {
		q.of = append(q.of, c)
	}
}

// shares is how many of a quilt's blocks each print of a role has now.
func (a EnoughAsk) shares(c int, role RoleFabrics) []int {
	now := make([]int, len(role.Fabrics))
	for _, b := range a.Plan.Blocks {
		if b.Quilt != 1 || b.Colourway != a.Plan.Job.Colourways[c].Name {
			continue
		}
		fabric := fabricOf(b.Fabrics, role.Role)
		for i, s := range role.Fabrics {
			if s.Fabric == fabric {
				now[i]++
			}
		}
	}
	return now
}

// shareOut shares blocks among prints, none more than it has cloth for, changing
// as little as can be: what one is short of goes one by one to whichever has the
// fewest and can take more. No block is lost and none is added.
func shareOut(blocks int, now, caps []int) ([]int, bool) {
	shares := make([]int, len(now))
	left := blocks
	for i := range now {
		shares[i] = min(now[i], caps[i])
		left -= shares[i]
	}
	for ; left > 0; left-- {
		to := -1
		for i := range shares {
			if shares[i] < caps[i] && (to < 0 || shares[i] < shares[to]) {
				to = i
			}
		}
		if to < 0 {
			return nil, false
		}
		shares[to]++
	}
	return shares, left == 0
}
