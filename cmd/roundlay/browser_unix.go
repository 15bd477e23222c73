//go:build unix

package main

import (
	"os/exec"
	"syscall"
)

// apart has a program run in a session of its own: a browser that Ctrl-C is not meant for,
// and that has no terminal to take.
func apart(c *exec.Cmd) { c.SysProcAttr = &syscall.SysProcAttr{Setsid: true} }
