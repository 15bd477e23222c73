package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"roundlay/cmd/disk"
)

// badDisk is the disk of this machine until something on it fails.
type badDisk struct {
	disk.Real
	create, write, rename int  // which of these fails, from 1; 0 for none
	onwards               bool // whether those after it fail too
	noLinks               bool
	onCreate, onRename    func()
}

var errFull = &fs.PathError{Op: "write", Path: "/hidden/.roundlay-x", Err: syscall.ENOSPC}

// failing counts down to the one that fails.
func (d *badDisk) failing(left *int) bool {
	if *left == 0 {
		return false
	}
	*left--
	if *left == 0 && d.onwards {
		*left = 1
		return true
	}
	return *left == 0
}

func (d *badDisk) Create(name string, perm fs.FileMode) (disk.File, error) {
	if d.onCreate != nil {
		d.onCreate()
	}
	if d.failing(&d.create) {
		return nil, errFull
	}
	f, err := d.Real.Create(name, perm)
	if d.failing(&d.write) {
		return fullFile{f}, err
	}
	return f, err
}

// fullFile takes a few bytes and then no more.
type fullFile struct{ disk.File }

func (f fullFile) Write(data []byte) (int, error) {
	n, _ := f.File.Write(data[:min(7, len(data))])
	return n, errFull
}

func (d *badDisk) Link(from, to string) error {
	if d.noLinks {
		return errors.ErrUnsupported
	}
	return d.Real.Link(from, to)
}

func (d *badDisk) Rename(from, to string) error {
	if d.onRename != nil {
		d.onRename()
	}
	if d.failing(&d.rename) {
		return &os.LinkError{Op: "rename", Old: from, New: to, Err: syscall.EIO}
	}
	return d.Real.Rename(from, to)
}

// twoFiles is a folder with a job that is to be overwritten by --write, and an
// older sheet.
func twoFiles(t *testing.T) (dir string, args []string) {
	t.Helper()
	dir = t.TempDir()
	job, sheet := filepath.Join(dir, "job.toml"), filepath.Join(dir, "sheet.pdf")
	for name, data := range map[string]string{job: twoBlanks, sheet: "an older sheet"} {
		if err := os.WriteFile(name, []byte(data), 0o640); err != nil {
			t.Fatal(err)
		}
	}
	return dir, []string{"sheet", job, "--blank", "a", "--took", "10", "--write", job, "--out", sheet, "--force"}
}

// contents reads a folder, hidden files and folders included.
func contents(t *testing.T, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || path == dir {
			return err
		}
		data := []byte("a folder")
		if !entry.IsDir() {
			data, err = os.ReadFile(path)
		}
		all[strings.TrimPrefix(path, dir)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func same(a, b map[string]string) bool {
	for name := range a {
		if a[name] != b[name] {
			return false
		}
	}
	return len(a) == len(b)
}

// Whatever fails and wherever, a batch that overwrites two files leaves both as
// they were, and nothing besides; the message names the file that was asked for.
func TestFailHalfWay(t *testing.T) {
	for name, d := range map[string]*badDisk{
		"first create": {create: 1}, "second create": {create: 2},
		"first write": {write: 1}, "second write": {write: 2},
		"first rename": {rename: 1}, "second rename": {rename: 2},
		"no links, first rename":  {rename: 2, noLinks: true}, // the first moves the older file aside
		"no links, second rename": {rename: 3, noLinks: true},
		"no links, aside":         {rename: 1, noLinks: true},
	} {
		t.Run(name, func(t *testing.T) {
			dir, args := twoFiles(t)
			before := contents(t, dir)
			var stdout, stderr bytes.Buffer
			if status := start(t.Context(), d, args, nil, &stdout, &stderr); status != exitNotDone {
				t.Errorf("status %d", status)
			}
			if after := contents(t, dir); !same(before, after) {
				t.Errorf("left behind: %q", after)
			}
			told := stderr.String()
			if stdout.Len() > 0 || strings.Count(told, "\n") != 1 || strings.Contains(told, ".roundlay-") ||
				!strings.Contains(told, "job.toml can't be") && !strings.Contains(told, "sheet.pdf can't be") {
				t.Errorf("told %q and %q", stdout.String(), told)
			}
		})
	}
	dir, args := twoFiles(t)
	before := contents(t, dir)
	if status := start(t.Context(), &badDisk{noLinks: true}, args, nil, new(bytes.Buffer), new(bytes.Buffer)); status != exitClear {
		t.Errorf("status %d with nothing failing", status)
	}
	if after := contents(t, dir); len(after) != 2 || after["/job.toml"] == before["/job.toml"] || after["/sheet.pdf"] == before["/sheet.pdf"] {
		t.Errorf("with nothing failing, left %d files", len(after))
	}
	if info, err := os.Stat(filepath.Join(dir, "job.toml")); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("the job's permissions are %v, %v", info, err)
	}
}

// Where even bringing back fails, the older file is still there, and the message
// says where.
func TestNothingLost(t *testing.T) {
	dir, args := twoFiles(t)
	before := contents(t, dir)
	var stderr bytes.Buffer
	if status := start(t.Context(), &badDisk{rename: 2, onwards: true}, args, nil, new(bytes.Buffer), &stderr); status != exitNotDone {
		t.Errorf("status %d", status)
	}
	_, kept, told := strings.Cut(strings.TrimSpace(stderr.String()), "; what "+filepath.Join(dir, "job.toml")+" was is kept as ")
	data, err := os.ReadFile(kept)
	if !told || err != nil || string(data) != before["/job.toml"] {
		t.Errorf("%q: %v", stderr.String(), err)
	}
}

// Folders that were made for files that could not be written go again; those that
// were there, or have something in them, stay.
func TestEmptyFolders(t *testing.T) {
	dir := t.TempDir()
	for _, d := range []*badDisk{{create: 1}, {write: 2}, {rename: 2, noLinks: true}} {
		var stderr bytes.Buffer
		if status := start(t.Context(), d, []string{"wrap", "--out", filepath.Join(dir, "new", "newer")}, nil, new(bytes.Buffer), &stderr); status != exitNotDone {
			t.Errorf("status %d", status)
		}
		if left := contents(t, dir); len(left) > 0 {
			t.Errorf("%s left %q", stderr.String(), left)
		}
	}
}

// A file that comes to its place while papers are written is not overwritten without --force,
// whether the file system has second names or not; of the papers nothing is left.
func TestComesMeanwhile(t *testing.T) {
	for _, noLinks := range []bool{false, true} {
		dir, _ := twoFiles(t)
		theirs := filepath.Join(dir, "two-b-wrap.pdf")
		before := contents(t, dir)
		before["/two-b-wrap.pdf"] = "theirs"
		d := &badDisk{noLinks: noLinks, onCreate: func() {
			if err := os.WriteFile(theirs, []byte("theirs"), 0o600); err != nil {
				t.Error(err)
			}
		}}
		var stderr bytes.Buffer
		status := start(t.Context(), d, []string{"wrap", filepath.Join(dir, "job.toml"), "--out", dir}, nil, new(bytes.Buffer), &stderr)
		told := stderr.String()
		if status != exitNotDone || !strings.HasPrefix(told, "roundlay: "+theirs+" can't be written: ") || !strings.HasSuffix(told, "; --force overwrites it\n") {
			t.Errorf("status %d, told %q", status, told)
		}
		if left := contents(t, dir); !same(left, before) {
			t.Errorf("left %q", slices.Sorted(maps.Keys(left)))
		}
	}
}

// A set that is stopped while it is written leaves nothing of it; once the files
// go to their places, all of them get there.
func TestStopWhileWriting(t *testing.T) {
	for _, written := range []bool{false, true} {
		dir, args := twoFiles(t)
		before := contents(t, dir)
		ctx, stop := context.WithCancel(t.Context())
		var stderr bytes.Buffer
		d := &badDisk{onCreate: stop}
		if written {
			d = &badDisk{onRename: stop}
		}
		status := start(ctx, d, args, nil, new(bytes.Buffer), &stderr)
		left := contents(t, dir)
		if !written && (status != exitNotDone || !same(left, before) || stderr.String() != "roundlay: stopped: nothing was written\n") {
			t.Errorf("status %d, %q, %q", status, stderr.String(), left)
		}
		if written && (len(left) != 2 || left["/job.toml"] == before["/job.toml"] || left["/sheet.pdf"] == before["/sheet.pdf"]) {
			t.Errorf("status %d, %q, %q", status, stderr.String(), left)
		}
		if written && status != exitClear && !strings.HasPrefix(stderr.String(), "roundlay: stopped, when all of this had been written: "+dir) {
			t.Errorf("status %d, %q", status, stderr.String())
		}
	}
}

// Work that waits for something is left behind at once.
func TestStopWhileWorking(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	started := make(chan bool)
	go func() {
		<-started
		stop()
	}()
	var stdout, stderr bytes.Buffer
	status := start(ctx, disk.Real{}, []string{"check", "-"}, endless(started), &stdout, &stderr)
	if status != exitNotDone || stderr.String() != "roundlay: stopped: nothing was written\n" || stdout.Len() > 0 {
		t.Errorf("status %d, %q", status, stderr.String())
	}
}

// Work that ends by itself when the run is stopped is reported like any other, however the
// two meet: a hundred times, as chance has it.
func TestStopWhileSearching(t *testing.T) {
	for range 100 {
		ctx, stop := context.WithCancel(t.Context())
		s := &session{ctx: ctx}
		err := s.heed(func() error {
			stop()
			return fmt.Errorf("a job: %w", ctx.Err())
		})
		if !errors.Is(err, errStopped) {
			t.Fatalf("ends with %v", err)
		}
	}
}

// endless is a job that never comes.
type endless chan bool

func (e endless) Read([]byte) (int, error) {
	close(e)
	select {}
}

// full is standard output that takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) {
	return 0, &fs.PathError{Op: "write", Path: "/dev/stdout", Err: syscall.ENOSPC}
}

// What can't be printed is not done, though the file be written.
func TestNotPrinted(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, args := range [][]string{{"new", "a.toml"}, {"new"}, {"check"}, {"help"}, {"motifs"}, {"motifs", "--help"}, {"plan", "--csv"}, {"--version"}} {
		var stderr bytes.Buffer
		if status := run(args, nil, full{}, &stderr); status != exitNotDone || !strings.HasPrefix(stderr.String(), "roundlay: standard output: no space left on device") {
			t.Errorf("%q: status %d, %q", args, status, stderr.String())
		}
	}
	if _, err := os.Stat("a.toml"); err != nil {
		t.Error(err)
	}
}

// The signal itself: Ctrl-C while a job is read.
func TestInterrupt(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no program can press Ctrl-C for another there")
	}
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := &exec.Cmd{Path: program, Args: []string{"roundlay", "check", "-"}} // as TestMain has it
	stdin, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	// More than a pipe holds: once it is written, the program is reading.
	if _, err := stdin.Write(bytes.Repeat([]byte("# a job that goes on\n"), 20000)); err != nil {
		t.Fatal(err)
	}
	cmd.Process.Signal(os.Interrupt)
	killed := time.AfterFunc(time.Minute, func() { cmd.Process.Kill() })
	defer killed.Stop()
	cmd.Wait()
	if cmd.ProcessState.ExitCode() != exitNotDone || stderr.String() != "roundlay: stopped: nothing was written\n" {
		t.Errorf("%v, %q", cmd.ProcessState, stderr.String())
	}
}
