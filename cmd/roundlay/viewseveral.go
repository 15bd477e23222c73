package main

import (
	"fmt"
	"path/filepath"

	"roundlay/cmd/desk/files"
	"roundlay/pattern/job"
	"roundlay/render/picture"
)

// sideBySide is where a picture of several jobs goes, and what of them it shows.
type sideBySide struct {
	out, blank string
	force      bool
}

// viewSeveral writes one picture of several jobs' glasses beside each other.
func (s *session) viewSeveral(names []string, o picture.Options, asked sideBySide) error {
	jobs, err := s.opened(names)
	if err != nil {
		return err
	}
	if err := s.fitBeside(jobs, names, asked.blank); err != nil {
		return err
	}
	folder, ending, err := outTarget(asked.out, svgEnding, pngEnding, pdfEnding)
	if err != nil {
		return err
	}
	doc := document{path: asked.out, as: "view"}
	if folder {
		doc.path = filepath.Join(asked.out, files.ViewsFile(jobs)+ending)
	}
	if err := mayWrite(asked.force, doc); err != nil {
		return err
	}
	glasses, err := s.glasses(jobs, names, asked.blank)
	if err != nil {
		return err
	}
	if doc.data, err = files.Pictures(s.ctx, glasses, o, ending); err != nil {
		return err
	}
	if err := s.write(asked.force, doc); err != nil {
		return err
	}
	for _, g := range glasses {
		s.unshown(g.Plan, o.Findings, g.File+": ")
	}
	return nil
}

// fitBeside refuses more glasses than stand in one picture.
func (s *session) fitBeside(jobs []*job.Job, names []string, blank string) error {
	count := 0
	for i, j := range jobs {
		chosen, err := blanks(j, blank)
		if err != nil {
			return fmt.Errorf("%s: %w", s.shown(names[i]), err)
		}
		count += len(chosen)
	}
	if count > maxCompared {
		return fmt.Errorf("view: read %d blanks in %d jobs; accepted: up to %d glasses in one picture; name one of each job with --blank", count, len(jobs), maxCompared)
	}
	return nil
}

// glasses lays jobs out, and returns their glasses in order.
func (s *session) glasses(jobs []*job.Job, names []string, blank string) ([]picture.Glass, error) {
	var all []picture.Glass
	for i, j := range jobs {
		plans, err := s.layOpened(j, names[i], blank)
		if err != nil {
			return nil, err
		}
		for _, p := range plans {
			all = append(all, picture.Glass{Plan: p, File: printable(s.shown(names[i]))})
		}
	}
	return all, nil
}
