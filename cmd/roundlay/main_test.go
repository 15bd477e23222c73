package main

import (
	"context"
	"io"
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"roundlay/cmd/disk"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"roundlay": main})
}

// run runs a command to its end.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	return start(context.Background(), disk.Real{}, args, stdin, stdout, stderr)
}

// The scripts use the program as a person at a shell does.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           "../../testdata/scripts",
		UpdateScripts: os.Getenv("ROUNDLAY_UPDATE") != "",
	})
}
