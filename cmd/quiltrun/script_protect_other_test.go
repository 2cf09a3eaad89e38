//go:build !linux

package main

import (
	"errors"
	"os"
)

// setReadOnly makes a file read-only or writable again.
func setReadOnly(path string, on bool) error {
	if !on {
		return os.Chmod(path, 0o600)
	}
	if os.Geteuid() == 0 {
		return errors.New("a superuser can write read-only files")
	}
	return os.Chmod(path, 0o444)
}
