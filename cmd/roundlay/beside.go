package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"roundlay/cmd/disk"
	"roundlay/pattern/job"
)

// beside returns what reads the files beside a job file: regular files of its folder, and
// none that a link leads out of it to.
func beside(name string) job.Beside {
	switch name {
	case "":
		return nil // the demo has no folder
	case "-":
		return func(string) ([]byte, error) {
			return nil, errors.New("a job from standard input has no folder to look in: give the job's file, or write the lines as paths")
		}
	}
	folder := filepath.Dir(name)
	return func(file string) ([]byte, error) {
		root, err := os.OpenRoot(folder)
		if err != nil {
			return nil, fmt.Errorf("the job's folder can't be opened: %w", disk.Bare(err))
		}
		defer root.Close()
		return readIn(root, file)
	}
}

// readIn reads a regular file, up to the most that a job takes. What it is is asked before
// it is opened: opening a pipe would wait for someone who writes to it.
func readIn(root *os.Root, file string) ([]byte, error) {
	about, err := root.Stat(file)
	if err != nil && isLink(root, file) {
		return nil, errors.New("that is a link that leads out of the job's folder, or nowhere")
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, errors.New("there is no such file")
	case err != nil:
		return nil, fmt.Errorf("it can't be read: %w", disk.Bare(err))
	case about.IsDir():
		return nil, errors.New("that is a folder")
	case !about.Mode().IsRegular():
		return nil, errors.New("that is no ordinary file")
	}
	f, err := root.Open(file)
	if err != nil {
		return nil, fmt.Errorf("it can't be read: %w", disk.Bare(err))
	}
	defer f.Close()
	// One byte past the most is enough for the job to refuse it.
	data, err := io.ReadAll(io.LimitReader(f, job.MaxBeside+1))
	if err != nil {
		return nil, fmt.Errorf("it can't be read: %w", disk.Bare(err))
	}
	return data, nil
}

func isLink(root *os.Root, file string) bool {
	about, err := root.Lstat(file)
	return err == nil && about.Mode()&fs.ModeSymlink != 0
}
