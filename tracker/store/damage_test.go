package store_test

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.etcd.io/bbolt"
	"pgregory.net/rapid"

	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// sample is the bytes of a good log of many pages.
func sample(t testing.TB) []byte {
	t.Helper()
	path := filepath.Join(t.TempDir(), "log.db")
	filled(t, path, 300)
	return must(os.ReadFile(path))
}

// foreign is the bytes of a bbolt file of another program.
func foreign(t testing.TB) []byte {
	t.Helper()
	path := filepath.Join(t.TempDir(), "foreign.db")
	db, err := bbolt.Open(path, 0o600, nil)
	require.NoError(t, err)
	require.NoError(t, db.Update(func(tx *bbolt.Tx) error {
		_, err := tx.CreateBucket([]byte("meta"))
		return err
	}))
	require.NoError(t, db.Close())
	return must(os.ReadFile(path))
}

func TestAFileThatIsNoLogIsSaidToBeNone(t *testing.T) {
	good := sample(t)
	tests := []struct {
		name string
		data []byte
	}{
		{"empty", nil},
		{"one byte", []byte("x")},
		{"a job file", []byte("job: estuary-lap\ntitle: Estuary lap quilt\n")},
		{"long text", bytes.Repeat([]byte("kelp and foam, "), 10_000)},
		{"zeros", make([]byte, 64<<10)},
		{"another program's bbolt file", foreign(t)},
		{"cut within the first page", good[:1000]},
		{"cut after the first page", good[:4096]},
		{"cut after the second page", good[:8192]},
		{"cut in the middle", good[:len(good)/2]},
		{"cut to a quarter, not at a page", good[:len(good)/4+77]},
		{"first pages lost", append(make([]byte, 8192), good[8192:]...)},
		{"all but the first pages lost", append(bytes.Clone(good[:8192]), make([]byte, len(good)-8192)...)},
	}
	for _, test := range tests {
		for mode, open := range openings {
			t.Run(mode+"/"+test.name, func(t *testing.T) {
				path := filepath.Join(t.TempDir(), "log.db")
				require.NoError(t, os.WriteFile(path, test.data, 0o600))
				before := pictureOf(t, path)
				for range 2 { // the first try must not leave the file locked
					_, err := open(path, store.Waiting{})
					var damaged *store.DamagedError
					require.ErrorAs(t, err, &damaged)
					assert.Equal(t, path, damaged.Path)
					assert.Contains(t, err.Error(), "restore a copy")
					assert.NotContains(t, err.Error(), "\n")
					assert.Less(t, len(strings.ReplaceAll(err.Error(), path, "")), 160, "one plain sentence")
				}
				assert.Equal(t, before, pictureOf(t, path), "a copy to repair is not made worse")
			})
		}
	}
}

func TestAFolderIsNoLog(t *testing.T) {
	for mode, open := range openings {
		t.Run(mode, func(t *testing.T) {
			_, err := open(t.TempDir(), store.Waiting{})
			var damaged *store.DamagedError
			require.ErrorAs(t, err, &damaged)
		})
	}
}

// harm is what happens to files: a page that was never written or is written
// over, in whole or in its text. (A changed byte among bbolt's own page numbers
// is not among it: bbolt does not check those, and may follow them for ever.)
var harm = map[string]func(t *rapid.T, pages [][]byte, at int){
	"page of zeros": func(t *rapid.T, pages [][]byte, at int) { clear(pages[at]) },
	"page of another place": func(t *rapid.T, pages [][]byte, at int) {
		copy(pages[at], pages[rapid.IntRange(0, len(pages)-1).Draw(t, "from")])
	},
	"page of another program": func(t *rapid.T, pages [][]byte, at int) {
		copy(pages[at], bytes.Repeat([]byte(rapid.StringN(1, 9, -1).Draw(t, "text")), len(pages[at])))
	},
	"changed text": func(t *rapid.T, pages [][]byte, at int) {
		// The first quarter holds page numbers and lengths.
		place := rapid.IntRange(len(pages[at])/4, len(pages[at])-1).Draw(t, "place")
		pages[at][place] = rapid.Byte().Draw(t, "byte")
	},
}

// Whatever a bad disk or a bad copy has done to the file, the program says so
// or goes on: it does not fall over.
func TestADamagedFileDoesNotBringTheProgramDown(t *testing.T) {
	good := sample(t)
	path := filepath.Join(t.TempDir(), "log.db")
	rapid.Check(t, func(t *rapid.T) {
		data := bytes.Clone(good)
		pages := slices.Collect(slices.Chunk(data, 4096))
		for range rapid.IntRange(1, 5).Draw(t, "times") {
			kind := rapid.SampledFrom(slices.Sorted(maps.Keys(harm))).Draw(t, "harm")
			harm[kind](t, pages, rapid.IntRange(0, len(pages)-1).Draw(t, "page"))
		}
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		for _, use := range []func(string) error{readEverything, logOne} {
			if err := use(path); err != nil && !expected(err) {
				t.Fatalf("unexpected kind of error: %v", err)
			}
		}
	})
}

func readEverything(path string) error {
	s, err := store.OpenForReading(path, store.Waiting{})
	if err != nil {
		return err
	}
	defer s.Close()
	jobs, err := s.Jobs()
	for _, job := range append(jobs, "") {
		if _, errJob := s.Events(job); errJob != nil {
			err = errJob
		}
	}
	return err
}

func logOne(path string) error {
	s, err := store.OpenForWriting(path, store.Waiting{})
	if err != nil {
		return err
	}
	defer s.Close()
	_, _, err = s.Append(job, func([]tracker.Event) (tracker.Event, error) { return entry("x"), nil })
	return err
}

// expected says whether an error is one that a damaged file may cause.
func expected(err error) bool {
	switch err.(type) {
	case *store.DamagedError, *store.NewerError:
		return true
	}
	return false
}

// doctor changes a log behind the store's back.
func doctor(t *testing.T, path string, change func(tx *bbolt.Tx) error) {
	t.Helper()
	db, err := bbolt.Open(path, 0o600, nil)
	require.NoError(t, err)
	require.NoError(t, db.Update(change))
	require.NoError(t, db.Close())
}

func eventsBucket(tx *bbolt.Tx) *bbolt.Bucket {
	return tx.Bucket([]byte("jobs")).Bucket([]byte(job)).Bucket([]byte("events"))
}

func TestALogOfANewerProgramIsLeftAlone(t *testing.T) {
	newer := map[string]func(tx *bbolt.Tx) error{
		"schema of the file": func(tx *bbolt.Tx) error {
			return tx.Bucket([]byte("meta")).Put([]byte("schema"), []byte("2"))
		},
		"schema of an entry": func(tx *bbolt.Tx) error {
			return eventsBucket(tx).Put([]byte{0, 0, 0, 0, 0, 0, 0, 1}, []byte(`{"schema":2,"seq":1}`))
		},
	}
	for name, change := range newer {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "log.db")
			filled(t, path, 2)
			doctor(t, path, change)
			before := pictureOf(t, path)
			for _, use := range []func(string) error{readEverything, logOne} {
				var newer *store.NewerError
				require.ErrorAs(t, use(path), &newer)
				assert.Equal(t, 2, newer.Schema)
				assert.Equal(t, 1, newer.Know)
			}
			assert.Equal(t, before, pictureOf(t, path))
		})
	}
}

func TestAnEntryThatIsLostOrGarbledIsNamed(t *testing.T) {
	tests := []struct {
		name   string
		change func(tx *bbolt.Tx) error
		says   string
	}{
		{"lost", func(tx *bbolt.Tx) error { return eventsBucket(tx).Delete([]byte{0, 0, 0, 0, 0, 0, 0, 2}) },
			"entry 2 of job estuary-lap is missing"},
		{"garbled", func(tx *bbolt.Tx) error { return eventsBucket(tx).Put([]byte{0, 0, 0, 0, 0, 0, 0, 2}, []byte("{")) },
			"entry 2 of job estuary-lap cannot be read"},
		{"under another number", func(tx *bbolt.Tx) error {
			return eventsBucket(tx).Put([]byte{0, 0, 0, 0, 0, 0, 0, 2}, []byte(`{"schema":1,"seq":3}`))
		}, "entry 2 of job estuary-lap cannot be read"},
		{"under a strange key", func(tx *bbolt.Tx) error { return eventsBucket(tx).Put([]byte("zz"), []byte("{}")) },
			"entry 4 of job estuary-lap is missing"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "log.db")
			filled(t, path, 3)
			doctor(t, path, test.change)
			for _, use := range []func(string) error{readEverything, logOne} {
				err := use(path)
				var damaged *store.DamagedError
				require.ErrorAs(t, err, &damaged)
				assert.Contains(t, err.Error(), test.says)
			}
			faults, err := store.Check(path, store.Waiting{})
			require.NoError(t, err)
			require.Len(t, faults, 1)
			assert.Contains(t, faults[0], test.says)
		})
	}
}

func TestAFieldOfALaterProgramIsPassedOver(t *testing.T) {
	path := logPath(t)
	filled(t, path, 1)
	doctor(t, path, func(tx *bbolt.Tx) error {
		return eventsBucket(tx).Put([]byte{0, 0, 0, 0, 0, 0, 0, 2}, []byte(`{"schema":1,"seq":2,"id":"b","kind":"rest","mood":"calm"}`))
	})
	assert.Equal(t, []string{"a", "b"}, ids(t, path, job), "new fields and kinds may come without a new schema")
}
