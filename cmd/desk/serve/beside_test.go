package serve

import (
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A drawing is put beside the job whole, once: the same again is no conflict, anything else is.
func TestSaveBeside(t *testing.T) {
	s := open(t, nil)
	for _, c := range []struct {
		name, text string
		status     int
	}{
		{"blade.svg", "<svg/>", http.StatusOK}, {"blade.svg", "<svg/>", http.StatusOK},
		{"blade.svg", "<svg></svg>", http.StatusConflict}, {"blade.svg", "<svg", http.StatusConflict}, {"blade.svg", "", http.StatusConflict},
		{"left wing.SVG", "<svg/>", http.StatusOK}, {"job.toml", "# mine", http.StatusConflict}, {"shop.toml", "# shop", http.StatusOK},
	} {
		got := s.post("/file-beside", object{"name": c.name, "text": c.text})
		if got.status != c.status {
			t.Errorf("%s, %q: %d, %q", c.name, c.text, got.status, got.text)
		}
		if c.status == http.StatusOK && (s.onDisk(c.name) != c.text || got.json(t).Name != c.name) {
			t.Errorf("%s: on disk is %q", c.name, s.onDisk(c.name))
		}
	}
	if s.onDisk("blade.svg") != "<svg/>" || s.onDisk("job.toml") != "# first" {
		t.Error("a file was written over")
	}
	// What was put there is no job file that could be opened.
	if got := s.ask("GET", "/file?name=shop.toml", ""); got.status != http.StatusNotFound {
		t.Errorf("%d, %q", got.status, got.text)
	}
}

// No name leads out of the folder, or to a file of another sort.
func TestBesideNames(t *testing.T) {
	s := open(t, nil)
	outside := filepath.Join(t.TempDir(), "outside.svg")
	write(t, outside, "<svg/>")
	if err := os.Symlink(outside, filepath.Join(s.folder, "link.svg")); err != nil {
		t.Skip(err)
	}
	for _, name := range []string{
		"", ".svg", "../a.svg", "/tmp/a.svg", `..\a.svg`, "c:a.svg", "a/b.svg", "a.sh", "a", "a.svg.exe", ".a.svg", "-a.svg", "a\x00.svg", "a\n.svg", "a .svg",
		strings.Repeat("a", 300) + ".svg", "a?.svg", "a*.svg", `a"b.svg`,
	} {
		if got := s.post("/file-beside", object{"name": name, "text": "x"}); got.status != http.StatusBadRequest || got.json(t).Error == "" {
			t.Errorf("%q: %d, %q", name, got.status, got.text)
		}
	}
	if got := s.post("/file-beside", object{"name": "link.svg", "text": "<svg/>"}); got.status != http.StatusConflict {
		t.Errorf("through a link: %d, %q", got.status, got.text)
	}
	if entries, _ := os.ReadDir(s.folder); len(entries) != 2 {
		t.Errorf("in the folder are %v", entries)
	}
}

// A change of a file beside the job is answered too; what looks like no such file is let be.
func TestBesideWatched(t *testing.T) {
	s := open(t, func(c *Config) { c.Bounds.Look, c.Bounds.Wait = 20*time.Millisecond, 2*time.Second })
	path := filepath.Join(s.folder, "blade.svg")
	write(t, path, "<svg/>")
	asked := url.Values{"stamp": {s.stamp()}, "beside": {"blade.svg", "../../etc/passwd", "missing.svg"}}
	watch := func(seen string) (string, string) {
		asked.Set("seen", seen)
		got := s.ask("GET", "/file/changes?"+asked.Encode(), "")
		return seenIn(t, got.text), got.json(t).Stamp
	}
	first, stamp := watch("")
	if first == "" || stamp != s.stamp() {
		t.Fatalf("nothing changed: %q, %q", first, stamp)
	}
	for _, change := range []func() error{
		func() error { return os.WriteFile(path, []byte("<svg></svg>"), 0o640) },
		func() error { return os.WriteFile(filepath.Join(s.folder, "missing.svg"), []byte("<svg/>"), 0o640) },
		func() error { return os.Remove(path) },
	} {
		answered := make(chan string, 1)
		go func() { seen, _ := watch(first); answered <- seen }()
		time.Sleep(100 * time.Millisecond)
		if err := change(); err != nil {
			t.Fatal(err)
		}
		begun := time.Now()
		seen := <-answered
		if seen == first {
			t.Errorf("a change is not told of, after %v", time.Since(begun))
		}
		first = seen
		// One that was made while nobody waited is told of at once.
	}
	if err := os.WriteFile(path, []byte("<svg id='a'/>"), 0o640); err != nil {
		t.Fatal(err)
	}
	begun := time.Now()
	if seen, _ := watch(first); seen == first || time.Since(begun) > time.Second {
		t.Errorf("a change between two watches: %v, after %v", seen == first, time.Since(begun))
	}
}

// seenIn is the stamp of the files beside a job in an answer.
func seenIn(t *testing.T, text string) string {
	t.Helper()
	_, rest, ok := strings.Cut(text, `"seen":"`)
	if !ok {
		t.Errorf("%q tells nothing of the files beside the job", text)
		return ""
	}
	seen, _, _ := strings.Cut(rest, `"`)
	return seen
}
