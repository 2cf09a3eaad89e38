package render

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

func sheetOf(t testing.TB, plan planner.Plan, look Look) string {
	t.Helper()
	return shownBy(t, func(w *bytes.Buffer) error { return Sheet(w, plan, look) })
}

func sheetPlans(t testing.TB) map[string]planner.Plan {
	t.Helper()
	plans := map[string]planner.Plan{"hundred fabrics": hundredFabrics(t), "many scripts": awkward(t), "four hundred blocks": fourHundred(t)}
	for _, name := range examples(t) {
		plans[name] = example(t, name)
	}
	return plans
}

func TestNoLineIsWiderThanThePage(t *testing.T) {
	for name, plan := range sheetPlans(t) {
		state := booked(t, plan, 2)
		for _, w := range []int{40, 57, 80, 120} {
			for _, unicode := range []bool{true, false} {
				l := Look{Width: w, Unicode: unicode}
				shown := sheetOf(t, plan, l) + shownBy(t, func(b *bytes.Buffer) error { return Left(b, []tracker.State{state}, friday, l) })
				for _, line := range strings.Split(shown, "\n") {
					assert.LessOrEqual(t, width(line), w, "%s at %d: %q", name, w, line)
				}
			}
		}
	}
}

func TestEscapesAreWrittenOnlyWhereColourIsWelcome(t *testing.T) {
	escape := regexp.MustCompile("\x1b\\[[0-9]*m")
	for name, plan := range sheetPlans(t) {
		plan.Job.Title = "Sea \x1b[31mglass\x07"
		plan.Job.Client = "\u009b2J\x1b]0;owned\x07"
		for _, l := range looks {
			l.Colour = false
			without := sheetOf(t, plan, l)
			assert.NotContains(t, without, "\x1b", name)
			assert.NotContains(t, without, "\x07", name)
			assert.NotContains(t, without, "\u009b", name)
			l.Colour = true
			assert.Equal(t, without, escape.ReplaceAllString(sheetOf(t, plan, l), ""), name)
		}
	}
}

func TestPlainTerminalsGetNothingButASCIIAndTheMakersNames(t *testing.T) {
	for _, name := range examples(t) {
		plan := example(t, name)
		shown := sheetOf(t, plan, Look{Width: 80}) + shownBy(t, func(b *bytes.Buffer) error {
			return Left(b, []tracker.State{booked(t, plan, 2)}, friday, Look{Width: 80})
		})
		assert.True(t, ascii(strings.ReplaceAll(shown, "\n", "")), name)
	}
}

func TestAPipeGetsEverythingUncut(t *testing.T) {
	for name, plan := range sheetPlans(t) {
		look := Look{Unicode: true}
		lines := strings.Split(sheetOf(t, plan, look), "\n")
		whole := func(text string) {
			for _, line := range lines {
				if strings.Contains(line, look.text(text)) {
					return
				}
			}
			assert.Fail(t, "cut", "%s: %q", name, text)
		}
		for _, o := range plan.Operations {
			whole(o.Name)
			whole(o.Doing)
			whole(o.Lot.Name)
		}
		for _, f := range plan.Fabrics {
			whole(f.Fabric.Name)
		}
		for _, b := range plan.Blocks {
			whole(b.Colourway)
		}
	}
}

func TestEveryLotHasABoxToTick(t *testing.T) {
	for name, plan := range sheetPlans(t) {
		for _, w := range []int{0, 40, 80} {
			_, route, found := strings.Cut(sheetOf(t, plan, Look{Width: w, Unicode: true}), "── Operations ")
			require.True(t, found)
			assert.Equal(t, len(plan.Operations), strings.Count(route, "☐"), "%s at %d", name, w)
		}
	}
}

func TestEveryOperationShowsItsNumberCountAndTime(t *testing.T) {
	plan := example(t, "estuary-lap")
	shown := sheetOf(t, plan, Look{Unicode: true})
	for _, o := range plan.Operations {
		row := regexp.MustCompile(fmt.Sprintf(`(?m)☐ +%s +%s +%s$`, regexp.QuoteMeta(o.Lot.Name),
			counted(o.Count, string(o.CountedIn)), spell(o.Minutes())))
		assert.Regexp(t, row, shown)
		assert.Regexp(t, fmt.Sprintf(`(?m)^ +%d +%s +☐`, o.Number, regexp.QuoteMeta(o.Name)), shown)
	}
}

func TestEachCautionStandsOnceAndTheRulesLineAlways(t *testing.T) {
	for name, plan := range sheetPlans(t) {
		shown := sheetOf(t, plan, Look{Unicode: true})
		for _, o := range plan.Operations {
			for _, c := range o.Care {
				assert.Equal(t, 1, strings.Count(shown, c), "%s: %s", name, c)
			}
		}
		assert.Contains(t, shown, posture, name)
		assert.Contains(t, shown, selling, name)
		assert.Contains(t, shown, "a little less after quilting and washing", name)
	}
}

// Hand-worked: 62 fabrics give two squares and 38 one, 162 in all.
func TestAHundredFabricsStillRead(t *testing.T) {
	shown := sheetOf(t, hundredFabrics(t), Look{Width: 80, Unicode: true})
	assert.Contains(t, shown, "Cutting list: 162 pieces")
	assert.Contains(t, shown, "From each of these 62 fabrics: 2 of 5 in square")
	assert.Contains(t, shown, "From each of these 38 fabrics: 1 of 5 in square")
	_, list, _ := strings.Cut(shown, "── Cutting list")
	list, _, _ = strings.Cut(list, "── Blocks")
	assert.Equal(t, 100, strings.Count(list, "☐ Tide "))
	assert.Less(t, strings.Count(list, "\n"), 30, "the list is compact")
	assert.Equal(t, 1, strings.Count(shown, " prepare the fabric "))
}

func TestTheMapSaysAsMuchAsThePageHasRoomFor(t *testing.T) {
	king := example(t, "lighthouse-king")
	row := func(width int) string {
		_, layout, _ := strings.Cut(sheetOf(t, king, Look{Width: width, Unicode: true}), "── Layout")
		return regexp.MustCompile(`(?m)^   1 .*$`).FindString(layout)
	}
	assert.Equal(t, "   1 lamp-01    lamp-02↓   lamp-03    lamp-04↓   lamp-05    lamp-06↓   lamp-07    lamp-08↓   lamp-09    watch-01↓", row(0))
	assert.Equal(t, "   1 A01   A02↓  A03   A04↓  A05   A06↓  A07   A08↓  A09   B01↓", row(80))
	assert.Equal(t, "   1 A  A↓ A  A↓ A  A↓ A  A↓ A  B↓", row(40))
	assert.Equal(t, "   1 A  A↓ A  A↓ A  A↓", row(24), "and the rest in a second strip")
}

func TestQuiltsAlikeShareOneMap(t *testing.T) {
	shown := sheetOf(t, example(t, "harbour-pair"), Look{Unicode: true})
	assert.Equal(t, 1, strings.Count(shown, " Quilt 1\n"))
	// Hand-worked: 32 and 31 blocks a quilt, numbered on through the run.
	assert.Contains(t, shown, " Quilt 2  the same places, mooring-33 to 64; float-32 to 62\n")
}

// renamed is a job whose colourway deck was booked with three blocks and is now
// called bow and has four: deck-01 to 03 keep their ids, and bow-04 is new.
func renamed(t testing.TB) planner.Plan {
	t.Helper()
	const file = `
job: gangway
fabrics: {Rope: {form: yardage, width: 42}, Tar: {form: yardage, width: 42}}
block: {make: four-patch, square: 5, print: Rope, ground: Tar}
`
	old := tracker.Freeze(planned(t, file+"colourways: {deck: {blocks: 3}}\nlayout: {across: 3, down: 1}\n"))
	job, err := planner.Parse("job.yaml", []byte(file+"colourways: {bow: {was: deck, blocks: 4}}\nlayout: {across: 4, down: 1}\n"))
	require.NoError(t, err)
	plan, err := planner.Make(job, old.Prior())
	require.NoError(t, err)
	return plan
}

func TestARenamedColourwaysBlocksKeepTheirNames(t *testing.T) {
	plan := renamed(t)
	wide := sheetOf(t, plan, Look{Width: 80, Unicode: true})
	assert.Contains(t, wide, "☐ deck-01 to 03, bow-04: print Rope, ground Tar")
	assert.Regexp(t, `(?m)^   1 deck-01↓?  +deck-02↓?  +deck-03↓?  +bow-04`, wide)
	narrower := sheetOf(t, plan, Look{Width: 30, Unicode: true})
	assert.Contains(t, narrower, " A01 = deck-01  A04 = bow-04\n")
	assert.Regexp(t, `(?m)^   1 A01↓? +A02↓? +A03↓? +A04`, narrower)
	narrowest := sheetOf(t, plan, Look{Width: 20, Unicode: true})
	assert.Contains(t, narrowest, " A = bow\n")
	assert.Contains(t, strings.Join(strings.Fields(narrowest), " "), "A wider page shows the block numbers.", "one letter cannot tell which stem")
}

// Hand-worked: 2 × (56 + 68) = 248 in of edge; seven strips of 42 in lose 2 1/2 in
// to each join, the closing one among them: 7 × 39 1/2 = 276 1/2 in.
func TestBindingSaysWhatItsStripsMake(t *testing.T) {
	shown := sheetOf(t, example(t, "estuary-lap"), Look{Unicode: true})
	assert.Contains(t, shown, "Binding    Slack water, 7 strips cut 2 1/2 in wide make 276 1/2 in: 28 1/2 in over the edge of 248 in (10 in asked for); 6 would be 11 in short of the edge; 17 1/2 in off the bolt\n")
	assert.Contains(t, shown, "yardage 42 in usable")
}

func TestBindingOfSheetsComesOffNoBolt(t *testing.T) {
	s := &sheet{plan: planner.Plan{Fabrics: []planner.FabricNeed{{Fabric: planner.Fabric{Name: "Kelp", Form: planner.FatQuarter}}}}}
	in := measure.Inch
	said := s.binding(&planner.BindingPlan{Fabric: "Kelp", Strips: 1, Strip: 2 * in, Length: 17 * in, Allowance: 10 * in, Spare: 12 * in, FabricLength: 2 * in})
	assert.Equal(t, "Kelp, 1 strip cut 2 in wide makes 19 in: 12 in over the edge of 7 in (10 in asked for)", said)
}

func TestTheRouteSaysHowToLogAndWhatItsTimesAre(t *testing.T) {
	plan := example(t, "estuary-lap")
	shown := sheetOf(t, plan, Look{Unicode: true})
	assert.Equal(t, 1, strings.Count(shown, "Times are means of the table of starting times, with 14 % for personal needs, fatigue and contingencies; makers differ by a factor of three."))
	said := regexp.MustCompile(`Log with the number, e\.g\. quiltrun log estuary-lap ([0-9]+) ([0-9]+) --colourway (\S+)\n`).FindStringSubmatch(shown)
	require.NotNil(t, said)
	for _, o := range plan.Operations {
		if fmt.Sprint(o.Number) == said[1] && o.Lot.Name == said[3] {
			assert.Equal(t, planner.ColourwayLot, o.Lot.Kind)
			assert.Equal(t, "4", said[2])
			assert.Greater(t, o.Count, 4, "more is left after it")
			return
		}
	}
	assert.Fail(t, "no such operation", said[0])
}

func TestAFabricThatNothingUsesIsNotCut(t *testing.T) {
	plan := planned(t, `
job: spare-cloth
fabrics: {Rope: {form: yardage, width: 42}, Flotsam: {form: yardage, width: 42}}
block: {make: plain square, square: 5}
colourways: {all: {blocks: 4, print: Rope}}
layout: {across: 2, down: 2}
`)
	shown := sheetOf(t, plan, Look{Unicode: true})
	_, list, _ := strings.Cut(shown, "── Cutting list")
	list, _, _ = strings.Cut(list, "── Blocks")
	assert.Contains(t, list, "☐ Rope")
	assert.NotContains(t, list, "Flotsam")
}

func TestTurnedBlocksCarryAnArrow(t *testing.T) {
	shown := sheetOf(t, awkward(t), Look{Width: 80, Unicode: true})
	assert.Contains(t, shown, "🧵 rose-01→")
	assert.Contains(t, shown, "The arrow shows where the block's top goes")
	assert.NotContains(t, sheetOf(t, example(t, "harbour-pair"), Look{Unicode: true}), "The arrow shows")
}

func TestWarningsComeBeforeAnythingIsCut(t *testing.T) {
	plan := example(t, "estuary-lap")
	plan.Warnings = []planner.Warning{{Code: "small-patch", Message: "the middle of tide finishes under 1/2 in"}}
	shown := sheetOf(t, plan, Look{Unicode: true})
	warning := strings.Index(shown, "! the middle of tide finishes under 1/2 in")
	assert.Greater(t, warning, 0)
	assert.Less(t, warning, strings.Index(shown, "Cutting list"))
}

func TestTheSameSheetEveryTime(t *testing.T) {
	plan := fourHundred(t)
	first := sheetOf(t, plan, Look{Width: 80, Unicode: true})
	for range 5 {
		assert.Equal(t, first, sheetOf(t, plan, Look{Width: 80, Unicode: true}))
	}
}

// full is a disk without room.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestAFailedWriteIsReported(t *testing.T) {
	plan := example(t, "estuary-lap")
	assert.Error(t, Sheet(full{}, plan, Look{}))
	assert.Error(t, PlanJSON(full{}, plan))
	assert.Error(t, Left(full{}, nil, friday, Look{}))
}
