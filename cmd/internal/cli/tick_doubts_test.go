package cli

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The screen covers what is said of doubtful times at its opening, and has one line
// for them.
func TestTheScreenNamesTimesInDoubt(t *testing.T) {
	env := bookMat(t)
	evening := time.Date(2026, 11, 24, 17, 0, 0, 0, time.UTC)
	morning := evening.Add(15*time.Hour + 40*time.Minute)
	run := func(now time.Time, args ...string) {
		env.Now = func() time.Time { return now }
		code, _, words := call(env, args...)
		require.Equal(t, exitDone, code, words)
	}
	run(evening, "log", "cove", "sew-pairs", "1", "--catch-up", "--id", "pair")
	assert.Empty(t, doubtWords(matState(t, env), evening, env.User))

	run(evening, "start", "cove", "press-pairs", "--id", "begun")
	assert.Equal(t, "your clock has run since Tue 24 Nov 17:00, and ticks count on it: d, then quiltrun time cove-mat",
		doubtWords(matState(t, env), morning, env.User))
	assert.Equal(t, "1 time at work is in doubt and not counted: see quiltrun time cove-mat",
		doubtWords(matState(t, env), morning, "somebody else"))
	run(morning, "stop", "cove", "--id", "ended")
	assert.Equal(t, "1 time at work is in doubt and not counted: see quiltrun time cove-mat",
		doubtWords(matState(t, env), morning, env.User))
}
