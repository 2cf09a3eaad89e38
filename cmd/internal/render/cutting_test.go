package render

import (
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// allCuts is the cutting of every fabric of a plan.
func allCuts(t testing.TB, plan planner.Plan, style cloth.Style) []planner.FabricCut {
	t.Helper()
	var cuts []planner.FabricCut
	for _, need := range plan.Fabrics {
		cut, err := planner.CutPlan(plan.Job, need, style)
		require.NoError(t, err)
		cuts = append(cuts, planner.FabricCut{Need: need, Plan: cut})
	}
	return cuts
}

func TestCuttingKeepsItsContract(t *testing.T) {
	for name, plan := range contractPlans(t) {
		for _, style := range []cloth.Style{cloth.Simple, cloth.Nested} {
			t.Run(name+" "+string(style), func(t *testing.T) {
				conforms(t, "cut", func(w io.Writer) error { return CuttingJSON(w, plan.Job, style, allCuts(t, plan, style)) })
			})
		}
	}
}

func TestCuttingReadsAsItWasLeft(t *testing.T) {
	for _, c := range []struct{ name, look string }{
		{"estuary-lap", "80"}, {"estuary-lap", "40"}, {"estuary-lap", "ascii"}, {"gull-cot", "pipe"}, {"harbour-pair", "80"}, {"saltmarsh-cot", "40"},
	} {
		plan := example(t, c.name)
		golden(t, "cut-"+c.name+"-"+c.look, shownBy(t, func(w *bytes.Buffer) error {
			return Cutting(w, plan.Job, allCuts(t, plan, cloth.Simple), looks[c.look])
		}))
	}
}

// A line may end after a measure, not within it, and none is too long.
func TestCuttingFitsThePageWithMeasuresWhole(t *testing.T) {
	for name, plan := range contractPlans(t) {
		cuts := allCuts(t, plan, cloth.Nested)
		for _, columns := range []int{40, 80} {
			out := shownBy(t, func(w *bytes.Buffer) error { return Cutting(w, plan.Job, cuts, Look{Width: columns, Unicode: true}) })
			before := ""
			for line := range strings.Lines(out) {
				line = strings.TrimSpace(line)
				assert.LessOrEqual(t, width(line), columns, "%s: %s", name, line)
				assert.NotRegexp(t, `[0-9]\n(in\b|cm\b|×|[0-9]+/[0-9]+\b)`, before+"\n"+line, name)
				before = line
				assert.NotRegexp(t, `(×|≈)$`, line, name)
			}
		}
	}
}

// foam is the cutting of up to twelve squares of 7 in, two strips of cloth 42 in
// wide.
func foam(t *testing.T, count int) string {
	t.Helper()
	side := 7 * measure.Inch
	plan := planner.Plan{Job: planner.Job{Title: "Tide", Units: measure.Inches}, Fabrics: []planner.FabricNeed{{
		Fabric: planner.Fabric{Name: "Foam", Form: planner.Yardage, Width: 42 * measure.Inch},
		Pieces: []planner.PieceCount{{Size: measure.Size{Width: side, Height: side}, Count: count, For: "blocks"}},
	}}}
	return shownBy(t, func(w *bytes.Buffer) error {
		return Cutting(w, plan.Job, allCuts(t, plan, cloth.Simple), Look{Unicode: true})
	})
}

// Hand-worked: two strips of 7 in and a squaring cut are 3 cuts, and a stack of
// two has 6 squares along it, 7 cuts with the squaring one.
func TestStripsAreStackedAndTheirSquaresCounted(t *testing.T) {
	out := foam(t, 12)
	assert.Contains(t, out, "1  3 cuts across the cloth = 2 strips 7 in × width\n")
	assert.Contains(t, out, "2  2 strips 7 in × width; stack 2; 7 upright cuts = 12 squares 7 in\n")
	assert.Contains(t, out, "no plan can take less\n")
	assert.Contains(t, out, "nothing of use")
}

// Hand-worked: ten squares are a full strip of six and one of four, with 14 in
// left at its end.
func TestWhatAStripLeavesIsSaid(t *testing.T) {
	assert.Contains(t, foam(t, 10), "stack 2; 7 upright cuts = 10 squares 7 in + 1 of 14 × 7 in left over")
}

// Hand-worked: 63 1/4 in are 4 3/4 in over 58 1/2 in, 8.1 %, and 8 1/2 in less than
// three strips of 9 3/4 in and five of 8 1/2 in, 71 3/4 in.
func TestAPlanAboveItsBoundSaysByHowMuch(t *testing.T) {
	plan := example(t, "gull-cot")
	out := shownBy(t, func(w *bytes.Buffer) error {
		return Cutting(w, plan.Job, allCuts(t, plan, cloth.Simple), Look{Unicode: true})
	})
	assert.Contains(t, out, "63 1/4 in off the bolt; plain strips of each size would take 71 3/4 in, so this saves 8 1/2 in")
	assert.Contains(t, out, "no plan can take less than 58 1/2 in; this is 8.1 % more")
}

func TestASmallShareIsNotShownAsNone(t *testing.T) {
	assert.Equal(t, "less than 0.1 %", percent(0.0004))
	assert.Equal(t, "8.1 %", percent(0.0812))
}
