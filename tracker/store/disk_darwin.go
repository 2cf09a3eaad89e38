package store

import "golang.org/x/sys/unix"

// networkDisk names the kind of network disk that a file or folder is on, or is "".
func networkDisk(path string) string {
	var disk unix.Statfs_t
	if unix.Statfs(path, &disk) != nil || disk.Flags&unix.MNT_LOCAL != 0 {
		return ""
	}
	return unix.ByteSliceToString(disk.Fstypename[:])
}
