//go:build !windows

package store

import (
	"errors"
	"io/fs"
	"os"
	"syscall"
)

// errReadOnlyDisk is what the system says of a disk mounted read-only.
const errReadOnlyDisk = syscall.EROFS

// syncFolder puts the names in a folder on the disk. A folder that may not be
// read and a file system that knows no such call are passed over: there is no
// more that could be done.
func syncFolder(folder string) error {
	f, err := os.Open(folder)
	if errors.Is(err, fs.ErrPermission) {
		return nil
	}
	if err != nil {
		return err
	}
	err = f.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, syscall.ENOTSUP) {
		err = nil
	}
	return errors.Join(err, f.Close())
}

// release unlocks and closes a file. A mapping that was left behind would keep
// the lock beyond Close.
func release(f *os.File) error {
	err := syscall.Flock(int(f.Fd()), syscall.LOCK_UN)
	return errors.Join(err, f.Close())
}
