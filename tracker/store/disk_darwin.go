package store

import "golang.org/x/sys/unix"

// networkDisk names the kind of network disk that a folder is on, or is "".
func networkDisk(folder string) string {
	var disk unix.Statfs_t
	if unix.Statfs(folder, &disk) != nil || disk.Flags&unix.MNT_LOCAL != 0 {
		return ""
	}
	return unix.ByteSliceToString(disk.Fstypename[:])
}
