//go:build !windows

package main

// ownConsole is for Windows only: elsewhere no console is opened for a program.
func ownConsole() bool { return false }
