package main

import (
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"go.etcd.io/bbolt"
)

var figures = flag.Bool("figures", false, "measure whole commands and print medians of 300 alternated runs")

// TestFigures prints what commands cost from start to end, each pair run in
// turn so that whatever else the machine does falls on both alike. It judges
// nothing: run it with -figures -v on a real disk.
func TestFigures(t *testing.T) {
	if !*figures {
		return
	}
	dir := t.TempDir()
	quiltrun, bare := build(t, dir, "."), build(t, dir, "./testdata/bare")
	big := filepath.Join(root, "testdata", "breakwater-400.yaml")
	store := filepath.Join(dir, "quiltrun.db")
	require.NoError(t, exec.Command(quiltrun, "book", big, "--store", store).Run())
	t.Logf("fsync of 4 KiB in %s: %v", dir, syncTime(t, dir))

	ratio(t, "version / bare cobra", command(t, quiltrun, "--version"), command(t, bare, "--version"))
	ratio(t, "plan of 400 blocks / version", command(t, quiltrun, "plan", big), command(t, quiltrun, "--version"))
	ratio(t, "plan of 400 blocks --json / version", command(t, quiltrun, "plan", big, "--json"), command(t, quiltrun, "--version"))
	logOne := command(t, quiltrun, "log", "breakwater-400", "cut", "1", "--lot", "fabric:Spindrift", "--store", store)
	require.NoError(t, exec.Command(quiltrun, "log", "breakwater-400", "prepare", "1", "--lot", "fabric:Spindrift", "--store", store).Run())
	raw := filepath.Join(dir, "raw.db")
	require.NoError(t, exec.Command("cp", store, raw).Run())
	ratio(t, "log / version and a raw open, update and close", logOne, func() {
		command(t, quiltrun, "--version")()
		rawUpdate(t, raw)
	})
}

// rawUpdate opens a bbolt file, puts as many bytes as an entry has, and closes.
func rawUpdate(t *testing.T, path string) {
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{FreelistType: bbolt.FreelistMapType})
	require.NoError(t, err)
	require.NoError(t, db.Update(func(tx *bbolt.Tx) error {
		b, err := tx.CreateBucketIfNotExists([]byte("raw"))
		if err != nil {
			return err
		}
		n, err := b.NextSequence()
		if err != nil {
			return err
		}
		return b.Put([]byte{byte(n >> 8), byte(n)}, make([]byte, 420))
	}))
	require.NoError(t, db.Close())
}

// ratio runs two things in turn 300 times and prints their medians.
func ratio(t *testing.T, name string, a, b func()) {
	t.Helper()
	const runs = 300
	var times [2][]time.Duration
	for range runs {
		for i, run := range []func(){a, b} {
			start := time.Now()
			run()
			times[i] = append(times[i], time.Since(start))
		}
	}
	ma, mb := median(times[0]), median(times[1])
	t.Logf("%-50s %8v / %8v = %.2f", name, ma.Round(10*time.Microsecond), mb.Round(10*time.Microsecond), float64(ma)/float64(mb))
}

func median(ds []time.Duration) time.Duration {
	slices.Sort(ds)
	return ds[len(ds)/2]
}

func command(t *testing.T, name string, args ...string) func() {
	return func() {
		out, err := exec.Command(name, args...).CombinedOutput()
		require.NoError(t, err, string(out))
	}
}

func build(t *testing.T, dir, pkg string) string {
	t.Helper()
	out := filepath.Join(dir, filepath.Base(pkg)+".bin")
	require.NoError(t, exec.Command("go", "build", "-o", out, pkg).Run())
	return out
}

func syncTime(t *testing.T, dir string) time.Duration {
	t.Helper()
	f, err := os.Create(filepath.Join(dir, "sync"))
	require.NoError(t, err)
	defer f.Close()
	var times []time.Duration
	for range 100 {
		_, err := f.WriteAt(make([]byte, 4096), 0)
		require.NoError(t, err)
		start := time.Now()
		require.NoError(t, f.Sync())
		times = append(times, time.Since(start))
	}
	return median(times).Round(time.Microsecond)
}
