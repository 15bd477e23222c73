// Package printtest lets tests ask other programs what they see on a page.
//
// [Plan] and [Plans] lay a job out once for all tests of a package. Of a finished file,
// [Trace] returns the paths of a PDF and [Letters] its letters; [PopplerPicture],
// [MuPDFPicture], [LibrsvgPicture], [BrowserPicture] and [Spooled] return its picture
// in dots. [Program] skips a test whose program is not installed.
package printtest

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// required is the setting of the environment under which a missing program
// fails a test instead of skipping it.
const required = "ROUNDLAY_TOOLS"

// Program returns the first of the named programs that is installed.
func Program(t testing.TB, names ...string) string {
	t.Helper()
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	if os.Getenv(required) == "required" {
		t.Fatalf("%s is not installed, and %s=required asks for it", names[0], required)
	}
	t.Skipf("%s is not installed; %s=required makes this fail", names[0], required)
	return ""
}

// Run runs a program and returns what it wrote on standard output and on
// standard error.
func Run(t testing.TB, program string, args ...string) (out, notes []byte) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	cmd := exec.Command(program, args...)
	cmd.Stdout, cmd.Stderr = &stdout, &stderr
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s: %v\n%s%s", filepath.Base(program), err, stdout.Bytes(), stderr.Bytes())
	}
	return stdout.Bytes(), stderr.Bytes()
}

// through runs a program and hands on what it writes on standard output as it comes.
func through(t testing.TB, read func(io.Reader) error, program string, args ...string) error {
	t.Helper()
	var stderr bytes.Buffer
	cmd := exec.Command(program, args...)
	cmd.Stderr = &stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatalf("%s: %v", filepath.Base(program), err)
	}
	wrong := read(out)
	_, _ = io.Copy(io.Discard, out) // where reading stopped early it would wait for ever
	if err := cmd.Wait(); err != nil {
		t.Fatalf("%s: %v\n%s", filepath.Base(program), err, stderr.Bytes())
	}
	return wrong
}

// File writes a file of the test's own and returns its path.
func File(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}
