package render

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/forecast"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// looks are the places that output is read in.
var looks = map[string]Look{
	"40":     {Width: 40, Unicode: true},
	"80":     {Width: 80, Unicode: true},
	"120":    {Width: 120, Unicode: true},
	"pipe":   {Unicode: true},
	"ascii":  {Width: 80},
	"colour": {Width: 80, Unicode: true, Colour: true},
}

// golden compares what was shown with the file that somebody has read.
func golden(t *testing.T, name, shown string) {
	t.Helper()
	path := filepath.Join("testdata", "golden", name+".txt")
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(shown), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run the test with -update, then read what it wrote")
	assert.Equal(t, string(want), shown)
}

func TestSheetsReadAsTheyWereLeft(t *testing.T) {
	for _, c := range []struct{ name, look string }{
		{"estuary-lap", "40"}, {"estuary-lap", "80"}, {"estuary-lap", "120"}, {"estuary-lap", "pipe"},
		{"estuary-lap", "ascii"}, {"estuary-lap", "colour"},
		{"harbour-pair", "80"}, {"lighthouse-king", "80"}, {"lighthouse-king", "40"}, {"saltmarsh-cot", "80"},
		{"dune-sampler", "80"}, {"dune-sampler", "40"}, {"cormorant-point", "80"}, {"cormorant-point", "40"}, {"cormorant-point", "ascii"},
	} {
		t.Run(c.name+" "+c.look, func(t *testing.T) {
			plan := example(t, c.name)
			golden(t, "sheet-"+c.name+"-"+c.look, shownBy(t, func(w *bytes.Buffer) error { return Sheet(w, plan, looks[c.look]) }))
		})
	}
	for _, look := range []string{"40", "80", "ascii"} {
		golden(t, "sheet-many-scripts-"+look, shownBy(t, func(w *bytes.Buffer) error { return Sheet(w, awkward(t), looks[look]) }))
		golden(t, "sheet-hundred-fabrics-"+look, shownBy(t, func(w *bytes.Buffer) error { return Sheet(w, hundredFabrics(t), looks[look]) }))
	}
}

func TestWhatIsLeftReadsAsItWasLeft(t *testing.T) {
	states := map[string]tracker.State{
		"nothing-logged":  booked(t, example(t, "estuary-lap"), 0),
		"half":            booked(t, example(t, "estuary-lap"), 2),
		"done":            booked(t, example(t, "estuary-lap"), 1),
		"quantity-2":      booked(t, example(t, "harbour-pair"), 2),
		"hundred-fabrics": booked(t, hundredFabrics(t), 0),
		"many-scripts":    booked(t, awkward(t), 2),
	}
	for name, s := range states {
		for _, look := range []string{"40", "80"} {
			golden(t, "left-"+name+"-"+look, shownBy(t, func(w *bytes.Buffer) error { return Left(w, []tracker.State{s}, friday, looks[look]) }))
		}
	}
	golden(t, "left-no-job", shownBy(t, func(w *bytes.Buffer) error { return Left(w, nil, friday, looks["80"]) }))
}

// answers are dates of every kind: usual, without a due date, none at all, and
// the real ones of jobs that are done.
func answers() []forecast.Answer {
	at := func(month time.Month, day int) planner.Date { return planner.Date{Year: 2027, Month: month, Day: day} }
	return []forecast.Answer{
		{Job: "estuary-lap", Due: at(2, 12), P50: at(1, 14), P80: at(1, 27), P95: at(2, 15), Chance: some(0.93649),
			Minutes: forecast.Quantiles{P50: 2068.125, P80: 2713.5, P95: 3515.004}},
		{Job: "harbour-pair", P50: at(3, 1), P80: at(3, 18), P95: at(4, 9), Minutes: forecast.Quantiles{P50: 42.5, P80: 61, P95: 90}},
		{Job: "lighthouse-king", Due: at(6, 25), Chance: some(0.0), Reason: "never: no working hours are set",
			Minutes: forecast.Quantiles{P50: 11000, P80: 14000, P95: 19000}},
		{Job: "saltmarsh-cot", Due: at(1, 5), P50: at(1, 3), P80: at(1, 3), P95: at(1, 3), Chance: some(1.0)},
		{Job: "a-job-with-a-very-long-name-indeed", Due: at(1, 5), P50: at(2, 3), P80: at(2, 4), P95: at(2, 5), Chance: some(0.0004)},
	}
}

func TestDatesReadAsTheyWereLeft(t *testing.T) {
	asOf := planner.Date{Year: 2026, Month: 11, Day: 20}
	for _, look := range []string{"40", "80", "120", "ascii"} {
		golden(t, "when-"+look, shownBy(t, func(w *bytes.Buffer) error { return When(w, asOf, answers(), looks[look]) }))
	}
	golden(t, "when-no-job", shownBy(t, func(w *bytes.Buffer) error { return When(w, asOf, nil, looks["80"]) }))
}

// At 80 columns what the figures mean is read in three lines, and the work left
// is not called as what left and plan show, which is the mean.
func TestDatesAreExplainedShortly(t *testing.T) {
	shown := shownBy(t, func(w *bytes.Buffer) error {
		return When(w, planner.Date{Year: 2026, Month: 11, Day: 20}, answers()[:1], looks["80"])
	})
	assert.LessOrEqual(t, len(wrap(whenMeans, 80)), 3)
	assert.NotContains(t, shown, "Left")
	assert.Contains(t, shown, "likely is the work left at even odds (left shows the mean)")
}

// hours are a usual week, then longer ones from December, and days off.
func hours() forecast.Calendar {
	return forecast.NewCalendar([]tracker.Event{{
		ID: "h1", Kind: tracker.Hours,
		Week: []tracker.DayTime{{From: planner.Date{Year: 2026, Month: 12, Day: 1}, Day: 6, Minutes: 270}},
		Days: []tracker.DateTime{{Date: planner.Date{Year: 2026, Month: 12, Day: 24}, Minutes: 0}},
	}})
}

func TestHoursReadAsTheyWereLeft(t *testing.T) {
	today := planner.Date{Year: 2026, Month: 11, Day: 20}
	for _, look := range []string{"40", "80"} {
		golden(t, "hours-"+look, shownBy(t, func(w *bytes.Buffer) error { return Hours(w, today, hours(), looks[look]) }))
	}
}

func TestReceiptsReadAsTheyWereLeft(t *testing.T) {
	var all strings.Builder
	for _, look := range []string{"80", "40"} {
		for _, r := range receipts(t) {
			all.WriteString(shownBy(t, func(w *bytes.Buffer) error { return r.text(w, looks[look]) }) + "\n")
		}
	}
	golden(t, "receipts", all.String())
}
