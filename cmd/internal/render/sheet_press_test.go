package render

import (
	"encoding/json"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// oneWay is nine-patches of a one-way print, which half turns would turn over.
func oneWay(t testing.TB) planner.Plan {
	t.Helper()
	return planned(t, `
job: herons
fabrics: {Heron: {form: yardage, width: 42, directional: yes}, Foam: {form: yardage, width: 42}}
block: {make: nine-patch, square: 5, corner: Heron, side: Foam, centre: Heron}
colourways: {tide: {blocks: 6}}
layout: {across: 3, down: 2}
press: print
`)
}

func pressingOf(t testing.TB, p planner.Plan) string {
	t.Helper()
	_, pressing, found := strings.Cut(sheetOf(t, p, Look{Unicode: true}), "── Pressing")
	require.True(t, found)
	pressing, _, _ = strings.Cut(pressing, "── Layout")
	return pressing
}

// Hand-worked: 4 block columns and 3 block rows of 2 points each. Inside a
// nine-patch rows are pressed in turn, so that alike blocks clash at all 14.
func TestTheSheetHasTwoCardsForTheIron(t *testing.T) {
	shown := pressingOf(t, oneWay(t))
	assert.Contains(t, shown, "Press by the cards, every other block the second way: all 14 match points between the blocks of a quilt nest. All alike and none turned, 0 would.")
	assert.Contains(t, shown, "Card a  tide-01, -03, -05: nine-patch rows left, right, left; joins up, up\n")
	assert.Contains(t, shown, "Card b  tide-02, -04, -06: nine-patch rows right, left, right; joins down, down\n")
	assert.Regexp(t, `none, all blocks alike +0 +14 +0\n`, shown)
	assert.Regexp(t, `every other block +14 +0 +0  chosen\n`, shown)
}

func TestTheSheetSaysWhereNothingMeets(t *testing.T) {
	shown := pressingOf(t, hundredFabrics(t))
	assert.Contains(t, shown, "Nothing has to match between blocks.")
	assert.NotContains(t, shown, "chosen", "there is nothing to choose")
}

func TestThePressPlanKeepsItsContract(t *testing.T) {
	p := oneWay(t)
	conforms(t, "plan", func(w io.Writer) error { return PlanJSON(w, p) })
	var out strings.Builder
	require.NoError(t, PlanJSON(&out, p))
	var plan struct {
		Blocks []struct{ ID, Press string }
		Press  jsonPress
	}
	require.NoError(t, json.Unmarshal([]byte(out.String()), &plan))
	assert.Equal(t, "print", plan.Press.Rule)
	assert.Equal(t, "chequered", plan.Press.Chosen)
	assert.Empty(t, plan.Press.HalfTurns)
	assert.Len(t, plan.Press.Patterns, 4)
	require.Len(t, plan.Press.Cards, 2)
	for _, b := range plan.Blocks {
		assert.Contains(t, plan.Press.Cards[strings.Index("ab", b.Press)].Blocks, b.ID)
	}
}
