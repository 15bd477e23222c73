package main

import (
	"errors"
	"fmt"
	"io/fs"

	"roundlay/cmd/disk"
)

// document is a finished file that is not on disk yet.
type document struct {
	path string
	as   string // what asked for it, for messages: a flag, or a blank
	data []byte
}

// write puts documents on disk, all of them or none, and names them on standard
// output. A file that is there already is overwritten only by force.
func (s *session) write(force bool, docs ...document) error {
	if err := s.put(force, docs...); err != nil {
		return err
	}
	for _, d := range docs {
		fmt.Fprintf(s.stdout, "wrote %s\n", printable(d.path))
	}
	return nil
}

// put is write without printing anything.
func (s *session) put(force bool, docs ...document) error {
	s.writing.Lock()
	defer s.writing.Unlock()
	outs, err := outputsOf(force, docs)
	if err != nil {
		return err
	}
	if err := disk.Write(s.ctx, s.disk, outs...); err != nil {
		if !force && errors.Is(err, fs.ErrExist) { // it has come there since it was looked for
			return fmt.Errorf("%w; --force overwrites it", err)
		}
		return err
	}
	for _, d := range docs {
		s.wrote = append(s.wrote, d.path)
	}
	return nil
}

// mayWrite refuses what put would refuse, before any work is done for it.
func mayWrite(force bool, docs ...document) error {
	_, err := outputsOf(force, docs)
	return err
}

// outputsOf finds the files that documents go to, and refuses those that may not
// be written.
func outputsOf(force bool, docs []document) ([]disk.Output, error) {
	var outs []disk.Output
	for i, d := range docs {
		at, err := disk.Locate(d.path)
		if err == nil && at.Old != nil && at.Old.IsDir() {
			err = errors.New("is a folder, not a file to write")
		}
		if err == nil && !force {
			err = taken(at)
		}
		if err != nil {
			return nil, fmt.Errorf("%s %w", d.path, err)
		}
		for k, o := range outs {
			if o.Same(at) {
				return nil, fmt.Errorf("%s and %s would both be written to %s: give one of them another name", docs[k].as, docs[i].as, o.Path)
			}
		}
		outs = append(outs, disk.Output{Path: d.path, Place: at, Data: d.data, New: !force})
	}
	return outs, nil
}

// taken refuses a place that has a file, or that only a link leads to.
func taken(p disk.Place) error {
	switch {
	case p.Linked && p.Old == nil:
		return fmt.Errorf("is a link to %s, which is not there; --force writes that file", p.File)
	case p.Linked:
		return fmt.Errorf("is a link to %s, which is there already; --force overwrites that file", p.File)
	case p.Old != nil:
		return errors.New("is there already; --force overwrites it")
	}
	return nil
}
