package tracker

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// inchesOf is a length of so many inches, to the nearest tick.
func inchesOf(in float64) measure.Length { return measure.Length(in*float64(measure.Inch) + 0.5) }

// strips is a measure of the three strips, so wide.
func strips(width float64, machine string) Measurement {
	return Measurement{
		Step: "three-strips", Operation: "seam-test", Name: "three strips", Unit: "in", Machine: machine, Seams: 2,
		Should: measure.Size{Width: inchesOf(3.5)}, Seam: inchesOf((4.5 - width) / 4), Planned: inchesOf(0.25),
		Sizes: []MeasuredSize{{Size: measure.Size{Width: inchesOf(width)}, Count: 1}},
	}
}

// measured is the state after a measure by somebody.
func measured(t require.TestingT, s State, m Measurement, id, by string) State {
	ev, err := s.Measure(m, id, monday, by)
	require.NoError(t, err)
	return after(t, s, ev)
}

func TestAMeasureChangesNoCount(t *testing.T) {
	s := cutAndKitted(t)
	before := s.Rows()
	s = measured(t, s, strips(3.5, "window"), "m1", "Runa")
	assert.Equal(t, before, s.Rows())
	require.Len(t, s.Measurements(), 1)
	assert.Equal(t, "window", s.LastMachine("Runa"))
	assert.Equal(t, "", s.LastMachine("Maren"), "hers is nobody else's")
	s = undone(t, s, "", "u1")
	assert.Empty(t, s.Measurements())
	assert.Empty(t, s.Series())
	assert.Equal(t, before, s.Rows())
}

func TestMeasuresAreKeptPerPersonAndMachine(t *testing.T) {
	s := book(t, estuary())
	s = measured(t, s, strips(3.5, "window"), "m1", "Runa")
	s = measured(t, s, strips(3.4375, "loft"), "m2", "Runa")
	s = measured(t, s, strips(3.375, "window"), "m3", "Maren")
	s = measured(t, s, strips(3.4375, "window"), "m4", "Runa")
	var lengths []int
	for _, x := range s.Series() {
		lengths = append(lengths, len(x.Readings))
	}
	assert.Equal(t, []int{2, 1, 1}, lengths)
}

func TestATrendBeginsAnewWhereTheGuideWasMoved(t *testing.T) {
	ledger := estuary()
	for i, o := range ledger.Operations {
		if strings.HasPrefix(o.Key, "sew-") {
			ledger.Operations[i].Place = planner.Machine
		}
	}
	s := book(t, ledger)
	for i, w := range []float64{3.5, 3.4375, 3.375, 3.3125} {
		s = measured(t, s, strips(w, "window"), fmt.Sprint("m", i), "Runa")
	}
	require.Len(t, s.Drifts(), 1, "the seam test stands for all that is sewn")
	assert.Len(t, s.Drifts("sew-pairs"), 1)
	assert.Empty(t, s.Drifts("cut"), "no needle is in it")
	moved := strips(3.5, "window")
	moved.Moved = true
	s = measured(t, s, moved, "m9", "Runa")
	assert.Empty(t, s.Drifts())
	assert.Len(t, s.Series()[0].Readings, 1)
}

// amendedTo is the state with a measured seam.
func amendedTo(t require.TestingT, s State, seam float64, id string, ledger Ledger) State {
	ledger.Revision = s.Ledger.Revision + 1
	m := strips(4.5-4*seam, "window")
	ev, err := s.Amend(Amendment{Seam: inchesOf(seam)}, &m, ledger, id, monday, "Runa")
	require.NoError(t, err)
	return after(t, s, ev)
}

func TestAnAmendedSeamIsPlannedWithUntilItIsTakenBack(t *testing.T) {
	s := cutAndKitted(t)
	before := s.Rows()
	s = amendedTo(t, s, 0.28125, "a1", estuary())
	assert.Equal(t, inchesOf(0.28125), s.Prior().Amend.Seam)
	assert.Equal(t, "job: estuary-lap", s.File, "the file is the same")
	assert.Equal(t, 2, s.Ledger.Revision)
	assert.Equal(t, before, s.Rows(), "what was logged keeps counting")
	assert.Equal(t, "a1", s.Planned().ID)
	s = logged(t, s, "sew-pairs", "tide=4")

	s = undone(t, s, "a1", "u1")
	assert.Zero(t, s.Prior().Amend.Seam)
	assert.Equal(t, 1, s.Ledger.Revision)
	assert.Equal(t, 4, s.Done("sew-pairs", tide))
	assert.Equal(t, Booked, s.Planned().Kind)
}

func TestAnAmendedSeamThatIsPlannedOnIsNotTakenBack(t *testing.T) {
	s := amendedTo(t, book(t, estuary()), 0.28125, "a1", estuary())
	s = revise(t, s, estuary())
	assert.Equal(t, inchesOf(0.28125), s.Amendments().Seam, "a revision keeps it")
	_, err := s.Undo("a1", "u1", monday, "Runa")
	r := asRefusal(t, err)
	assert.Equal(t, BuiltOn, r.Kind)
	assert.Equal(t, "the job was planned anew with a seam of 0.281 in since (entry 3)", r.What)
	assert.Equal(t, "to sew with the job file's seam again: quiltrun revise FILE --file-seam", r.Hint)
}

// Work in a row that only the amended plan has keeps the amendment.
func TestAnAmendedSeamOnWhichWorkRestsIsNotTakenBack(t *testing.T) {
	more := estuary()
	more.Operations = append(more.Operations, Operation{Number: 900, Key: "even-up", Name: "even up", Lot: tide, CountedIn: "block", PerBlock: 1, Count: 8})
	s := amendedTo(t, book(t, estuary()), 0.28125, "a1", more)
	s = logged(t, s, "even-up", "tide=1")
	_, err := s.Undo("a1", "u1", monday, "Runa")
	assert.Equal(t, BuiltOn, asRefusal(t, err).Kind)
}

func TestARevisionMayForgetAMeasuredSeam(t *testing.T) {
	s := amendedTo(t, book(t, estuary()), 0.28125, "a1", estuary())
	l := estuary()
	l.Revision = 3
	s = after(t, s, Event{Schema: 1, ID: "r", Kind: Revised, At: monday, File: "job: estuary-lap", Ledger: &l, Amendment: &Amendment{FileSeam: true}})
	assert.Zero(t, s.Amendments())
}

func TestAMeasureThatSaysNothingIsNotReadBack(t *testing.T) {
	s := book(t, estuary())
	for _, ev := range []Event{
		{Kind: Measured},
		{Kind: Measured, Measure: &Measurement{Step: "units"}},
		{Kind: Measured, Measure: &Measurement{Step: "units", Sizes: []MeasuredSize{{Count: 1}}}},
		{Kind: Amended},
		{Kind: Amended, Amendment: &Amendment{}},
		{Kind: Amended, Amendment: &Amendment{Seam: -1}},
	} {
		ev.Schema, ev.ID, ev.Seq = 1, "x", 2
		_, err := s.With(ev)
		assert.Error(t, err, "%+v", ev)
	}
}

// A measure that was written stays readable to the tick.
func TestAMeasureRoundTrips(t *testing.T) {
	m := strips(3.4375, "window")
	m.Sizes[0].Blocks = []string{"tide-01"}
	ev := Event{Schema: 1, ID: "m", At: monday, By: "Runa", Kind: Amended, Measure: &m, Amendment: &Amendment{Seam: m.Seam, Swap: &planner.Swap{A: "tide-01", B: "dune-02"}}}
	text, err := json.Marshal(ev)
	require.NoError(t, err)
	var back Event
	require.NoError(t, json.Unmarshal(text, &back))
	back.At = back.At.In(time.UTC)
	ev.At = ev.At.In(time.UTC)
	assert.Equal(t, ev, back)
}

// Whatever is measured, amended to the same ledger and undone among work: counts
// are what they would be without it, and done and left make the count.
func TestMeasuringBesideTheWorkChangesNoCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, plain := book(t, smallJob()), book(t, smallJob())
		for i := range rapid.IntRange(1, 12).Draw(t, "events") {
			id := fmt.Sprint("x", i)
			switch rapid.IntRange(0, 3).Draw(t, "what") {
			case 0:
				s = measured(t, s, strips(3.25+float64(rapid.IntRange(0, 8).Draw(t, "width"))/16, "window"), id, "Runa")
			case 1:
				s = amendedTo(t, s, 0.25+float64(rapid.IntRange(1, 8).Draw(t, "seam"))/256, id, smallJob())
			case 2:
				for _, e := range s.Entries {
					if ev, err := s.Undo(e.ID, id, monday, "Runa"); e.Kind != Logged && err == nil {
						s = after(t, s, ev)
						break
					}
				}
			default:
				o := rapid.SampledFrom(s.Ledger.Operations).Draw(t, "row")
				r := LogRequest{Operation: o.Key, ID: id, At: monday, By: "Runa", CatchUp: true, Counts: []CountAsked{{Lot: o.Lot.Name, Number: 1}}}
				ev, err := s.Log(r)
				same, wrong := plain.Log(r)
				require.Equal(t, wrong == nil, err == nil)
				if err == nil {
					require.Equal(t, same.Parts, ev.Parts)
					s, plain = after(t, s, ev), after(t, plain, same)
				}
			}
			require.Equal(t, plain.Rows(), s.Rows())
			for _, row := range s.Rows() {
				require.Equal(t, row.Count, row.Done+row.Left())
			}
		}
	})
}
