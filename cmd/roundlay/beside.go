package main

import (
	"errors"
	"path/filepath"

	"roundlay/cmd/disk"
	"roundlay/pattern/job"
)

// beside returns what reads the files beside a job file.
func beside(name string) job.Beside {
	switch name {
	case "":
		return nil // the demo has no folder
	case "-":
		return func(string) ([]byte, error) {
			return nil, errors.New("a job from standard input has no folder to look in: give the job as a file, or write into it what it would read")
		}
	}
	return inFolder(filepath.Dir(name))
}

// inFolder returns what reads the files of a folder. One byte past the most that a job takes
// is enough for the job to refuse a file.
func inFolder(folder string) job.Beside { return disk.Beside(folder, job.MaxBeside+1) }
