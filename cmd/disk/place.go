package disk

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Place is where a path that someone typed leads: the file behind it once links
// are followed, so that a link stays a link and one file is known by all its names.
type Place struct {
	File   string      // in full, without a link in it
	Old    fs.FileInfo // nil where there is none yet
	Linked bool        // whether the path names a link to the file
}

// maxLinks is how many links may lead to one another, the same as on Linux.
const maxLinks = 40

// Locate finds the place of a file that may not exist yet. It refuses pipes and
// devices.
func Locate(path string) (Place, error) {
	var at Place
	for range maxLinks {
		// Not filepath.Dir, which would take ".." behind a link for its parent.
		folder, name := filepath.Split(path)
		if name == "" {
			return at, errors.New("is a folder, not a file to write")
		}
		folder, err := trueFolder(folder)
		if err != nil {
			return at, fmt.Errorf("can't be written: %w", Bare(err))
		}
		at.File = filepath.Join(folder, name)
		info, err := os.Lstat(at.File)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return at, nil
		case err != nil:
			return at, fmt.Errorf("can't be written: %w", Bare(err))
		case info.Mode().IsRegular() || info.IsDir():
			at.Old = info
			return at, nil
		case info.Mode()&fs.ModeSymlink == 0:
			return at, errors.New("is a pipe or a device, not a file to write")
		}
		target, err := os.Readlink(at.File)
		if err != nil {
			return at, fmt.Errorf("can't be written: %w", Bare(err))
		}
		if path = target; !filepath.IsAbs(target) {
			path = folder + string(filepath.Separator) + target
		}
		at.Linked = true
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

// Same reports whether two places are one file.
func (p Place) Same(q Place) bool {
	return p.File == q.File || p.Old != nil && q.Old != nil && os.SameFile(p.Old, q.Old)
}
