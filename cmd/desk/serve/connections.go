package serve

import (
	"net"
	"sync"
)

// limited returns a listener that has at most so many connections open at once. More of
// them wait outside until one closes.
func limited(l net.Listener, most int) net.Listener {
	return &limitedListener{Listener: l, open: make(chan struct{}, most), closed: make(chan struct{})}
}

type limitedListener struct {
	net.Listener
	open   chan struct{}
	closed chan struct{}
	once   sync.Once
}

func (l *limitedListener) Accept() (net.Conn, error) {
	select {
	case l.open <- struct{}{}:
	case <-l.closed:
		return nil, net.ErrClosed
	}
	c, err := l.Listener.Accept()
	if err != nil {
		<-l.open
		return nil, err
	}
	return &limitedConn{Conn: c, free: sync.OnceFunc(func() { <-l.open })}, nil
}

func (l *limitedListener) Close() error {
	l.once.Do(func() { close(l.closed) })
	return l.Listener.Close()
}

type limitedConn struct {
	net.Conn
	free func()
}

func (c *limitedConn) Close() error {
	err := c.Conn.Close()
	c.free()
	return err
}
