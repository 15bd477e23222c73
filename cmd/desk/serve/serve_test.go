package serve

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"roundlay/cmd/desk"
	"roundlay/cmd/disk"
)

// patience is how long a test waits for what should come at once: the machine may be busy.
const patience = 20 * time.Second

// engine answers as a function does.
type engine func(ctx context.Context, name string, body []byte) (*desk.Reply, error)

func (e engine) Answer(ctx context.Context, name string, body []byte) (*desk.Reply, error) {
	return e(ctx, name, body)
}

// site is a running server, as a test asks it.
type site struct {
	t       *testing.T
	server  *Server
	address string // without the last slash
	host    string
	folder  string
	stop    func() // and wait until it has stopped
}

// open starts a server of a job file, with the page's files made up, and an engine that
// echoes.
func open(t *testing.T, change func(*Config)) *site {
	t.Helper()
	folder := t.TempDir()
	c := Config{
		Listen: "127.0.0.1:0",
		Page:   fstest.MapFS{"index.html": {Data: []byte("the page")}, "main.js": {Data: []byte("// a script")}, "notes.go": {Data: []byte("package x")}},
		Engine: engine(func(_ context.Context, name string, body []byte) (*desk.Reply, error) {
			switch name {
			case "unclear":
				return nil, &desk.BadRequest{Why: "no such thing"}
			case "impossible":
				return nil, errors.New("not on this glass")
			}
			return &desk.Reply{ContentType: "application/json", Data: body}, nil
		}),
		Job: filepath.Join(folder, "job.toml"), Demo: []byte("# the demo"), Folder: folder, Disk: disk.Real{},
	}
	write(t, c.Job, "# first")
	if change != nil {
		change(&c)
	}
	server, err := Open(c)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- server.Run(ctx) }()
	s := &site{t: t, server: server, folder: folder, host: server.listener.Addr().String()}
	s.address = "http://" + s.host
	s.stop = func() {
		cancel()
		if err := <-ended; err != nil {
			t.Errorf("ends with %v", err)
		}
		ended <- nil
	}
	t.Cleanup(s.stop)
	return s
}

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o640); err != nil {
		t.Fatal(err)
	}
}

func (s *site) onDisk(name string) string {
	s.t.Helper()
	data, err := os.ReadFile(filepath.Join(s.folder, name))
	if err != nil {
		s.t.Error(err)
	}
	return string(data)
}

// reply is an answer that has been read.
type reply struct {
	status int
	header http.Header
	text   string
}

func (r reply) json(t *testing.T) (v struct {
	Name, Text, Stamp, Error string
	Gone, Demo               bool
}) {
	t.Helper()
	if err := json.Unmarshal([]byte(r.text), &v); err != nil || r.header.Get("Content-Type") != "application/json" {
		t.Errorf("%q is no JSON: %v", r.text, err)
	}
	return v
}

// ask sends a request that the page would send, but for some headers; Host is one of them.
func (s *site) ask(method, path, body string, headers ...string) reply {
	s.t.Helper()
	r, err := http.NewRequest(method, s.address+path, strings.NewReader(body))
	if err != nil {
		s.t.Fatal(err)
	}
	if method == http.MethodPost {
		r.Header.Set("Content-Type", "application/json")
		r.Header.Set("Origin", s.address)
		r.Header.Set("Sec-Fetch-Site", "same-origin")
	}
	for i := 0; i < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
		if headers[i+1] == "" {
			r.Header.Del(headers[i])
		}
		if headers[i] == "Host" {
			r.Host = headers[i+1]
		}
	}
	client := http.Client{
		Timeout:       patience,
		Transport:     &http.Transport{DisableKeepAlives: true},
		CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
	}
	got, err := client.Do(r)
	if err != nil {
		s.t.Fatal(err)
	}
	defer got.Body.Close()
	data, err := io.ReadAll(got.Body)
	if err != nil {
		s.t.Fatal(err)
	}
	return reply{got.StatusCode, got.Header, string(data)}
}

// post sends a value.
func (s *site) post(path string, value any) reply {
	s.t.Helper()
	body, err := json.Marshal(value)
	if err != nil {
		s.t.Fatal(err)
	}
	return s.ask(http.MethodPost, path, string(body))
}

type object map[string]any
