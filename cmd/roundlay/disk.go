package main

import (
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
)

// disk is what can fail half-way while files are written. Tests use one that does.
type disk interface {
	Create(name string, perm fs.FileMode) (file, error) // a new file; fails if there is one
	Link(from, to string) error
	Rename(from, to string) error
}

// file is a new file on a disk.
type file interface {
	io.WriteCloser
	Chmod(fs.FileMode) error
	Sync() error
}

// realDisk is the disk of this machine.
type realDisk struct{}

func (realDisk) Create(name string, perm fs.FileMode) (file, error) {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, perm)
	if err != nil {
		return nil, err // a nil *os.File in the interface would not be nil
	}
	return f, nil
}

func (realDisk) Link(from, to string) error   { return os.Link(from, to) }
func (realDisk) Rename(from, to string) error { return os.Rename(from, to) }

// hiddenName returns a name in a folder that no file has: it has 64 random bits, and is
// short enough for every file system.
func hiddenName(folder string) string {
	return filepath.Join(folder, fmt.Sprintf(".roundlay-%016x", rand.Uint64()))
}

// stage writes data to a new hidden file in a folder, and syncs it to the disk. If
// that fails, the file is removed.
func stage(d disk, folder string, data []byte, perm fs.FileMode, exact bool) (name string, err error) {
	name = hiddenName(folder)
	f, err := d.Create(name, perm)
	if err != nil {
		return "", err
	}
	_, err = f.Write(data)
	if err == nil && exact {
		err = f.Chmod(perm) // whatever the umask says
	}
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		os.Remove(name)
		return "", err
	}
	return name, nil
}

// keep gives a file a second, hidden name, by which it can be brought back. Where
// the file system has no second names, the file is moved there.
func keep(d disk, name string) (aside string, err error) {
	aside = hiddenName(filepath.Dir(name))
	if d.Link(name, aside) == nil {
		return aside, nil
	}
	return aside, d.Rename(name, aside)
}
