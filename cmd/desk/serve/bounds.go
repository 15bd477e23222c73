package serve

import (
	"runtime"
	"time"

	"roundlay/pattern/job"
)

// Bounds is how much a server takes, and for how long.
type Bounds struct {
	Body        int64 // bytes of a request's body
	HeaderBytes int
	Connections int

	Header, Read, Idle time.Duration // for the head of a request, for all of it, between two

	FastTime, SlowTime time.Duration // for an answer, the wait for its turn included
	Fast, Slow, Queue  int           // answers worked on at once, in two lanes; and how many wait in each

	Wait, Look time.Duration // how long a question for changes waits, and between two looks

	Linger time.Duration // after the last page was closed, where that ends the server
}

// defaults suit one person with a few pages open. The slow lane leaves one
// processor to the fast one where there are two or more.
func defaults() Bounds {
	processors := runtime.GOMAXPROCS(0)
	return Bounds{
		Body:        3 * job.MaxBytes, // a text in JSON is longer than the text
		HeaderBytes: 64 << 10,         // with the cookies of whatever else this machine serves
		Connections: 64,
		Header:      5 * time.Second,
		Read:        15 * time.Second,
		Idle:        time.Minute,
		FastTime:    20 * time.Second, // the largest job a command takes is some ten seconds' work
		SlowTime:    time.Minute,
		Fast:        processors,
		Slow:        max(1, processors-1),
		Queue:       32,
		Wait:        25 * time.Second,
		Look:        500 * time.Millisecond,
		Linger:      10 * time.Second, // to load a page again, or come back to it
	}
}

// filled returns the bounds with the default for each that is zero.
func (b Bounds) filled() Bounds {
	d := defaults()
	fill(&b.Body, d.Body)
	fill(&b.HeaderBytes, d.HeaderBytes)
	fill(&b.Connections, d.Connections)
	fill(&b.Header, d.Header)
	fill(&b.Read, d.Read)
	fill(&b.Idle, d.Idle)
	fill(&b.FastTime, d.FastTime)
	fill(&b.SlowTime, d.SlowTime)
	fill(&b.Fast, d.Fast)
	fill(&b.Slow, d.Slow)
	fill(&b.Queue, d.Queue)
	fill(&b.Wait, d.Wait)
	fill(&b.Look, d.Look)
	fill(&b.Linger, d.Linger)
	return b
}

func fill[T comparable](value *T, otherwise T) {
	if *value == *new(T) {
		*value = otherwise
	}
}

// write is the time from a request's head to the last byte of its answer: for reading
// it, for the longest work, and as long as reading for an answer that is fetched slowly.
func (b Bounds) write() time.Duration {
	return b.Read + max(b.FastTime, b.SlowTime, b.Wait) + b.Read
}
