package render

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

func TestTimesAreSpeltToTheMinute(t *testing.T) {
	for m, want := range map[planner.Minutes]string{
		0: "0 min", 0.2: "1 min", 0.6: "1 min", 35: "35 min", 59.5: "1 h", 60: "1 h", 65: "1 h 05 min", 200: "3 h 20 min", 2068.13: "34 h 28 min",
	} {
		assert.Equal(t, want, spell(m), "%v", m)
	}
	assert.Equal(t, "about 3 h 20 min", about(200))
	assert.Equal(t, "none", about(0))
}

func TestSquaresAreNamedByTheirSide(t *testing.T) {
	l := measure.Inch * 17 / 2
	assert.Equal(t, "8 1/2 in"+tied+"square", size(measure.Size{Width: l, Height: l}, measure.Inches))
	assert.Equal(t, "8 1/2 × 9 in", size(measure.Size{Width: l, Height: 9 * measure.Inch}, measure.Inches))
}

func TestSeamsThatMeetAreSaidInWords(t *testing.T) {
	assert.Equal(t, "nothing has to match", matchWords(patchwork.Tally{}))
	assert.Equal(t, "8 nest, 1 clash, 2 open, 1 near miss", matchWords(patchwork.Tally{Nest: 8, Clash: 1, Open: 2, Near: 1}))
}

func TestASentenceCountsMatchPoints(t *testing.T) {
	for want, tally := range map[string]patchwork.Tally{
		"nothing has to match":                        {},
		"9 match points, all nest":                    {Nest: 9},
		"1 match point, it nests":                     {Nest: 1},
		"1 match point, it clashes":                   {Clash: 1},
		"2 match points, all open":                    {Open: 2},
		"9 match points: 8 nest, 1 clash":             {Nest: 8, Clash: 1},
		"4 match points, all nest, 1 near miss":       {Nest: 4, Near: 1},
		"2 near misses":                               {Near: 2},
		"3 match points: 2 nest, 1 open, 1 near miss": {Nest: 2, Open: 1, Near: 1},
	} {
		assert.Equal(t, want, pointWords(tally))
	}
}

func TestWhatIsAboutSoLongHasNoMarkAsWell(t *testing.T) {
	assert.Equal(t, "lines about 3.2 cm apart; cut ≈ 3.2 cm", Look{Unicode: true}.text("lines about ≈ 3.2 cm apart; cut ≈ 3.2 cm"))
	assert.Equal(t, "lines about 3.2 cm apart; cut ~ 3.2 cm", Look{}.text("lines about ≈ 3.2 cm apart; cut ≈ 3.2 cm"))
}

func TestAColourwayIsNamedAsAShellTakesIt(t *testing.T) {
	for name, want := range map[string]string{
		"tide": "tide", "sea-glass": "sea-glass", "藍": "藍", "🧵 rose": "'🧵 rose'", "it's": `'it'\''s'`, "$HOME": "'$HOME'",
	} {
		assert.Equal(t, want, shellWord(name))
	}
}

func TestBlockNumbersAreWrittenShortly(t *testing.T) {
	assert.Equal(t, "tide-01"+tied+"to"+tied+"08, 12", idSpan([]string{"tide-01", "tide-02", "tide-03", "tide-04", "tide-05", "tide-06", "tide-07", "tide-08", "tide-12"}))
	assert.Equal(t, "sea-glass-09, 10, 99"+tied+"to"+tied+"101", idSpan([]string{"sea-glass-09", "sea-glass-10", "sea-glass-99", "sea-glass-100", "sea-glass-101"}))
	assert.Equal(t, "deck-47, 48, bow-49, 51"+tied+"to"+tied+"53, deck-60",
		idSpan([]string{"deck-47", "deck-48", "bow-49", "bow-51", "bow-52", "bow-53", "deck-60"}), "a renamed colourway has two stems")
}

func TestOnlyCertaintyIsShownAsCertain(t *testing.T) {
	for chance, want := range map[float64]string{
		0: "0 %", 1: "100 %", 0.0001: "< 1 %", 0.9999: "> 99 %", 0.936: "94 %", 0.99: "99 %", 0.01: "1 %", 0.5: "50 %",
	} {
		assert.Equal(t, want, chanceWords(&chance), "%v", chance)
	}
	assert.Equal(t, "–", chanceWords(nil))
}

func TestThreadIsRoundedUp(t *testing.T) {
	in, cm := &sheet{}, &sheet{plan: planner.Plan{Job: planner.Job{Units: measure.Centimetres}}}
	assert.Equal(t, "2 yd", in.spool(measure.Yard+1))
	assert.Equal(t, "1 yd", in.spool(measure.Yard))
	assert.Equal(t, "2 m", cm.spool(measure.Metre+1))
}

func TestClothNeededIsRoundedUpToWhatShopsSell(t *testing.T) {
	in, cm := &sheet{}, &sheet{plan: planner.Plan{Job: planner.Job{Units: measure.Centimetres}}}
	assert.Equal(t, "2 3/8 yd", in.needed(measure.Yard*19/8))
	assert.Equal(t, "≈ 2 1/2 yd", in.needed(measure.Yard*19/8+1))
	assert.Equal(t, "≈ 0.7 m", cm.needed(61*measure.Centimetre))
}

func TestHoursOfADayAreShownAsAClockShows(t *testing.T) {
	for m, want := range map[planner.Minutes]string{0: "–", 120: "2:00", 270: "4:30", 5: "0:05", 1440: "24:00"} {
		assert.Equal(t, want, clockTime(m))
	}
	assert.Equal(t, "–", clockTime(planner.Minutes(math.Copysign(0, -1))))
}
