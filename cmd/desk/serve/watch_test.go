package serve

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"
)

// A change of the file on disk is answered within a second, however it is made. (Most are:
// a busy machine may hold one up.)
func TestDiskChange(t *testing.T) {
	s := open(t, nil)
	var waits []time.Duration
	path := filepath.Join(s.folder, "job.toml")
	for _, change := range []struct {
		name, want string
		make       func() error
	}{
		{"written over", "# other", func() error { return os.WriteFile(path, []byte("# other"), 0o640) }},
		{"as long as before", "# OTHER", func() error { return os.WriteFile(path, []byte("# OTHER"), 0o640) }},
		{"replaced, with its old time", "# third", func() error {
			info, err := os.Stat(path)
			if err != nil {
				return err
			}
			write(t, path+"~", "# third")
			if err := os.Chtimes(path+"~", info.ModTime(), info.ModTime()); err != nil {
				return err
			}
			return os.Rename(path+"~", path)
		}},
		{"moved away and written slowly", "# a new one", func() error {
			if err := os.Rename(path, path+"~"); err != nil {
				return err
			}
			time.Sleep(50 * time.Millisecond)
			write(t, path, "# a")
			time.Sleep(50 * time.Millisecond)
			write(t, path, "# a new one")
			return os.Remove(path + "~")
		}},
		{"saved by another page", "# page", func() error {
			s.post("/file", object{"text": "# page", "stamp": s.stamp()})
			return nil
		}},
		{"removed", "", func() error { return os.Remove(path) }},
		{"back", "# back", func() error { return os.WriteFile(path, []byte("# back"), 0o640) }},
	} {
		answered := make(chan reply, 1)
		stamp := s.stamp()
		go func() { answered <- s.ask("GET", "/file/changes?stamp="+stamp, "") }()
		time.Sleep(300 * time.Millisecond) // until it waits
		select {
		case got := <-answered:
			t.Fatalf("%s: before, %q", change.name, got.text)
		default:
		}
		if err := change.make(); err != nil {
			t.Fatal(err)
		}
		made := time.Now()
		got := within(t, change.name, answered)
		took := time.Since(made)
		if v := got.json(t); v.Text != change.want || v.Gone != (change.want == "") || v.Stamp != s.stamp() {
			t.Errorf("%s: %+v", change.name, v)
		}
		t.Logf("%s: answered after %v", change.name, took)
		waits = append(waits, took)
	}
	if slices.Sort(waits); waits[len(waits)/2] > time.Second {
		t.Errorf("answered after %v", waits)
	}
	// Of what has changed already, at once.
	began := time.Now()
	if v := s.ask("GET", "/file/changes?stamp=old", "").json(t); v.Text != "# back" || time.Since(began) > time.Second/2 {
		t.Errorf("%+v after %v", v, time.Since(began))
	}
}

// A file that is touched, or doesn't change, is answered as it is after the wait.
func TestNoDiskChange(t *testing.T) {
	s := open(t, func(c *Config) { c.Bounds.Wait, c.Bounds.Look = 600*time.Millisecond, 100*time.Millisecond })
	stamp := s.stamp()
	time.AfterFunc(200*time.Millisecond, func() { os.Chtimes(filepath.Join(s.folder, "job.toml"), time.Now(), time.Now()) })
	began := time.Now()
	if v := s.ask("GET", "/file/changes?stamp="+stamp, "").json(t); v.Stamp != stamp || v.Text != "# first" || time.Since(began) < 500*time.Millisecond {
		t.Errorf("%+v after %v", v, time.Since(began))
	}
}
