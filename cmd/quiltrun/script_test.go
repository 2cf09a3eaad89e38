package main

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"quiltrun/tracker/store"
)

var update = flag.Bool("update", false, "write what the commands show into the scripts")

// TestMain makes this test binary the quiltrun that scripts run.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"quiltrun": main})
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("testdata", "script"),
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup:               setUp,
		Cmds:                commands,
		Condition:           condition,
	})
}

// A program built with the race detector waits a second before it ends, which
// adds up where it is called hundreds of times.
const raceName, raceValue = "GORACE", "atexit_sleep_ms=0"

// setUp gives every script a home of its own, whatever this machine's is, and
// looks at its store when the script is over.
func setUp(env *testscript.Env) error {
	data := filepath.Join(env.WorkDir, "data")
	log := filepath.Join(data, "quiltrun", "quiltrun.db")
	for name, value := range map[string]string{
		"HOME": env.WorkDir, "XDG_DATA_HOME": data, "STORE": log,
		"USER": "kelp", "TZ": "UTC", "LANG": "C.UTF-8",
		"COLUMNS": "", "NO_COLOR": "", "LC_ALL": "", "LC_CTYPE": "", "TERM": "", "QUILTRUN_TRACE": "",
		raceName: raceValue,
	} {
		env.Setenv(name, value)
	}
	env.Defer(func() { checkLog(env.T(), log) })
	return copyJobs(env.WorkDir)
}

// checkLog fails a script that leaves a log behind which is not in order. A
// script that breaks its log on purpose takes it away.
func checkLog(t testscript.T, log string) {
	faults, err := store.Check(log, store.Waiting{})
	if err != nil {
		t.Fatal(err)
	}
	if len(faults) > 0 {
		t.Fatal("the log is not in order:", faults)
	}
}

// copyJobs puts the examples and the scripts' own job files into the folder.
func copyJobs(folder string) error {
	return errors.Join(
		os.CopyFS(filepath.Join(folder, "examples"), os.DirFS(filepath.Join("..", "..", "examples"))),
		os.CopyFS(folder, os.DirFS(filepath.Join("testdata", "jobs"))),
	)
}
