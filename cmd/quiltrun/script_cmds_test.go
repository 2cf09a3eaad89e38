package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"strconv"
	"sync"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
	"go.etcd.io/bbolt"
)

// commands are what scripts can say beside testscript's own words.
var commands = map[string]func(ts *testscript.TestScript, neg bool, args []string){
	"status":    status,
	"same":      same,
	"hold":      hold,
	"release":   release,
	"protect":   protect,
	"unprotect": unprotect,
}

// status runs a command that is to end with an exit code: status 2 quiltrun log.
// What it wrote is for stdout and stderr to look at.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status CODE COMMAND [ARG...]")
	}
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if want := args[0]; strconv.Itoa(got) != want {
		ts.Fatalf("exit code %d, want %s", got, want)
	}
}

// same is status for a command that must leave the store as it is: the same
// bytes and time, or still none.
func same(ts *testscript.TestScript, neg bool, args []string) {
	before, timeBefore := stored(ts)
	status(ts, neg, args)
	after, timeAfter := stored(ts)
	if !bytes.Equal(before, after) || !timeBefore.Equal(timeAfter) {
		ts.Fatalf("the store has changed")
	}
}

func stored(ts *testscript.TestScript) ([]byte, time.Time) {
	path := ts.Getenv("STORE")
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, time.Time{}
	}
	ts.Check(err)
	data, err := os.ReadFile(path)
	ts.Check(err)
	return data, info.ModTime()
}

// held is the stores that scripts keep locked, by path.
var held sync.Map

// hold locks the store as another process would, until release.
func hold(ts *testscript.TestScript, _ bool, _ []string) {
	path := ts.Getenv("STORE")
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: time.Second})
	ts.Check(err)
	held.Store(path, db)
	ts.Defer(func() { _ = db.Close() }) // closing twice is no error
}

func release(ts *testscript.TestScript, _ bool, _ []string) {
	db, _ := held.Load(ts.Getenv("STORE"))
	ts.Check(db.(*bbolt.DB).Close())
}

// protect makes the store read-only, until unprotect.
func protect(ts *testscript.TestScript, _ bool, _ []string) {
	path := ts.Getenv("STORE")
	ts.Check(setReadOnly(path, true))
	ts.Defer(func() { _ = setReadOnly(path, false) }) // so that the folder can go
}

func unprotect(ts *testscript.TestScript, _ bool, _ []string) {
	ts.Check(setReadOnly(ts.Getenv("STORE"), false))
}

// condition answers what a script asks of this machine. Where QUILTRUN_CI is 1
// a machine that lacks something fails instead of passing over the test.
func condition(name string) (bool, error) {
	var lack error
	switch name {
	case "read-only-files":
		lack = canProtect()
	default:
		return false, fmt.Errorf("nobody knows the condition %s", name)
	}
	if lack != nil && os.Getenv("QUILTRUN_CI") == "1" {
		return false, fmt.Errorf("%s: %w", name, lack)
	}
	return lack == nil, nil
}

// canProtect tries whether this user and disk know read-only files at all.
func canProtect() error {
	file, err := os.CreateTemp("", "quiltrun-read-only-*")
	if err != nil {
		return err
	}
	return errors.Join(file.Close(), setReadOnly(file.Name(), true), setReadOnly(file.Name(), false), os.Remove(file.Name()))
}
