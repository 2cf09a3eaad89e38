package cli

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// matLedger is the ledger of the mat, to be made wrong.
func matLedger(t *testing.T) tracker.Ledger {
	file := jobFile{"mat.yaml", []byte(mat)}
	job, err := file.parse()
	require.NoError(t, err)
	plan, err := file.plan(job, planner.Prior{})
	require.NoError(t, err)
	return tracker.Freeze(plan)
}

// A ledger that the fold refuses would make every later command on the job
// fail, with no way to take it back.
func TestABookingThatCouldNotBeReadBackIsNotStored(t *testing.T) {
	env, _, _ := calm(t)
	ledger := matLedger(t)
	ledger.Operations = append(ledger.Operations, ledger.Operations[0])
	event, err := env.newEvent(tracker.Booked, "booking")
	require.NoError(t, err)
	event.Ledger = &ledger
	_, err = env.bookJob(context.Background(), "cove-mat", event)
	assert.EqualError(t, err, "the entry was not stored, since it could not be read back: "+
		"event 1 of the job is not one that quiltrun wrote: prepare has two rows for Kelp")

	code, out, words := call(env, "left", "--json")
	assert.Equal(t, exitDone, code, words)
	assert.Equal(t, "{\"schema\":1,\"jobs\":[]}\n", out)
}

// JSON turns what is not UTF-8 into something else, so that the same entry sent
// again would pass for another.
func TestANoteThatIsNotTextIsRefused(t *testing.T) {
	env := bookMat(t)
	path := filepath.Join(env.DataDir, "quiltrun", "quiltrun.db")
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	code, out, words := call(env, "log", "cove", "seam-test", "1", "--reason", "caf\xe9", "--json")
	assert.Equal(t, exitWrong, code)
	assert.Empty(t, out)
	assert.Equal(t, "quiltrun: --reason \"caf\\xe9\" is not UTF-8 text\n  write it anew, or leave --reason out\n", words)
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, before, after)

	code, _, words = call(env, "log", "cove", "seam-test", "1", "--reason", "café, 藍\tand\nmore")
	assert.Equal(t, exitDone, code, words)
}
