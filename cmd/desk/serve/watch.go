package serve

import (
	"context"
	"io/fs"
	"os"
	"time"
)

// settling is how long a file must look the same before a change of it is read: many
// programs empty a file before they write it, or move it away.
const settling = 100 * time.Millisecond

// changed waits until a file is no longer the version with the stamp, or one of those beside
// it another, and returns what it is then. If that doesn't happen before the context is done,
// it is that version. Who hasn't been told of those beside it yet is told at once.
func (f *jobFiles) changed(ctx context.Context, name, stamp string, others *neighbours) (version, error) {
	name, path, err := f.path(name)
	if err != nil {
		return version{}, err
	}
	var before fs.FileInfo
	for first := true; ; first = false {
		now, _ := os.Stat(path) // nil where there is none
		if first || !alike(now, before) {
			if !first {
				now = settled(ctx, path, now)
			}
			v, err := f.read(name)
			if err != nil || v.Stamp != stamp {
				return v, err
			}
			before = now
		}
		if others.untold || others.changed(ctx, first) {
			return f.read(name)
		}
		if !sleep(ctx, f.bounds.Look) {
			return f.read(name)
		}
	}
}

// settled waits until a file looks the same twice, for as long as several changes in
// a row may reasonably take.
func settled(ctx context.Context, path string, now fs.FileInfo) fs.FileInfo {
	for range 4 {
		if !sleep(ctx, settling) {
			break
		}
		before := now
		if now, _ = os.Stat(path); alike(before, now) {
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
