package serve

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"

	"roundlay/cmd/desk"
	"roundlay/pattern/job"
)

// A body that says how large it is, and one that doesn't.
func TestHugeBody(t *testing.T) {
	s := open(t, nil)
	huge := `{"text":"` + strings.Repeat("#", 3*job.MaxBytes) + `","stamp":""}`
	told := 0
	for _, path := range []string{"/ask/lay", "/ask/cures", "/file", "/file-as", "/file-beside"} {
		for _, length := range []int64{int64(len(huge)), -1} {
			r, err := http.NewRequest("POST", s.address+path, io.NopCloser(strings.NewReader(huge)))
			if err != nil {
				t.Fatal(err)
			}
			r.ContentLength = length
			r.Header.Set("Content-Type", "application/json")
			got, err := http.DefaultClient.Do(r)
			if err != nil {
				continue // cut off before all of it was sent
			}
			got.Body.Close()
			told++
			if got.StatusCode != http.StatusRequestEntityTooLarge {
				t.Errorf("%s with length %d: %s", path, length, got.Status)
			}
		}
	}
	// A text that is too large for a job file, in a body that isn't too large.
	for _, path := range []string{"/file", "/file-as"} {
		if got := s.post(path, object{"name": "job.toml", "text": strings.Repeat("#", job.MaxBytes+1)}); got.status != http.StatusRequestEntityTooLarge {
			t.Errorf("%s: %d, %q", path, got.status, got.text)
		}
	}
	if told == 0 {
		t.Error("it is said nowhere")
	}
	r, err := http.NewRequest("GET", s.address, nil)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("X-Long", strings.Repeat("x", 128<<10))
	if got, err := http.DefaultClient.Do(r); err == nil && got.StatusCode != http.StatusRequestHeaderFieldsTooLarge {
		t.Errorf("a head of 128 KiB: %s", got.Status)
	}
	if got := s.ask("POST", "/ask/lay", strings.Repeat(" ", 3*job.MaxBytes)); got.status != http.StatusOK {
		t.Errorf("the largest body: %d, %q", got.status, got.text)
	}
}

// A connection that sends a byte now and then is cut off, in the head as in the body,
// and so is one that asks nothing; the page is answered all the while.
func TestSlowClient(t *testing.T) {
	s := open(t, func(c *Config) {
		c.Bounds = Bounds{Header: 300 * time.Millisecond, Read: 600 * time.Millisecond, Idle: 300 * time.Millisecond}
	})
	const whole = "POST /ask/lay HTTP/1.1\r\nHost: %s\r\nContent-Type: application/json\r\nContent-Length: 2\r\n\r\n{}"
	const endless = "POST /ask/lay HTTP/1.1\r\nHost: %s\r\nContent-Type: application/json\r\nContent-Length: 1000000\r\n\r\n"
	for name, begin := range map[string]string{
		"nothing": "", "head": "GET / HTTP/1.1\r\nX-Drip: ", "body": fmt.Sprintf(endless, s.host), "idle": fmt.Sprintf(whole, s.host),
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			c, err := net.Dial("tcp", s.host)
			if err != nil {
				t.Fatal(err)
			}
			defer c.Close()
			began := time.Now()
			io.WriteString(c, begin)
			ended := make(chan bool)
			go func() {
				io.Copy(io.Discard, c)
				close(ended)
			}()
			for {
				select {
				case <-ended:
					if took := time.Since(began); took < 200*time.Millisecond {
						t.Errorf("cut off after %v", took)
					}
					return
				case <-time.After(100 * time.Millisecond):
					if name == "head" || name == "body" {
						io.WriteString(c, "x")
					}
					if got := s.ask("POST", "/ask/lay", "{}"); got.status != http.StatusOK {
						t.Errorf("meanwhile: %d", got.status)
					}
				}
				if time.Since(began) > patience {
					t.Fatal("still connected")
				}
			}
		})
	}
}

// A client that fetches its answer slowly is cut off too.
func TestSlowReader(t *testing.T) {
	const size = 64 << 20 // more than the system keeps for a connection
	s := open(t, func(c *Config) {
		c.Bounds = Bounds{Read: 200 * time.Millisecond, FastTime: 200 * time.Millisecond, SlowTime: 200 * time.Millisecond, Wait: 200 * time.Millisecond}
		c.Engine = engine(func(context.Context, string, []byte) (*desk.Reply, error) {
			return &desk.Reply{ContentType: "application/json", Data: make([]byte, size)}, nil
		})
	})
	c, err := net.Dial("tcp", s.host)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	fmt.Fprintf(c, "POST /ask/cures HTTP/1.1\r\nHost: %s\r\nContent-Type: application/json\r\nContent-Length: 2\r\n\r\n{}", s.host)
	time.Sleep(time.Second)
	c.SetReadDeadline(time.Now().Add(patience))
	if n, err := io.Copy(io.Discard, c); n >= size || err != nil && strings.Contains(err.Error(), "timeout") {
		t.Errorf("fetched %d bytes, %v", n, err)
	}
}

// busy is an engine that works until it is told to end or its context is done.
type busy struct {
	begun, ended chan string
	end          chan bool
}

func newBusy() *busy {
	return &busy{begun: make(chan string, 100), ended: make(chan string, 100), end: make(chan bool)}
}

func (b *busy) answer(ctx context.Context, name string, _ []byte) (*desk.Reply, error) {
	if name == "lay" {
		return &desk.Reply{ContentType: "application/json", Data: []byte("{}")}, nil
	}
	b.begun <- name
	defer func() { b.ended <- name }()
	select {
	case <-ctx.Done():
		return nil, ctx.Err()
	case <-b.end:
		return &desk.Reply{ContentType: "application/json", Data: []byte("{}")}, nil
	}
}

// within waits for something to happen.
func within[T any](t *testing.T, what string, c <-chan T) T {
	t.Helper()
	select {
	case v := <-c:
		return v
	case <-time.After(patience):
		t.Fatalf("%s: doesn't happen", what)
		panic("unreachable")
	}
}

// More slow work than there is room for is refused, with words; what waits has its turn;
// and none of it keeps a layout waiting.
func TestTooMuchAtOnce(t *testing.T) {
	b := newBusy()
	s := open(t, func(c *Config) { c.Engine, c.Bounds = engine(b.answer), Bounds{Slow: 2, Queue: 3} })
	answers := make(chan reply, 8)
	for range 8 { // for five there is room
		go func() { answers <- s.ask("POST", "/ask/cures", "{}") }()
	}
	for range 3 {
		over := within(t, "three are refused", answers)
		if over.status != http.StatusServiceUnavailable || over.header.Get("Retry-After") == "" || !strings.Contains(over.json(t).Error, "too much is being worked on") {
			t.Errorf("refused with %d, %q", over.status, over.text)
		}
	}
	for i := range 2 {
		within(t, fmt.Sprintf("slow work %d", i+1), b.begun)
	}
	if got := s.ask("POST", "/ask/lay", "{}"); got.status != http.StatusOK {
		t.Errorf("a layout meanwhile: %d, %q", got.status, got.text)
	}
	select {
	case name := <-b.begun:
		t.Errorf("a third is worked on: %s", name)
	default:
	}
	close(b.end)
	for range 5 {
		if got := within(t, "the five", answers); got.status != http.StatusOK {
			t.Errorf("one of the five: %d, %q", got.status, got.text)
		}
	}
}

// askFor is a question that is given up when its context is done.
func (s *site) askFor(ctx context.Context, path string) reply {
	r, _ := http.NewRequestWithContext(ctx, "POST", s.address+path, strings.NewReader("{}"))
	r.Header.Set("Content-Type", "application/json")
	got, err := (&http.Client{Transport: &http.Transport{DisableKeepAlives: true}}).Do(r)
	if err != nil {
		return reply{}
	}
	defer got.Body.Close()
	data, _ := io.ReadAll(got.Body)
	return reply{got.StatusCode, got.Header, string(data)}
}

// Work whose asker goes away ends, whether it has begun or still waits, and its room is
// free again.
func TestStaleWork(t *testing.T) {
	b := newBusy()
	s := open(t, func(c *Config) { c.Engine, c.Bounds = engine(b.answer), Bounds{Slow: 1, Queue: 1} })
	for range 5 {
		ctx, leave := context.WithCancel(t.Context())
		gone := make(chan bool, 2)
		ask := func() {
			s.askFor(ctx, "/ask/cures")
			gone <- true
		}
		go ask()
		within(t, "the work begins", b.begun)
		go ask() // this one waits
		leave()
		within(t, "the work ends", b.ended)
		within(t, "one is gone", gone)
		within(t, "both are gone", gone)
	}
	close(b.end)
	for began := time.Now(); ; {
		got := s.ask("POST", "/ask/cures", "{}")
		if got.status == http.StatusOK {
			break
		}
		if time.Since(began) > patience {
			t.Fatalf("afterwards: %d, %q", got.status, got.text)
		}
	}
}

func TestTooLong(t *testing.T) {
	b := newBusy()
	s := open(t, func(c *Config) { c.Engine, c.Bounds = engine(b.answer), Bounds{SlowTime: 50 * time.Millisecond} })
	got := s.ask("POST", "/ask/fit", "{}")
	if got.status != http.StatusServiceUnavailable || got.json(t).Error != "fit took longer than 50ms and was stopped" {
		t.Errorf("%d, %q", got.status, got.text)
	}
	within(t, "the work ends", b.ended)
}

// More connections than are accepted wait until one closes.
func TestConnections(t *testing.T) {
	s := open(t, func(c *Config) { c.Bounds.Connections = 2 })
	var held []net.Conn
	for range 2 {
		c, err := net.Dial("tcp", s.host)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		held = append(held, c)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 300*time.Millisecond)
	defer cancel()
	if got := s.askFor(ctx, "/ask/lay"); got.status != 0 {
		t.Errorf("a third is answered: %d", got.status)
	}
	held[0].Close()
	if got := s.ask("POST", "/ask/lay", "{}"); got.status != http.StatusOK {
		t.Errorf("when one has closed: %d", got.status)
	}
}

// A fault in the engine is told, and doesn't end the server.
func TestFault(t *testing.T) {
	s := open(t, func(c *Config) {
		c.Engine = engine(func(context.Context, string, []byte) (*desk.Reply, error) { panic("a slip") })
	})
	for range 2 {
		if got := s.ask("POST", "/ask/lay", "{}"); got.status != http.StatusInternalServerError || !strings.Contains(got.json(t).Error, "a slip") {
			t.Errorf("%d, %q", got.status, got.text)
		}
	}
}

// A server that is stopped ends the work it has begun.
func TestStopped(t *testing.T) {
	b := newBusy()
	s := open(t, func(c *Config) { c.Engine = engine(b.answer) })
	go s.askFor(context.Background(), "/ask/cures")
	within(t, "the work begins", b.begun)
	began := time.Now()
	s.stop()
	within(t, "the work ends", b.ended)
	if took := time.Since(began); took > ending+time.Second {
		t.Errorf("ends after %v", took)
	}
	if _, err := net.DialTimeout("tcp", s.host, time.Second); err == nil {
		t.Error("its address is still open")
	}
}

func TestFileAnswer(t *testing.T) {
	s := open(t, func(c *Config) {
		c.Engine = engine(func(context.Context, string, []byte) (*desk.Reply, error) {
			return &desk.Reply{ContentType: "application/pdf", Name: "weißes glas-wrap.pdf", Data: []byte("%PDF")}, nil
		})
	})
	got := s.ask("POST", "/ask/download", "{}")
	if want := "attachment; filename*=UTF-8''wei%C3%9Fes%20glas-wrap.pdf"; got.header.Get("Content-Disposition") != want || !bytes.Equal([]byte(got.text), []byte("%PDF")) || got.header.Get("Content-Type") != "application/pdf" {
		t.Errorf("%v, %q", got.header, got.text)
	}
}
