// Package disk puts files on the disk whole or not at all: each is written to a hidden
// file beside its place and then renamed. The commands and the page both write with it.
//
// Locate says where a path leads, past links, before there is anything to write. Write
// takes all files of one run together, as Outputs: either all are in place after it, or
// the folder is as it was and the error says why. Real is the disk of this machine; tests
// have others, which fail when told to.
package disk

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"syscall"
)

// Disk is what can fail half-way while files are written. Tests use one that does.
type Disk interface {
	Create(name string, perm fs.FileMode) (File, error) // a new file; fails if there is one
	Link(from, to string) error                         // fails if there is something by the new name
	Rename(from, to string) error
}

// File is a new file on a disk.
type File interface {
	io.WriteCloser
	Chmod(fs.FileMode) error
	Sync() error
}

// Real is the disk of this machine.
type Real struct{}

func (Real) Create(name string, perm fs.FileMode) (File, error) {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, perm)
	if err != nil {
		return nil, err // a nil *os.File in the interface would not be nil
	}
	return f, nil
}

func (Real) Link(from, to string) error   { return os.Link(from, to) }
func (Real) Rename(from, to string) error { return os.Rename(from, to) }

// hiddenName returns a name in a folder that no file has: it has 64 random bits, and is
// short enough for every file system.
func hiddenName(folder string) string {
	return filepath.Join(folder, fmt.Sprintf(".roundlay-%016x", rand.Uint64()))
}

// stage writes data to a new hidden file in a folder, and syncs it to the disk. If
// that fails, the file is removed.
func stage(d Disk, folder string, data []byte, perm fs.FileMode, exact bool) (name string, err error) {
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
func keep(d Disk, name string) (aside string, err error) {
	aside = hiddenName(filepath.Dir(name))
	if d.Link(name, aside) == nil {
		return aside, nil
	}
	return aside, d.Rename(name, aside)
}

// Bare returns what went wrong without the name of the file it went wrong with,
// which may be a hidden one, and what can be done where that helps.
func Bare(err error) error {
	bare := nameless(err)
	switch {
	case errors.Is(bare, fs.ErrPermission):
		return fmt.Errorf("%w (you have no right to it: take another place, or ask its owner)", bare)
	case errors.Is(bare, syscall.ENOSPC):
		return fmt.Errorf("%w (make room, or take another disk)", bare)
	}
	return bare
}

// nameless returns an error of the system without the name of its file.
func nameless(err error) error {
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
