package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"go.etcd.io/bbolt"
)

// create makes an empty log at path, unless another process does so first. It
// is built under a name of its own, so that nobody ever finds it half made, and
// then linked to path: unlike a rename, a link cannot replace what is there.
func create(path string) error {
	folder := filepath.Dir(path)
	if err := makeFolder(folder); err != nil {
		return err
	}
	temporary, err := build(folder)
	if err != nil {
		return folderError(folder, err)
	}
	defer os.Remove(temporary)
	return place(temporary, path, os.Link)
}

// build writes and syncs an empty log under a name that nobody else uses.
func build(folder string) (path string, err error) {
	f, err := os.CreateTemp(folder, ".quiltrun-*.new") // owner-only
	if err != nil {
		return "", err
	}
	path = f.Name()
	defer func() {
		if err != nil {
			_ = os.Remove(path)
		}
	}()
	if err := f.Close(); err != nil {
		return "", err
	}
	db, err := bbolt.Open(path, 0o600, options(usualLimit))
	if err != nil {
		return "", err
	}
	return path, errors.Join(db.Update(layOut), db.Close())
}

// place links the finished file to its path. That another process was first is
// as good.
func place(temporary, path string, link func(from, to string) error) error {
	err := link(temporary, path)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return nil
	}
	return &FolderError{Folder: filepath.Dir(path), Err: err,
		Fault: fmt.Sprintf("its disk makes no hard links, as memory cards and some network disks do not, "+
			"and without them a log could be overwritten: %v", cause(err))}
}

// makeFolder makes a folder and those above it, owner-only, each of them on the
// disk before the next.
func makeFolder(folder string) error {
	info, err := os.Stat(folder)
	if err == nil && info.IsDir() {
		return nil
	}
	if err == nil {
		return &FolderError{Folder: folder, Fault: "it is not a folder"}
	}
	parent := filepath.Dir(folder)
	if !errors.Is(err, fs.ErrNotExist) || parent == folder {
		return folderError(folder, err)
	}
	if err := makeFolder(parent); err != nil {
		return err
	}
	if err := os.Mkdir(folder, 0o700); err != nil && !errors.Is(err, fs.ErrExist) {
		return folderError(folder, err)
	}
	if err := syncFolder(parent); err != nil {
		return folderError(parent, err)
	}
	return nil
}

// syncHome puts the name of the file at path on the disk.
func syncHome(path string) error {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	folder := filepath.Dir(path)
	if err := syncFolder(folder); err != nil {
		return folderError(folder, err)
	}
	return nil
}

// folderError words what the system said about a folder.
func folderError(folder string, err error) error {
	fault := "it cannot be written: " + cause(err).Error()
	switch {
	case errors.Is(err, errReadOnlyDisk):
		fault = "its disk is read-only"
	case errors.Is(err, fs.ErrPermission):
		fault = "you may not write there"
	}
	return &FolderError{Folder: folder, Fault: fault, Err: err}
}

// cause strips the path and the call from a system error.
func cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}
