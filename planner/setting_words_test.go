package planner

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Source: cuddlecatquiltworks.com, a quilt resized: 53 x 61, then a column and a row
// more, 61 x 69: 12 blocks more, and round the edge 260 in instead of 228.
func TestAColumnAndARowMore(t *testing.T) {
	rest := "borders: [{width: 2, fabric: Foam}, {width: 4 1/2, fabric: Reed}]\nbinding: {fabric: Kelp}"
	before := planOf(t, setJob("8 1/2", 30, "across: 5, down: 6", rest))
	after := planOf(t, setJob("8 1/2", 42, "across: 6, down: 7", rest))
	edge := func(p Plan) string {
		return (p.Materials.Binding.Length - p.Materials.Binding.Allowance).Show(p.Job.Units)
	}
	assert.Equal(t, []string{"228 in", "260 in"}, []string{edge(before), edge(after)})
	assert.Equal(t, 12, after.Quilt.Blocks-before.Quilt.Blocks)
	assert.Equal(t, 6*4, count(before, "sew-top-rows"))
	assert.Equal(t, 7*5, count(after, "sew-top-rows"), "rows that are joined gain one join each")
}

// Source of the case: gardenweb.com 6366797: 35 blocks over nine fabrics: eight are in
// 4 blocks, one in 3.
func TestBlocksThatDoNotDivideIntoFabrics(t *testing.T) {
	fabrics := make([]Share, 9)
	for i := range fabrics {
		fabrics[i].Fabric = string(rune('A' + i))
	}
	uses := map[int]int{}
	each := map[string]int{}
	for _, f := range dealt(RoleFabrics{Fabrics: fabrics}, 35) {
		each[f]++
	}
	for _, n := range each {
		uses[n]++
	}
	assert.Equal(t, map[int]int{4: 8, 3: 1}, uses)
}

func TestBlocksThatAreNotSquareAreNotSetOnPoint(t *testing.T) {
	job, err := Parse("job.yaml", []byte(pointJob("4 1/2 x 6 1/2", 2, 2)))
	require.NoError(t, err)
	_, err = Make(job, Prior{})
	assert.ErrorContains(t, err, "blocks that finish 4 × 6 in cannot be set on point: the setting triangles are cut from squares; make square blocks, or set them straight")
}

// warningsOf is a plan's warnings of one sort.
func warningsOf(p Plan, code string) []string {
	var all []string
	for _, w := range p.Warnings {
		if w.Code == code {
			all = append(all, w.Path+": "+w.Message)
		}
	}
	return all
}

func TestSettingsWarnOfWhatIsUnwise(t *testing.T) {
	print := planOf(t, strings.Replace(pointJob("12 1/2", 2, 2), "Foam: {form: yardage", "Foam: {directional: yes, form: yardage", 1))
	assert.Equal(t, []string{"layout.triangles: Foam has a direction, and of the triangles that a square gives each lies another way: cut more squares and choose, or take another fabric"},
		warningsOf(print, warnDirectional))
	odd := planOf(t, setJob("8 1/2", 12, "across: 3, down: 4, sashing: {width: 2 1/16, fabric: Foam}", "borders: [{width: 3, fabric: Reed}, {width: 3 3/16, fabric: Reed}]"))
	assert.Equal(t, []string{
		"layout.sashing: the sashing, cut 2 9/16 in wide, lies between the ruler's 1/8 in lines",
		"borders[1]: border 2, cut 3 11/16 in wide, lies between the ruler's 1/8 in lines",
	}, warningsOf(odd, warnOffGrid))
}

// Rows are picked up from the left, on point from the lower left; then the strips of a
// border in the order in which they are sewn on. Hand-worked from the dealing.
func TestRowsArePickedUpAsTheyAreSewn(t *testing.T) {
	names := func(p Plan) (all []string) {
		for _, row := range p.Pickups(1) {
			ids := make([]string, len(row.Blocks))
			for i, b := range row.Blocks {
				ids[i] = b.ID
			}
			all = append(all, row.Name+": "+strings.Join(ids, " "))
		}
		return all
	}
	assert.Equal(t, []string{"row 1: tide-01", "row 2: tide-02 tide-03 tide-04", "row 3: tide-05"}, names(planOf(t, pointJob("4 1/2", 2, 2))))
	assert.Equal(t, []string{
		"row 2: tide-06 tide-07", "border 1, left: tide-05", "border 1, right: tide-08",
		"border 1, top: tide-01 tide-02 tide-03 tide-04", "border 1, bottom: tide-09 tide-10 tide-11 tide-12",
	}, names(planOf(t, setJob("4 1/2", 12, "across: 2, down: 1", "borders: [{blocks: tide}]"))))
}

// Sashing is pressed so that it nests with its cornerstones: of all ways of pressing
// rows of blocks and rows of sashing the trade's common practice, toward the sashing,
// is among the best. Pressed both to the right, hand-worked, all would clash.
func TestSashingIsPressedSoThatItNests(t *testing.T) {
	p := planOf(t, setJob("8 1/2", 12, "across: 3, down: 4, sashing: {cut: 2 1/2, fabric: Foam, cornerstones: Reed, edge: yes}", ""))
	assert.Equal(t, "toward the sashing", p.Press.Top.Rows[0])
	assert.Equal(t, "toward the sashing", p.Press.Top.Sashing)
	right := sashWays[2]
	f := frame{layout: &p.Job.Layout, block: p.Colourways[0].Finished}
	assert.Equal(t, 48, f.sashMeets(right, right).Clash)
	assert.Equal(t, 48, f.sashMeets(sashWays[0], sashWays[1]).Nest)
}

// The seam that was measured at the machine widens what is cut already: blocks,
// sashing and borders of cloth; a border of blocks has no width of its own, and the
// squares of setting triangles stay as the file's seam asks for. Hand-worked: with 1/5
// in seams a block cut 12 1/2 finishes 12 1/10, its triangles' square is 17.112 + 1 1/4.
func TestAMeasuredSeamKeepsSettingsWhole(t *testing.T) {
	seam := inches(t, "0.2")
	amended := func(file string) Plan {
		job, err := Parse("job.yaml", []byte(file))
		require.NoError(t, err)
		p, err := Make(job, Prior{Amend: Amendments{Seam: seam}})
		require.NoError(t, err)
		return p
	}
	ring := amended(setJob("6 1/2", 144, "across: 10, down: 10", "borders: [{blocks: tide}]"))
	assert.Equal(t, inches(t, "73.2"), ring.Quilt.Finished.Width, "12 of 6.1")
	sash := amended(setJob("8 1/2", 12, "across: 3, down: 4, sashing: {cut: 2 1/2, fabric: Foam, cornerstones: Reed, edge: yes}", ""))
	assert.Equal(t, map[string]int{"8 1/2 × 2 1/2 in": 31}, piecesFor(sash, "sashing"))
	assert.Equal(t, inches(t, "32.7"), sash.Quilt.Finished.Width, "3 of 8.1 and 4 of 2.1")
	point := amended(pointJob("12 1/2", 3, 4))
	assert.Equal(t, map[string]int{"18 3/8 × 18 3/8 in": 3, "9 1/2 × 9 1/2 in": 2}, piecesFor(point, "setting triangles"))
}
