package serve

import (
	"context"
	"net/http"
	"os"
	"path/filepath"
	"testing"
	"testing/synctest"
	"time"

	"roundlay/cmd/disk"
)

// dated writes a file over in its place, and gives it a date.
func dated(t *testing.T, path, text string, at time.Time) {
	t.Helper()
	write(t, path, text)
	if err := os.Chtimes(path, at, at); err != nil {
		t.Fatal(err)
	}
}

// onClock runs a test of the files of a folder on a clock that is set forward as soon as
// everybody waits for it.
func onClock(t *testing.T, do func(t *testing.T, f *jobFiles, path string)) {
	folder := t.TempDir()
	path := filepath.Join(folder, "job.toml")
	write(t, path, "# first")
	write(t, filepath.Join(folder, "blade.svg"), "<svg/>")
	synctest.Test(t, func(t *testing.T) {
		f, err := openFiles(Config{Job: path, Folder: folder, Disk: disk.Real{}})
		if err != nil {
			t.Fatal(err)
		}
		f.bounds = defaults()
		do(t, f, path)
	})
}

// waitFor asks for changes as the page does, until there is one, and returns the file then.
func (f *jobFiles) waitFor(t *testing.T, told string) <-chan version {
	answered := make(chan version, 1)
	go func() {
		others := f.neighbours([]string{"blade.svg"}, f.neighbours([]string{"blade.svg"}, "").stamp)
		ctx, cancel := context.WithTimeout(t.Context(), f.bounds.Wait)
		defer cancel()
		v, err := f.changed(ctx, "", told, others)
		if err != nil {
			t.Error(err)
		}
		answered <- v
	}()
	synctest.Wait() // until it has looked, and waits
	return answered
}

// A change is told whatever the clock says of it: a file that is as long as before may be dated as
// before, long ago, or in the future, and another may have been written in the same tick.
func TestChangedWhateverTheDate(t *testing.T) {
	onClock(t, func(t *testing.T, f *jobFiles, path string) {
		about, err := os.Stat(path)
		if err != nil {
			t.Fatal(err)
		}
		day := about.ModTime()
		told := stampOf([]byte("# first"))
		for _, c := range []struct {
			text string
			at   time.Time
		}{
			{"# OTHER", day}, {"# third", day}, {"# forth", time.Unix(1, 0)}, {"# fifth", time.Date(2090, 1, 1, 0, 0, 0, 0, time.UTC)},
			{"# sixth", day.Add(-time.Hour)}, {"# seven", day.Add(-time.Hour)},
		} {
			answered := f.waitFor(t, told)
			began := time.Now()
			dated(t, path, c.text, c.at)
			v := <-answered
			if took := time.Since(began); v.Text != c.text || took > time.Second {
				t.Errorf("%q dated %v: told is %q, after %v", c.text, c.at, v.Text, took)
			}
			told = v.Stamp
		}
	})
}

// So is a change of a file beside the job.
func TestBesideChangedWhateverTheDate(t *testing.T) {
	onClock(t, func(t *testing.T, f *jobFiles, path string) {
		blade := filepath.Join(f.folder, "blade.svg")
		day := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
		dated(t, blade, "<svg/>", day)
		for _, text := range []string{"<SVG/>", "<svG/>"} {
			answered := f.waitFor(t, stampOf([]byte("# first")))
			began := time.Now()
			dated(t, blade, text, day)
			<-answered
			if took := time.Since(began); took > time.Second {
				t.Errorf("%q: told after %v", text, took)
			}
		}
	})
}

// Beside a job may be so much that it isn't read at every look. It is read all the same.
func TestManyBesideAreRead(t *testing.T) {
	onClock(t, func(t *testing.T, f *jobFiles, path string) {
		blade, day := filepath.Join(f.folder, "blade.svg"), time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
		large := make([]byte, 5*readEach/2)
		dated(t, blade, string(large), day)
		answered := f.waitFor(t, stampOf([]byte("# first")))
		began := time.Now()
		large[7] = 1
		dated(t, blade, string(large), day)
		<-answered
		if took := time.Since(began); took < f.bounds.Look+settling || took > 3*f.bounds.Look+settling {
			t.Errorf("told after %v", took)
		}
	})
}

// A file whose date jumps to and fro, and that is the same, is no news: the wait is as long as it
// should be, and nothing is told.
func TestDateJumpsToAndFro(t *testing.T) {
	onClock(t, func(t *testing.T, f *jobFiles, path string) {
		answered := f.waitFor(t, stampOf([]byte("# first")))
		began := time.Now()
		for i := 0; i < 40; i++ {
			at := time.Date(1970+3*(i*7%40), 1, 1, 0, 0, 0, 0, time.UTC)
			for _, name := range []string{path, filepath.Join(f.folder, "blade.svg")} {
				if err := os.Chtimes(name, at, at); err != nil {
					t.Fatal(err)
				}
			}
			time.Sleep(300 * time.Millisecond)
		}
		if v := <-answered; v.Text != "# first" || time.Since(began) < f.bounds.Wait-time.Second || time.Since(began) > f.bounds.Wait+time.Second {
			t.Errorf("told is %q after %v", v.Text, time.Since(began))
		}
	})
}

// A file that is written in pieces is told of when it is whole, though all pieces have one date.
func TestWrittenInPieces(t *testing.T) {
	onClock(t, func(t *testing.T, f *jobFiles, path string) {
		day := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
		dated(t, path, "# first", day)
		answered := f.waitFor(t, stampOf([]byte("# first")))
		time.Sleep(f.bounds.Look - 30*time.Millisecond)
		for _, text := range []string{"", "# a", "# a new", "# a new one"} {
			dated(t, path, text, day)
			time.Sleep(settling * 2 / 3)
		}
		if v := <-answered; v.Text != "# a new one" {
			t.Errorf("told is %q", v.Text)
		}
	})
}

// Saving goes by what a file holds: one that was changed and dated as before is a conflict, and one
// that only has another date is none.
func TestSavedWhateverTheDate(t *testing.T) {
	s := open(t, nil)
	path := filepath.Join(s.folder, "job.toml")
	about, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	stamp := s.stamp()
	dated(t, path, "# OTHER", about.ModTime())
	if got := s.post("/file", object{"text": "# mine", "stamp": stamp}); got.status != http.StatusConflict || s.onDisk("job.toml") != "# OTHER" {
		t.Errorf("%d, %q", got.status, s.onDisk("job.toml"))
	}
	stamp = s.stamp()
	dated(t, path, "# OTHER", time.Date(2090, 1, 1, 0, 0, 0, 0, time.UTC))
	if got := s.post("/file", object{"text": "# mine", "stamp": stamp}); got.status != http.StatusOK || s.onDisk("job.toml") != "# mine" {
		t.Errorf("%d, %q", got.status, s.onDisk("job.toml"))
	}
}

// No answer depends on a date that a browser remembers.
func TestNoDatesInAnswers(t *testing.T) {
	s := open(t, nil)
	for _, path := range []string{"/", "/main.js", "/file"} {
		got := s.ask("GET", path, "", "If-Modified-Since", "Fri, 01 Jan 2090 00:00:00 GMT", "If-None-Match", "*")
		if got.status != http.StatusOK || got.text == "" || got.header.Get("Cache-Control") != "no-store" {
			t.Errorf("%s: %d, %q, %v", path, got.status, got.text, got.header)
		}
		for _, name := range []string{"Last-Modified", "ETag", "Expires"} {
			if value := got.header.Get(name); value != "" {
				t.Errorf("%s has %s %q", path, name, value)
			}
		}
	}
}
