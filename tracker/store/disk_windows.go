package store

import (
	"path/filepath"

	"golang.org/x/sys/windows"
)

// networkDisk says "network drive" of a file or folder on one, and "" otherwise.
func networkDisk(path string) string {
	root, err := windows.UTF16PtrFromString(filepath.VolumeName(path) + `\`)
	if err != nil || windows.GetDriveType(root) != windows.DRIVE_REMOTE {
		return ""
	}
	return "network drive"
}
