package render

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// measure16 is a measure of a plan's piece, so many 16ths of an inch off.
func measure16(t testing.TB, plan planner.Plan, step string, off int) Measure {
	t.Helper()
	piece, err := planner.PieceAt(plan, step, plan.Colourways[0].Name)
	require.NoError(t, err)
	size := piece.Size
	size.Width += measure.Length(off) * measure.Inch / 16
	size.Height = 0
	first, err := planner.ReadPiece(plan, piece, size, planner.DefaultTolerance(plan.Job.Units))
	require.NoError(t, err)
	return Measure{Job: plan.Job, First: first, Kept: tracker.Measurement{
		Step: piece.Step, Operation: piece.Operation, Name: piece.Name, Colourways: piece.Colourways, Machine: "window",
		Unit: plan.Job.Units.String(), Should: piece.Size, Seams: piece.SeamsAcross(), Seam: first.Seam, Planned: plan.Job.Seam,
		Sizes: []tracker.MeasuredSize{{Size: size, Count: 1}},
	}}
}

// unevenBlocks is two blocks of a plan a quarter of an inch too small.
func unevenBlocks(t testing.TB, plan planner.Plan) Measure {
	t.Helper()
	m := measure16(t, plan, "square-up", -4)
	small := m.First.Planned.Raw
	small.Width -= measure.Inch / 4
	small.Height -= measure.Inch / 4
	short := []string{plan.Blocks[0].ID, plan.Blocks[1].ID}
	uneven, err := planner.BlocksOf(plan, []planner.SizeCount{{Size: small, Count: 2}}, short, "", m.First.Tolerance)
	require.NoError(t, err)
	m.Kept.Sizes[0].Count, m.Kept.Sizes[0].Blocks = 2, short
	m.Uneven = &uneven
	return m
}

// drifting is a job in which five measures of the seam test drift.
func drifting(t testing.TB, plan planner.Plan) (tracker.State, Measure) {
	t.Helper()
	state := booked(t, plan, 0)
	var last Measure
	for i := range 5 {
		last = measure16(t, plan, "three-strips", -i)
		ev, err := state.Measure(last.Kept, fmt.Sprint("m", i), noon, "Maren")
		require.NoError(t, err)
		ev.Seq = state.LastSeq() + 1
		last.Event = ev
		state, err = state.With(ev)
		require.NoError(t, err)
	}
	drifts := state.Drifts()
	require.Len(t, drifts, 1)
	last.Drift, last.Readings = &drifts[0], 5
	return state, last
}

func TestMeasuresKeepTheirContract(t *testing.T) {
	for _, name := range examples(t) {
		plan := example(t, name)
		for _, off := range []int{-3, 0, 2} {
			m := measure16(t, plan, "three-strips", off)
			conforms(t, "measure", func(w io.Writer) error { return MeasuredJSON(w, m) })
		}
		if len(plan.Colourways[0].Build.Steps) > 1 {
			m := unevenBlocks(t, plan)
			conforms(t, "measure", func(w io.Writer) error { return MeasuredJSON(w, m) })
		}
	}
	state, last := drifting(t, example(t, "estuary-lap"))
	last.Revision, last.Changes = 2, []string{"seam: 0.281 in, was 1/4 in"}
	conforms(t, "measure", func(w io.Writer) error { return MeasuredJSON(w, last) })
	conforms(t, "measure-list", func(w io.Writer) error { return MeasurementsJSON(w, state) })
	conforms(t, "left", func(w io.Writer) error { return LeftJSON(w, state, noon) })
	conforms(t, "measure-list", func(w io.Writer) error { return MeasurementsJSON(w, booked(t, example(t, "estuary-lap"), 0)) })
}

// comparison is a job beside itself with other values, one of which cannot be.
func comparison(t testing.TB) Comparison {
	t.Helper()
	plan := example(t, "estuary-lap")
	state := booked(t, plan, 2)
	larger := planned(t, largerLap)
	return Comparison{
		Base: Compared{Plan: plan, Left: &state},
		Others: []Compared{
			{Changes: []planner.Change{{Key: "across", Value: "5"}}, Plan: larger, Left: &state, Spread: true},
			{Changes: []planner.Change{{Key: "square", Value: "1"}}, Problem: assert.AnError},
		},
	}
}

const largerLap = `
job: estuary-lap
fabrics: {Foam: {form: yardage, width: 42}, Kelp: {form: fat quarter}}
block: {make: four-patch recut, square: 7, offset: 1, print: Kelp, ground: Foam}
colourways: {tide: {blocks: 25}}
layout: {across: 5, down: 5}
backing: {fabric: Foam}
batting: {extra: 4}
binding: {fabric: Foam}
`

func TestComparisonsKeepTheirContract(t *testing.T) {
	conforms(t, "compare", func(w io.Writer) error { return ComparedJSON(w, comparison(t)) })
	plan := example(t, "saltmarsh-cot")
	conforms(t, "compare", func(w io.Writer) error { return ComparedJSON(w, Comparison{Base: Compared{Plan: plan}}) })
}

// Every page of both commands, wide and narrow, keeps to its width.
func TestMeasuresAndComparisonsKeepToThePage(t *testing.T) {
	plan := example(t, "estuary-lap")
	_, last := drifting(t, plan)
	state, _ := drifting(t, plan)
	for _, look := range []Look{{Width: 80, Unicode: true}, {Width: 40}, {Width: 40, Unicode: true}} {
		for name, show := range map[string]func(w io.Writer) error{
			"drift":        func(w io.Writer) error { return Measured(w, last, look) },
			"uneven":       func(w io.Writer) error { return Measured(w, unevenBlocks(t, plan), look) },
			"too wide":     func(w io.Writer) error { return Measured(w, measure16(t, plan, "block", 5), look) },
			"measurements": func(w io.Writer) error { return Measurements(w, state, look) },
			"comparison":   func(w io.Writer) error { return ShowComparison(w, comparison(t), look) },
		} {
			for _, line := range strings.Split(shownBy(t, func(w *bytes.Buffer) error { return show(w) }), "\n") {
				assert.LessOrEqual(t, width(line), look.Width, "%s at %d: %s", name, look.Width, line)
				if !look.Unicode {
					assert.True(t, ascii(line), "%s: %s", name, line)
				}
			}
		}
	}
}
