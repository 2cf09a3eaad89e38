package planner

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// alteredPlan plans a job file with some of its values changed: "across=5".
func alteredPlan(t *testing.T, file string, changes ...string) (Plan, error) {
	t.Helper()
	altered, err := ParseAltered("job.yaml", []byte(file), changesOf(changes...))
	if err != nil {
		return Plan{}, err
	}
	return Make(altered.Job, Prior{})
}

func changesOf(texts ...string) []Change {
	var changes []Change
	for _, text := range texts {
		key, value, _ := strings.Cut(text, "=")
		changes = append(changes, Change{key, value})
	}
	return changes
}

// lap is 54 blocks, nine fabrics of six each, that finish 10 and not 8
// (gardenweb.com/discussions/6366797; hand-worked).
const lap = `
job: lap
fabrics: {A: {}, B: {}, C: {}, D: {}, E: {}, F: {}, G: {}, H: {}, I: {}}
block: {make: plain square, square: 10 1/2}
colourways: {a: {blocks: 6, print: A}, b: {blocks: 6, print: B}, c: {blocks: 6, print: C}, d: {blocks: 6, print: D},
  e: {blocks: 6, print: E}, f: {blocks: 6, print: F}, g: {blocks: 6, print: G}, h: {blocks: 6, print: H}, i: {blocks: 6, print: I}}
layout: {across: 6, down: 9}
`

func TestColourwaysKeepTheirProportionsInAnotherLayout(t *testing.T) {
	was := planOf(t, lap)
	assert.Equal(t, inchSize(t, "60", "90"), was.Quilt.Finished)
	plan, err := alteredPlan(t, lap, "across=5", "down=7")
	require.NoError(t, err)
	assert.Equal(t, inchSize(t, "50", "70"), plan.Quilt.Finished)
	var blocks []int
	for _, c := range plan.Colourways {
		blocks = append(blocks, c.Blocks)
	}
	assert.Equal(t, []int{4, 4, 4, 4, 4, 4, 4, 4, 3}, blocks, "eight fabrics give 4, one gives 3")
}

// 53 x 61 of 8 in blocks, 5 x 6, borders 2 and 4 1/2; one more column and row is
// 61 x 69 of 42 blocks, and the edge grows from 228 to 260
// (cuddlecatquiltworks.com; hand-worked).
const onMore = `
job: one-more
fabrics: {Kelp: {form: yardage, width: 42}, Foam: {form: yardage, width: 42}}
block: {make: plain square, square: 8 1/2, print: Kelp}
colourways: {tide: {blocks: 30}}
layout: {across: 5, down: 6}
borders: [{width: 2, fabric: Foam}, {width: 4 1/2, fabric: Foam}]
binding: {fabric: Foam}
`

func TestOneMoreColumnAndRow(t *testing.T) {
	was := planOf(t, onMore)
	plan, err := alteredPlan(t, onMore, "across=6", "down=7")
	require.NoError(t, err)
	edge := func(p Plan) string { return (2 * (p.Quilt.Finished.Width + p.Quilt.Finished.Height)).String() }
	assert.Equal(t, inchSize(t, "53", "61"), was.Quilt.Finished)
	assert.Equal(t, inchSize(t, "61", "69"), plan.Quilt.Finished)
	assert.Equal(t, 42, plan.Quilt.Blocks)
	assert.Equal(t, []string{"228 in", "260 in"}, []string{edge(was), edge(plan)})
}

// Three across of 3 1/2 in squares, to be made twice as big: 6 1/2 is right, and
// the published 6 3/4 makes a row 3/4 too long (FM Quilters).
func TestDoublingACutSize(t *testing.T) {
	row := `
job: row
fabrics: {Kelp: {form: yardage, width: 42}}
block: {make: plain square, square: 3 1/2, print: Kelp}
colourways: {tide: {blocks: 3}}
layout: {across: 3, down: 1}
`
	was := planOf(t, row)
	right, err := alteredPlan(t, row, "square=6 1/2")
	require.NoError(t, err)
	published, err := alteredPlan(t, row, "square=6 3/4")
	require.NoError(t, err)
	assert.Equal(t, 2*was.Quilt.Finished.Width, right.Quilt.Finished.Width)
	assert.NotEqual(t, 2*was.Quilt.Finished.Width, published.Quilt.Finished.Width)
	assert.Equal(t, inches(t, "3/4"), published.Quilt.Finished.Width-right.Quilt.Finished.Width)
}

const manyKeys = `
job: many
fabrics: {Kelp: {form: yardage, width: 42}, Foam: {form: yardage, width: 42}}
block: {make: four-patch recut, square: 7, ground: Foam}
colourways:
  tide: {blocks: 5, offset: 1, print: {Kelp: 3, Foam: 2}}
  dune: {blocks: 3, offset: 1 1/4, print: Kelp}
layout: {across: 4, down: 2}
borders: [{width: 2, fabric: Foam}, {width: 3, fabric: Kelp}]
`

func TestKeysReachTheirPlaces(t *testing.T) {
	read := func(changes ...string) Job {
		altered, err := ParseAltered("job.yaml", []byte(manyKeys), changesOf(changes...))
		require.NoError(t, err, changes)
		return altered.Job
	}
	offsets := func(j Job) []string {
		var all []string
		for _, c := range j.Colourways {
			all = append(all, c.Block.Measures["offset"].String())
		}
		return all
	}
	assert.Equal(t, []string{"1.5 in", "1.5 in"}, offsetsOf(offsets(read("offset=1 1/2"))), "wherever the file has it")
	assert.Equal(t, []string{"1.5 in", "1.25 in"}, offsetsOf(offsets(read("tide.offset=1 1/2"))))
	assert.Equal(t, inches(t, "4"), read("borders.2.width=4").Borders[1].Width)
	assert.Equal(t, inches(t, "4"), read("border.2.width=4").Borders[1].Width, "the trade's other words count")
	assert.Equal(t, inches(t, "3/8"), read("seam=3/8").Seam)
	assert.Equal(t, 3, read("quantity=3").Quantity)
	assert.Equal(t, 42*inches(t, "1")+2*inches(t, "1"), read("Kelp.width=44").Fabrics[0].Width)
	assert.Equal(t, FillRows, read("order={rows: fill}").Layout.Order, "a value in brackets is YAML")
	assert.Equal(t, inches(t, "2 1/2"), read("binding.strip=2 1/2", "binding.fabric=Foam").Binding.Strip, "what the file does not have is made")
}

// offsetsOf writes lengths alike.
func offsetsOf(all []string) []string {
	replace := strings.NewReplacer("1 1/2 in", "1.5 in", "1 1/4 in", "1.25 in")
	for i := range all {
		all[i] = replace.Replace(all[i])
	}
	return all
}

func TestCountsOfFabricsAreSharedOutToo(t *testing.T) {
	altered, err := ParseAltered("job.yaml", []byte(manyKeys), changesOf("down=4"))
	require.NoError(t, err)
	assert.True(t, altered.Spread)
	tide := altered.Job.Colourways[0]
	assert.Equal(t, 10, tide.Blocks, "5 of 8 of 16")
	assert.Equal(t, []Share{{"Kelp", 6}, {"Foam", 4}}, tide.Roles[0].Fabrics, "3 and 2 of 5 of 10")
	assert.Equal(t, 6, altered.Job.Colourways[1].Blocks)
}

func TestABlockCountThatWasGivenStays(t *testing.T) {
	altered, err := ParseAltered("job.yaml", []byte(manyKeys), changesOf("down=3", "dune.blocks=8", "tide.print=Kelp"))
	require.NoError(t, err)
	assert.Equal(t, 8, altered.Job.Colourways[1].Blocks)
	assert.Equal(t, 4, altered.Job.Colourways[0].Blocks)
}

func TestAChangeThatCannotBeSaysWhy(t *testing.T) {
	for change, want := range map[string]string{
		"acros=5":           `there is nothing called "acros" in a job file; did you mean "across"?`,
		"across=five":       `"across" should be a whole number, not "five"`,
		"borders.3.width=1": `"3" is no place of a list of 2; places count from 1`,
		"tide.print=Whelk":  `the fabric "Whelk" is not described under fabrics`,
		"title.x=1":         `"title" should be`,
		"quantity.x=1":      `should be a whole number, not keys with values`,
		"units.x.y=1":       ``,
		"order=[[tide]":     ``,
		"square=0":          `"square" cannot be`,
	} {
		_, err := alteredPlan(t, manyKeys, change)
		require.Error(t, err, change)
		assert.Contains(t, err.Error(), want, change)
		var problems Problems
		assert.True(t, errors.As(err, &problems), change)
	}
}

// Whatever is shared out, nothing is lost, nobody has none, and no share is off
// by a whole block from its proportion where none had to be lifted to one.
func TestSharesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		counts := rapid.SliceOfN(rapid.IntRange(1, 60), 1, 12).Draw(t, "counts")
		total := rapid.IntRange(len(counts), 500).Draw(t, "total")
		sum, had := 0, 0
		for _, n := range counts {
			had += n
		}
		shares := Shares(counts, total)
		for i, share := range shares {
			sum += share
			assert.GreaterOrEqual(t, share, 1)
			if total >= had { // nobody's share is below one
				assert.Less(t, float64(share)-float64(counts[i]*total)/float64(had), 1.0)
				assert.Greater(t, float64(share)-float64(counts[i]*total)/float64(had), -1.0)
			}
		}
		assert.Equal(t, total, sum)
	})
}

func FuzzParseAltered(f *testing.F) {
	for _, seed := range []string{"across=5", "tide.offset=1", "borders.1.width=3", "order={rows: fill}", "a.b.c.d=[1, [2]]", "colourways.tide={}"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		key, value, _ := strings.Cut(text, "=")
		altered, err := ParseAltered("job.yaml", []byte(manyKeys), []Change{{key, value}})
		if err == nil && altered.Job.ID == "" {
			t.Errorf("%q gives an empty job and no error", text)
		}
	})
}
