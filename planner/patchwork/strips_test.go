package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/measure"
)

// stripFourPatch is a four-patch from a set of two long strips, cut into
// segments as wide as the strips.
func stripFourPatch(t *testing.T, length, strip string) Recipe {
	return Recipe{Steps: []Step{
		cutStep(t, "print", length, strip),
		cutStep(t, "ground", length, strip),
		columnStep("set", "print", "ground"),
		{Name: "slices", Do: Subcut, Of: "set", Every: in(t, strip)},
		{Name: "block", Do: Sew, Rows: [][]Cell{{{Of: "slices"}, {Of: "slices", Quarters: 2}}}},
	}}
}

// Cut width to raw size of four-patches from strips (worldofneedlepoint.com, all
// five agree), now made as that page makes them.
func TestStripPiecedFourPatches(t *testing.T) {
	for _, row := range []struct{ strip, raw string }{
		{"1 1/2", "2 1/2"}, {"2", "3 1/2"}, {"2 1/2", "4 1/2"}, {"3 1/2", "6 1/2"}, {"6 1/2", "12 1/2"},
	} {
		b := made(t, stripFourPatch(t, "40", row.strip), quarter)
		assertSquare(t, row.raw, b.Block().Size, row.strip)
		assert.Equal(t, picture(made(t, FourPatch(in(t, row.strip)), quarter).Block()), picture(b.Block()), "the four-patch of squares")
	}
}

// Warped Spinster 2016/10: one set as wide as the cloth (40 to 42) gives 16
// segments of 2 1/2; three sets give 48, and those 24 four-patches of 4 1/2.
func TestSegmentsOfAStripSet(t *testing.T) {
	for _, row := range []struct {
		length, over string
		cuts         int
	}{{"40", "0", 15}, {"41", "1", 16}, {"42", "2", 16}} {
		b := made(t, stripFourPatch(t, row.length, "2 1/2"), quarter)
		slices := b.step(t, "slices")
		assert.Equal(t, 16, slices.Yield)
		assert.Equal(t, row.cuts, slices.RunCuts)
		assert.Len(t, slices.Cuts[across], row.cuts)
		assert.Equal(t, in(t, row.over), slices.Loss.Width)
		assert.Equal(t, sides(t, "2 1/2", "4 1/2"), slices.Unit.Size)
		assertSquare(t, "4 1/2", b.Block().Size, "four-patch")
		batches := b.Batches(24, oneFabric)
		assert.Equal(t, []string{"print 3 of 3", "ground 3 of 3", "set 3 of 3", "slices 3 of 48"}, batchWords(batches))
	}
}

// ninePatchOfSets is a nine-patch from two kinds of strip sets.
func ninePatchOfSets(strip, length measure.Length) Recipe {
	cut := func(role string) Step {
		return Step{Name: role, Do: Cut, Role: role, Size: measure.Size{Width: length, Height: strip}}
	}
	return Recipe{Steps: []Step{
		cut("red"), cut("white"),
		columnStep("outer-set", "red", "white", "red"), columnStep("inner-set", "white", "red", "white"),
		{Name: "outer", Do: Subcut, Of: "outer-set", Every: strip},
		{Name: "inner", Do: Subcut, Of: "inner-set", Every: strip},
		rowStep("nine", "outer", "inner", "outer"),
	}}
}

// A nine-patch from two kinds of sets takes two slices of one and one of the
// other; a block bears its share of the seams (hand-worked: sets of 40 in give
// 16 slices; 3 slices each with 2/16 and 1/16 of 2 seams of 40, then 2 joins of
// 6 1/2).
func TestNinePatchFromStripSets(t *testing.T) {
	b := made(t, ninePatchOfSets(in(t, "2 1/2"), in(t, "40")), quarter)
	assertSquare(t, "6 1/2", b.Block().Size, "nine-patch")
	for name, want := range map[string]Made{
		"red":       {Pooled: true, Feeds: []Feed{{"inner-set", 1}, {"outer-set", 2}}},
		"white":     {Pooled: true, Feeds: []Feed{{"inner-set", 2}, {"outer-set", 1}}},
		"outer-set": {Pooled: true, Feeds: []Feed{{"outer", 1}}},
		"inner-set": {Pooled: true, Feeds: []Feed{{"inner", 1}}},
		"outer":     {Pooled: true, Copies: 2},
		"inner":     {Pooled: true, Copies: 1},
		"nine":      {Copies: 1},
	} {
		got := b.step(t, name)
		assert.Equal(t, want, Made{Copies: got.Copies, Pooled: got.Pooled, Feeds: got.Feeds}, name)
	}
	assert.Equal(t, in(t, "80").Times(3)/16+2*in(t, "6 1/2"), b.SeamLength())
	assert.Equal(t, in(t, "80"), b.step(t, "outer-set").SeamLength())
	assert.Equal(t, Tally{Nest: 4}, b.BlockTally(b.Best()))
	assert.Equal(t, []string{"red 8 of 8", "white 7 of 7", "outer-set 3 of 3", "inner-set 2 of 2", "outer 3 of 40", "inner 2 of 20"},
		batchWords(b.Batches(20, oneFabric)))
}

// A set may have seams across it where every segment comes out alike; one that
// makes a difference is refused.
func TestSegmentsMustBeAlike(t *testing.T) {
	set := func(every string, names ...string) Recipe {
		return Recipe{Steps: []Step{
			cutStep(t, "a", "3", "3"), cutStep(t, "b", "3", "3"),
			{Name: "set", Do: Sew, Rows: [][]Cell{cells(names)}},
			{Name: "slices", Do: Subcut, Of: "set", Every: in(t, every)},
		}}
	}
	_, err := Make(set("2", "a", "b", "a"), quarter, measure.Inches)
	assert.EqualError(t, err, "step slices: segment 2 of 4 is not like the first: other patches or seams lie in it; sew a set of long strips, its seams from left to right")
	_, err = Make(set("2 3/4", "a", "b", "a"), quarter, measure.Inches)
	assert.EqualError(t, err, "step slices: the cut 2 3/4 in from the left edge of the set runs along a seam; cut other segments")
	_, err = Make(set("2 7/8", "a", "a", "b"), quarter, measure.Inches)
	assert.ErrorContains(t, err, "segment 2 of 2 is not like the first")
}

func TestSubcutFaults(t *testing.T) {
	for _, row := range []struct {
		length, every, key, want string
	}{
		{"40", "40", "every", "the set is 40 in wide and the segments are 40 in: there is nothing to cut; sew a longer set or cut shorter segments"},
		{"10", "12", "every", "the set is 10 in wide and the segments are 12 in: there is nothing to cut; sew a longer set or cut shorter segments"},
		{"40", "1/2", "every", "a segment of 1/2 × 4 1/2 in has nothing left to show: its two seams take 1/2 in; make it wider than two seams"},
		{"40", "0", "every", "a segment of 0 × 4 1/2 in has nothing left to show: its two seams take 1/2 in; make it wider than two seams"},
		{"1001", "1", "every", "the set would give 1001 segments, and 1000 is the most for one; sew shorter sets"},
	} {
		r := stripFourPatch(t, row.length, "2 1/2")
		r.Steps[3].Every = in(t, row.every)
		_, err := Make(r, quarter, measure.Inches)
		assert.EqualError(t, err, "step slices: "+row.want)
		if fault, ok := err.(*Fault); assert.True(t, ok) {
			assert.Equal(t, row.key, fault.Key)
		}
	}
	_, err := Make(Recipe{[]Step{{Name: "slices", Do: Subcut, Of: "set", Every: measure.Inch}}}, quarter, measure.Inches)
	assert.EqualError(t, err, `step slices: there is no earlier step "set"`)
}
