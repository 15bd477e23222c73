package serve

import (
	"context"
	"io/fs"
	"os"
	"time"
)

// settling is how long a file must hold the same before a change of it is told: many
// programs empty a file before they write it, or move it away.
const settling = 100 * time.Millisecond

// changed waits until a file is no longer the version with the stamp, or one of those beside
// it another, and returns what it is then. If that doesn't happen before the context is done,
// it is that version. Who hasn't been told of those beside it yet is told at once.
//
// The file is read at every look, for its date tells nothing for certain: clocks go back, two
// writes come within a tick, and whoever copies a file may copy its date.
func (f *jobFiles) changed(ctx context.Context, name, stamp string, others *neighbours) (version, error) {
	if _, _, err := f.path(name); err != nil {
		return version{}, err
	}
	for first := true; ; first = false {
		now := f.seen(name)
		if now.err != nil || now.Stamp != stamp {
			now = f.settled(ctx, name, now)
		}
		switch {
		case now.err != nil || now.Stamp != stamp:
			return now.version, now.err
		case others.untold || others.changed(ctx, first):
			return f.read(name)
		case !sleep(ctx, f.bounds.Look):
			return f.read(name)
		}
	}
}

// sight is what a look at a file finds.
type sight struct {
	version
	err error
}

func (f *jobFiles) seen(name string) sight {
	v, err := f.read(name)
	return sight{v, err}
}

// same reports whether two looks find the same.
func (s sight) same(as sight) bool {
	if s.err != nil || as.err != nil {
		return s.err != nil && as.err != nil && s.err.Error() == as.err.Error()
	}
	return s.Stamp == as.Stamp
}

// settled waits until a file holds the same twice, for as long as several changes in
// a row may reasonably take.
func (f *jobFiles) settled(ctx context.Context, name string, now sight) sight {
	for range 4 {
		if !sleep(ctx, settling) {
			break
		}
		before := now
		if now = f.seen(name); now.same(before) {
			break
		}
	}
	return now
}

// alike reports whether a file looks like what it was.
func alike(a, b fs.FileInfo) bool {
	if a == nil || b == nil {
		return a == nil && b == nil
	}
	return a.ModTime().Equal(b.ModTime()) && a.Size() == b.Size() && os.SameFile(a, b)
}

// sleep waits, and returns false if the context is done before.
func sleep(ctx context.Context, d time.Duration) bool {
	select {
	case <-time.After(d):
		return true
	case <-ctx.Done():
		return false
	}
}
