package main

import (
	"fmt"
	"io"
	"os/exec"
	"runtime"
)

// browse opens an address in the person's browser. If that fails, it says so: the address
// has been printed, and can be opened by hand.
func browse(address string, stderr io.Writer) error {
	program := browserCommand(runtime.GOOS)
	c := exec.Command(program[0], append(program[1:], address)...)
	apart(c)
	err := c.Run()
	if err != nil {
		fmt.Fprintf(stderr, "roundlay: no browser could be opened (%s: %s): open the address in one yourself\n", program[0], oneLine(err.Error()))
	}
	return err
}

// browserCommand is what opens an address on a system.
func browserCommand(system string) []string {
	switch system {
	case "windows":
		return []string{"rundll32", "url.dll,FileProtocolHandler"}
	case "darwin":
		return []string{"open"}
	}
	return []string{"xdg-open"}
}
