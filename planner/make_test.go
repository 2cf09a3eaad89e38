package planner

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// planOf plans a job written in the test.
func planOf(t testing.TB, file string) Plan {
	t.Helper()
	job, err := Parse("job.yaml", []byte(file))
	require.NoError(t, err)
	plan, err := Make(job, Prior{})
	require.NoError(t, err)
	return plan
}

func examples(t testing.TB) map[string]Job {
	t.Helper()
	paths, err := filepath.Glob("../examples/*.yaml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(paths), 4)
	jobs := map[string]Job{}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		job, err := Parse(filepath.Base(path), data)
		require.NoError(t, err)
		jobs[filepath.Base(path)] = job
	}
	return jobs
}

func inches(t testing.TB, text string) measure.Length {
	t.Helper()
	l, err := measure.Parse(text, measure.Inches)
	require.NoError(t, err)
	return l
}

// squareOf is a square's size.
func squareOf(side measure.Length) measure.Size { return measure.Size{Width: side, Height: side} }

func inchSize(t testing.TB, w, h string) measure.Size {
	return measure.Size{Width: inches(t, w), Height: inches(t, h)}
}

const recutFour = `
job: four
fabrics: {Kelp: {form: yardage, width: 42}, Foam: {form: yardage, width: 42}}
block: {make: four-patch recut, square: 7, offset: 1, print: Kelp, ground: Foam}
colourways: {tide: {blocks: 8}}
layout: {across: 4, down: 2}
`

// count is the count of an operation over all its lots.
func count(p Plan, key string) int {
	total := 0
	for _, o := range p.Operations {
		if o.Key == key {
			total += o.Count
		}
	}
	return total
}

// For N four-patch recut blocks: 4N squares, 2N pairs, N units, two recut
// passes of 2N cuts, two row-seam passes of 3N seams, 2N row joins. Hand-worked
// from the making of the block.
func TestAFourPatchRecutRunHasTheHandWorkedTotals(t *testing.T) {
	p := planOf(t, recutFour)
	const n = 8
	for key, want := range map[string]int{
		"cut": 4 * n, "kit": n,
		"sew-pairs": 2 * n, "press-pairs": 2 * n, "sew-units": n, "press-units": n,
		"recut-upright": 2 * n, "recut-level": 2 * n, "turn": n,
		"sew-block-column-2": 3 * n, "sew-block-column-3": 3 * n, "press-block-rows": 3 * n,
		"join-block-row-2": n, "join-block-row-3": n, "press-block": n, "square-up": n,
		"lay-out-top": n, "sew-top-rows": 2 * 3, "press-top-rows": 2, "join-top-rows": 1,
		"test": 1, "seam-test": 1, "prepare": 2, "hand-over": 1,
	} {
		assert.Equal(t, want, count(p, key), key)
	}
	assert.Equal(t, 2*n, count(p, "join-block-row-2")+count(p, "join-block-row-3"))
}

func TestTheRouteRunsInTheOrderOfAProductionRun(t *testing.T) {
	var keys []string
	last := 0
	for _, o := range planOf(t, recutFour).Operations {
		if o.Number != last {
			keys = append(keys, o.Key)
			assert.Equal(t, last+10, o.Number)
			last = o.Number
		}
	}
	assert.Equal(t, strings.Fields(`prepare seam-test test cut kit sew-pairs press-pairs sew-units press-units
		recut-upright recut-level turn sew-block-column-2 sew-block-column-3 press-block-rows
		join-block-row-2 join-block-row-3 press-block square-up
		lay-out-top sew-top-rows press-top-rows join-top-rows press-top measure-top hand-over`), keys)
}

// 42 recut nine-patches of 5 in squares, 6 x 7. Hand-worked, raw edge to raw
// edge: a block 6 x 5 + 2 x 14 + 2 x 7 + 13 1/2 = 85 1/2; all blocks 3591; in
// rows 7 x 5 x 13 1/2 = 472 1/2; between rows 6 x 78 1/2 = 471; in all 4534 1/2.
func TestSeamLengthsOfARunAddUp(t *testing.T) {
	p := planOf(t, `
job: nine
fabrics: {Kelp: {form: yardage}, Foam: {form: yardage}, Reed: {form: yardage}}
block: {make: nine-patch recut, square: 5, corner: Kelp, side: Foam, centre: Reed}
colourways: {tide: {blocks: 42}}
layout: {across: 6, down: 7}
`)
	assert.Equal(t, inches(t, "85 1/2"), p.Colourways[0].SeamLength)
	var blocks, rows, joins measure.Length
	for _, o := range p.Operations {
		switch {
		case o.Lot.Kind == ColourwayLot:
			blocks += o.SeamLength
		case o.Key == "sew-top-rows":
			rows += o.SeamLength
		case o.Key == "join-top-rows":
			joins += o.SeamLength
		}
	}
	assert.Equal(t, inches(t, "3591"), blocks)
	assert.Equal(t, inches(t, "472 1/2"), rows)
	assert.Equal(t, inches(t, "471"), joins)
}

// whatwerks.wordpress.com: 12 recut nine-patches of 5 in squares, 3 x 4, 48 + 48
// + 12 squares, 39 x 52. A pack of 42 squares is six short for the corners.
func TestARecutNinePatchQuiltHasThePublishedSizeAndSquares(t *testing.T) {
	p := planOf(t, `
job: nine
fabrics:
  Pack: {form: pre-cut squares, size: 5, on-hand: 42}
  Foam: {form: yardage, width: 42}
  Reed: {form: yardage, width: 42}
block: {make: nine-patch recut, square: 5, corner: Pack, side: Foam, centre: Reed}
colourways: {tide: {blocks: 12}}
layout: {across: 3, down: 4}
`)
	assert.Equal(t, inchSize(t, "39", "52"), p.Quilt.Finished)
	assert.Equal(t, inchSize(t, "13 1/2", "13 1/2"), p.Colourways[0].Raw)
	assert.NotEqual(t, inchSize(t, "40 1/2", "54"), p.Quilt.Finished, "raw blocks are not finished blocks")
	assert.Equal(t, 48, p.Fabrics[0].Sheets)
	assert.Equal(t, 6, p.Fabrics[0].SheetBuy)
	assert.Equal(t, 48, p.Fabrics[1].Pieces[0].Count)
	assert.Equal(t, 12, p.Fabrics[2].Pieces[0].Count)
	assert.Equal(t, []string{"81", "72", "16"}, areas(p.Colourways[0]), "corner, side and centre, 169 in all")
	for _, o := range p.Operations {
		assert.False(t, o.Key == "cut" && o.Lot.Name == "Pack", "squares that come cut are not cut")
	}
}

func areas(c ColourwayPlan) []string {
	var out []string
	for _, a := range c.Areas {
		out = append(out, a.Area.Decimal(measure.Inches, 4))
	}
	return out
}

// blockexchangebonanza.blogspot.com 2012/01: 5 in squares, offsets 1, 1 1/4 and
// 1 1/2: all 8 1/2 raw, so they mix in one quilt. Print and ground 32 sq in each.
func TestAnOffsetDoesNotChangeTheBlock(t *testing.T) {
	p := planOf(t, `
job: mixed
fabrics: {Kelp: {form: yardage}, Foam: {form: yardage}}
block: {make: four-patch recut, square: 5, print: Kelp, ground: Foam}
colourways:
  one: {blocks: 1, offset: 1}
  two: {blocks: 1, offset: 1 1/4}
  three: {blocks: 1, offset: 1 1/2}
layout: {across: 3, down: 1}
`)
	for _, c := range p.Colourways {
		assert.Equal(t, inchSize(t, "8 1/2", "8 1/2"), c.Raw, c.Name)
		assert.Equal(t, []string{"32", "32"}, areas(c), c.Name)
	}
	assert.Equal(t, 3, count(p, "test"), "one test block for each set of measures")
}

// Plain blocks 6 x 7 with rows pressed in turn: 6 row joins of 5 crossings, 30
// corners, all nesting. Source of the case: snugglebugstitching.com.
func TestCornersOfPlainBlocksNest(t *testing.T) {
	p := planOf(t, `
job: plain
fabrics: {Kelp: {form: yardage}}
block: {make: plain square, square: 5, print: Kelp}
colourways: {tide: {blocks: 42}}
layout: {across: 6, down: 7}
`)
	assert.Equal(t, 30, p.Joins[2].Matches.Nest)
	assert.Zero(t, p.Joins[2].Matches.Clash)
	assert.Zero(t, p.Joins[0].Matches.Nest+p.Joins[0].Matches.Clash, "plain squares have no seams to match")
}

func TestBlocksThatDoNotFinishAlikeAreRefusedWhereTheyAreWritten(t *testing.T) {
	job, err := Parse("job.yaml", []byte(strings.Replace(recutFour, "tide: {blocks: 8}", "tide: {blocks: 4}, dune: {blocks: 4, square: 6}", 1)))
	require.NoError(t, err)
	_, err = Make(job, Prior{})
	var problems Problems
	require.ErrorAs(t, err, &problems)
	assert.Equal(t, "colourways.dune", problems[0].Path)
	assert.Contains(t, err.Error(), "job.yaml:5:")
	assert.Contains(t, err.Error(), "blocks of dune finish 10 × 10 in, those of tide finish 12 × 12 in")
}

func TestAFaultOfGeometryPointsAtTheMeasureThatCausesIt(t *testing.T) {
	job, err := Parse("job.yaml", []byte(strings.Replace(recutFour, "offset: 1,", "offset: 9,", 1)))
	require.NoError(t, err)
	_, err = Make(job, Prior{})
	var problems Problems
	require.ErrorAs(t, err, &problems)
	assert.Equal(t, Position{Line: 4, Column: 52}, problems[0].At, "the shared block gives the offset")
}

// Hand-worked: 48 x 24 in has 144 in of edge and 10 in more; a strip of 22 in
// gives 19 1/2 in once joined, so eight strips. Sixteen squares of 7 in, six to a
// sheet, leave four bands 4 × 22 on three sheets of 18 in, one strip from each, and
// room beside the last squares.
func TestABindingMayComeFromFatQuarters(t *testing.T) {
	p := planOf(t, strings.Replace(recutFour, "{form: yardage, width: 42}, Foam", "{form: fat quarter, size: 18 x 22}, Foam", 1)+"binding: {fabric: Kelp, strip: 2 1/2}\n")
	assert.Equal(t, 8, p.Materials.Binding.Strips)
	strips := p.Fabrics[0].Pieces[0]
	assert.Equal(t, inchSize(t, "22", "2 1/2"), strips.Size)
	assert.Equal(t, 8, strips.Count)
	assert.Equal(t, "binding", strips.For)
}

func TestQuantityMultipliesTheRunButNotTheQuilt(t *testing.T) {
	one := planOf(t, recutFour)
	two := planOf(t, recutFour+"quantity: 2\n")
	assert.Equal(t, one.Quilt, two.Quilt)
	assert.Equal(t, 8, two.Quilt.Blocks)
	assert.Equal(t, 2*count(one, "sew-pairs"), count(two, "sew-pairs"))
	assert.Equal(t, 2, count(two, "hand-over"))
	assert.Equal(t, "tide-09", two.Blocks[8].ID)
	assert.Equal(t, 2, two.Blocks[8].Quilt)
	assert.Equal(t, one.Blocks[0].Fabrics, two.Blocks[8].Fabrics, "the quilts are alike")
}

var keyForm = regexp.MustCompile(`^[a-z0-9-]+$`)

func TestEveryRouteHoldsTogether(t *testing.T) {
	for name, job := range examples(t) {
		p, err := Make(job, Prior{})
		require.NoError(t, err, name)
		rows := map[string]Operation{}
		for _, o := range p.Operations {
			assert.Regexp(t, keyForm, o.Key)
			assert.Positive(t, o.Count, "%s %s", name, o.Key)
			assert.Positive(t, float64(o.Minutes()), "%s %s takes time", name, o.Key)
			assert.NotEmpty(t, o.Doing, o.Key)
			id := o.Key + "/" + string(o.Lot.Kind) + "/" + o.Lot.Name
			assert.NotContains(t, rows, id, "one row per lot")
			rows[id] = o
		}
		for _, o := range p.Operations {
			for _, a := range o.After {
				assert.Contains(t, rows, a.Key+"/"+string(a.Lot.Kind)+"/"+a.Lot.Name, "%s: %s comes after a row that is not there", name, o.Key)
			}
		}
		assert.True(t, canBeDone(rows), "%s: the route goes in a circle", name)
	}
}

// canBeDone takes rows off whose predecessors are all off, until none is left.
func canBeDone(rows map[string]Operation) bool {
	done := map[string]bool{}
	for len(done) < len(rows) {
		before := len(done)
		for id, o := range rows {
			ready := true
			for _, a := range o.After {
				ready = ready && done[a.Key+"/"+string(a.Lot.Kind)+"/"+a.Lot.Name]
			}
			if ready {
				done[id] = true
			}
		}
		if len(done) == before {
			return false
		}
	}
	return true
}

// Every example is a quilt somebody could lay on a bed, a lap or in a cot.
func TestExamplesArePlausibleQuilts(t *testing.T) {
	for name, want := range map[string]string{
		"estuary-lap.yaml": "56 × 68 in", "saltmarsh-cot.yaml": "90 × 120 cm",
		"lighthouse-king.yaml": "111 × 111 in", "harbour-pair.yaml": "47 × 59 in",
		"oyster-throw.yaml": "50 × 61 1/2 in", "gull-cot.yaml": "40 × 56 in",
		"tidemark-lap.yaml": "48 × 58 1/2 in", "beacon-throw.yaml": "44 × 52 in",
	} {
		p, err := Make(examples(t)[name], Prior{})
		require.NoError(t, err, name)
		assert.Equal(t, want, p.Quilt.Finished.Show(p.Job.Units), name)
		hours := float64(p.Minutes) / 60
		assert.Greater(t, hours, 8.0, name)
		assert.Less(t, hours, 200.0, name)
	}
}

// What blocks and strip sets take of each fabric's cut pieces is what is cut for
// them: none is short and none is over.
func TestPiecesInTheListAreThePiecesInTheBlocks(t *testing.T) {
	for name, job := range examples(t) {
		p, err := Make(job, Prior{})
		require.NoError(t, err, name)
		taken, listed := map[string]int{}, map[string]int{}
		for _, o := range p.Operations {
			for _, ref := range o.After {
				for _, take := range ref.Takes {
					if ref.Key == keyCut {
						taken[ref.Lot.Name] += take.Count
					}
				}
			}
		}
		for _, n := range p.Fabrics {
			for _, piece := range n.Pieces {
				if piece.For == forBlocks && !readyCut(n.Fabric, piece) {
					listed[n.Fabric.Name] += piece.Count
				}
			}
		}
		assert.Equal(t, listed, taken, name)
	}
}

func BenchmarkMakeKing(b *testing.B) {
	job := examples(b)["lighthouse-king.yaml"]
	for b.Loop() {
		if _, err := Make(job, Prior{}); err != nil {
			b.Fatal(err)
		}
	}
}
