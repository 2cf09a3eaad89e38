package main

import (
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// TestTickFigures prints how long after a key the screen shows what came of it, the
// entry on disk meanwhile: medians of 60 keys on a pseudo-terminal, beside a sync
// of the same disk. It judges nothing: run it with -figures -v on a real disk.
func TestTickFigures(t *testing.T) {
	if !*figures {
		return
	}
	t.Setenv("TMPDIR", os.Getenv("QUILTRUN_BENCH_DIR"))
	s := sitDown(t, workshop(t), "--apart", "0s")
	t.Logf("fsync of 4 KiB in %s: %v", homeOf(s.env), syncTime(t, homeOf(s.env)))
	var shown, said []time.Duration
	for range 30 {
		shown = append(shown, s.delay(" "), s.delay("t"))
		said = append(said, s.delay("i"), s.delay("i"))
	}
	t.Logf("from a key that is written to the screen: %v", median(shown).Round(10*time.Microsecond))
	t.Logf("from a key that is not: %v", median(said).Round(10*time.Microsecond))
	s.press("d")
	require.Zero(t, s.over())
}

// delay is the time from a key to the first byte that it sends to the screen.
func (s *sitting) delay(key string) time.Duration {
	time.Sleep(150 * time.Millisecond) // whatever came of the key before is drawn
	before := len(s.output())
	start := time.Now()
	s.press(key)
	for len(s.output()) == before {
		time.Sleep(100 * time.Microsecond)
		if time.Since(start) > patience {
			s.t.Fatalf("nothing came of %q: %q", key, s.output())
		}
	}
	return time.Since(start)
}
