package store_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

func TestEventsAreNumberedFromOnePerJob(t *testing.T) {
	s := openToWrite(t, logPath(t))
	assert.Equal(t, uint64(1), add(t, s, job, entry("a")).Seq)
	assert.Equal(t, uint64(2), add(t, s, job, entry("b")).Seq)
	assert.Equal(t, uint64(1), add(t, s, other, entry("c")).Seq)
	assert.Equal(t, uint64(1), add(t, s, "", entry("d")).Seq)
	assert.Equal(t, uint64(3), add(t, s, job, entry("e")).Seq)
}

func TestAnEventReadsAsItWasLogged(t *testing.T) {
	full := tracker.Event{
		Schema: tracker.EventSchema, ID: "01-café", By: "藍", Kind: tracker.Booked, Revision: 2,
		At: entry("").At, CatchUp: true, Reason: "one pair <short> & \"wavy\"", Target: "00",
		File: "job: estuary-lap\n\ttitle: \U0001F9F5 rose\n",
		Parts: []tracker.Part{{Operation: "square-up", Count: 2,
			Blocks: []tracker.BlockCount{{Block: "tide-03", Count: 2}}}},
		Ledger: &tracker.Ledger{Job: job, Colourways: []string{"tide"}, Revision: 2},
		Week:   []tracker.DayTime{{From: planner.Date{Year: 2026, Month: 11, Day: 2}, Day: 1, Minutes: 120}},
		Days:   []tracker.DateTime{{Date: planner.Date{Year: 2026, Month: 12, Day: 24}}},
	}
	path := logPath(t)
	s, err := store.OpenForWriting(path, store.Waiting{})
	require.NoError(t, err)
	given := add(t, s, job, full)
	require.NoError(t, s.Close())

	events, err := openToRead(t, path).Events(job)
	require.NoError(t, err)
	require.Len(t, events, 1)
	assert.Equal(t, given, events[0], "what Append gives back is what is read later")
	assert.True(t, full.At.Equal(events[0].At))
	assert.Equal(t, "2026-11-24T14:05:00+01:00", events[0].At.Format("2006-01-02T15:04:05Z07:00"),
		"the sender's offset is kept")
	full.Seq, full.At = 1, events[0].At
	assert.Equal(t, full, events[0])
}

func TestJobsAndTheMakerAreKeptApart(t *testing.T) {
	path := logPath(t)
	s := openToWrite(t, path)
	add(t, s, job, entry("a"))
	add(t, s, third, entry("b"))
	add(t, s, other, entry("c"))
	add(t, s, "", entry("d"))

	jobs, err := s.Jobs()
	require.NoError(t, err)
	assert.Equal(t, []string{third, job, other}, jobs)
	own, err := s.MakerEvents()
	require.NoError(t, err)
	require.Len(t, own, 1)
	assert.Equal(t, "d", own[0].ID)
	none, err := s.Events("never-booked")
	require.NoError(t, err)
	assert.Empty(t, none)
	require.NoError(t, s.Close())
	assert.Equal(t, []string{"c"}, ids(t, path, other))
}

func TestDecideSeesTheJobsEventsOnce(t *testing.T) {
	path := logPath(t)
	filled(t, path, 2)
	s := openToWrite(t, path)
	for want := 2; want < 5; want++ {
		calls := 0
		_, _, err := s.Append(job, func(events []tracker.Event) (tracker.Event, error) {
			calls++
			require.Len(t, events, want)
			assert.Equal(t, uint64(want), events[want-1].Seq)
			_ = append(events, entry("not logged")) // must not get into the log's own list
			return entry("x"), nil
		})
		require.NoError(t, err)
		assert.Equal(t, 1, calls)
	}
}

func TestARefusedEntryLeavesTheFileAsItWas(t *testing.T) {
	path := logPath(t)
	filled(t, path, 3)
	before := pictureOf(t, path)
	s := openToWrite(t, path)
	refusal := errors.New("only 4 are left")
	for _, name := range []string{job, "never-booked", ""} {
		_, repeated, err := s.Append(name, func([]tracker.Event) (tracker.Event, error) { return entry("x"), refusal })
		assert.Same(t, refusal, err, "the refusal is not wrapped")
		assert.False(t, repeated)
	}
	require.NoError(t, s.Close())
	assert.Equal(t, before, pictureOf(t, path))
}

func TestARepeatedEntryIsNotWrittenAgain(t *testing.T) {
	path := logPath(t)
	filled(t, path, 3)
	before := pictureOf(t, path)
	s := openToWrite(t, path)
	ev, repeated, err := s.Append(job, func(events []tracker.Event) (tracker.Event, error) { return events[1], nil })
	require.NoError(t, err)
	assert.True(t, repeated)
	assert.Equal(t, uint64(2), ev.Seq)
	require.NoError(t, s.Close())
	assert.Equal(t, before, pictureOf(t, path))
}

func TestAnEntryThatIsNotThereCannotBeRepeated(t *testing.T) {
	s := openToWrite(t, logPath(t))
	ev := entry("x")
	ev.Seq = 1
	_, _, err := s.Append(job, func([]tracker.Event) (tracker.Event, error) { return ev, nil })
	require.Error(t, err, "an entry must not be acknowledged that is not in the file")
}

func TestABugInDecideIsNotTakenForDamage(t *testing.T) {
	s := openToWrite(t, logPath(t))
	assert.PanicsWithValue(t, "bug", func() {
		_, _, _ = s.Append(job, func([]tracker.Event) (tracker.Event, error) { panic("bug") })
	})
	assert.Equal(t, uint64(1), add(t, s, job, entry("a")).Seq, "the log can be used afterwards")
}

func TestALogOpenForReadingTakesNoEntry(t *testing.T) {
	path := logPath(t)
	filled(t, path, 1)
	_, _, err := openToRead(t, path).Append(job, func([]tracker.Event) (tracker.Event, error) { return entry("x"), nil })
	var readOnly *store.ReadOnlyError
	require.ErrorAs(t, err, &readOnly)
	assert.Equal(t, []string{"a"}, ids(t, path, job))
}

func TestAClosedLogIsNotTakenForAnEmptyOne(t *testing.T) {
	path := logPath(t)
	filled(t, path, 1)
	for _, open := range openings {
		s, err := open(path, store.Waiting{})
		require.NoError(t, err)
		require.NoError(t, s.Close())
		require.NoError(t, s.Close(), "closing twice does no harm")
		_, err = s.Events(job)
		require.Error(t, err)
		_, _, err = s.Append(job, func([]tracker.Event) (tracker.Event, error) { return entry("x"), nil })
		require.Error(t, err)
	}
}

func TestReadingLeavesTheFileAsItWas(t *testing.T) {
	path := logPath(t)
	filled(t, path, 40)
	before := pictureOf(t, path)
	s := openToRead(t, path)
	_, err := s.Jobs()
	require.NoError(t, err)
	events, err := s.Events(job)
	require.NoError(t, err)
	assert.Len(t, events, 40)
	_, err = s.MakerEvents()
	require.NoError(t, err)
	assert.False(t, s.WarnOnce("network"))
	require.NoError(t, s.Close())
	assert.Equal(t, before, pictureOf(t, path))
}

func TestANoteIsGivenOncePerFile(t *testing.T) {
	path := logPath(t)
	s := openToWrite(t, path)
	assert.True(t, s.WarnOnce("network"))
	assert.False(t, s.WarnOnce("network"), "not twice by one command either")
	require.NoError(t, s.Close())

	s = openToWrite(t, path)
	assert.True(t, s.WarnOnce("network"), "no entry followed that could have stored it")
	add(t, s, job, entry("a"))
	require.NoError(t, s.Close())

	s = openToWrite(t, path)
	assert.False(t, s.WarnOnce("network"))
	assert.True(t, s.WarnOnce("synced folder"))
	assert.Equal(t, []string{job}, must(s.Jobs()), "a note is no job")
}

func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}
