package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/pattern/search"
)

// readJob reads the job file of the given name, and returns its text too; "-" is
// standard input and "" the built-in demo.
func (s *session) readJob(file string) (*job.Job, []byte, error) {
	name, text, err := s.readData(file)
	if err != nil {
		return nil, nil, err
	}
	j, err := job.ReadWith(name, text, beside(file))
	return j, text, err
}

// readData returns a job file's text, and its name for messages.
func (s *session) readData(name string) (string, []byte, error) {
	if name == "" {
		name, data := job.Demo()
		s.demo = true
		return name, data, nil
	}
	var in io.Reader = s.stdin
	if name != "-" {
		f, err := os.Open(name)
		if errors.Is(err, fs.ErrNotExist) {
			return name, nil, fmt.Errorf("%s: there is no such job file; roundlay new %s writes one to start from", name, name)
		}
		if err != nil {
			return name, nil, err
		}
		defer f.Close()
		if about, err := f.Stat(); err == nil && about.IsDir() {
			return name, nil, fmt.Errorf("%s: is a folder; give a job file", name)
		}
		in = f
	}
	// One byte past the most that Read takes is enough for it to refuse.
	data, err := io.ReadAll(io.LimitReader(in, job.MaxBytes+1))
	if err != nil {
		return name, nil, fmt.Errorf("%s: %w", name, err)
	}
	return name, data, nil
}

// blanks returns the job's blanks, or the one named.
func blanks(j *job.Job, name string) ([]*glass.Blank, error) {
	if name == "" {
		return j.Blanks, nil
	}
	var names []string
	for _, b := range j.Blanks {
		if b.Name == name {
			return []*glass.Blank{b}, nil
		}
		names = append(names, fmt.Sprintf("%q", b.Name))
	}
	return nil, fmt.Errorf("--blank: there is no blank %q in the job; it has %s", name, strings.Join(names, ", "))
}

// plans reads a job and lays it out on its blanks, or on the one named, with cures.
func (s *session) plans(file, blank string) ([]*pattern.Plan, error) {
	j, _, err := s.readJob(file)
	if err != nil {
		return nil, err
	}
	return s.cured(j, file, blank)
}

// cured is lay for commands that print cures, which take longest to find.
func (s *session) cured(j *job.Job, file, blank string) ([]*pattern.Plan, error) {
	plans, err := s.lay(j, file, blank)
	if err == nil {
		err = search.Cures(s.ctx, plans...)
	}
	return plans, err
}

// lay lays a job out on its blanks, or on the one named.
func (s *session) lay(j *job.Job, file, blank string) ([]*pattern.Plan, error) {
	chosen, err := blanks(j, blank)
	if err != nil {
		return nil, err
	}
	plans, err := search.Lay(s.ctx, j, chosen...)
	if err != nil {
		return nil, s.placed(file, err)
	}
	return plans, nil
}

// placed adds the job file's name to an error that lacks it.
func (s *session) placed(file string, err error) error {
	var wrong *job.Error
	if errors.As(err, &wrong) {
		return err
	}
	return fmt.Errorf("%s: %w", s.shown(file), err)
}

// shown is how messages name a job file.
func (s *session) shown(file string) string {
	switch file {
	case "":
		return "built-in demo"
	case "-":
		return "standard input"
	}
	return file
}
