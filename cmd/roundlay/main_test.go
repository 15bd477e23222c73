package main

import (
	"context"
	"flag"
	"io"
	"runtime/debug"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"roundlay/cmd/disk"
)

func TestMain(m *testing.M) {
	testscript.Main(roomy{m}, map[string]func(){"roundlay": main, "measured": measured})
}

// roomy runs tests with a heap that is collected when it has grown to five times what lives:
// they are quicker so. Benchmarks, and the program where a test starts it, collect as always.
type roomy struct{ *testing.M }

func (r roomy) Run() int {
	flag.Parse()
	if flag.Lookup("test.bench").Value.String() == "" {
		debug.SetGCPercent(400)
	}
	return r.M.Run()
}

// run runs a command to its end.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	return start(context.Background(), disk.Real{}, args, stdin, stdout, stderr)
}
