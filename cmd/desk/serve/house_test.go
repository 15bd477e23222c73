package serve

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"roundlay/cmd/desk"
	"roundlay/cmd/desk/page"
	"roundlay/cmd/disk"
	"roundlay/pattern/job"
)

// house is a server with a job on disk, a drawing beside it, and a folder around it that is none
// of its business. Links lead there.
type house struct {
	server         *Server
	outer, folder  string
	secret, cookie string            // "" without a token
	before         map[string]string // what was on disk, by paths from outside
	sent           bytes.Buffer      // what has been read of the last request's body
}

const outsideText = "nobody outside may read this"

func newHouse(t *testing.T, token bool) *house {
	h := &house{outer: t.TempDir()}
	h.folder = filepath.Join(h.outer, "jobs")
	if err := os.Mkdir(h.folder, 0o755); err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(h.outer, "outer.toml"), outsideText)
	write(t, filepath.Join(h.folder, "job.toml"), small)
	write(t, filepath.Join(h.folder, "blade.svg"), "<svg/>")
	for _, name := range []string{"link.toml", "link.svg"} {
		if err := os.Symlink(filepath.Join(h.outer, "outer.toml"), filepath.Join(h.folder, name)); err != nil {
			t.Skip(err)
		}
	}
	h.before = h.onDisk(t)
	engine := desk.New()
	engine.Beside = disk.Beside(h.folder, job.MaxBeside)
	server, err := Open(Config{
		Listen: "127.0.0.1:0", Token: token, Page: page.Files, Engine: engine,
		Job: filepath.Join(h.folder, "job.toml"), Folder: h.folder, Disk: disk.Real{},
		Bounds: Bounds{FastTime: askedTime, SlowTime: askedTime, Wait: 20 * time.Millisecond, Look: 5 * time.Millisecond},
	})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { server.listener.Close() })
	h.server = server
	if token {
		_, h.secret, _ = strings.Cut(server.Address(), "?token=")
		h.cookie = newToken(server.listener.Addr().(*net.TCPAddr).Port).cookie
	}
	return h
}

// onDisk is what is in the house and in its folder: texts of files, and "" for links and folders.
func (h *house) onDisk(t *testing.T) map[string]string {
	all := map[string]string{}
	err := filepath.WalkDir(h.outer, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, err := filepath.Rel(h.outer, path)
		if err == nil && d.Type().IsRegular() {
			var data []byte
			data, err = os.ReadFile(path)
			all[filepath.ToSlash(name)] = string(data)
		} else {
			all[filepath.ToSlash(name)] = ""
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// request is what net/http makes of a request, nil if it is none.
func (h *house) request(method, target, headers, body string) *http.Request {
	fill := strings.NewReplacer("@", h.server.listener.Addr().String(), "$", stampOf([]byte(small)))
	var raw strings.Builder
	fmt.Fprintf(&raw, "%s %s HTTP/1.1\r\n", method, fill.Replace(target))
	for line := range strings.SplitSeq(fill.Replace(headers), "\n") {
		fmt.Fprintf(&raw, "%s\r\n", line)
	}
	if h.secret != "" {
		fmt.Fprintf(&raw, "Cookie: %s=%s\r\n", h.cookie, h.secret)
	}
	body = fill.Replace(body)
	if lower := strings.ToLower(headers); !strings.Contains(lower, "content-length") && !strings.Contains(lower, "transfer-encoding") {
		fmt.Fprintf(&raw, "Content-Length: %d\r\n", len(body))
	}
	raw.WriteString("\r\n" + body)
	r, err := http.ReadRequest(bufio.NewReader(strings.NewReader(raw.String())))
	if err != nil {
		return nil
	}
	r.Body = io.NopCloser(io.TeeReader(r.Body, &h.sent))
	return r
}
