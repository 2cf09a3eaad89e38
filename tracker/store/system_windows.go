package store

import (
	"os"

	"golang.org/x/sys/windows"
)

// errReadOnlyDisk is what the system says of a write-protected disk.
const errReadOnlyDisk = windows.ERROR_WRITE_PROTECT

// syncFolder has nothing to do: a folder cannot be synced here, and NTFS keeps
// its names in a journal.
func syncFolder(string) error { return nil }

// release closes a file, and with its last handle goes its lock.
func release(f *os.File) error { return f.Close() }
