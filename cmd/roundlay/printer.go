package main

import (
	"io"
	"sync"
)

// printer is standard output. It remembers the first thing that could not be
// printed, so that no command has to ask after each line.
type printer struct {
	to  io.Writer
	mu  sync.Mutex
	err error
}

func (p *printer) Write(data []byte) (int, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	n, err := p.to.Write(data)
	if p.err == nil {
		p.err = err
	}
	return n, err
}

// failed returns why something could not be printed, nil if everything was.
func (p *printer) failed() error {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.err
}
