package planner

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// drawnSetting is a job of any setting: straight, with sashing of any sort or on
// point, with borders of cloth and, where it comes out even, of blocks.
func drawnSetting(t *rapid.T) string {
	across, down := rapid.IntRange(1, 5).Draw(t, "across"), rapid.IntRange(1, 5).Draw(t, "down")
	square := rapid.SampledFrom([]string{"4 1/2", "6 1/2", "8 1/4", "12 1/2"}).Draw(t, "square")
	quantity := rapid.IntRange(1, 2).Draw(t, "quantity")
	layout := fmt.Sprintf("across: %d, down: %d, order: %s", across, down, rapid.SampledFrom([]string{"diagonal", "rows", "{diagonal: fill}", "{rows: fill}"}).Draw(t, "order"))
	blocks, even := across*down, true
	setting := rapid.SampledFrom([]string{"straight", "sashing", "on point"}).Draw(t, "setting")
	switch setting {
	case "sashing":
		sash, edge := rapid.SampledFrom([]string{"1", "2 1/8", "6"}).Draw(t, "sash"), rapid.SampledFrom([]string{"yes", "no"}).Draw(t, "edge")
		layout += fmt.Sprintf(", sashing: {width: %s, fabric: Foam%s, edge: %s}",
			sash, rapid.SampledFrom([]string{"", ", cornerstones: Reed"}).Draw(t, "stones"), edge)
		if sash == "6" && edge == "yes" && square == "6 1/2" { // as wide as a block: a border of blocks fits
			setting, across, down = "straight", 2*across+1, 2*down+1
		}
	case "on point":
		layout += ", setting: on point, triangles: Foam"
		blocks += (across - 1) * (down - 1)
	}
	borders := ""
	for i := range rapid.IntRange(0, 3).Draw(t, "borders") {
		// Blocks lie round blocks, or round a border as wide as half of one or one.
		if of := rapid.SampledFrom([]string{"cloth", "wide cloth", "blocks"}).Draw(t, "border"); of == "blocks" && setting == "straight" && (i == 0 || even) {
			borders += "  - {blocks: tide}\n"
			blocks += 2*(across+down) + 4
			across, down = across+2, down+2
		} else if of == "wide cloth" && square == "6 1/2" {
			borders += "  - {width: 3, fabric: Reed}\n"
			across, down = across+1, down+1
		} else {
			borders += "  - {width: 1 1/8, fabric: Reed}\n"
			even = false
		}
	}
	if borders != "" {
		borders = "borders:\n" + borders
	}
	return fmt.Sprintf(`
job: drawn
quantity: %d
fabrics: {Kelp: {form: yardage, width: 40}, Foam: {form: yardage, width: 40}, Reed: {form: yardage, width: 40}}
block: {make: plain square, square: %s, print: Kelp}
colourways: {tide: {blocks: %d}}
layout: {%s}
%s`, quantity, square, blocks, layout, borders)
}

func drawnPlan(t *rapid.T) Plan {
	file := drawnSetting(t)
	job, err := Parse("job.yaml", []byte(file))
	require.NoError(t, err, file)
	p, err := Make(job, Prior{})
	require.NoError(t, err, file)
	return p
}

// doubleArea is twice the area of a polygon, its corners clockwise.
func doubleArea(corners []patchwork.Point) (sum measure.Area) {
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		sum = sum.Add(measure.Mul(a.X, b.Y)).Sub(measure.Mul(b.X, a.Y))
	}
	return sum
}

// inside reports whether a point lies strictly within a polygon of corners clockwise.
func inside(corners []patchwork.Point, at patchwork.Point) bool {
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		if measure.Mul(b.X-a.X, at.Y-a.Y).Sub(measure.Mul(b.Y-a.Y, at.X-a.X)).Sign() <= 0 {
			return false
		}
	}
	return true
}

// The parts of a top are the top: no gap, nothing twice, all areas together that of
// the whole, to the tick.
func TestThePartsOfATopAreTheTop(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawnPlan(t)
		size := p.Quilt.Finished
		parts := p.Top(p.Job.Quantity)
		var sum measure.Area
		blocks := 0
		for _, part := range parts {
			require.Positive(t, doubleArea(part.Corners).Sign(), "corners go clockwise")
			sum = sum.Add(doubleArea(part.Corners))
			blocks += boolean(part.Kind == BlockPart)
		}
		require.Equal(t, measure.Mul(size.Width, size.Height).Times(2), sum)
		require.Equal(t, p.Quilt.Blocks, blocks)
		at := patchwork.Point{
			X: measure.Length(rapid.Int64Range(0, int64(size.Width)).Draw(t, "x")),
			Y: measure.Length(rapid.Int64Range(0, int64(size.Height)).Draw(t, "y")),
		}
		lies := 0
		for _, part := range parts {
			lies += boolean(inside(part.Corners, at))
		}
		require.LessOrEqual(t, lies, 1, "%v", at)
	})
}

// around is the length round a polygon, in inches.
func around(corners []patchwork.Point) (sum float64) {
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		sum += math.Hypot((b.X - a.X).In(measure.Inches), (b.Y - a.Y).In(measure.Inches))
	}
	return sum
}

// Every inner edge of the top is sewn once: half of all outlines less the quilt's own
// is the finished length of all seams, and each seam is longer by an allowance at
// either end, on point where rows are joined by that times the root of two.
func TestTheSeamsOfATopAreTheEdgesOfItsParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawnPlan(t)
		edges := -2 * (p.Quilt.Finished.Width + p.Quilt.Finished.Height).In(measure.Inches)
		for _, part := range p.Top(1) {
			edges += around(part.Corners)
		}
		allowance := 2 * p.Job.Seam.In(measure.Inches)
		sewn := 0.0
		for _, o := range p.Operations {
			if o.Lot != (Lot{QuiltLot, "quilt-1"}) {
				continue
			}
			switch o.Key {
			case "join-top-rows":
				if p.Job.Layout.Setting == OnPoint {
					sewn -= float64(o.Count) * allowance * (math.Sqrt2 - 1)
				}
				fallthrough
			case "sew-top-rows", "sew-sashing-rows", "add-corner-triangles", "sew-border-blocks", "add-borders":
				sewn += o.SeamLength.In(measure.Inches) - float64(o.Count)*allowance
			}
		}
		require.InDelta(t, edges/2, sewn, 1e-5)
	})
}

// Seams of plain blocks meet where four parts of a top have a corner in common, and
// nowhere else: the joins' match points are as many.
func TestSeamsMeetWhereFourPartsMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawnPlan(t)
		at := map[patchwork.Point]int{}
		for _, part := range p.Top(1) {
			for _, corner := range part.Corners {
				at[corner]++
			}
		}
		fours := 0
		for _, n := range at {
			fours += boolean(n == 4)
		}
		meet, clash := 0, 0
		for _, j := range p.Joins {
			meet += j.Matches.Nest + j.Matches.Clash + j.Matches.Open
			clash += j.Matches.Clash
		}
		require.Equal(t, fours, meet)
		if !p.Job.hasBlockBorder() {
			require.Zero(t, clash, "rows pressed by turns nest, and so does sashing")
		}
	})
}

// Whatever the setting, the route holds together, and a place has one block.
func TestAnySettingIsPlannedWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawnPlan(t)
		assertHoldsTogether(t, p)
		places := map[[3]int]string{}
		for i, b := range p.Blocks {
			require.Empty(t, places[[3]int{b.Quilt, b.Row, b.Column}])
			places[[3]int{b.Quilt, b.Row, b.Column}] = b.ID
			if i > 0 && p.Blocks[i-1].Quilt == b.Quilt {
				before := p.Blocks[i-1]
				require.True(t, before.Row < b.Row || before.Row == b.Row && before.Column < b.Column, "row by row")
			}
			require.LessOrEqual(t, b.Row, p.Quilt.Rows)
			require.LessOrEqual(t, b.Column, p.Quilt.Columns)
		}
		assert.Len(t, p.Blocks, p.Quilt.Blocks*p.Job.Quantity)
		picked := 0
		for _, row := range p.Pickups(1) {
			picked += len(row.Blocks)
		}
		assert.Equal(t, p.Quilt.Blocks, picked, "each is picked up once")
	})
}
