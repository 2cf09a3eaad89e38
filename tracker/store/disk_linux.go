package store

import "golang.org/x/sys/unix"

// networkDisks are the file system types of Linux behind which there is, or may
// be, another machine. FUSE stands for any program that plays file system; most
// that people meet are remote.
var networkDisks = map[uint32]string{
	unix.NFS_SUPER_MAGIC:  "NFS",
	unix.SMB_SUPER_MAGIC:  "SMB",
	unix.SMB2_SUPER_MAGIC: "SMB",
	unix.CIFS_SUPER_MAGIC: "SMB",
	unix.FUSE_SUPER_MAGIC: "FUSE",
	unix.V9FS_MAGIC:       "9P",
	unix.AFS_SUPER_MAGIC:  "AFS",
	unix.AFS_FS_MAGIC:     "AFS",
	unix.CODA_SUPER_MAGIC: "Coda",
	unix.CEPH_SUPER_MAGIC: "Ceph",
}

// networkDisk names the kind of network disk that a file or folder is on, or is "".
func networkDisk(path string) string {
	var disk unix.Statfs_t
	if unix.Statfs(path, &disk) != nil {
		return ""
	}
	// The field is signed on some machines, and the number has 32 bits.
	return networkDisks[uint32(disk.Type)]
}
