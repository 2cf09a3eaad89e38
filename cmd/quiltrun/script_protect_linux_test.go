package main

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// setReadOnly makes a file read-only or writable again, for a superuser too,
// whom modes do not stop: by the file attribute that chattr +i sets.
func setReadOnly(path string, on bool) error {
	mode := os.FileMode(0o600)
	if on {
		mode = 0o444
	}
	if os.Geteuid() != 0 {
		return os.Chmod(path, mode)
	}
	if on {
		return errors.Join(os.Chmod(path, mode), setImmutable(path, on))
	}
	return errors.Join(setImmutable(path, on), os.Chmod(path, mode))
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
