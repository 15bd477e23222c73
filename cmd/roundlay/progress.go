package main

import (
	"fmt"
	"io"
	"os"
	"sync"

	"golang.org/x/term"

	"roundlay/pattern"
)

// progress is a line on standard error that shows how many blanks of a set are done.
// It is for people: it shows on a terminal only, and disappears when all are done.
type progress struct {
	to    io.Writer // nil where nobody watches
	what  string
	all   int
	mu    sync.Mutex
	count int
}

// progress begins such a line.
func (s *session) progress(what string, all int) *progress {
	p := &progress{what: what, all: all}
	if r, ok := s.stderr.(*remarks); ok && all > 1 {
		if f, ok := r.to.(*os.File); ok && term.IsTerminal(int(f.Fd())) {
			p.to = f
		}
	}
	s.writing.Lock()
	s.counting = p // to be taken away where the run is stopped
	s.writing.Unlock()
	return p
}

// The line is written over itself; what was longer is erased (ECMA-48, EL).
const home, erase = "\r", "\x1b[K"

// step reports that a blank is done. It may be called from several goroutines.
func (p *progress) step(plan *pattern.Plan) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.count++; p.to != nil {
		fmt.Fprintf(p.to, "%s%s: %d of %d, %s%s", home, p.what, p.count, p.all, oneLine(plan.Blank.Name), erase)
	}
}

// done removes the line for good.
func (p *progress) done() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.to != nil {
		fmt.Fprint(p.to, home+erase)
	}
	p.to = nil
}
