package render

import (
	"encoding/json"
	"io"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/patchwork"
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
	assert.Contains(t, shown, "At the iron    Two ways of pressing: keep the blocks of card a and card b apart.")
	assert.Contains(t, shown, "Card a  tide-01, 03, 05: at step nine-patch press rows left, right, left; joins up, up\n")
	assert.Contains(t, shown, "Card b  tide-02, 04, 06: at step nine-patch press rows right, left, right; joins down, down\n")
	assert.Contains(t, shown, "At the layout  Lay each block in its own place: card b is for every other block.\n")
	assert.Contains(t, shown, "Then all 14 match points between the blocks of a quilt nest.\n")
	assert.Regexp(t, `Blocks +Nest +Clash\n`, shown)
	assert.Regexp(t, `none +0 +14\n`, shown)
	assert.Regexp(t, `every other block +14 +0  as planned\n`, shown)
}

// The table of steps says both ways where the cards differ, so that nobody reads
// card a's for all.
func TestTheStepsSayWhatEachCardSays(t *testing.T) {
	assert.Contains(t, sheetOf(t, oneWay(t), Look{Unicode: true}),
		"card a: rows left, right, left; all joins up; card b: rows right, left, right; all joins down")
}

// Source of the ids: the map of the same sheet, whose arrows show them.
func TestTheSheetNamesTheBlocksThatGetHalfATurn(t *testing.T) {
	p := example(t, "estuary-lap")
	shown := pressingOf(t, p)
	assert.Contains(t, shown, "At the iron    Press all blocks of a colourway the same way")
	assert.NotContains(t, shown, "Card")
	_, list, found := strings.Cut(shown, "Give half a turn to ")
	require.True(t, found)
	list, _, _ = strings.Cut(list, " (10 blocks)")
	turned := 0
	for _, b := range p.Blocks {
		turned += map[int]int{180: 1}[b.Turn]
	}
	assert.Equal(t, 10, turned)
	assert.Len(t, regexp.MustCompile(`[0-9]{2}`).FindAllString(list, -1), turned)
	king := pressingOf(t, example(t, "lighthouse-king"))
	assert.Contains(t, king, "Give half a turn to every other block (50 blocks); the map shows them so.", "too many to list")
}

func TestTheSheetSaysWhatARuleCostsAndWhatToPin(t *testing.T) {
	said := (&sheet{}).pressOutcome(planner.PressPlan{
		Rule: planner.PressPrint, RuleCost: 1, Chosen: planner.ByRows,
		Patterns: []planner.PatternCount{{Pattern: planner.ByRows, Between: patchwork.Tally{Nest: 48, Clash: 3}}},
	})
	assert.Equal(t, []string{
		"Then 48 of the 51 match points between the blocks of a quilt nest; pin the other 3, where the seams clash.",
		"So many kinds of block meet here that not every way of pressing could be tried: a better one may exist.",
		"Pressing toward the print costs 1 clash in each quilt over the best pressing.",
	}, said)
}

func TestClashesInsideBlocksHaveAColumnOnlyWhereThereAreSome(t *testing.T) {
	press := planner.PressPlan{Chosen: planner.AllAlike, Patterns: []planner.PatternCount{{Pattern: planner.AllAlike, Between: patchwork.Tally{Nest: 4}}}}
	assert.NotContains(t, patternTable(press).header(), "Clash inside blocks")
	press.Patterns[0].Inside.Clash = 2
	g := patternTable(press)
	assert.Contains(t, g.header(), "Clash inside blocks")
	assert.Equal(t, []string{"none", "4", "0", "2", "as planned"}, g.rows[0])
}

func TestTheSheetSaysWhereNothingMeets(t *testing.T) {
	shown := pressingOf(t, hundredFabrics(t))
	assert.Contains(t, shown, "Between blocks only the corners have to match.")
	assert.NotContains(t, shown, "as planned", "there is nothing to compare")
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
