package main

import (
	"encoding/json"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/tracker/store"
)

// home is a place for quiltrun to keep its things, with the scripts' job files.
func home(t *testing.T) []string {
	folder := t.TempDir()
	require.NoError(t, copyJobs(folder))
	return append(os.Environ(), "HOME="+folder, "XDG_DATA_HOME="+folder, "NO_COLOR=", "COLUMNS=", "QUILTRUN_TRACE=",
		raceName+"="+raceValue)
}

// quiltrun is a call in such a home.
func quiltrun(env []string, args ...string) *exec.Cmd {
	cmd := exec.Command("quiltrun", args...)
	cmd.Env = env
	cmd.Dir = homeOf(env)
	return cmd
}

func homeOf(env []string) string {
	for _, pair := range slices.Backward(env) {
		if folder, ok := strings.CutPrefix(pair, "HOME="); ok {
			return folder
		}
	}
	return ""
}

// done is what left says is done of an operation on the cloth Foam.
func done(t *testing.T, env []string, key string) int {
	out, err := quiltrun(env, "left", "cove-mat", "--json").Output()
	require.NoError(t, err)
	var job struct {
		Lots []struct {
			Lot        string
			Operations []struct {
				Key  string
				Done int
			}
		}
	}
	require.NoError(t, json.Unmarshal(out, &job))
	for _, lot := range job.Lots {
		for _, operation := range lot.Operations {
			if operation.Key == key && lot.Lot == "Foam" {
				return operation.Done
			}
		}
	}
	t.Fatalf("left does not speak of %s", key)
	return 0
}

// A command that is killed at any moment has logged its entry or it has not;
// one whose answer was read has.
func TestKilledLogLosesNothingAcknowledged(t *testing.T) {
	const rounds = 50
	env := home(t)
	require.NoError(t, quiltrun(env, "book", "cove.yaml", "--today", "2026-11-02").Run())
	require.NoError(t, quiltrun(env, "log", "cove", "prepare", "Foam=1").Run())
	seed := uint64(time.Now().UnixNano())
	t.Log("seed", seed)
	random := rand.New(rand.NewPCG(seed, 0))
	before := 0
	for round := range rounds {
		id := "round-" + strconv.Itoa(round)
		cmd := quiltrun(env, "log", "cove", "cut", "1", "--lot", "fabric:Foam", "--id", id, "--json")
		acknowledged := killed(t, cmd, time.Duration(random.IntN(12_000))*time.Microsecond)
		now := done(t, env, "cut")
		if acknowledged {
			require.Equal(t, before+1, now, "round %d was acknowledged", round)
		}
		require.Contains(t, []int{before, before + 1}, now, "round %d", round)
		if before = now; before == 15 {
			require.NoError(t, quiltrun(env, "undo", "cove").Run())
			before = done(t, env, "cut")
		}
	}
	faults, err := store.Check(filepath.Join(homeOf(env), "quiltrun", "quiltrun.db"), store.Waiting{})
	require.NoError(t, err)
	assert.Empty(t, faults)
}

// killed runs a command, kills it after a while, and says whether it had
// answered by then.
func killed(t *testing.T, cmd *exec.Cmd, after time.Duration) bool {
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	kill := time.AfterFunc(after, func() { _ = cmd.Process.Kill() }) // it may be over already
	defer kill.Stop()
	answer := make([]byte, 1)
	n, _ := out.Read(answer)
	_ = cmd.Wait() // killed or not, both are meant
	return n == 1
}
