package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// place is where a path that someone typed leads: the file behind it once links
// are followed, so that a link stays a link and one file is known by all its names.
type place struct {
	file   string // in full, without a link in it
	old    fs.FileInfo
	linked bool // whether the path names a link to the file
}

// maxLinks is how many links may lead to one another, the same as on Linux.
const maxLinks = 40

// locate finds the place of a file that may not exist yet. It refuses pipes and
// devices.
func locate(path string) (place, error) {
	var at place
	for range maxLinks {
		// Not filepath.Dir, which would take ".." behind a link for its parent.
		folder, name := filepath.Split(path)
		if name == "" {
			return at, errors.New("is a folder, not a file to write")
		}
		folder, err := trueFolder(folder)
		if err != nil {
			return at, fmt.Errorf("can't be written: %w", bare(err))
		}
		at.file = filepath.Join(folder, name)
		info, err := os.Lstat(at.file)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return at, nil
		case err != nil:
			return at, fmt.Errorf("can't be written: %w", bare(err))
		case info.Mode().IsRegular() || info.IsDir():
			at.old = info
			return at, nil
		case info.Mode()&fs.ModeSymlink == 0:
			return at, errors.New("is a pipe or a device, not a file to write")
		}
		target, err := os.Readlink(at.file)
		if err != nil {
			return at, fmt.Errorf("can't be written: %w", bare(err))
		}
		if path = target; !filepath.IsAbs(target) {
			path = folder + string(filepath.Separator) + target
		}
		at.linked = true
	}
	return at, errors.New("is a link that leads to itself")
}

// trueFolder returns a folder's full path, with links followed as far as it exists.
func trueFolder(folder string) (string, error) {
	if folder == "" {
		folder = "."
	}
	found, err := filepath.EvalSymlinks(folder)
	switch {
	case err == nil:
		return filepath.Abs(found)
	case !errors.Is(err, fs.ErrNotExist):
		return "", err
	}
	end := len(folder)
	for end > 0 && os.IsPathSeparator(folder[end-1]) {
		end--
	}
	above, name := filepath.Split(folder[:end])
	if name == "" {
		return "", err
	}
	above, err = trueFolder(above)
	return filepath.Join(above, name), err
}

// taken refuses a place that has a file, or that only a link leads to.
func (p place) taken() error {
	switch {
	case p.linked && p.old == nil:
		return fmt.Errorf("is a link to %s, which is not there; --force writes that file", p.file)
	case p.linked:
		return fmt.Errorf("is a link to %s, which is there already; --force overwrites that file", p.file)
	case p.old != nil:
		return errors.New("is there already; --force overwrites it")
	}
	return nil
}

// same reports whether two places are one file.
func (p place) same(q place) bool {
	return p.file == q.file || p.old != nil && q.old != nil && os.SameFile(p.old, q.old)
}
