package cli

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/cmd/internal/tick"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// seated is a screen on the first row of a job, with its log open.
func seated(t testing.TB, env Env, state tracker.State, operation string) (*tick.Screen, *openLog) {
	t.Helper()
	row, err := state.SitDown(operation, nil)
	require.NoError(t, err)
	plan, err := bookedPlan(state)
	require.NoError(t, err)
	log := &openLog{env: env, state: state, file: state.File, prior: state.Prior()}
	log.seen = log.stamp()
	return tick.NewScreen(state, tick.NewGuide(plan), row.Operation, tick.Settings{CatchUp: true}), log
}

// pressed types a key and writes what comes of it.
func pressed(t testing.TB, screen *tick.Screen, log *openLog, key, id string) tick.Answer {
	t.Helper()
	screen.Press(tick.Press{Key: key, Since: time.Duration(time.Now().UnixNano()), At: time.Now(), ID: id})
	r, ok := screen.Send()
	require.True(t, ok)
	answer := log.write(context.Background(), r)
	screen.Answered(answer)
	return answer
}

// matState is the mat, as it is in the log.
func matState(t testing.TB, env Env) (state tracker.State) {
	t.Helper()
	require.NoError(t, env.read(context.Background(), func(opened *store.Store) (err error) {
		state, err = bookedState(opened, "cove")
		return err
	}))
	return state
}

func TestAnOpenLogSeesWhatOthersWrite(t *testing.T) {
	env := bookMat(t)
	screen, log := seated(t, env, matState(t, env), "sew-pairs")
	_, changed := log.look(context.Background())
	assert.False(t, changed, "nobody wrote anything")

	code, _, words := call(env, "log", "cove", "sew-pairs", "1", "--catch-up", "--id", "other")
	require.Equal(t, exitDone, code, words)
	news, changed := log.look(context.Background())
	require.True(t, changed)
	assert.Nil(t, news.Guide, "the plan is what it was")
	screen.Seen(news)
	answer := pressed(t, screen, log, "space", "mine")
	assert.Empty(t, answer.Trouble)
	row, _ := answer.State.Row("sew-pairs", tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"})
	assert.Equal(t, 2, row.Done)
}

// TestAnOpenLogThatIsHeldKeepsTheRequest: written later with the same id it counts
// once, even where it had reached the disk before.
func TestAnOpenLogThatIsHeldKeepsTheRequest(t *testing.T) {
	env := bookMat(t)
	screen, log := seated(t, env, matState(t, env), "sew-pairs")
	path, err := env.storePath()
	require.NoError(t, err)
	holder, err := store.OpenForWriting(path, store.Waiting{})
	require.NoError(t, err)
	answer := pressed(t, screen, log, "space", "mine")
	assert.True(t, answer.Held)
	require.Len(t, screen.Unwritten(), 1)
	require.NoError(t, holder.Close())

	for _, repeated := range []bool{false, true} {
		answer = log.write(context.Background(), screen.Unwritten()[0])
		assert.Empty(t, answer.Trouble)
		assert.Equal(t, repeated, answer.Repeated)
	}
	assert.Len(t, answer.State.Entries, 1)
}

// BenchmarkScreenTick is BenchmarkTick with the screen: from the key to the answer
// that the screen has taken in, against the same bytes written as plainly as bbolt can.
func BenchmarkScreenTick(b *testing.B) {
	bench := newTickBench(b)
	screen, log := seated(b, bench.env, bench.state, "cut")
	n := 0
	tickOnce := func() error {
		n++
		answer := pressed(b, screen, log, "space", fmt.Sprintf("0190f3a2-%08d", n))
		var err error
		bench.last, err = json.Marshal(answer.Event)
		if answer.Trouble != "" {
			err = errors.New(answer.Trouble)
		}
		return err
	}
	var ours, raw []time.Duration
	for b.Loop() {
		ours = append(ours, timed(b, tickOnce))
		raw = append(raw, timed(b, bench.raw))
	}
	slices.Sort(ours)
	slices.Sort(raw)
	mine, theirs := ours[len(ours)/2], raw[len(raw)/2]
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(mine.Microseconds()), "tick-µs")
	b.ReportMetric(float64(theirs.Microseconds()), "raw-µs")
	b.ReportMetric(float64(mine)/float64(theirs), "tick/raw")
}
