package serve

import (
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// everything is all that can be asked, in a way that is answered.
var everything = []struct{ method, path, body string }{
	{"GET", "/", ""}, {"GET", "/main.js", ""}, {"GET", "/file", ""}, {"GET", "/file/changes?stamp=x", ""},
	{"POST", "/visit", `{"page":"a","here":true}`}, {"POST", "/ask/lay", "{}"}, {"POST", "/ask/cures", "{}"}, {"POST", "/file-as", `{"name":"new","text":"x"}`}, {"POST", "/file-beside", `{"name":"new.svg","text":"x"}`},
	{"POST", "/file", `{"text":"x","stamp":"` + stampOf([]byte("# first")) + `"}`},
}

// refused checks that with some headers everything, or all but the page's own files, is
// refused, and that nothing has been written.
func refused(t *testing.T, files bool, headers ...string) {
	t.Helper()
	s := open(t, nil)
	for _, e := range everything {
		want := http.StatusForbidden
		if e.method == "GET" && !strings.HasPrefix(e.path, "/file") && !files {
			want = http.StatusOK
		}
		if got := s.ask(e.method, e.path, e.body, headers...); got.status != want || want != http.StatusOK && strings.Contains(got.text, "first") {
			t.Errorf("%s %s with %q: %d, %q", e.method, e.path, headers, got.status, got.text)
		}
	}
	if entries, err := os.ReadDir(s.folder); err != nil || len(entries) != 1 || s.onDisk("job.toml") != "# first" {
		t.Errorf("written with %q: %v, %v", headers, entries, err)
	}
}

// What the page asks is answered: without this the refusals below would show nothing.
func TestEverythingIsAnswered(t *testing.T) {
	s := open(t, nil)
	for _, e := range everything {
		if got := s.ask(e.method, e.path, e.body); got.status != http.StatusOK {
			t.Errorf("%s %s: %d, %q", e.method, e.path, got.status, got.text)
		}
	}
	_, port, _ := strings.Cut(s.host, ":")
	for _, host := range []string{"127.0.0.1:", "localhost:", "LOCALHOST:", "[::1]:"} {
		if got := s.ask("POST", "/ask/lay", "{}", "Host", host+port, "Origin", "http://"+host+port); got.status != http.StatusOK {
			t.Errorf("at %s: %d, %q", host, got.status, got.text)
		}
	}
	if got := s.ask("POST", "/ask/lay", "{}", "Origin", "", "Sec-Fetch-Site", "", "Content-Type", "application/json; charset=utf-8"); got.status != http.StatusOK {
		t.Errorf("by a program that is no browser: %d, %q", got.status, got.text)
	}
}

// A name that somebody had pointed at this machine, so that their page is of one origin
// with this one.
func TestForeignHost(t *testing.T) {
	for _, host := range []string{"evil.example", "evil.example:80", "127.0.0.1", "127.0.0.1:1", "localhost", "localhost.evil.example", "0.0.0.0"} {
		refused(t, true, "Host", host, "Origin", "http://"+host, "Sec-Fetch-Site", "same-origin")
	}
}

func TestForeignOrigin(t *testing.T) {
	for _, origin := range []string{"https://evil.example", "http://127.0.0.1", "http://127.0.0.1:1", "null", "file://"} {
		// As an older browser would send it, that says nothing more.
		refused(t, false, "Origin", origin, "Sec-Fetch-Site", "")
	}
}

// The origin is one of this machine, but not that of the page that was loaded.
func TestOriginBesideHost(t *testing.T) {
	s := open(t, nil)
	_, port, _ := strings.Cut(s.host, ":")
	for _, origin := range []string{"http://localhost:" + port, "https://" + s.host} {
		if got := s.ask("POST", "/ask/lay", "{}", "Origin", origin); got.status != http.StatusForbidden {
			t.Errorf("from %s: %d", origin, got.status)
		}
	}
}

func TestCrossSite(t *testing.T) {
	for _, site := range []string{"cross-site", "same-site", "new-word"} {
		refused(t, false, "Origin", "", "Sec-Fetch-Site", site)
	}
	// No other page is told that it may ask.
	s := open(t, nil)
	got := s.ask("OPTIONS", "/ask/lay", "", "Origin", "https://evil.example", "Access-Control-Request-Method", "POST", "Access-Control-Request-Headers", "content-type")
	if got.status < 400 {
		t.Errorf("asked beforehand: %d", got.status)
	}
	for name := range got.header {
		if strings.HasPrefix(name, "Access-Control-") {
			t.Errorf("has %s: %s", name, got.header.Get(name))
		}
	}
}

// A form on another page can send these, and a browser asks nobody beforehand.
func TestWrongContentType(t *testing.T) {
	s := open(t, nil)
	for _, kind := range []string{"text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "application/jsonp", "text/plain; application/json", ""} {
		for _, e := range everything {
			if e.method != "POST" {
				continue
			}
			if got := s.ask(e.method, e.path, e.body, "Content-Type", kind); got.status != http.StatusUnsupportedMediaType {
				t.Errorf("%s as %q: %d, %q", e.path, kind, got.status, got.text)
			}
		}
	}
	if entries, _ := os.ReadDir(s.folder); len(entries) != 1 || s.onDisk("job.toml") != "# first" {
		t.Errorf("written: %v", entries)
	}
}

// Only the page's files are to be had, by their own names.
func TestUnknownPaths(t *testing.T) {
	s := open(t, nil)
	write(t, filepath.Join(s.folder, "secret.txt"), "a secret")
	for _, path := range []string{
		"/nothing", "/main.js/", "//main.js", "/./main.js", "/%2e/main.js", "/notes.go", "/page.go", "/job.toml", "/secret.txt", "/file/", "/file/job.toml", "/ask", "/ask/", "/ask/a/b",
		"/../etc/passwd", "/../../etc/passwd", "/%2e%2e/etc/passwd", "/..%2fetc%2fpasswd", "/%2e%2e%2f%2e%2e%2fetc%2fpasswd", `/..\etc\passwd`, "/..%5cetc%5cpasswd",
		"/%2fetc%2fpasswd", "//etc/passwd", "/etc/passwd", "/main.js%00", "/c:/windows/win.ini", "/file:///etc/passwd",
	} {
		if got := s.ask("GET", path, ""); got.status != http.StatusNotFound || strings.Contains(got.text, "root:") {
			t.Errorf("%s: %d, %q", path, got.status, got.text)
		}
	}
	for _, name := range []string{"secret.txt", "../job.toml", "/etc/passwd", filepath.Join(s.folder, "job.toml"), "./job.toml"} {
		for _, path := range []string{"/file?name=", "/file/changes?stamp=x&name="} {
			if got := s.ask("GET", path+strings.ReplaceAll(name, "/", "%2F"), ""); got.status != http.StatusNotFound || strings.Contains(got.text, "secret ") {
				t.Errorf("%s%s: %d, %q", path, name, got.status, got.text)
			}
		}
		if got := s.post("/file", object{"name": name, "text": "x", "stamp": ""}); got.status != http.StatusNotFound {
			t.Errorf("saved as %s: %d, %q", name, got.status, got.text)
		}
	}
	for _, e := range []struct{ method, path string }{{"POST", "/"}, {"POST", "/main.js"}, {"GET", "/ask/lay"}, {"GET", "/file-as"}, {"GET", "/file-beside"}, {"POST", "/file/changes"}, {"PUT", "/file"}, {"DELETE", "/file"}} {
		if got := s.ask(e.method, e.path, "{}"); got.status < 400 || got.status >= 500 {
			t.Errorf("%s %s: %d", e.method, e.path, got.status)
		}
	}
	for name, want := range map[string]int{"unclear": http.StatusBadRequest, "impossible": http.StatusUnprocessableEntity} {
		if got := s.post("/ask/"+name, object{}); got.status != want {
			t.Errorf("%s: %d, %q", name, got.status, got.text)
		}
	}
}

// Every answer, a refusal too, keeps the browser from running or loading anything else.
func TestPolicyOnEveryPage(t *testing.T) {
	s := open(t, nil)
	check := func(what string, got reply) {
		t.Helper()
		for name, want := range map[string]string{
			"Content-Security-Policy": "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'",
			"X-Content-Type-Options":  "nosniff", "Referrer-Policy": "no-referrer", "Cache-Control": "no-store",
			"Cross-Origin-Opener-Policy": "same-origin", "Cross-Origin-Resource-Policy": "same-origin", "Access-Control-Allow-Origin": "",
		} {
			if got.header.Get(name) != want {
				t.Errorf("%s has %s: %q", what, name, got.header.Get(name))
			}
		}
	}
	for _, e := range everything {
		check(e.path, s.ask(e.method, e.path, e.body))
		check(e.path+" from elsewhere", s.ask(e.method, e.path, e.body, "Host", "evil.example"))
	}
	check("nothing", s.ask("GET", "/nothing", ""))
	check("a wrong method", s.ask("PUT", "/file", ""))
}
