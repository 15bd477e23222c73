package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// document is a finished file that is not on disk yet.
type document struct {
	path string
	as   string // what asked for it, for messages: a flag, or a blank
	data []byte
}

// output is a document on its way to disk.
type output struct {
	document
	place
	temp  string // the hidden file that holds it until all of them are written
	aside string // a second name of the older file, until all are in their places
	done  bool
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
	b := batch{disk: s.disk, outs: outs}
	if err = b.stage(s.ctx); err == nil {
		err = b.settle()
	}
	if err != nil {
		return b.undo(err)
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
func outputsOf(force bool, docs []document) ([]*output, error) {
	var outs []*output
	for _, d := range docs {
		at, err := locate(d.path)
		if err == nil && at.old != nil && at.old.IsDir() {
			err = errors.New("is a folder, not a file to write")
		}
		if err == nil && !force {
			err = at.taken()
		}
		if err != nil {
			return nil, fmt.Errorf("%s %w", d.path, err)
		}
		for _, o := range outs {
			if o.place.same(at) {
				return nil, fmt.Errorf("%s and %s would both be written to %s: give one of them another name", o.as, d.as, o.path)
			}
		}
		outs = append(outs, &output{document: d, place: at})
	}
	return outs, nil
}

// batch is files that are written together. If one fails all are undone: new files are
// removed, and what was there before comes back.
type batch struct {
	disk    disk
	outs    []*output
	folders []string // that were made for it, the outermost first
}

// stage writes every document to a hidden file beside its place. Nothing that
// was there before is touched.
func (b *batch) stage(ctx context.Context) error {
	for _, o := range b.outs {
		if ctx.Err() != nil {
			return errStopped
		}
		folder := filepath.Dir(o.file)
		if err := b.makeFolder(o, folder); err != nil {
			return err
		}
		perm := fs.FileMode(0o666)
		if o.old != nil {
			perm = o.old.Mode().Perm()
		}
		temp, err := stage(b.disk, folder, o.data, perm, o.old != nil)
		if err != nil {
			return fmt.Errorf("%s can't be written: %w", o.path, bare(err))
		}
		o.temp = temp
	}
	return nil
}

// makeFolder makes a missing folder and those above it. It refuses to at the end of a
// link, since nobody typed that path.
func (b *batch) makeFolder(o *output, folder string) error {
	var missing []string
	for at := folder; ; at = filepath.Dir(at) {
		if _, err := os.Stat(at); !errors.Is(err, fs.ErrNotExist) || at == filepath.Dir(at) {
			break
		}
		missing = append(missing, at)
	}
	if len(missing) > 0 && o.linked {
		return fmt.Errorf("%s is a link into the folder %s, which is not there", o.path, folder)
	}
	for i := len(missing) - 1; i >= 0; i-- {
		if err := os.Mkdir(missing[i], 0o777); err != nil {
			return fmt.Errorf("%s can't be written: its folder can't be made: %w", o.path, bare(err))
		}
		b.folders = append(b.folders, missing[i])
	}
	return nil
}

// settle moves every hidden file to its place. The older files, except the last, are
// kept under second names until all are there.
func (b *batch) settle() error {
	for i, o := range b.outs {
		if o.old != nil && i < len(b.outs)-1 {
			aside, err := keep(b.disk, o.file)
			if err != nil {
				return fmt.Errorf("%s can't be replaced: %w", o.path, bare(err))
			}
			o.aside = aside
		}
		if err := b.disk.Rename(o.temp, o.file); err != nil {
			return fmt.Errorf("%s can't be written: %w", o.path, bare(err))
		}
		o.temp, o.done = "", true
	}
	for _, o := range b.outs {
		if o.aside != "" {
			os.Remove(o.aside)
		}
	}
	return nil
}

// undo takes back what has been done. It returns why, with the names under which older
// files that could not be brought back are kept.
func (b *batch) undo(why error) error {
	for _, o := range slices.Backward(b.outs) {
		if o.aside == "" && o.done && o.old == nil {
			os.Remove(o.file)
		}
		if o.temp != "" {
			os.Remove(o.temp)
		}
		if o.aside == "" {
			continue
		}
		if err := b.disk.Rename(o.aside, o.file); err != nil {
			why = fmt.Errorf("%w; what %s was is kept as %s", why, o.path, o.aside)
			continue
		}
		os.Remove(o.aside) // still there where both were names of one file
	}
	for _, folder := range slices.Backward(b.folders) {
		os.Remove(folder) // fails where someone else has put something in it
	}
	return why
}

// bare returns what went wrong without the name of the file it went wrong with,
// which may be a hidden one.
func bare(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}
