package main

import (
	"fmt"
	"io"
	"os"
	"regexp"
	"strconv"
)

// measured is the program as a process of its own that says, on an extra stream, how
// much memory it took at most. Linux counts into what a parent is told (ru_maxrss) the memory of
// the parent itself, from before the program was loaded; VmHWM is the program's alone.
func measured() {
	collectLate()
	status := run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	if about, err := os.ReadFile("/proc/self/status"); err == nil {
		if found := regexp.MustCompile(`VmHWM:\s+(\d+) kB`).FindSubmatch(about); found != nil {
			fmt.Fprintf(os.NewFile(3, "peak"), "%s", found[1])
		}
	}
	os.Exit(status)
}

// peak reads what measured has said, in KiB: 0 where the system doesn't tell, or the program
// didn't come to its end.
func peak(from io.Reader) int {
	text, _ := io.ReadAll(from)
	n, _ := strconv.Atoi(string(text))
	return n
}
