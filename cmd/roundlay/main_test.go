package main

import (
	"context"
	"io"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"roundlay/cmd/disk"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"roundlay": main, "measured": measured})
}

// run runs a command to its end.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	return start(context.Background(), disk.Real{}, args, stdin, stdout, stderr)
}
