package main

import (
	"os"

	"github.com/rogpeppe/go-internal/testscript"
	"golang.org/x/sys/unix"
)

// protect makes the store read-only, for a superuser too, whom modes do not
// stop: by the file attribute that chattr +i sets.
func protect(ts *testscript.TestScript, _ bool, _ []string) {
	path := ts.Getenv("STORE")
	ts.Check(os.Chmod(path, 0o444))
	if os.Geteuid() != 0 {
		return
	}
	if err := setImmutable(path, true); err != nil {
		lacking(ts, "this superuser can write read-only files: "+err.Error())
	}
	ts.Defer(func() { _ = setImmutable(path, false) }) // so that the folder can go
}

func unprotect(ts *testscript.TestScript, _ bool, _ []string) {
	path := ts.Getenv("STORE")
	if os.Geteuid() == 0 {
		ts.Check(setImmutable(path, false))
	}
	ts.Check(os.Chmod(path, 0o600))
}

func setImmutable(path string, on bool) error {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer file.Close()
	flags, err := unix.IoctlGetInt(int(file.Fd()), unix.FS_IOC_GETFLAGS)
	if err != nil {
		return err
	}
	const immutable = 0x10 // FS_IMMUTABLE_FL of linux/fs.h
	if flags &^= immutable; on {
		flags |= immutable
	}
	return unix.IoctlSetPointerInt(int(file.Fd()), unix.FS_IOC_SETFLAGS, flags)
}
