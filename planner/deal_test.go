package planner

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/measure"
)

// dealtMap is the colourways of a layout as rows of letters, the first letter
// of each colourway.
func dealtMap(j Job) string {
	var rows []string
	for i, p := range dealtPlaces(&j, frameOf(&j, measure.Size{})) {
		if i%j.Layout.Across == 0 {
			rows = append(rows, "")
		}
		rows[len(rows)-1] += j.Colourways[p.colourway].Name[:1]
	}
	return strings.Join(rows, " ")
}

func dealJob(across, down int, order Order, blocks ...int) Job {
	j := Job{Layout: Layout{Across: across, Down: down, Order: order}}
	for i, n := range blocks {
		j.Colourways = append(j.Colourways, Colourway{Name: string(rune('a' + i)), Blocks: n})
	}
	return j
}

// Hand-worked: the places of a layout walked from the top left.
func TestPlacesAreDealtInTheAskedOrder(t *testing.T) {
	for _, c := range []struct {
		name string
		job  Job
		want string
	}{
		{"rows, the next colourway at each place", dealJob(3, 2, DealRows, 2, 2, 2), "abc abc"},
		{"rows, one used up is passed over", dealJob(3, 2, DealRows, 1, 4, 1), "abc bbb"},
		{"rows filled", dealJob(3, 2, FillRows, 2, 1, 3), "aab ccc"},
		{"diagonals, from the upper end", dealJob(3, 3, DealDiagonal, 3, 3, 3), "aba cba cbc"},
		{"diagonals filled", dealJob(3, 3, FillDiagonal, 3, 3, 3), "aab abc bcc"},
		{"one colourway", dealJob(2, 2, DealDiagonal, 4), "aa aa"},
	} {
		assert.Equal(t, c.want, dealtMap(c.job), c.name)
	}
}

func TestAMapIsTakenAsItIsWithItsTurns(t *testing.T) {
	j := dealJob(2, 2, Mapped, 2, 2)
	j.Layout.Map = [][]MapCell{{{"a", 0}, {"b", 90}}, {{"b", 180}, {"a", 270}}}
	j.Layout.Turn = [][]int{{0, 90}}
	assert.Equal(t, "ab ba", dealtMap(j))
	var turns []int
	for _, p := range dealtPlaces(&j, frameOf(&j, measure.Size{})) {
		turns = append(turns, p.turn)
	}
	assert.Equal(t, []int{0, 180, 180, 0}, turns, "a cell's own turn and the layout's add up")
}

// 20 blocks over seven and over eight prints: six of 3 and one of 2, then four
// of 3 and four of 2. Source of the case: scrappypiece.blogspot.com 2013/11.
// 162 blocks over 15, 25 and 100: quilton.blogspot.com 2011/06.
func TestDealingNeitherLosesNorInventsABlock(t *testing.T) {
	for _, c := range []struct {
		blocks, fabrics int
		want            map[int]int // how many fabrics get so many blocks
	}{
		{20, 7, map[int]int{3: 6, 2: 1}},
		{20, 8, map[int]int{3: 4, 2: 4}},
		{162, 15, map[int]int{11: 12, 10: 3}},
		{162, 25, map[int]int{7: 12, 6: 13}},
		{162, 100, map[int]int{2: 62, 1: 38}},
		{2, 5, map[int]int{1: 2, 0: 3}},
	} {
		role := RoleFabrics{Role: "print"}
		for i := range c.fabrics {
			role.Fabrics = append(role.Fabrics, Share{Fabric: string(rune('A' + i))})
		}
		counts := map[string]int{}
		for _, f := range dealt(role, c.blocks) {
			counts[f]++
		}
		got := map[int]int{}
		for _, f := range role.Fabrics {
			got[counts[f.Fabric]]++
		}
		assert.Equal(t, c.want, got, "%d blocks over %d fabrics", c.blocks, c.fabrics)
	}
}

func TestACountedRoleGivesEachFabricItsBlocks(t *testing.T) {
	role := RoleFabrics{Fabrics: []Share{{"Kelp", 3}, {"Cormorant", 1}}, Counted: true}
	assert.Equal(t, []string{"Kelp", "Cormorant", "Kelp", "Kelp"}, dealt(role, 4))
}
