package cli

import (
	"bytes"
	"errors"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// mat is a job of one colourway of two blocks.
const mat = `job: cove-mat
received: 2026-11-02
fabrics: {Kelp: {form: yardage, width: 42}}
block: {make: four-patch, square: 5, print: Kelp, ground: Kelp}
colourways: {tide: {blocks: 2}}
layout: {across: 2, down: 1}
`

// call runs one call and gives back what it wrote.
func call(env Env, args ...string) (code int, out, err string) {
	var answer, words bytes.Buffer
	env.Out, env.Err = &answer, &words
	code = Main(env, args)
	return code, answer.String(), words.String()
}

// bookMat is an environment in which the mat is booked.
func bookMat(t *testing.T) Env {
	env, _, _ := calm(t)
	env.In = strings.NewReader(mat)
	code, _, words := call(env, "book", "-", "--id", "booking")
	require.Equal(t, exitDone, code, words)
	return env
}

func TestPanicIsWordedForAPerson(t *testing.T) {
	env, _, _ := calm(t)
	env.Now = func() time.Time { panic("the clock has stopped") }
	code, out, words := call(env, "when")
	assert.Equal(t, exitFailed, code)
	assert.Empty(t, out)
	assert.Equal(t, `quiltrun: a fault in the program stopped it
  the log is safe: every entry that was acknowledged is on disk
  set QUILTRUN_TRACE=1 and run the same command again for the details
`, words)

	env.Trace = true
	code, _, words = call(env, "when")
	assert.Equal(t, exitFailed, code)
	assert.Contains(t, words, "the clock has stopped")
	assert.Contains(t, words, "runWhen")
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

func TestAnswerThatCannotBeWrittenIsAFailure(t *testing.T) {
	env := bookMat(t)
	var words bytes.Buffer
	env.Out, env.Err = full{}, &words
	assert.Equal(t, exitFailed, Main(env, []string{"log", "cove", "seam-test", "1"}))
	assert.Equal(t, `quiltrun: the answer could not be written: no space left on device
  what was asked for is done; only its answer is missing here
`, words.String())

	_, out, _ := call(env, "left", "--json")
	assert.Contains(t, out, `"key":"seam-test","counted_in":"unit","count":1,"done":1,"left":0`)
}

func TestEntriesSayWhoAndWhen(t *testing.T) {
	env := bookMat(t)
	code, _, words := call(env, "log", "cove", "seam-test", "1", "--took", "12m",
		"--id", "first", "--reason", "new needle", "--now", "2026-11-02T19:30:00-03:30")
	require.Equal(t, exitDone, code, words)

	opened, err := store.OpenForReading(filepath.Join(env.DataDir, "quiltrun", "quiltrun.db"), store.Waiting{})
	require.NoError(t, err)
	defer func() { require.NoError(t, opened.Close()) }()
	events, err := opened.Events("cove-mat")
	require.NoError(t, err)
	require.Len(t, events, 2)
	entry := events[1]
	assert.Equal(t, "2026-11-02T19:30:00-03:30", entry.At.Format(time.RFC3339), "the maker's own offset is kept")
	assert.Equal(t, tracker.Event{
		Schema: 1, ID: "first", Seq: 2, At: entry.At, By: "kelp", Kind: tracker.Logged, Revision: 1,
		Parts: entry.Parts, Reason: "new needle",
	}, entry)
}

func TestTodayAloneFixesTheWholeClock(t *testing.T) {
	env, _, _ := calm(t)
	zone := time.FixedZone("", -5*60*60)
	env.Now = func() time.Time { return time.Date(2026, time.November, 2, 23, 0, 0, 0, zone) }
	env.given.today = "2027-03-01"
	require.NoError(t, env.fixClock())
	assert.Equal(t, "2027-03-01T12:00:00-05:00", env.Now().Format(time.RFC3339))
}

func TestIDsAreRandomUUIDs(t *testing.T) {
	// RFC 9562 section 5.4: version 4 in the seventh byte, variant 10 in the
	// ninth; the other bits are the source's. Hand-worked.
	got, err := newID(bytes.NewReader([]byte{0, 1, 2, 3, 4, 5, 0xf6, 7, 0xc8, 9, 10, 11, 12, 13, 14, 15}))
	require.NoError(t, err)
	assert.Equal(t, "00010203-0405-4607-8809-0a0b0c0d0e0f", got)

	env := bookMat(t)
	env.Random = strings.NewReader("")
	code, out, words := call(env, "log", "cove", "seam-test", "1")
	assert.Equal(t, exitFailed, code)
	assert.Empty(t, out)
	assert.Equal(t, "quiltrun: no id could be made for the entry: EOF\n  give one with --id\n", words)
}

func TestJobBeginningsAreNeverGuessed(t *testing.T) {
	env := bookMat(t)
	for _, id := range []string{"cove", "cove-mat-2"} {
		env.In = strings.NewReader(strings.Replace(mat, "job: cove-mat", "job: "+id, 1))
		code, _, words := call(env, "book", "-")
		require.Equal(t, exitDone, code, words)
	}
	for typed, want := range map[string]string{
		"cove":       "cove", // a whole id goes before a beginning
		"cove-mat":   "cove-mat",
		"cove-mat-":  "cove-mat-2",
		"cove-mat-2": "cove-mat-2",
	} {
		code, out, words := call(env, "left", typed, "--json")
		require.Equal(t, exitDone, code, words)
		assert.Contains(t, out, `"job":"`+want+`"`)
	}
	code, _, words := call(env, "left", "co")
	assert.Equal(t, exitFailed, code)
	assert.Equal(t, "quiltrun: \"co\" may be any of cove, cove-mat, cove-mat-2\n  type enough of the id to tell them apart\n", words)
}

func TestOneEnvServesSeveralCalls(t *testing.T) {
	env := bookMat(t)
	_, out, _ := call(env, "when", "--today", "2031-01-01", "--json")
	assert.Contains(t, out, `"as_of":"2031-01-01"`)
	_, out, _ = call(env, "when", "--json")
	assert.Contains(t, out, `"as_of":"2026-11-02"`)
}
