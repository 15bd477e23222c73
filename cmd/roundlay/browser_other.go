//go:build !unix

package main

import "os/exec"

// apart does nothing where Ctrl-C doesn't reach a browser that was opened.
func apart(*exec.Cmd) {}
