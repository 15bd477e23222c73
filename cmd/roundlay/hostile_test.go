//go:build unix

package main

import (
	"bytes"
	"fmt"
	"net"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"roundlay/motifs/strokes/strokestest"
)

// What a drawing may cost the command at most. Measured: the most costly of these allocates
// 260 MB, counted with all that was freed meanwhile, and all of them take 15 s of a processor.
const (
	hostileTime   = time.Minute
	hostileMemory = 1 << 30
)

const hostileJob = `length = "mm"
blank = {floor=12, station=[{height=0, across=70, wall=8}, {height=100, across=80, wall=4}]}
layout.repeats = 4
wheel = [{name="small", edge="mitre", across=20, thick=4, angle=90}]
motif = [{kind="drawing", file="drawing.svg", wheel="small", depth=0.3, width="40 mm", height="60 mm"}]
`

// Drawings that were made to break a reader end in one line on standard error, or are laid out
// like any other, in bounded time and memory. Those that name another file, by its place or by
// an address, get nothing of it: the file is a pipe, which would be waited at, and somebody
// listens at the address.
func TestHostileDrawings(t *testing.T) {
	folder := t.TempDir()
	pipe := filepath.Join(folder, "secret.svg")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Skip("no pipes here: ", err)
	}
	address, calls := listening(t)
	job := filepath.Join(folder, "job.toml")
	if err := os.WriteFile(job, []byte(hostileJob), 0o600); err != nil {
		t.Fatal(err)
	}
	refused := 0
	for i, secret := range []string{"file://" + filepath.ToSlash(pipe), "secret.svg", "http://" + address + "/secret.svg"} {
		plain := strokestest.Hostile("")
		for name, drawing := range strokestest.Hostile(secret) {
			if i > 0 && drawing == plain[name] {
				continue // it names no file, and was read before
			}
			if err := os.WriteFile(filepath.Join(folder, "drawing.svg"), []byte(drawing), 0o600); err != nil {
				t.Fatal(err)
			}
			if checkHostile(t, fmt.Sprintf("%s (%s)", name, secret), job) == exitNotDone {
				refused++
			}
			if end, err := os.OpenFile(pipe, os.O_WRONLY|syscall.O_NONBLOCK, 0); err == nil {
				end.Close()
				t.Fatalf("%s: somebody waits at the pipe", name)
			}
		}
	}
	if n := calls.Load(); n > 0 {
		t.Errorf("%d calls at the address that a drawing names", n)
	}
	if refused < 40 {
		t.Errorf("%d drawings refused", refused)
	}
	t.Logf("%d drawings refused", refused)
}

// listening listens at an address of this machine, and counts who calls.
func listening(t *testing.T) (address string, calls *atomic.Int32) {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { l.Close() })
	calls = new(atomic.Int32)
	go func() {
		for {
			c, err := l.Accept()
			if err != nil {
				return
			}
			calls.Add(1)
			c.Close()
		}
	}()
	return l.Addr().String(), calls
}

// checkHostile checks a job whose drawing may be anything, and returns the exit status.
func checkHostile(t *testing.T, name, job string) (status int) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	start, done := time.Now(), make(chan int, 1)
	go func() { done <- run([]string{"check", job}, strings.NewReader(""), &stdout, &stderr) }()
	select {
	case status = <-done:
	case <-time.After(hostileTime):
		t.Fatalf("%s: no answer within %v", name, hostileTime)
	}
	runtime.ReadMemStats(&after)
	if used := after.TotalAlloc - before.TotalAlloc; used > hostileMemory {
		t.Errorf("%s: took %d MB", name, used>>20)
	}
	if took, used := time.Since(start), after.TotalAlloc-before.TotalAlloc; took > time.Second || used > 1<<27 {
		t.Logf("%s: %v, %d MB", name, took.Round(time.Millisecond), used>>20)
	}
	message := stderr.String()
	switch {
	case status == exitNotDone && (stdout.Len() > 0 || strings.Count(message, "\n") != 1 || len(message) > 800 ||
		!strings.HasPrefix(message, "roundlay: "+job+":5: motif[1]")):
		t.Errorf("%s: not one line on standard error alone: %q, %q", name, message, stdout.String())
	case status != exitNotDone && message != "":
		t.Errorf("%s: exit status %d, and %q", name, status, message)
	}
	return status
}
