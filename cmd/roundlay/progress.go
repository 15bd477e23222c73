package main

import (
	"fmt"
	"io"
	"os"
	"sync"

	"golang.org/x/term"

	"roundlay/pattern"
)

// progress is a line on standard error that tells how far the blanks of a set
// have come. It is for people: it shows on a terminal only, and goes when all is
// done.
type progress struct {
	to    io.Writer // nil where nobody watches
	what  string
	all   int
	mu    sync.Mutex
	count int
}

// progress begins to tell how far some blanks have come.
func (s *session) progress(what string, all int) *progress {
	p := &progress{what: what, all: all}
	if f, ok := s.stderr.(*os.File); ok && all > 1 && term.IsTerminal(int(f.Fd())) {
		p.to = f
	}
	s.writing.Lock()
	s.counting = p // to be taken away where the run is stopped
	s.writing.Unlock()
	return p
}

// The line is written over itself; what was longer is erased (ECMA-48, EL).
const home, erase = "\r", "\x1b[K"

// step tells that a blank is done. Several may be at once.
func (p *progress) step(plan *pattern.Plan) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.count++; p.to != nil {
		fmt.Fprintf(p.to, "%s%s: %d of %d, %s%s", home, p.what, p.count, p.all, oneLine(plan.Blank.Name), erase)
	}
}

// done takes the line away, for good.
func (p *progress) done() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.to != nil {
		fmt.Fprint(p.to, home+erase)
	}
	p.to = nil
}
