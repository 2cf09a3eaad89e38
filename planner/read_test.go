package planner

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// plainJob is a small job without fault; the tables of faults change one thing
// in it. Its lines are counted in their sentences.
const plainJob = `job: estuary-lap
title: Estuary lap quilt
received: 2026-11-02
due: 2027-02-12
quantity: 1
seam: 1/4

fabrics:
  Kelp: {form: fat quarter, on-hand: 4}
  Foam: {form: yardage, width: 42}

block:
  make: four-patch recut
  square: 7
  offset: 1 1/4

colourways:
  tide:
    blocks: 6
    print: Kelp
    ground: Foam
  dune:
    blocks: 2
    print: [Foam]
    ground: Kelp

layout:
  across: 4
  down: 2
borders:
  - {width: 3, fabric: Foam}
backing: {fabric: Foam}
batting: {extra: 4}
binding: {fabric: Kelp, strip: 2 1/2}
quilting: {by: self, density: medium}
`

// changed is plainJob with one thing replaced, and perhaps more.
func changed(t testing.TB, old, replacement string, more ...string) string {
	t.Helper()
	text := plainJob
	for pairs := append([]string{old, replacement}, more...); len(pairs) > 1; pairs = pairs[2:] {
		require.Contains(t, text, pairs[0])
		text = strings.Replace(text, pairs[0], pairs[1], 1)
	}
	return text
}

// readGood parses what must have no fault.
func readGood(t testing.TB, text string) Job {
	t.Helper()
	j, err := Parse("job.yaml", []byte(text))
	require.NoError(t, err)
	return j
}

// sentences is what Parse says is wrong, without the file's name.
func sentences(t testing.TB, text string) []string {
	t.Helper()
	j, err := Parse("job.yaml", []byte(text))
	require.Error(t, err)
	assert.Equal(t, Job{}, j, "a job with faults is empty")
	var problems Problems
	require.True(t, errors.As(err, &problems))
	all := make([]string, len(problems))
	for i, p := range problems {
		all[i] = strings.TrimPrefix(p.Error(), "job.yaml:")
	}
	return all
}

// faultCase is plainJob with one thing replaced, and all that is said about it.
type faultCase struct {
	name, old, replacement string
	want                   []string
}

func assertFaults(t *testing.T, cases []faultCase) {
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.want, sentences(t, changed(t, c.old, c.replacement)))
		})
	}
}

func jobFile(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "jobs", name))
	require.NoError(t, err)
	return data
}

func TestThePlainJobOfTheTablesHasNoFault(t *testing.T) {
	readGood(t, plainJob)
}

func TestEveryJobFileOfTheTestsIsReadOrRefusedForOneReason(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("testdata", "jobs", "*.yaml"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		_, err := Parse("job.yaml", jobFile(t, filepath.Base(file)))
		assert.NoError(t, err, file)
	}
}

// Lengths are hand-worked: 1/4 in is 36 576 000 ticks, and so on through the
// package's own units.
func TestAJobFileIsReadWhole(t *testing.T) {
	const in = measure.Inch
	j, err := Parse("lap.yaml", jobFile(t, "every-key-built.yaml"))
	require.NoError(t, err)
	j.At = nil
	assert.Equal(t, Job{
		File: "lap.yaml", ID: "estuary-lap", Title: "Estuary lap quilt", Client: "Pilot Lane Library",
		Received: Date{2026, 11, 2}, Due: Date{2027, 2, 12}, Quantity: 1,
		Units: measure.Inches, Seam: in / 4,
		Fabrics: []Fabric{
			{Name: "Kelp", Form: FatQuarter, Size: measure.Size{Width: 18 * in, Height: 21 * in}, OnHand: &Stock{Sheets: 4},
				Colour: "#2e6f57", Directional: true, Assumed: true},
			{Name: "Cormorant", Form: FatQuarter, Size: measure.Size{Width: 18 * in, Height: 22 * in}, Colour: "slategray"},
			{Name: "Dunes", Form: PreCutSquares, Size: measure.Size{Width: 5 * in, Height: 5 * in}, OnHand: &Stock{Sheets: 42}},
			{Name: "Foam", Form: Yardage, Width: 42 * in, OnHand: &Stock{Length: 54 * in}, Colour: "#e8f0ee"},
		},
		Colourways: []Colourway{{
			Name: "tide", Blocks: 8,
			Block: BlockSpec{Make: "four-patch recut", Square: squareOf(7 * in), Measures: map[string]measure.Length{"offset": in}},
			Roles: []RoleFabrics{
				{Role: "print", Fabrics: []Share{{Fabric: "Kelp"}, {Fabric: "Cormorant"}}},
				{Role: "ground", Fabrics: []Share{{Fabric: "Foam"}}},
			},
		}},
		Layout:   Layout{Across: 4, Down: 2, Setting: Straight, Order: DealDiagonal, Turn: [][]int{{0, 90}, {90, 0}}},
		Borders:  []Border{{Width: 3 * in, Fabric: "Foam"}},
		Backing:  &Backing{Fabric: "Foam", Extra: 4 * in, Ends: 4 * in},
		Batting:  &Batting{Extra: 4 * in},
		Binding:  &Binding{Fabric: "Kelp", Strip: 5 * in / 2, Finish: ByMachine, Joints: DiagonalJoint, Allowance: 10 * in},
		Quilting: &Quilting{Density: Medium},
	}, j)
}

// The defaults of inches are in the plain job's fabrics and above; these are
// those of centimetres, from read_defaults.go's sources.
func TestAMetricJobHasMetricDefaults(t *testing.T) {
	const cm = measure.Centimetre
	j := readGood(t, string(jobFile(t, "cot-metric.yaml")))
	assert.Equal(t, measure.Centimetres, j.Units)
	assert.Equal(t, 7500*measure.Millimetre/1000, j.Seam)
	assert.True(t, j.Prewash)
	assert.Equal(t, "saltmarsh-cot", j.Title, "the id stands in for a title")
	assert.Equal(t, []Fabric{
		{Name: "Samphire", Form: FatQuarter, Size: measure.Size{Width: 50 * cm, Height: 55 * cm}, OnHand: &Stock{Sheets: 3}, Assumed: true, Shrinkage: washed},
		{Name: "Mud", Form: FatEighth, Size: measure.Size{Width: 25 * cm, Height: 55 * cm}, Assumed: true, Shrinkage: washed},
		{Name: "Sky", Form: Yardage, Width: 102 * cm, OnHand: &Stock{Length: 150 * cm}, Assumed: true, Shrinkage: washed},
		{Name: "Reed", Form: PreCutStrips, Size: measure.Size{Width: 65 * measure.Millimetre, Height: 102 * cm}, OnHand: &Stock{Sheets: 12}, Assumed: true},
	}, j.Fabrics)
	assert.Equal(t, Layout{Across: 3, Down: 4, Setting: Straight, Order: FillRows}, j.Layout)
	assert.Equal(t, &Backing{Fabric: "Sky", Extra: 10 * cm, Ends: 10 * cm}, j.Backing)
	assert.Equal(t, &Batting{Extra: 8 * cm}, j.Batting)
	assert.Equal(t, &Binding{Fabric: "Reed", Strip: 65 * measure.Millimetre, Finish: ByMachine, Joints: DiagonalJoint, Allowance: 25 * cm}, j.Binding)
	assert.Equal(t, &Quilting{SentOut: true, LeadDays: 21, Density: Medium}, j.Quilting)
}

func TestInchesAreTheDefaultWithTheirOwnAssumptions(t *testing.T) {
	const in = measure.Inch
	j := readGood(t, changed(t, "{form: yardage, width: 42}", "{}\n  Reed: {form: fat eighth}"))
	assert.Equal(t, Fabric{Name: "Foam", Form: Yardage, Width: 40 * in, Assumed: true}, j.Fabrics[1])
	assert.Equal(t, Fabric{Name: "Reed", Form: FatEighth, Size: measure.Size{Width: 9 * in, Height: 21 * in}, Assumed: true}, j.Fabrics[2])
	assert.Equal(t, &Backing{Fabric: "Foam", Extra: 3 * in, Ends: 3 * in}, j.Backing, "at home; sent out it is more")
}

func TestWhatIsNotAskedForStaysOut(t *testing.T) {
	short := plainJob[:strings.Index(plainJob, "borders:")]
	j := readGood(t, short+"borders: []\n")
	assert.Nil(t, j.Borders)
	assert.Nil(t, j.Backing)
	assert.Nil(t, j.Batting)
	assert.Nil(t, j.Binding)
	assert.Nil(t, j.Quilting)
}
