package disk

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// Beside returns what reads the files of a folder by their plain names: ordinary files, and
// none that a link leads out of the folder to. Of each at most so many bytes are read. Errors
// say in words what is wrong, without the file's name.
func Beside(folder string, most int64) func(name string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		root, err := os.OpenRoot(folder)
		if err != nil {
			return nil, fmt.Errorf("the job's folder can't be opened: %w", Bare(err))
		}
		defer root.Close()
		return readIn(root, name, most)
	}
}

// readIn reads an ordinary file, up to so many bytes. What it is is asked before it is
// opened: opening a pipe would wait for someone who writes to it.
func readIn(root *os.Root, name string, most int64) ([]byte, error) {
	about, err := root.Stat(name)
	if err != nil && isLink(root, name) {
		return nil, errors.New("that is a link that leads out of the job's folder, or nowhere")
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, errors.New("there is no such file")
	case err != nil:
		return nil, fmt.Errorf("it can't be read: %w", Bare(err))
	case about.IsDir():
		return nil, errors.New("that is a folder")
	case !about.Mode().IsRegular():
		return nil, errors.New("that is no ordinary file")
	}
	f, err := root.Open(name)
	if err != nil {
		return nil, fmt.Errorf("it can't be read: %w", Bare(err))
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, most))
	if err != nil {
		return nil, fmt.Errorf("it can't be read: %w", Bare(err))
	}
	return data, nil
}

func isLink(root *os.Root, name string) bool {
	about, err := root.Lstat(name)
	return err == nil && about.Mode()&fs.ModeSymlink != 0
}
