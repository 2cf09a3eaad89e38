package store_test

import (
	"bufio"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A process that logs is killed at any moment: while it makes the file, while
// it commits, between two entries. Every entry that it acknowledged must be
// there afterwards, and at most one that it did not get to acknowledge.
func TestAKilledProcessLosesNothingThatItAcknowledged(t *testing.T) {
	const rounds = 50
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	random := rand.New(rand.NewPCG(seed, 0))
	path, kept := logPath(t), 0
	for round := range rounds {
		fresh := round%5 == 0 // a new file, whose making is to be hit too
		if fresh {
			path, kept = logPath(t), 0
		}
		delay := time.Duration(random.Int64N(int64(30 * time.Millisecond)))
		acknowledged := killAfter(t, path, delay, fresh)
		checkFile(t, path)
		now := len(ids(t, path, job))
		assert.GreaterOrEqual(t, now, kept+acknowledged, "round %d: an acknowledged entry is lost", round)
		assert.LessOrEqual(t, now, kept+acknowledged+1, "round %d: an entry out of nowhere", round)
		kept = now
	}
}

// killAfter starts a process that logs without end, kills it, and counts the
// entries that it acknowledged. The delay runs from the start of the process,
// or from its first entry.
func killAfter(t *testing.T, path string, delay time.Duration, fromStart bool) (acknowledged int) {
	t.Helper()
	cmd := child(os.Args[0], "log", path, job, "1000000")
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	kill := func() { _ = cmd.Process.Kill() }
	if fromStart {
		time.AfterFunc(delay, kill)
	}
	last := 0
	for lines := bufio.NewScanner(out); lines.Scan(); acknowledged++ {
		seq, err := strconv.Atoi(lines.Text())
		require.NoError(t, err)
		switch {
		case acknowledged > 0:
			require.Equal(t, last+1, seq, "numbers without a gap")
		case !fromStart:
			time.AfterFunc(delay, kill)
		}
		last = seq
	}
	_ = cmd.Wait() // it was killed, and says so
	return acknowledged
}
