package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/google/renameio/v2/maybe"
)

// document is a finished file that is not on disk yet.
type document struct {
	path string
	data []byte
}

// outTarget reads --out of a command that writes files of the given endings:
// whether it names a folder, and the ending, the first of them in a folder.
func outTarget(out string, endings ...string) (folder bool, ending string, err error) {
	ending = strings.ToLower(filepath.Ext(out))
	switch {
	case out == "" || isFolder(out) || strings.HasSuffix(out, "/") || ending == "":
		return true, endings[0], nil
	case !slices.Contains(endings, ending):
		last := len(endings) - 1
		named := endings[last]
		if last > 0 {
			named = strings.Join(endings[:last], ", ") + " or " + named
		}
		return false, "", fmt.Errorf("--out: read %q; accepted: a file ending in %s, or a folder", out, named)
	}
	return false, ending, nil
}

// write puts documents on disk, all of them whole or none, and names them on
// standard output. A file that is there already is overwritten only by force.
func (s *session) write(force bool, docs ...document) error {
	named := map[string]bool{}
	for _, d := range docs {
		info, err := os.Stat(d.path)
		switch {
		case named[d.path]:
			return fmt.Errorf("two of the files would be called %s: give the blanks names that differ by more", d.path)
		case err == nil && info.IsDir():
			return fmt.Errorf("%s is a folder, not a file to write", d.path)
		case err == nil && !force:
			return fmt.Errorf("%s is there already; --force overwrites it", d.path)
		case err != nil && !errors.Is(err, fs.ErrNotExist):
			return err
		}
		named[d.path] = true
	}
	for i, d := range docs {
		err := os.MkdirAll(filepath.Dir(d.path), 0o777)
		if err == nil {
			err = maybe.WriteFile(d.path, d.data, 0o666)
		}
		if err != nil {
			for _, written := range docs[:i] {
				os.Remove(written.path)
			}
			return err
		}
	}
	for _, d := range docs {
		fmt.Fprintf(s.stdout, "wrote %s\n", d.path)
	}
	return nil
}
