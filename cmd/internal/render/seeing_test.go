package render

import (
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/clipperhouse/displaywidth"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// eventful is the lap quilt with an entry, one that was taken back, a note and a
// parking in its log.
func eventful(t testing.TB) tracker.State {
	t.Helper()
	took := planner.Minutes(35)
	tide := tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"}
	s := booked(t, example(t, "estuary-lap"), 0)
	for _, work := range []tracker.LogRequest{
		{Operation: "sew-pairs", Lot: &tide, Counts: []tracker.CountAsked{{Number: 6}}, Took: &took, CatchUp: true, ID: "evening-1", At: noon, By: "Runa", Reason: "with rain"},
		{Operation: "press-pairs", Lot: &tide, Counts: []tracker.CountAsked{{Number: 2}}, Blocks: []string{"tide-02"}, ID: "evening-2", At: noon, By: "Runa"},
	} {
		ev, err := s.Log(work)
		require.NoError(t, err)
		s = grown(t, s, ev)
	}
	ev, err := s.Undo("", "oops", noon, "Runa")
	require.NoError(t, err)
	s = grown(t, s, ev)
	ev, err = s.Note("new needle, size 80", "needle", noon, "Runa")
	require.NoError(t, err)
	s = grown(t, s, ev)
	ev, err = s.Park("blue box 3; row 4 half joined", "box", noon, "Runa")
	require.NoError(t, err)
	return grown(t, s, ev)
}

// grown is the state with one more event, numbered as a store would.
func grown(t testing.TB, s tracker.State, ev tracker.Event) tracker.State {
	t.Helper()
	told, err := s.History(tracker.HistoryRequest{})
	require.NoError(t, err)
	ev.Seq = uint64(len(told)) + 1
	s, err = s.With(ev)
	require.NoError(t, err)
	return s
}

// toldBy is the whole history of a job.
func toldBy(t testing.TB, s tracker.State) []tracker.Told {
	t.Helper()
	told, err := s.History(tracker.HistoryRequest{})
	require.NoError(t, err)
	return told
}

// sights are all answers to how things stand, of two jobs.
func sights(t testing.TB) map[string]func(io.Writer, Look) error {
	s := eventful(t)
	both := []tracker.State{s, booked(t, example(t, "harbour-pair"), 0)}
	ask := tracker.AgendaRequest{For: 60, Today: friday}
	long := tracker.AgendaRequest{For: 4, At: planner.Machine, Today: friday}
	return map[string]func(io.Writer, Look) error{
		"blocks":  func(w io.Writer, l Look) error { return LeftBlocks(w, both, l) },
		"jobs":    func(w io.Writer, l Look) error { return Jobs(w, both, "estuary-lap", friday, l) },
		"history": func(w io.Writer, l Look) error { return History(w, s, toldBy(t, s), l) },
		"next":    func(w io.Writer, l Look) error { return Next(w, both, ask, tracker.NewAgenda(both, ask), l) },
		"nothing": func(w io.Writer, l Look) error { return Next(w, both, long, tracker.NewAgenda(both, long), l) },
	}
}

func TestSightsReadAsTheyWereLeft(t *testing.T) {
	for name, show := range sights(t) {
		for _, look := range []string{"40", "80", "ascii", "pipe"} {
			golden(t, "see-"+name+"-"+look, shownBy(t, func(w *bytes.Buffer) error { return show(w, looks[look]) }))
		}
	}
}

func TestSightsFitTheirPage(t *testing.T) {
	for name, show := range sights(t) {
		for _, columns := range []int{30, 40, 60, 80, 132} {
			shown := shownBy(t, func(w *bytes.Buffer) error { return show(w, Look{Width: columns, Unicode: true}) })
			for line := range strings.Lines(shown) {
				assert.LessOrEqual(t, displaywidth.String(strings.TrimSuffix(line, "\n")), columns, "%s: %s", name, line)
			}
		}
	}
}

// twelve is a quilt in twelve colourways, as many as anybody lays side by side.
func twelve(t testing.TB) planner.Plan {
	t.Helper()
	var text strings.Builder
	text.WriteString("job: twelve-coves\ntitle: Twelve coves\nfabrics: {Kelp: {form: yardage, width: 42}}\nblock: {make: four-patch, square: 5, print: Kelp, ground: Kelp}\ncolourways:\n")
	for _, name := range []string{"tide", "dune", "wrack", "shingle", "foam", "gannet", "oystercatcher", "samphire", "mudlark", "skerry", "eider", "salt"} {
		text.WriteString("  " + name + ": {blocks: 2}\n")
	}
	text.WriteString("layout: {across: 6, down: 4, order: rows}\n")
	return planned(t, text.String())
}

// Twelve colourways stand in panels on a wide page, operation by operation on a
// narrow one; no name and no figure is cut on either.
func TestTwelveColourwaysStayReadable(t *testing.T) {
	s := booked(t, twelve(t), 2)
	for name, look := range looks {
		shown := shownBy(t, func(w *bytes.Buffer) error { return Left(w, []tracker.State{s}, friday, look) })
		golden(t, "left-twelve-"+name, shown)
		if look.Width > 0 {
			for line := range strings.Lines(shown) {
				assert.LessOrEqual(t, displaywidth.String(escapesGone(strings.TrimSuffix(line, "\n"))), look.Width, line)
			}
		}
	}
	piped := shownBy(t, func(w *bytes.Buffer) error { return Left(w, []tracker.State{s}, friday, looks["pipe"]) })
	assert.Regexp(t, `(?m)^ +tide .* salt$`, piped, "in a pipe nothing is parted")
}

// escapesGone is a line without what makes it bold or faint.
func escapesGone(line string) string {
	for _, e := range append(escapes[1:], reset) {
		line = strings.ReplaceAll(line, e, "")
	}
	return line
}

func TestBarsShowWhatIsBegunAndAreFullOnlyWhenDone(t *testing.T) {
	look := Look{Unicode: true}
	for _, c := range []struct {
		done, left int
		want       string
	}{{0, 10, "░░░░"}, {1, 99, "█░░░"}, {5, 5, "██░░"}, {99, 1, "███░"}, {10, 0, "████"}, {0, 0, "    "}} {
		assert.Equal(t, c.want, cellOf(c.done, c.left, 0).bar(4, look))
	}
	assert.Equal(t, "##..", cellOf(5, 5, 0).bar(4, Look{}))
}

// 6 of 10 pairs are sewn: 3 blocks of 2 can be pressed.
func TestTheNextThingToDoIsSaidInWords(t *testing.T) {
	s := booked(t, example(t, "estuary-lap"), 0)
	// The minutes are those of the ledger: 8 × 3.09 + 8.75 + 14.3, hand-worked.
	assert.Equal(t, "prepare the fabric (Kelp, Cormorant, Marram and 7 more): 10 left, about 47 min", untied(nextWords(s, friday)))
	kitted := tracker.Doable{Operation: tracker.Operation{Name: "chain-sew pairs", CountedIn: "pair", Lot: tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"}}, Left: 14, Room: 14}
	assert.Equal(t, "chain-sew tide pairs", taskWords([]tracker.Doable{kitted}))
	assert.Equal(t, "14 left", roomWords([]tracker.Doable{kitted}))
	kitted.Room = 4
	assert.Equal(t, "4 of 14 pairs left can be made", roomWords([]tracker.Doable{kitted}))
	kitted.Room, kitted.Tests = 2, []string{"tide-01"}
	assert.Equal(t, "2 pairs for the test block tide-01", untied(roomWords([]tracker.Doable{kitted})))
}

// A kind of a newer program, or of another part of this one, is told by its name.
func TestAKindWithoutWordsIsToldAllTheSame(t *testing.T) {
	s := eventful(t)
	ev := tracker.Event{Seq: 9, ID: "x", Kind: "steam", Reason: "hot", Target: "evening-1",
		Parts: []tracker.Part{{Operation: "press-pairs", Lot: tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"}, Count: 2}}}
	assert.Equal(t, "steam: press pairs: 2 pairs of tide of evening-1; hot", untied(tell(s, tracker.Told{Event: ev})))
}

func TestSightsKeepTheirContract(t *testing.T) {
	for name, show := range sightsJSON(t) {
		conforms(t, name, show)
	}
	conforms(t, "jobs", func(w io.Writer) error { return JobsJSON(w, nil, "", friday) })
	conforms(t, "left-blocks-all", func(w io.Writer) error { return LeftBlocksAllJSON(w, nil) })
	conforms(t, "in-use", func(w io.Writer) error { return InUseJSON(w, "") })
	ask := tracker.AgendaRequest{Today: friday}
	conforms(t, "next", func(w io.Writer) error { return NextJSON(w, nil, ask, tracker.NewAgenda(nil, ask)) })
}

// sightsJSON are the same answers for scripts, with something in every list.
func sightsJSON(t testing.TB) map[string]func(io.Writer) error {
	s := eventful(t)
	both := []tracker.State{s, booked(t, example(t, "harbour-pair"), 2)}
	told := toldBy(t, s)
	ask := tracker.AgendaRequest{For: 4, At: planner.Machine, Today: friday}
	agenda := tracker.NewAgenda(both, tracker.AgendaRequest{For: 60, Today: friday})
	agenda.Longer = agenda.Batches[0].Tasks[:1]
	using := tracker.Event{ID: "u", Seq: 1, Target: "estuary-lap"}
	return map[string]func(io.Writer) error{
		"left-blocks":     func(w io.Writer) error { return LeftBlocksJSON(w, s) },
		"left-blocks-all": func(w io.Writer) error { return LeftBlocksAllJSON(w, both) },
		"jobs":            func(w io.Writer) error { return JobsJSON(w, both, "estuary-lap", friday) },
		"history":         func(w io.Writer) error { return HistoryJSON(w, s, told[2:]) },
		"next":            func(w io.Writer) error { return NextJSON(w, both, ask, agenda) },
		"remark":          func(w io.Writer) error { return RemarkedJSON(w, s, told[5].Event, false) },
		"use":             func(w io.Writer) error { return UsedJSON(w, using, false) },
		"in-use":          func(w io.Writer) error { return InUseJSON(w, "estuary-lap") },
	}
}

func TestEveryKindIsToldInPlainWords(t *testing.T) {
	s := eventful(t)
	tide := tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"}
	row := []tracker.Part{{Operation: "sew-pairs", Lot: tide, Count: 2}}
	quarter := measure.Inch / 4
	for _, c := range []struct {
		told tracker.Told
		want string
	}{
		{tracker.Told{Event: tracker.Event{Kind: tracker.Stopped}}, "stopped"},
		{tracker.Told{Event: tracker.Event{Kind: tracker.Paused}}, "a pause"},
		{tracker.Told{Event: tracker.Event{Kind: tracker.Resumed}}, "went on"},
		{tracker.Told{Event: tracker.Event{Kind: tracker.Ripped, Parts: row, Reason: "puckered"}}, "ripped: chain-sew pairs: 2 pairs of tide; puckered"},
		{tracker.Told{Event: tracker.Event{Kind: tracker.Recount, Parts: row}}, "recounted: chain-sew pairs: 2 pairs of tide on the table"},
		{tracker.Told{Event: tracker.Event{Kind: tracker.Bobbin}}, "a full bobbin went in"},
		{tracker.Told{Event: tracker.Event{Kind: tracker.Parked}}, "taken up again"},
		{tracker.Told{Event: tracker.Event{Kind: tracker.Measured, Measure: &tracker.Measurement{Step: "block", Unit: "in",
			Sizes: []tracker.MeasuredSize{{Size: measure.Size{Width: measure.Inch, Height: measure.Inch}, Count: 2}}}}},
			"measured block: 2 of 1 in square"},
		{tracker.Told{Event: tracker.Event{Kind: tracker.Amended, Amendment: &tracker.Amendment{Seam: quarter}}}, "planned with a seam of 0.25 in"},
		{tracker.Told{Event: tracker.Event{Kind: tracker.Amended, Amendment: &tracker.Amendment{FileSeam: true}}}, "planned with the job file's seam again"},
		{tracker.Told{Event: tracker.Event{Kind: tracker.Amended, Amendment: &tracker.Amendment{Swap: &planner.Swap{A: "tide-01", B: "dune-02"}}}},
			"tide-01 and dune-02 changed places"},
	} {
		assert.Equal(t, c.want, untied(tell(s, c.told)))
	}
}
