package disk

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// Output is a file that is to be written.
type Output struct {
	Path string // as a person knows it, for messages
	Place
	Data []byte
	New  bool // whether to fail with fs.ErrExist rather than overwrite what has come there meanwhile

	// Ready, if there is one, is asked when the file waits beside its place and nothing
	// has been touched yet. Nothing is written if it returns an error.
	Ready func() error
}

// Write puts files on a disk, all of them or none, and overwrites what is in their
// places. It stops with the context's error as long as nothing has been moved.
func Write(ctx context.Context, d Disk, outs ...Output) error {
	b := batch{disk: d}
	for _, o := range outs {
		b.outs = append(b.outs, &output{Output: o})
	}
	err := b.stage(ctx)
	if err == nil {
		err = b.settle()
	}
	if err != nil {
		return b.undo(err)
	}
	return nil
}

// output is a file on its way to its place.
type output struct {
	Output
	temp  string // the hidden file that holds it until all of them are written
	aside string // a second name of the older file, until all are in their places
	done  bool
}

// batch is files that are written together. If one fails all are undone: new files are
// removed, and what was there before comes back.
type batch struct {
	disk    Disk
	outs    []*output
	folders []string // that were made for it, the outermost first
}

// stage writes every file to a hidden one beside its place. Nothing that was there
// before is touched.
func (b *batch) stage(ctx context.Context) error {
	for _, o := range b.outs {
		if err := ctx.Err(); err != nil {
			return err
		}
		folder := filepath.Dir(o.File)
		if err := b.makeFolder(o, folder); err != nil {
			return err
		}
		perm := fs.FileMode(0o666)
		if o.Old != nil {
			perm = o.Old.Mode().Perm()
		}
		temp, err := stage(b.disk, folder, o.Data, perm, o.Old != nil)
		if err != nil {
			return fmt.Errorf("%s can't be written: %w", o.Path, Bare(err))
		}
		o.temp = temp
	}
	for _, o := range b.outs {
		if o.Ready == nil {
			continue
		}
		if err := o.Ready(); err != nil {
			return err
		}
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
	if len(missing) > 0 && o.Linked {
		return fmt.Errorf("%s is a link into the folder %s, which is not there", o.Path, folder)
	}
	for i := len(missing) - 1; i >= 0; i-- {
		err := os.Mkdir(missing[i], 0o777)
		if errors.Is(err, fs.ErrExist) { // another run has made it since: it isn't ours to remove
			continue
		}
		if err != nil {
			return fmt.Errorf("%s can't be written: its folder can't be made: %w", o.Path, Bare(err))
		}
		b.folders = append(b.folders, missing[i])
	}
	return nil
}

// settle moves every hidden file to its place. The older files, except the last, are
// kept under second names until all are there.
func (b *batch) settle() error {
	for i, o := range b.outs {
		if (o.Old != nil || o.appeared()) && i < len(b.outs)-1 {
			aside, err := keep(b.disk, o.File)
			if err != nil {
				return fmt.Errorf("%s can't be replaced: %w", o.Path, Bare(err))
			}
			o.aside = aside
		}
		if err := b.move(o); err != nil {
			return fmt.Errorf("%s can't be written: %w", o.Path, Bare(err))
		}
		o.done = true
	}
	for _, o := range b.outs {
		if o.aside != "" {
			os.Remove(o.aside)
		}
	}
	return nil
}

// appeared reports whether a file that would be overwritten has come to a place since it
// was looked at, when there was none.
func (o *output) appeared() bool {
	_, err := os.Lstat(o.File)
	return o.Old == nil && !o.New && err == nil
}

// move gives a hidden file its place. A rename overwrites what is there, a second name
// doesn't, but not every file system has those.
func (b *batch) move(o *output) error {
	if o.New {
		err := b.disk.Link(o.temp, o.File)
		if err == nil || errors.Is(err, fs.ErrExist) {
			os.Remove(o.temp)
			o.temp = ""
			return err
		}
		if _, err := os.Lstat(o.File); err == nil {
			return fs.ErrExist
		}
	}
	err := b.disk.Rename(o.temp, o.File)
	if err == nil {
		o.temp = ""
	}
	return err
}

// undo takes back what has been done. It returns why, with the names under which older
// files that could not be brought back are kept, if they are.
func (b *batch) undo(why error) error {
	for _, o := range slices.Backward(b.outs) {
		if o.aside == "" && o.done && o.Old == nil {
			os.Remove(o.File)
		}
		if o.temp != "" {
			os.Remove(o.temp)
		}
		if o.aside == "" {
			continue
		}
		if err := b.disk.Rename(o.aside, o.File); err != nil {
			why = fmt.Errorf("%w; what %s was is %s", why, o.Path, kept(o.aside))
			continue
		}
		os.Remove(o.aside) // still there where both were names of one file
	}
	for _, folder := range slices.Backward(b.folders) {
		os.Remove(folder) // fails where someone else has put something in it
	}
	return why
}

// kept says where an older file is that could not be brought back: it may have gone with its
// folder.
func kept(aside string) string {
	if _, err := os.Lstat(aside); errors.Is(err, fs.ErrNotExist) {
		return "no longer there"
	}
	return "kept as " + aside
}
