package serve

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"roundlay/cmd/desk"
)

const (
	askedTime = time.Second // what the fuzzed server gives an answer
	// What an answer may take in all, on a busy machine that is traced, and what the process may
	// have taken of it by then.
	requestTime   = time.Minute
	requestMemory = 800 << 20
)

// small is a job that is laid out in no time.
const small = "length = \"mm\"\nblank = {name=\"tumbler\", floor=12, station=[{height=0, across=66, wall=9}, {height=60, across=70, wall=3}]}\nlayout.repeats = 4\n" +
	"wheel = [{name=\"small\", edge=\"mitre\", across=40, thick=4, angle=90}]\nmotif = [{kind=\"fan\", wheel=\"small\", depth=0.5, rays=3, width=0.6, height=0.6}]\n"

// FuzzRequest sends anything to the page's server, as net/http hands it on: it is answered in
// time, in words where it is refused, and on the disk there is what was asked for and nothing else.
// In what is asked, @ is the server's address and $ the stamp of the job.
func FuzzRequest(f *testing.F) {
	own := "Host: @\nContent-Type: application/json\nOrigin: http://@\nSec-Fetch-Site: same-origin"
	for _, e := range everything {
		f.Add(false, e.method, e.path, own, strings.ReplaceAll(e.body, stampOf([]byte("# first")), "$"))
	}
	text, _ := json.Marshal(small)
	for _, name := range desk.Names() {
		f.Add(true, "POST", "/ask/"+name, own, `{"job": `+string(text)+`}`)
	}
	for _, c := range [][4]string{
		{"GET", "/?token=0", "Host: @", ""}, {"GET", "/", "Host: @\nCookie: roundlay-1=0", ""}, {"HEAD", "/main.js", "Host: @", ""}, {"OPTIONS", "*", "Host: @", ""},
		{"GET", "/file?name=link.toml", own, ""}, {"GET", "/file/changes?stamp=$&beside=blade.svg&beside=../x.svg&seen=1", own, ""}, {"GET", "/..%2fouter.toml", own, ""},
		{"POST", "/file", own, `{"name": "job.toml", "text": "# new", "stamp": "$"}`}, {"POST", "/file", own, `{"name": 7, "text": "# new", "stamp": "$"}`}, {"POST", "/file", own, `{"text": "\u0000\ud800", "stamp": "$"} {}`},
		{"POST", "/file-as", own, `{"name": "../x.toml", "text": "# x"}`}, {"POST", "/file-as", own, `{"name": "link.toml", "text": "# x"}`}, {"POST", "/file-as", own, `{"name": "` + strings.Repeat(" ", 3000) + `"}`},
		{"POST", "/file-beside", own, `{"name": "` + strings.Repeat("x", 3000) + `", "text": ""}`}, {"POST", "/file-beside", own, `{"name": "blade.svg", "text": "<svg/>"}`}, {"POST", "/file-beside", own, `{"nome": "a.svg"}`},
		{"POST", "/ask/" + strings.Repeat("%00", 900), own, "["}, {"POST", "/ask/lay", own, "null"}, {"POST", "/ask/download", own, `{"what": "wrap", "ending": "pdf", "job": ` + string(text) + `}`},
		{"POST", "/ask/lay", "Host: @\nContent-Type: text/plain", "{}"}, {"POST", "/ask/lay", own + "\nTransfer-Encoding: chunked", "2\r\n{}\r\n0\r\n\r\n"}, {"POST", "/ask/lay", own + "\nContent-Length: 90", "{}"},
		{"PUT", "/file", own, "{}"}, {"DELETE", "/", "Host: @", ""}, {"CONNECT", "@", "Host: @", ""}, {"GET", "http://elsewhere.example/", "Host: @", ""}, {"GET", "/%zz", "Host: @", ""},
	} {
		f.Add(false, c[0], c[1], c[2], c[3])
	}
	f.Fuzz(func(t *testing.T, token bool, method, target, headers, body string) {
		h := newHouse(t, token)
		r := h.request(method, target, headers, body)
		if r == nil {
			t.Skip("net/http answers that itself")
		}
		began := time.Now()
		w := httptest.NewRecorder()
		h.server.http.Handler.ServeHTTP(w, r)
		var memory runtime.MemStats
		if runtime.ReadMemStats(&memory); memory.Sys > requestMemory || time.Since(began) > requestTime {
			t.Errorf("%d MiB, after %v", memory.Sys>>20, time.Since(began))
		}
		h.answered(t, r, w)
		h.left(t, r, w)
	})
}

// answered checks an answer: what is refused is refused in words for a person, and nothing is
// said of what lies outside or of the machine.
func (h *house) answered(t *testing.T, r *http.Request, w *httptest.ResponseRecorder) {
	body := w.Body.String()
	if asked := r.URL.String() + h.sent.String(); !strings.Contains(asked, outsideText) && strings.Contains(body, outsideText) || !strings.Contains(asked, h.outer) && strings.Contains(body, h.outer) {
		t.Errorf("it tells what is outside: %.300q", body)
	}
	if w.Code < 400 {
		return
	}
	words := strings.TrimSuffix(body, "\n")
	if w.Header().Get("Content-Type") == "application/json" {
		var said struct{ Error string }
		if err := json.Unmarshal([]byte(body), &said); err != nil {
			t.Errorf("%d: %v in %.300q", w.Code, err, body)
		}
		words = said.Error
	}
	if w.Code >= 500 && !strings.Contains(words, "took longer than") {
		t.Errorf("%d: %.300q", w.Code, words)
	}
	if words == "" || len(words) > 1000 || !utf8.ValidString(body) || strings.ContainsFunc(words, func(r rune) bool { return !unicode.IsPrint(r) }) {
		t.Errorf("%d: no line of words: %.1500q", w.Code, words)
	}
	for _, inner := range []string{"json:", "Go ", "invalid character '", "strconv", "runtime error", "http:", ".go:", "0x"} {
		if strings.Contains(words, inner) && !strings.Contains(r.URL.String()+h.sent.String(), inner) {
			t.Errorf("%d: no words for a person: %.300q", w.Code, words)
		}
	}
}

// left checks what is on the disk after a request: what was saved is whole, in its place, and the
// rest is as it was.
func (h *house) left(t *testing.T, r *http.Request, w *httptest.ResponseRecorder) {
	want := h.before
	if w.Code == http.StatusOK && r.Method == http.MethodPost && strings.HasPrefix(r.URL.Path, "/file") {
		var given, answer struct{ Name, Text string }
		if err := json.Unmarshal(h.sent.Bytes(), &given); err != nil {
			t.Fatalf("%v in %q, which was saved", err, h.sent.Bytes())
		}
		if err := json.Unmarshal(w.Body.Bytes(), &answer); err != nil {
			t.Fatal(err)
		}
		name, ending := answer.Name, filepath.Ext(answer.Name)
		switch was, there := want["jobs/"+name]; {
		case r.URL.Path == "/file" && (given.Name == "" || given.Name == "job.toml"):
			name = "job.toml"
		case r.URL.Path == "/file-as" && !there && strings.EqualFold(ending, ".toml"):
		case r.URL.Path == "/file-beside" && (!there || was == given.Text) && (strings.EqualFold(ending, ".toml") || strings.EqualFold(ending, ".svg")):
		default:
			t.Errorf("%s saved %q as %q", r.URL.Path, given.Name, name)
		}
		want["jobs/"+name] = given.Text
	}
	if diff := cmp.Diff(want, h.onDisk(t)); diff != "" {
		t.Errorf("%s %s leaves (wanted -, there is +):\n%s", r.Method, r.URL, diff)
	}
}
