package render

import (
	"bytes"
	"encoding/csv"
	"io"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
	"quiltrun/tracker/shelf"
)

// stocked is a shelf with a bit of everything, and the estuary lap quilt booked.
func stocked(t testing.TB) (shelf.Shelf, []tracker.Event) {
	t.Helper()
	puts := []tracker.Shelf{
		{Do: tracker.PutOn, Material: planner.ClothMaterial, Name: "Foam", Form: planner.Yardage, Width: 42 * measure.Inch, Amount: planner.Amount(3 * measure.Yard), DyeLot: "A7", Place: "blue box"},
		{Do: tracker.PutOn, Material: planner.ClothMaterial, Name: "Sea holly", Form: planner.FatQuarter, Width: 18 * measure.Inch, Height: 21 * measure.Inch, Assumed: true, Amount: 2},
		{Do: tracker.PutOn, Material: planner.ClothMaterial, Name: "Reed", Form: planner.Yardage, Width: 108 * measure.Centimetre, Amount: planner.Amount(measure.Metre), Metric: true},
		{Do: tracker.PutOn, Material: planner.BattingMaterial, Name: "Cotton", Form: planner.Package, Width: 72 * measure.Inch, Height: 90 * measure.Inch, Amount: 1},
		{Do: tracker.PutOn, Material: planner.ThreadMaterial, Name: "Ecru", Form: planner.Spool, Amount: planner.Amount(300 * measure.Yard)},
		{Do: tracker.Scrapped, Item: "2", Amount: 2},
	}
	var maker []tracker.Event
	for i := range puts {
		maker = append(maker, tracker.Event{Schema: 1, ID: "put-" + string(rune('a'+i)), Seq: uint64(i) + 1, At: noon.Add(-time.Hour), Kind: tracker.Shelved, Shelf: &puts[i]})
	}
	job, err := tracker.Fold([]tracker.Event{bookedEvent(example(t, "estuary-lap"))})
	require.NoError(t, err)
	s, err := shelf.Fold(maker, []tracker.State{job})
	require.NoError(t, err)
	return s, maker
}

func TestTheShelfKeepsItsContract(t *testing.T) {
	s, maker := stocked(t)
	conforms(t, "shelf", func(w io.Writer) error { return ShelfJSON(w, s) })
	conforms(t, "shelf", func(w io.Writer) error { return ShelfJSON(w, shelf.Shelf{Silent: []string{"old-job"}}) })
	undo := tracker.Event{Schema: 1, ID: "oops", Seq: 9, At: noon, Kind: tracker.Undone, Target: maker[0].ID}
	for _, ev := range []tracker.Event{maker[0], maker[5], undo} {
		conforms(t, "shelf-entry", func(w io.Writer) error { return ShelvedJSON(w, s, ev, false) })
	}
}

func TestTheShelfReadsAsItWasLeft(t *testing.T) {
	s, maker := stocked(t)
	for _, look := range []string{"80", "40", "ascii"} {
		golden(t, "shelf-"+look, shownBy(t, func(w *bytes.Buffer) error { return Shelf(w, s, looks[look]) }))
	}
	golden(t, "shelf-entry", shownBy(t, func(w *bytes.Buffer) error { return Shelved(w, s, maker[5], false, looks["80"]) }))
	narrowEnough(t, func(w io.Writer, l Look) error { return Shelf(w, s, l) })
}

// narrowEnough checks that nothing is wider than the terminal.
func narrowEnough(t *testing.T, show func(io.Writer, Look) error) {
	t.Helper()
	for _, wide := range []int{40, 80} {
		var out bytes.Buffer
		require.NoError(t, show(&out, Look{Width: wide, Unicode: true}))
		for _, line := range strings.Split(out.String(), "\n") {
			assert.LessOrEqual(t, width(line), wide, line)
		}
	}
}

// shopped is the list for some plans.
func shopped(t testing.TB, plans ...planner.Plan) Shopped {
	t.Helper()
	var wanted []planner.Wanted
	for _, p := range plans {
		wanted = append(wanted, p.Wanted())
	}
	list, err := planner.Shop(wanted, planner.Stocked{})
	require.NoError(t, err)
	return Shopped{Shopping: list, Wanted: wanted, Spool: 500 * measure.Metre}
}

func TestShoppingKeepsItsContract(t *testing.T) {
	for name, plan := range contractPlans(t) {
		if name == "four hundred blocks" {
			continue
		}
		t.Run(name, func(t *testing.T) {
			s := shopped(t, plan)
			conforms(t, "shop", func(w io.Writer) error { return ShopJSON(w, s) })
			narrowEnough(t, func(w io.Writer, l Look) error { return Shop(w, s, l) })
			narrowEnough(t, func(w io.Writer, l Look) error { return ShopPrint(w, s, l) })
			ask := planner.EnoughAsk{Plan: plan, Left: planner.Plan.Wanted, Have: map[string]planner.Have{plan.Fabrics[0].Fabric.Name: {}}}
			e, err := ask.Answer()
			require.NoError(t, err)
			conforms(t, "enough", func(w io.Writer) error { return EnoughJSON(w, e) })
			narrowEnough(t, func(w io.Writer, l Look) error { return Enough(w, e, true, l) })
		})
	}
}

func TestListsReadAsTheyWereLeft(t *testing.T) {
	two := shopped(t, example(t, "estuary-lap"), example(t, "gull-cot"))
	hundred := shopped(t, hundredFabrics(t))
	short := shortOfTeal(t)
	for name, show := range map[string]func(*bytes.Buffer) error{
		"enough-80":    func(w *bytes.Buffer) error { return Enough(w, short, true, looks["80"]) },
		"enough-40":    func(w *bytes.Buffer) error { return Enough(w, short, true, looks["40"]) },
		"shop-80":      func(w *bytes.Buffer) error { return Shop(w, two, looks["80"]) },
		"shop-40":      func(w *bytes.Buffer) error { return Shop(w, two, looks["40"]) },
		"shop-print":   func(w *bytes.Buffer) error { return ShopPrint(w, two, looks["80"]) },
		"shop-csv":     func(w *bytes.Buffer) error { return ShopCSV(w, two) },
		"shop-hundred": func(w *bytes.Buffer) error { return Shop(w, hundred, looks["80"]) },
	} {
		golden(t, name, shownBy(t, show))
	}
}

// shortOfTeal is a job of four colourways of 6 blocks, one of which has cloth for 3.
func shortOfTeal(t testing.TB) planner.Enough {
	t.Helper()
	plan := planned(t, `
job: four-tides
title: Four tides
fabrics:
  Teal: {form: fat quarter, size: 18 x 22, on-hand: 1}
  Navy: {form: fat quarter, size: 18 x 22, on-hand: 2}
  Foam: {form: yardage, width: 42, on-hand: 2 1/4 yd}
block: {make: nine-patch recut, square: 5, side: Foam, centre: Foam}
colourways:
  teal: {blocks: 6, corner: Teal}
  navy: {blocks: 6, corner: Navy}
layout: {across: 3, down: 4, order: rows}
`)
	ask := planner.EnoughAsk{Plan: plan, Left: planner.Plan.Wanted, Have: map[string]planner.Have{}}
	for _, f := range plan.Job.Fabrics {
		ask.Have[f.Name] = f.Own()
	}
	e, err := ask.Answer()
	require.NoError(t, err)
	return e
}

// readBack reads a table as a spreadsheet that takes the first apostrophe off
// would.
func readBack(t require.TestingT, out []byte) [][]string {
	rows, err := csv.NewReader(bytes.NewReader(out)).ReadAll()
	require.NoError(t, err)
	return rows
}

// Names that a spreadsheet would run are made harmless, and read back as they
// were; numbers stay numbers.
func TestATableIsSafeAndReadsBack(t *testing.T) {
	names := []string{"=1+1", "+44", "-0.25", "@sum", "\tx", "\rx", "'quoted", "it's", `a "b", c`, "plain"}
	s := Shopped{Spool: measure.Metre}
	for _, n := range names {
		s.Fabrics = append(s.Fabrics, planner.ShopFabric{Fabric: planner.Fabric{Name: n, Form: planner.Yardage, Width: measure.Inch}, Buy: planner.Amount(9 * measure.Inch)})
	}
	var out bytes.Buffer
	require.NoError(t, ShopCSV(&out, s))
	rows := readBack(t, bytes.ReplaceAll(out.Bytes(), []byte("\r\n"), []byte("\n")))
	for i, n := range names {
		cell := rows[i+1][1]
		assert.Equal(t, n, CSVText(cell))
		assert.NotContains(t, "=+-@\t\r", cell[:1])
		assert.Equal(t, "0.25", rows[i+1][8], "a number is a number")
	}
	assert.Equal(t, strings.Count(out.String(), "\n"), strings.Count(out.String(), "\r\n"), "lines end as RFC 4180 has it")
}

func TestAnyTextReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.SampledFrom([]rune("=+-@'\t\" ,;ab1ü藍"))).Draw(t, "text")
		var line strings.Builder
		csvLine(&line, "kind", csvText(text), "1.5")
		rows := readBack(t, []byte(line.String()))
		assert.Equal(t, text, CSVText(rows[0][1]))
		assert.False(t, text != "" && slices.Contains([]byte("=+-@\t\r"), rows[0][1][0]))
	})
}

// stockJSON is what the commands on cloth show to scripts, by schema.
func stockJSON(t testing.TB) map[string]func(io.Writer) error {
	stock, maker := stocked(t)
	list, short := shopped(t, example(t, "estuary-lap")), shortOfTeal(t)
	return map[string]func(io.Writer) error{
		"shelf":       func(w io.Writer) error { return ShelfJSON(w, stock) },
		"shelf-entry": func(w io.Writer) error { return ShelvedJSON(w, stock, maker[0], false) },
		"shop":        func(w io.Writer) error { return ShopJSON(w, list) },
		"enough":      func(w io.Writer) error { return EnoughJSON(w, short) },
	}
}
