package serve

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"unicode/utf8"

	"roundlay/cmd/disk"
	"roundlay/pattern/job"
)

// jobFiles is the opened job file, and those that were made beside it since. No other job
// file is ever read or written; of the files that a job names beside itself see beside.go.
type jobFiles struct {
	disk   disk.Disk
	folder string
	demo   []byte
	bounds Bounds

	saving sync.Mutex // held while a file is put on disk

	mu     sync.Mutex
	opened string            // the name of the opened file, "" as long as there is none
	paths  map[string]string // of these files, by their names
}

// version is what a job file holds at one moment. The stamp tells it from all others; ""
// is that of a file that is not there.
type version struct {
	Name  string `json:"name"`
	Text  string `json:"text"`
	Stamp string `json:"stamp"`
	Gone  bool   `json:"gone,omitempty"`
}

func openFiles(c Config) (*jobFiles, error) {
	f := &jobFiles{disk: c.Disk, folder: c.Folder, demo: c.Demo, paths: map[string]string{}}
	if c.Job == "" {
		return f, nil
	}
	f.folder, f.opened = filepath.Dir(c.Job), filepath.Base(c.Job)
	f.paths[f.opened] = c.Job
	if _, err := readText(c.Job); err != nil {
		return nil, fmt.Errorf("%s: %w", c.Job, disk.Bare(err))
	}
	return f, nil
}

// close waits for a file that is being saved. None is saved after it.
func (f *jobFiles) close() { f.saving.Lock() }

// errNotOpen is the error of a name that is none of these files.
var errNotOpen = errors.New("no job file of that name is open")

// path returns the name and the path of a file, "" being the opened one.
func (f *jobFiles) path(name string) (string, string, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if name == "" {
		name = f.opened
	}
	path := f.paths[name]
	if path == "" {
		return "", "", errNotOpen
	}
	return name, path, nil
}

// read returns what a file holds.
func (f *jobFiles) read(name string) (version, error) {
	name, path, err := f.path(name)
	if err != nil {
		return version{}, err
	}
	data, err := readText(path)
	if errors.Is(err, fs.ErrNotExist) {
		return version{Name: name, Gone: true}, nil
	}
	if err != nil {
		return version{}, fmt.Errorf("%s: %w", name, disk.Bare(err))
	}
	return version{Name: name, Text: string(data), Stamp: stampOf(data)}, nil
}

// readText reads a file that a page can show and give back as it was.
func readText(path string) ([]byte, error) {
	switch about, err := os.Stat(path); { // first, for opening a pipe may wait for ever
	case err != nil:
		return nil, err
	case !about.Mode().IsRegular():
		return nil, errors.New("is not a file; give a job file")
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, job.MaxBytes+1))
	switch {
	case err != nil:
		return nil, err
	case len(data) > job.MaxBytes:
		return nil, fmt.Errorf("is larger than a job file may be, which is %d bytes", job.MaxBytes)
	case !utf8.Valid(data):
		return nil, errors.New("is not a text in UTF-8, as a job file is")
	}
	return data, nil
}

func stampOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// conflict is the error of saving over a file that is no longer what was edited.
type conflict struct{ onDisk version }

func (c *conflict) Error() string {
	if c.onDisk.Gone {
		return c.onDisk.Name + " is no longer there"
	}
	return c.onDisk.Name + " has been changed on disk"
}

// save puts a text in place of the version with the stamp, and returns the text's stamp.
// The stamp of no file is "".
func (f *jobFiles) save(ctx context.Context, name string, text []byte, stamp string) (string, error) {
	f.saving.Lock()
	defer f.saving.Unlock()
	name, path, err := f.path(name)
	if err != nil {
		return "", err
	}
	same := func() error {
		switch now, err := f.read(name); {
		case err != nil:
			return err
		case now.Stamp != stamp:
			return &conflict{now}
		}
		return nil
	}
	if err := same(); err != nil {
		return "", err
	}
	at, err := disk.Locate(path)
	switch {
	case err != nil:
		return "", fmt.Errorf("%s %w", name, err)
	case at.Old != nil && at.Old.Mode().Perm()&0o222 == 0:
		return "", fmt.Errorf("%s %w", name, errReadOnly)
	case stampOf(text) == stamp:
		return stamp, nil
	}
	// Once more when all is ready, so that what another program saves meanwhile is seen.
	err = disk.Write(ctx, f.disk, disk.Output{Path: name, Place: at, Data: text, Ready: same})
	return stampOf(text), err
}

var errReadOnly = errors.New("is read-only: it was left as it is")

// saveAs puts a text in a new file beside the job. Without a job the first of these is
// the opened file from then on.
func (f *jobFiles) saveAs(ctx context.Context, asked string, text []byte) (name, stamp string, err error) {
	f.saving.Lock()
	defer f.saving.Unlock()
	if name, err = plainName(asked); err != nil {
		return "", "", err
	}
	path := filepath.Join(f.folder, name)
	at, err := disk.Locate(path)
	switch {
	case err != nil:
		return "", "", fmt.Errorf("%s %w", name, err)
	case at.Old != nil || at.Linked:
		return "", "", &taken{name}
	}
	err = disk.Write(ctx, f.disk, disk.Output{Path: name, Place: at, Data: text, New: true})
	if errors.Is(err, fs.ErrExist) {
		return "", "", &taken{name}
	}
	if err != nil {
		return "", "", err
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	f.paths[name] = path
	if f.opened == "" {
		f.opened = name
	}
	return name, stampOf(text), nil
}

// taken is the error of a new file where there is one.
type taken struct{ name string }

func (t *taken) Error() string { return t.name + " is there already; give another name" }
