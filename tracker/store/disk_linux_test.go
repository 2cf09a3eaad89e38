package store

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The numbers are those of statfs(2).
func TestNetworkDisksAreKnownByTheirNumbers(t *testing.T) {
	for number, name := range map[uint32]string{
		0x6969: "NFS", 0xff534d42: "SMB", 0xfe534d42: "SMB", 0x517b: "SMB", 0x65735546: "FUSE",
		0x01021997: "9P", 0x00c36400: "Ceph", 0x5346414f: "AFS",
		0xef53: "", 0x9123683e: "", 0x58465342: "", 0x01021994: "", // ext4, btrfs, xfs, tmpfs: one's own
	} {
		assert.Equal(t, name, networkDisks[number], "%#x", number)
	}
}
