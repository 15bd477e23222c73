package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"roundlay": main})
}

// The scripts use the program as a person at a shell does.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           "../../testdata/scripts",
		UpdateScripts: os.Getenv("ROUNDLAY_UPDATE") != "",
	})
}
