package disk

import (
	"io/fs"
	"strings"
	"syscall"
	"testing"
)

// What a person can do about it stands behind what went wrong, and no file's name does.
func TestBareSaysWhatToDo(t *testing.T) {
	for err, want := range map[error]string{
		&fs.PathError{Op: "open", Path: "/x/.hidden", Err: syscall.EACCES}:  "permission denied (you have no right to it: take another place",
		&fs.PathError{Op: "write", Path: "/x/.hidden", Err: syscall.ENOSPC}: "no space left on device (make room",
		&fs.PathError{Op: "open", Path: "/x/.hidden", Err: syscall.EISDIR}:  "is a directory",
	} {
		if got := Bare(err).Error(); !strings.HasPrefix(got, want) || strings.Contains(got, "hidden") {
			t.Errorf("%v: %q", err, got)
		}
	}
}
