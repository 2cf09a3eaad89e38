//go:build !linux

package main

import (
	"os"

	"github.com/rogpeppe/go-internal/testscript"
)

// protect makes the store read-only.
func protect(ts *testscript.TestScript, _ bool, _ []string) {
	if os.Geteuid() == 0 {
		lacking(ts, "this superuser can write read-only files")
	}
	ts.Check(os.Chmod(ts.Getenv("STORE"), 0o444))
}

func unprotect(ts *testscript.TestScript, _ bool, _ []string) {
	ts.Check(os.Chmod(ts.Getenv("STORE"), 0o600))
}
