package planner

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// op is the row of an operation and a lot.
func op(t *testing.T, p Plan, key, lot string) Operation {
	t.Helper()
	for _, o := range p.Operations {
		if o.Key == key && o.Lot.Name == lot {
			return o
		}
	}
	require.Fail(t, "no row", "%s of %s", key, lot)
	return Operation{}
}

const finished = recutFour + `
borders: [{width: 3, fabric: Kelp}]
binding: {fabric: Kelp, strip: 2 1/2}
`

// Hand-worked on 42 in: 16 squares of 7 in, six to a strip, three strips. The
// top is 48 1/2 x 24 1/2 raw: two sides of 24 1/2 in and two ends of 54 1/2 in are
// 158 in, and four strips joined make 4 × 42 − 3 × 1/2 = 166 1/2. The edge is 54 x
// 30 in, 168 in and 10 more: five strips of 39 1/2 in joined.
func TestBorderBindingAndPatchesAreCutAndCountedApart(t *testing.T) {
	p := planOf(t, finished)
	patches, border, binding := op(t, p, "cut", "Kelp"), op(t, p, "cut-borders", "Kelp"), op(t, p, "cut-binding", "Kelp")
	assert.Equal(t, 16, patches.Count)
	assert.Equal(t, 4, border.Count)
	assert.Equal(t, 5, binding.Count)
	assert.Less(t, border.Number, binding.Number)
	assert.Less(t, binding.Number, patches.Number, "the longest first")
	assert.Equal(t, "Across the cloth 3 strips 7 in × width; then 3 strips 7 in × width; stack 3; upright cuts = 16 squares 7 in. Up to 4 layers at once.", patches.Doing)
	assert.Contains(t, op(t, p, "add-borders", "quilt-1").After, Ref{Key: "cut-borders", Lot: Lot{FabricLot, "Kelp"}})
	assert.Contains(t, op(t, p, "make-binding", "quilt-1").After, Ref{Key: "cut-binding", Lot: Lot{FabricLot, "Kelp"}})
	for _, a := range op(t, p, "kit", "tide").After {
		assert.Equal(t, "cut", a.Key, "a kit takes patches alone")
	}
}

func TestAFabricThatNothingUsesIsSaidAndNotWorkedOn(t *testing.T) {
	p := planOf(t, strings.Replace(recutFour, "fabrics: {", "fabrics: {Pebble: {form: yardage, width: 42}, ", 1))
	for _, o := range p.Operations {
		assert.NotEqual(t, "Pebble", o.Lot.Name)
	}
	assert.Equal(t, Warning{Code: "unused-fabric", Path: "fabrics.Pebble", Message: "Pebble is described but nothing uses it"}, p.Warnings[0])
}

const preCut = `
job: squares
prewash: yes
fabrics: {Pack: {form: pre-cut squares, size: 5}}
block: {make: plain square, square: 5, print: Pack}
colourways: {lamp: {blocks: 12}}
layout: {across: 4, down: 3}
`

func TestPreCutSquaresAreNeitherWashedNorCutNorTested(t *testing.T) {
	p := planOf(t, preCut)
	assert.Equal(t, "Measure a few and count them; do not wash them, they fray and shrink.", op(t, p, "prepare", "Pack").Doing)
	for _, o := range p.Operations {
		assert.NotContains(t, []string{"cut", "test"}, o.Key)
	}
	assert.Contains(t, op(t, p, "kit", "lamp").After, Ref{Key: "prepare", Lot: Lot{FabricLot, "Pack"}}, "what needs no cutting is still made ready first")
	assert.Less(t, float64(op(t, p, "square-up", "lamp").Minutes()), 5.0, "a square that comes cut is only checked")
}

func TestABackingIsPiecedFromYardage(t *testing.T) {
	job, err := Parse("job.yaml", []byte(preCut+"backing: {fabric: Pack}\n"))
	require.NoError(t, err)
	_, err = Make(job, Prior{})
	require.Error(t, err)
	assert.Equal(t, "job.yaml:8:19: a backing is pieced from yardage, and Pack is pre-cut squares; name a fabric of the form yardage", err.Error())
}

// 24 squares of 6 in from 36 in of cloth leave nothing: four strips of six take
// 24 in, which is bought as 3/4 yd, 27 in; six strips take the yard whole.
func TestClothThatIsUsedToTheThreadIsSaid(t *testing.T) {
	job := "job: tight\nfabrics: {Rope: {form: yardage, width: 42}}\nblock: {make: plain square, square: 6, print: Rope}\ncolourways: {a: {blocks: %d}}\nlayout: {across: %d, down: 1}\n"
	tight := planOf(t, strings.ReplaceAll(job, "%d", "42"))
	assert.Equal(t, []Warning{{Code: "nothing-spare", Path: "fabrics.Rope", Message: "Rope: nothing is left to straighten the ends; have 1/8 yd more cut"}}, tight.Warnings[:1])
	assert.Empty(t, planOf(t, strings.ReplaceAll(job, "%d", "28")).Warnings)
}

func TestARenamingThatNamesNoBookedColourwayIsRefused(t *testing.T) {
	first := planOf(t, recutFour)
	job, err := Parse("job.yaml", []byte(strings.Replace(recutFour, "tide: {blocks: 8}", "ebb: {was: tyde, blocks: 8}", 1)))
	require.NoError(t, err)
	_, err = Make(job, prior(first.Blocks))
	require.Error(t, err)
	assert.Contains(t, err.Error(), `no colourway of the booked job is called "tyde"; its colourways are tide`)
}

func TestAMetricSeamIsNotRounded(t *testing.T) {
	for file, want := range map[string]string{
		"units: cm\n": "0.75 cm", "units: cm\nseam: 6 mm\n": "0.6 cm", "": "1/4 in", "seam: 3/8\n": "3/8 in",
	} {
		job, err := Parse("job.yaml", []byte(preCut+file))
		require.NoError(t, err)
		assert.Equal(t, want, job.SeamShown())
	}
}

// Hand-worked: of Chalk, 40 in wide, 31 pieces of 9 1/2 × 2 1/2 in for sashing lie in
// strips of squares of 3 1/2 in too. Those strips are cut with the sashing, and the
// squares' own operation does not cut them a second time. The backing's panels, which
// no operation cuts, come off with the border's strips of the same cloth.
func TestNoOperationCutsAStripThatAnEarlierOneHasCut(t *testing.T) {
	p := planOf(t, `job: jetty
received: 2026-11-02
due: 2027-03-12
fabrics:
  Jetty: {form: yardage, width: 40}
  Chalk: {form: yardage, width: 40}
  Tar:   {form: yardage, width: 40}
block: {make: nine-patch, square: 3 1/2, side: Chalk}
colourways:
  north: {blocks: 12, corner: Jetty, centre: Jetty}
layout:
  across: 3
  down: 4
  sashing: {width: 2, fabric: Chalk, cornerstones: Tar, edge: yes}
borders:
  - {width: 4, fabric: Tar}
backing: {fabric: Tar, extra: 4}
`)
	sashing, squares := op(t, p, keyCutSash, "Chalk").Doing, op(t, p, keyCut, "Chalk").Doing
	assert.Contains(t, sashing, "cuts across the cloth = ")
	assert.Contains(t, sashing, "6 strips 3 1/2 in × width")
	assert.True(t, strings.HasPrefix(squares, "Cut already: 6 strips 3 1/2 in × width; then "), squares)
	assert.NotContains(t, squares, "cross the cloth")
	border := op(t, p, keyCutBord, "Tar").Doing
	assert.Contains(t, border, "1 length 51 in × width for backing")
	assert.Contains(t, border, "1 piece 23 × 51 in for backing")
	assert.NotContains(t, op(t, p, keyCutStones, "Tar").Doing, "backing")
}
