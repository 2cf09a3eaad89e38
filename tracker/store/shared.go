package store

import (
	"os"
	"path/filepath"
	"strings"
)

// Shared says whether path lies where several machines may write: on a network
// disk, whose locks cannot be trusted, or in a folder that a service copies
// between machines, which may copy half a change or put an old file back. place
// is where, in a few words for the person: "on a network disk (NFS)". The file
// itself need not exist.
//
// It knows the network disks of Linux, macOS and Windows, and the usual names
// of the folders of well-known services; what it does not know it does not
// report.
func Shared(path string) (place string, ok bool) {
	folder := nearestFolder(path)
	if disk := networkDisk(folder); disk != "" {
		return "on a network disk (" + disk + ")", true
	}
	for at := folder; ; at = filepath.Dir(at) {
		if service := syncService(at); service != "" {
			return "in a folder that " + service + " copies between machines", true
		}
		if at == filepath.Dir(at) {
			return "", false
		}
	}
}

// onNetwork says whether the file at path is, or would be, on a network disk.
func onNetwork(path string) bool {
	if _, err := os.Stat(path); err != nil {
		path = nearestFolder(path)
	}
	return networkDisk(path) != ""
}

// nearestFolder is the real place of the folder that path would lie in, or of
// the nearest one above it that exists.
func nearestFolder(path string) string {
	if whole, err := filepath.Abs(path); err == nil {
		path = whole
	}
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	for at := filepath.Dir(path); ; at = filepath.Dir(at) {
		if real, err := filepath.EvalSymlinks(at); err == nil {
			return real
		}
		if at == filepath.Dir(at) {
			return at
		}
	}
}

// syncFolders are names of folders, in lower case, and whose they are. A name
// ending in * stands for all that begin so: "onedrive - pilot lane".
var syncFolders = []struct{ name, service string }{
	{"cloudstorage", "a cloud service"}, // macOS keeps all of them under it
	{"dropbox*", "Dropbox"},
	{"google drive*", "Google Drive"},
	{"googledrive*", "Google Drive"},
	{"icloud drive", "iCloud"},
	{"iclouddrive", "iCloud"},
	{"mega", "MEGA"},
	{"megasync*", "MEGA"},
	{"mobile documents", "iCloud"},
	{"my drive", "Google Drive"},
	{"nextcloud*", "Nextcloud"},
	{"onedrive*", "OneDrive"},
	{"owncloud*", "ownCloud"},
	{"pclouddrive", "pCloud"},
	{"seafile", "Seafile"},
	{"syncthing", "Syncthing"},
	{"yandex.disk", "Yandex Disk"},
}

// syncMarks are files by which a service marks a folder of any name.
var syncMarks = []struct{ name, service string }{
	{".stfolder", "Syncthing"},
	{".dropbox.cache", "Dropbox"},
}

// syncService is the service that copies a folder, or "".
func syncService(folder string) string {
	name := strings.ToLower(filepath.Base(folder))
	for _, known := range syncFolders {
		stem, open := strings.CutSuffix(known.name, "*")
		if name == stem || open && strings.HasPrefix(name, stem) {
			return known.service
		}
	}
	for _, mark := range syncMarks {
		if _, err := os.Lstat(filepath.Join(folder, mark.name)); err == nil {
			return mark.service
		}
	}
	return ""
}
