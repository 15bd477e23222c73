package main

import (
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// The scripts use the program as a person at a shell does. "exec roundlay" is a process of its
// own: so are the commands of flags, files, open and once that show what only a process does,
// and all that read standard input. "call roundlay" is the same command within this process, for
// starting one takes as long as what most of them do.
func TestScripts(t *testing.T) {
	scripts, err := filepath.Abs("../../testdata/scripts")
	if err != nil {
		t.Fatal(err)
	}
	var one sync.Mutex // held by a command: a process has one working folder
	testscript.Run(t, testscript.Params{
		Dir:           scripts,
		UpdateScripts: os.Getenv("ROUNDLAY_UPDATE") != "",
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"call": func(ts *testscript.TestScript, fails bool, args []string) {
				one.Lock()
				defer one.Unlock()
				runWithin(ts, fails, args)
			},
		},
	})
}

// runWithin runs a command in the script's folder.
func runWithin(ts *testscript.TestScript, fails bool, args []string) {
	if args[0] != "roundlay" {
		ts.Fatalf("only roundlay can be called")
	}
	back, err := os.Getwd()
	ts.Check(err)
	ts.Check(os.Chdir(ts.MkAbs(".")))
	defer func() { ts.Check(os.Chdir(back)) }()
	status := run(args[1:], strings.NewReader(""), ts.Stdout(), ts.Stderr())
	if failed := status != exitClear; failed != fails {
		ts.Fatalf("exit status %d", status)
	}
}
