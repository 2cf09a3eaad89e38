package store_test

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

var errRefused = errors.New("refused")

// simulation is a log together with the simplest thing that could be one.
type simulation struct {
	path  string
	log   *store.Store
	model map[string][]string // ids, by job
}

// Whatever commands come in whatever order, the file holds what a list in
// memory would.
func TestTheLogBehavesAsAListInMemory(t *testing.T) {
	folder := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		path := filepath.Join(folder, "log.db")
		if err := os.Remove(path); err != nil && !errors.Is(err, os.ErrNotExist) {
			t.Fatal(err)
		}
		sim := &simulation{path: path, model: map[string][]string{}}
		sim.Reopen(t)
		t.Repeat(rapid.StateMachineActions(sim))
		if err := sim.log.Close(); err != nil {
			t.Fatal(err)
		}
		if faults, err := store.Check(path, store.Waiting{}); err != nil || len(faults) > 0 {
			t.Fatal(faults, err)
		}
	})
}

func drawJob(t *rapid.T) string {
	return rapid.SampledFrom([]string{job, other, third, ""}).Draw(t, "job")
}

// Append adds an entry, of a few hundred bytes or of many pages.
func (s *simulation) Append(t *rapid.T) {
	name, ev := drawJob(t), entry(rapid.StringMatching(`[a-z0-9]{1,8}`).Draw(t, "id"))
	ev.File = string(make([]byte, rapid.SampledFrom([]int{0, 0, 0, 300, 20_000}).Draw(t, "size")))
	s.decide(t, name, ev, nil)
	s.model[name] = append(s.model[name], ev.ID)
}

// Repeat sends an entry of before again.
func (s *simulation) Repeat(t *rapid.T) {
	name := drawJob(t)
	if len(s.model[name]) == 0 {
		t.Skip("nothing to repeat")
	}
	at := rapid.IntRange(0, len(s.model[name])-1).Draw(t, "at")
	_, repeated, err := s.log.Append(name, func(events []tracker.Event) (tracker.Event, error) { return events[at], nil })
	if err != nil || !repeated {
		t.Fatal(repeated, err)
	}
}

// Refuse has an entry refused.
func (s *simulation) Refuse(t *rapid.T) { s.decide(t, drawJob(t), tracker.Event{}, errRefused) }

// Reopen is what lies between two commands.
func (s *simulation) Reopen(t *rapid.T) {
	if s.log != nil {
		if err := s.log.Close(); err != nil {
			t.Fatal(err)
		}
	}
	var err error
	if s.log, err = store.OpenForWriting(s.path, store.Waiting{Limit: patient}); err != nil {
		t.Fatal(err)
	}
}

// Check compares the two, after every action.
func (s *simulation) Check(t *rapid.T) {
	jobs, err := s.log.Jobs()
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range s.model {
		if name != "" && !slices.Contains(jobs, name) {
			t.Fatalf("%s is not among the jobs %v", name, jobs)
		}
		events, err := s.log.Events(name)
		if err != nil {
			t.Fatal(err)
		}
		if got := idsOf(t, events); !slices.Equal(want, got) {
			t.Fatalf("%q: want %v, got %v", name, want, got)
		}
	}
}

// decide appends and makes sure that the events shown are the model's.
func (s *simulation) decide(t *rapid.T, name string, ev tracker.Event, refusal error) {
	got, repeated, err := s.log.Append(name, func(events []tracker.Event) (tracker.Event, error) {
		if shown := idsOf(t, events); !slices.Equal(s.model[name], shown) {
			t.Fatalf("%q: want %v, was shown %v", name, s.model[name], shown)
		}
		return ev, refusal
	})
	if !errors.Is(err, refusal) || repeated {
		t.Fatal(repeated, err)
	}
	if refusal == nil && got.Seq != uint64(len(s.model[name]))+1 {
		t.Fatalf("%q got the number %d", name, got.Seq)
	}
}

// idsOf gives the ids of events that must be numbered from 1.
func idsOf(t *rapid.T, events []tracker.Event) []string {
	var ids []string
	for i, ev := range events {
		if ev.Seq != uint64(i)+1 {
			t.Fatalf("event %d has the number %d", i+1, ev.Seq)
		}
		ids = append(ids, ev.ID)
	}
	return ids
}
