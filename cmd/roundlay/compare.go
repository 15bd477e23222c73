package main

import (
	"fmt"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/report"
)

// maxCompared is how many jobs are compared at once. More columns nobody reads, and each
// job may take as long as one does.
const maxCompared = 6

// only returns the one file that a command was given, "" if it was given none.
func only(files []string) string {
	if len(files) == 0 {
		return ""
	}
	return files[0]
}

// canCompare refuses jobs that can't be compared: too many, or standard input twice.
func canCompare(command string, files []string) error {
	if n := len(files); n > maxCompared {
		return fmt.Errorf("%s: read %d jobs; accepted: up to %d to compare", command, n, maxCompared)
	}
	first := slices.Index(files, "-")
	if first >= 0 && slices.Contains(files[first+1:], "-") {
		return fmt.Errorf("%s: read - twice; accepted: once, since standard input is read only once", command)
	}
	return nil
}

// opened reads all the jobs before anything is laid out.
func (s *session) opened(files []string) ([]*job.Job, error) {
	if err := canCompare(s.flags.Name(), files); err != nil {
		return nil, err
	}
	jobs := make([]*job.Job, len(files))
	for i, file := range files {
		var err error
		if jobs[i], _, err = s.readJob(file); err != nil {
			return nil, err
		}
	}
	return jobs, nil
}

// layOpened lays a job out that stands beside others: what is wrong with it is said with
// its name.
func (s *session) layOpened(j *job.Job, file, blank string) ([]*pattern.Plan, error) {
	if _, err := blanks(j, blank); err != nil {
		return nil, fmt.Errorf("%s: %w", s.shown(file), err)
	}
	return s.lay(j, file, blank)
}

// checkSeveral compares jobs by what check finds and by what they take.
func (s *session) checkSeveral(files []string, blank string, asJSON bool) error {
	jobs, err := s.opened(files)
	if err != nil {
		return err
	}
	all := make([]report.Compared, len(files))
	for i, file := range files {
		plans, err := s.layOpened(jobs[i], file, blank)
		if err != nil {
			return err
		}
		all[i] = report.Compared{File: printable(s.shown(file)), Plans: plans}
	}
	written := report.Compare
	if asJSON {
		written = report.CompareJSON
	}
	if err := written(s.stdout, all); err != nil {
		return err
	}
	if slices.ContainsFunc(all, func(c report.Compared) bool { return !c.Clear() }) {
		return errFindings
	}
	return nil
}
