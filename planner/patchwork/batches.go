package patchwork

import (
	"slices"
	"strings"

	"quiltrun/planner/measure"
)

// Cloth is pieces of cloth of one size and role.
type Cloth struct {
	Role  string
	Size  measure.Size
	Count int
}

// Cloth lists the pieces of cloth that are cut for one run of the step: one for
// a Cut, a square of each role for triangles, none for any other step.
func (m Made) Cloth() []Cloth {
	switch m.Step.Do {
	case Cut:
		return []Cloth{{m.Step.Role, m.Step.Size, 1}}
	case HalfSquare, QuarterSquare:
		return []Cloth{{m.Step.Roles[0], square(m.Square), 1}, {m.Step.Roles[1], square(m.Square), 1}}
	}
	return nil
}

// Batch is the making of a pooled step for those blocks of a lot that have the
// same fabrics in all its roles.
type Batch struct {
	Step   string
	Blocks []int // the blocks, counted in the lot from 0, rising
	Units  int   // that the blocks take, and the runs of later pooled steps
	Runs   int   // to make them: Units over the step's yield, rounded up
}

// Batches lists what is made for a lot of like blocks before they are kitted:
// the batches of every pooled step, in the order of the recipe and of their
// first blocks. The fabric that a block has in a role is told by fabric.
func (b *Build) Batches(blocks int, fabric func(block int, role string) string) []Batch {
	perStep := make(map[string][]Batch)
	roles := b.roles()
	for _, made := range slices.Backward(b.Steps) {
		if !made.Pooled {
			continue
		}
		name := made.Step.Name
		batches, place := deal(name, blocks, roles[name], fabric)
		for i := range batches {
			batches[i].Units = made.Copies * len(batches[i].Blocks)
		}
		for _, feed := range made.Feeds {
			for _, later := range perStep[feed.Step] {
				batches[place[later.Blocks[0]]].Units += feed.PerRun * later.Runs
			}
		}
		for i := range batches {
			batches[i].Runs = (batches[i].Units + made.Yield - 1) / made.Yield
		}
		perStep[name] = batches
	}
	var list []Batch
	for _, made := range b.Steps {
		list = append(list, perStep[made.Step.Name]...)
	}
	return list
}

// deal parts the blocks of a lot by their fabrics in some roles, and tells for
// each block which batch it went to.
func deal(step string, blocks int, roles []string, fabric func(block int, role string) string) ([]Batch, []int) {
	var batches []Batch
	place := make([]int, blocks)
	known := make(map[string]int)
	for block := range blocks {
		var key strings.Builder
		for _, role := range roles {
			key.WriteString(fabric(block, role))
			key.WriteByte(0)
		}
		i, ok := known[key.String()]
		if !ok {
			i = len(batches)
			known[key.String()] = i
			batches = append(batches, Batch{Step: step})
		}
		batches[i].Blocks = append(batches[i].Blocks, block)
		place[block] = i
	}
	return batches, place
}

// Roles lists the roles of cloth that went into a step's unit, in the order of
// the recipe's steps.
func (b *Build) Roles(step string) []string { return b.roles()[step] }

func (b *Build) roles() map[string][]string {
	roles := make(map[string][]string, len(b.Steps))
	for _, made := range b.Steps {
		var own []string
		for _, cloth := range made.Cloth() {
			own = append(own, cloth.Role)
		}
		for _, used := range made.Step.uses() {
			for _, role := range roles[used] {
				if !slices.Contains(own, role) {
					own = append(own, role)
				}
			}
		}
		roles[made.Step.Name] = own
	}
	return roles
}
