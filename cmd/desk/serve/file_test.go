package serve

import (
	"errors"
	"net/http"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// stamp is that of the opened file as the page is given it.
func (s *site) stamp() string {
	s.t.Helper()
	return s.ask("GET", "/file", "").json(s.t).Stamp
}

// Every byte of a text goes there and back, and the file keeps its permissions.
func TestSave(t *testing.T) {
	s := open(t, nil)
	v := s.ask("GET", "/file", "").json(t)
	if v.Name != "job.toml" || v.Text != "# first" || v.Demo || v.Gone {
		t.Errorf("opened as %+v", v)
	}
	for _, text := range []string{"# second", "\ufeff# <ü> & \u2028 \"\\\r\nline\r\n\t\x00", ""} {
		got := s.post("/file", object{"text": text, "stamp": s.stamp()})
		if got.status != http.StatusOK || s.onDisk("job.toml") != text || s.ask("GET", "/file", "").json(t).Text != text {
			t.Errorf("%q: %d, %q, on disk %q", text, got.status, got.text, s.onDisk("job.toml"))
		}
		if got.json(t).Stamp != s.stamp() {
			t.Errorf("%q: the stamp is another", text)
		}
	}
	info, err := os.Stat(filepath.Join(s.folder, "job.toml"))
	if err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o640 {
		t.Errorf("%v, %v", info.Mode(), err)
	}
	if entries, _ := os.ReadDir(s.folder); len(entries) != 1 {
		t.Errorf("left beside it: %v", entries)
	}
}

// Of two pages that save, the second is told, and given what the first saved. So it is of
// an editor. Neither version is lost.
func TestConflict(t *testing.T) {
	s := open(t, nil)
	old := s.stamp()
	if got := s.post("/file", object{"text": "# one page's", "stamp": old}); got.status != http.StatusOK {
		t.Fatalf("%d, %q", got.status, got.text)
	}
	got := s.post("/file", object{"text": "# the other's", "stamp": old})
	v := got.json(t)
	if got.status != http.StatusConflict || v.Text != "# one page's" || v.Stamp != s.stamp() || v.Error != "job.toml has been changed on disk" || s.onDisk("job.toml") != "# one page's" {
		t.Errorf("%d, %+v, on disk %q", got.status, v, s.onDisk("job.toml"))
	}
	write(t, filepath.Join(s.folder, "job.toml"), "# an editor's")
	got = s.post("/file", object{"text": "# the other's", "stamp": v.Stamp})
	if v := got.json(t); got.status != http.StatusConflict || v.Text != "# an editor's" || s.onDisk("job.toml") != "# an editor's" {
		t.Errorf("%d, %+v", got.status, v)
	}
	// With the stamp that it was given, whoever was asked may go on.
	if got := s.post("/file", object{"text": "# the other's", "stamp": s.stamp()}); got.status != http.StatusOK || s.onDisk("job.toml") != "# the other's" {
		t.Errorf("%d, %q", got.status, got.text)
	}
	// Two at one time: one of them is told.
	for range 20 {
		at, answers := s.stamp(), make(chan reply, 2)
		for _, text := range []string{"# left", "# right"} {
			go func() { answers <- s.post("/file", object{"text": text, "stamp": at}) }()
		}
		a, b := <-answers, <-answers
		if a.status+b.status != http.StatusOK+http.StatusConflict {
			t.Errorf("%d and %d", a.status, b.status)
		}
		write(t, filepath.Join(s.folder, "job.toml"), "# neither")
	}
}

// A file that has gone is not taken for an empty one, and can be written anew.
func TestVanished(t *testing.T) {
	s := open(t, nil)
	old := s.stamp()
	path := filepath.Join(s.folder, "job.toml")
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if v := s.ask("GET", "/file", "").json(t); !v.Gone || v.Stamp != "" || v.Name != "job.toml" {
		t.Errorf("%+v", v)
	}
	got := s.post("/file", object{"text": "# second", "stamp": old})
	v := got.json(t)
	if _, err := os.Stat(path); err == nil || got.status != http.StatusConflict || !v.Gone || v.Error != "job.toml is no longer there" {
		t.Errorf("%d, %+v", got.status, v)
	}
	if got := s.post("/file", object{"text": "# second", "stamp": ""}); got.status != http.StatusOK || s.onDisk("job.toml") != "# second" {
		t.Errorf("%d, %q", got.status, got.text)
	}
	if got := s.post("/file", object{"text": "# third", "stamp": ""}); got.status != http.StatusConflict || s.onDisk("job.toml") != "# second" {
		t.Errorf("%d, %q", got.status, got.text)
	}
}

// What the page can't show and give back as it was is left as it is.
func TestNotShown(t *testing.T) {
	s := open(t, nil)
	path := filepath.Join(s.folder, "job.toml")
	for _, text := range []string{"title = \"gr\xfcn\"", strings.Repeat("#", 1<<20+1)} {
		old := s.stamp()
		write(t, path, text)
		for _, got := range []reply{s.ask("GET", "/file", ""), s.post("/file", object{"text": "# x", "stamp": old})} {
			if got.status != http.StatusInternalServerError || got.json(t).Error == "" || s.onDisk("job.toml") != text {
				t.Errorf("%.20q: %d, %.100q", text, got.status, got.text)
			}
		}
		write(t, path, "# first")
	}
	// A folder in its place, as good as a pipe: neither is read or written.
	if err := errors.Join(os.Remove(path), os.Mkdir(path, 0o777)); err != nil {
		t.Fatal(err)
	}
	if got := s.post("/file", object{"text": "# x", "stamp": ""}); got.status != http.StatusInternalServerError || got.json(t).Error != "job.toml: is not a file; give a job file" {
		t.Errorf("a folder: %d, %q", got.status, got.text)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	write(t, path, "# first")
	if err := os.Chmod(path, 0o440); err != nil {
		t.Fatal(err)
	}
	if got := s.post("/file", object{"text": "# x", "stamp": s.stamp()}); got.status != http.StatusForbidden || got.json(t).Error != "job.toml is read-only: it was left as it is" || s.onDisk("job.toml") != "# first" {
		t.Errorf("read-only: %d, %q", got.status, got.text)
	}
}

// A link to the job stays a link, and the job behind it is written.
func TestLink(t *testing.T) {
	elsewhere := t.TempDir()
	target := filepath.Join(elsewhere, "true.toml")
	write(t, target, "# behind")
	s := open(t, func(c *Config) {
		c.Job = filepath.Join(c.Folder, "link.toml")
		if err := os.Symlink(target, c.Job); err != nil {
			t.Skip(err)
		}
	})
	if got := s.post("/file", object{"text": "# new", "stamp": s.stamp()}); got.status != http.StatusOK {
		t.Errorf("%d, %q", got.status, got.text)
	}
	info, err := os.Lstat(filepath.Join(s.folder, "link.toml"))
	if data, _ := os.ReadFile(target); err != nil || info.Mode()&os.ModeSymlink == 0 || string(data) != "# new" {
		t.Errorf("%v, %v, behind it %q", info, err, data)
	}
}

// New files are written beside the job, under plain names, where nothing is.
func TestSaveAs(t *testing.T) {
	s := open(t, nil)
	outside := t.TempDir()
	if err := os.Symlink(filepath.Join(outside, "out.toml"), filepath.Join(s.folder, "out.toml")); err != nil {
		t.Skip(err)
	}
	if err := os.Symlink(outside, filepath.Join(s.folder, "away")); err != nil {
		t.Skip(err)
	}
	if err := os.Mkdir(filepath.Join(s.folder, "folder.toml"), 0o777); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{
		"", " ", ".", "..", ".toml", "../x", "../x.toml", "..\\x", "/x.toml", "away/x", "sub/x.toml", "./x", "~/../x", "C:x", "C:\\x", "x:y", ".hidden", "-x",
		"%2e%2e%2fx/y", "a\x00b", "a\nb", "a\u202eb", "x.", "x .toml", "x..toml", filepath.Join(outside, "x.toml"), strings.Repeat("x", 200),
	} {
		if got := s.post("/file-as", object{"name": name, "text": "x"}); got.status != http.StatusBadRequest || got.json(t).Error == "" {
			t.Errorf("%q: %d, %q", name, got.status, got.text)
		}
	}
	for _, name := range []string{"job", "job.toml", "out", "folder"} {
		if got := s.post("/file-as", object{"name": name, "text": "x"}); got.status != http.StatusConflict || !strings.Contains(got.json(t).Error, "is there already") {
			t.Errorf("%q: %d, %q", name, got.status, got.text)
		}
	}
	if entries, _ := os.ReadDir(outside); len(entries) > 0 {
		t.Errorf("written outside: %v", entries)
	}
	if entries, _ := os.ReadDir(s.folder); len(entries) != 4 || s.onDisk("job.toml") != "# first" {
		t.Errorf("written: %v", entries)
	}
	for name, want := range map[string]string{"fern": "fern.toml", " Rain & hail.toml ": "Rain & hail.toml", "Glas für Öl": "Glas für Öl.toml", "%2e%2e%2fx": "%2e%2e%2fx.toml", "1.5 mm": "1.5 mm.toml"} {
		got := s.post("/file-as", object{"name": name, "text": "# " + name})
		if v := got.json(t); got.status != http.StatusOK || v.Name != want || s.onDisk(want) != "# "+name || v.Stamp != stampOf([]byte("# "+name)) {
			t.Errorf("%q: %d, %q", name, got.status, got.text)
		}
	}
	// A copy can be read and saved by its name, and the opened file is the same as before.
	if got := s.post("/file", object{"name": "fern.toml", "text": "# more fern", "stamp": stampOf([]byte("# fern"))}); got.status != http.StatusOK || s.onDisk("fern.toml") != "# more fern" {
		t.Errorf("%d, %q", got.status, got.text)
	}
	if v := s.ask("GET", "/file", "").json(t); v.Name != "job.toml" || v.Text != "# first" {
		t.Errorf("%+v", v)
	}
}

// The demo has no file until it is saved as one.
func TestSaveDemo(t *testing.T) {
	s := open(t, func(c *Config) { c.Job = "" })
	if v := s.ask("GET", "/file", "").json(t); v.Name != "" || v.Text != "# the demo" || v.Stamp != "" || !v.Demo {
		t.Errorf("%+v", v)
	}
	for _, got := range []reply{s.post("/file", object{"text": "x", "stamp": ""}), s.ask("GET", "/file/changes?stamp=", ""), s.ask("GET", "/file?name=job.toml", "")} {
		if got.status != http.StatusNotFound {
			t.Errorf("%d, %q", got.status, got.text)
		}
	}
	for _, name := range []string{"mine", "another"} {
		if got := s.post("/file-as", object{"name": name, "text": "# " + name}); got.status != http.StatusOK {
			t.Errorf("%d, %q", got.status, got.text)
		}
		if v := s.ask("GET", "/file", "").json(t); v.Name != "mine.toml" || v.Text != "# mine" || v.Demo {
			t.Errorf("%+v", v)
		}
	}
}

// What can't be understood changes nothing.
func TestBadBody(t *testing.T) {
	s := open(t, nil)
	for _, body := range []string{"", "{", "[]", "null x", `{"text":1}`, `{"text":"x","path":"/etc/passwd"}`, `{"text":"x","stamp":""} {}`} {
		for _, path := range []string{"/file", "/file-as"} {
			if got := s.ask("POST", path, body); got.status != http.StatusBadRequest || s.onDisk("job.toml") != "# first" {
				t.Errorf("%s %q: %d, %q", path, body, got.status, got.text)
			}
		}
	}
}
