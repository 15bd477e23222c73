package serve

import (
	"context"
	"errors"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"roundlay/cmd/disk"
)

// meddled is a disk on which something else happens when a file is being written.
type meddled struct {
	disk.Real
	meddle  func()
	full    bool
	noLinks bool
}

func (m *meddled) Create(name string, perm fs.FileMode) (disk.File, error) {
	if m.full {
		return nil, &fs.PathError{Op: "open", Path: name, Err: syscall.ENOSPC}
	}
	m.meddle()
	return m.Real.Create(name, perm)
}

func (m *meddled) Link(from, to string) error {
	if m.noLinks {
		return errors.ErrUnsupported
	}
	return m.Real.Link(from, to)
}

// What another program saves while the page's version is on its way stays.
func TestMeddledWith(t *testing.T) {
	for _, noLinks := range []bool{false, true} {
		m := &meddled{noLinks: noLinks}
		s := open(t, func(c *Config) { c.Disk = m })
		m.meddle = func() { write(t, filepath.Join(s.folder, "job.toml"), "# an editor's") }
		got := s.post("/file", object{"text": "# the page's", "stamp": s.stamp()})
		if v := got.json(t); got.status != http.StatusConflict || v.Text != "# an editor's" || s.onDisk("job.toml") != "# an editor's" {
			t.Errorf("%d, %+v", got.status, v)
		}
		m.meddle = func() { write(t, filepath.Join(s.folder, "new.toml"), "# an editor's") }
		if got := s.post("/file-as", object{"name": "new", "text": "# the page's"}); got.status != http.StatusConflict || s.onDisk("new.toml") != "# an editor's" {
			t.Errorf("new: %d, %q, on disk %q", got.status, got.text, s.onDisk("new.toml"))
		}
		m.meddle = func() {}
		if got := s.post("/file-as", object{"name": "other", "text": "# the page's"}); got.status != http.StatusOK || s.onDisk("other.toml") != "# the page's" {
			t.Errorf("other: %d, %q", got.status, got.text)
		}
		if entries, _ := os.ReadDir(s.folder); len(entries) != 3 {
			t.Errorf("left: %v", entries)
		}
	}
}

// What can't be written is said, and the file is as it was.
func TestFullDisk(t *testing.T) {
	s := open(t, func(c *Config) { c.Disk = &meddled{full: true} })
	for _, got := range []reply{s.post("/file", object{"text": "# x", "stamp": s.stamp()}), s.post("/file-as", object{"name": "x", "text": "# x"})} {
		if words := got.json(t).Error; got.status != http.StatusInternalServerError || !strings.Contains(words, "toml can't be written: no space left on device") || strings.Contains(words, s.folder) {
			t.Errorf("%d, %q", got.status, got.text)
		}
	}
	if entries, _ := os.ReadDir(s.folder); len(entries) != 1 || s.onDisk("job.toml") != "# first" {
		t.Errorf("left: %v", entries)
	}
}

// A server that is stopped while a file is being saved saves it, and says so.
func TestStoppedWhileSaving(t *testing.T) {
	m := &meddled{}
	s := open(t, func(c *Config) { c.Disk = m })
	stamp, stopped := s.stamp(), make(chan bool)
	m.meddle = func() {
		go func() {
			s.stop()
			close(stopped)
		}()
		time.Sleep(300 * time.Millisecond)
		select {
		case <-stopped:
			t.Error("it didn't wait")
		default:
		}
	}
	if got := s.post("/file", object{"text": "# the last", "stamp": stamp}); got.status != http.StatusOK || s.onDisk("job.toml") != "# the last" {
		t.Errorf("%d, %q, on disk %q", got.status, got.text, s.onDisk("job.toml"))
	}
	within(t, "it stops", stopped)
}

// A page that goes away while a file is being saved leaves it whole.
func TestGoneWhileSaving(t *testing.T) {
	m := &meddled{}
	s := open(t, func(c *Config) { c.Disk = m })
	ctx, leave := context.WithCancel(t.Context())
	m.meddle = func() {
		leave()
		time.Sleep(300 * time.Millisecond)
	}
	body := `{"text":"# the last","stamp":"` + s.stamp() + `"}`
	r, err := http.NewRequestWithContext(ctx, "POST", s.address+"/file", strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Content-Type", "application/json")
	if _, err := http.DefaultClient.Do(r); err == nil {
		t.Error("it was answered")
	}
	s.stop()
	if entries, _ := os.ReadDir(s.folder); len(entries) != 1 || s.onDisk("job.toml") != "# the last" {
		t.Errorf("left: %v, %q", entries, s.onDisk("job.toml"))
	}
}
