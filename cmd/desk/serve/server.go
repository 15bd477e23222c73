// Package serve puts the page on an address of this machine: the page's files, what the
// page asks of the engine, and the job file on disk.
//
// Open takes the address and reads the job, as a Config says. The Server it returns has the
// Address to go to, and answers once Run is called, until its context is done.
//
// Whoever can send a request to the address can ask everything the page can. So every
// request goes through a guard (guard.go) that knows the page's own requests from
// those of other pages and, where other machines can reach the address, wants a secret
// (token.go). Sizes, times and work going on at once are bounded (bounds.go, lane.go).
//
// # Who is answered, and how a job is kept
//
// Whoever can send a request to open could read and write the job, and every page in the
// browser can send requests to this machine. So serve/guard.go answers only to the address's
// own names in Host, refuses what a browser says another page began (Origin, Sec-Fetch-Site),
// and takes JSON only, which no form can send. The page's own files are public, the rest is
// not. Any address but loopback needs a token.
//
// What is asked at every key (lay, describe) has a lane of its own. The rest shares one that
// leaves a processor free, waits in a short queue, and ends when its asker goes away. Every
// body, head, wait and answer has a bound in serve/bounds.go.
//
// A stamp is the hash of a file's bytes. A save names the stamp of the version it replaces,
// and is refused with what is on disk if that is another. It is compared again when the new
// file lies ready beside the old one. The opened file and those that were made in the same
// run are known by their names; no request carries a path. A drawing goes in a new file
// beside the job (beside.go), or in none where its name is taken; files that the job names
// are watched with it. A browser keeps at most six connections to a host, for all its tabs
// together: the page has to keep some free for lay.
//
// Pages say when they come and go (visits.go). With UntilLeft the server ends when the last has gone
// and none has come again.
package serve

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"log"
	"net"
	"net/http"
	"time"

	"roundlay/cmd/disk"
)

// Config says what is served, and where.
type Config struct {
	Listen string // HOST:PORT; port 0 is a free one
	Token  bool   // whether requests must carry a secret, and may come from other machines

	Page   fs.FS // the page's files
	Engine Engine
	Job    string // the job file's path, "" for the demo
	Demo   []byte // what is shown without a job file
	Folder string // where new files go without a job file
	Disk   disk.Disk

	UntilLeft bool // whether to end when the last open page is closed

	Bounds Bounds // what is zero is the default
}

// Server is the page at its address.
type Server struct {
	listener net.Listener
	http     *http.Server
	files    *jobFiles
	visits   *visits
	leaving  <-chan struct{} // closed when it is to end by itself; nil where it isn't
	address  string
}

// Open takes the address and reads the job file, so that what is wrong with either is
// known before anyone asks. Nothing is answered before Run.
func Open(c Config) (*Server, error) {
	bounds := c.Bounds.filled()
	files, err := openFiles(c)
	if err != nil {
		return nil, err
	}
	files.bounds = bounds
	listener, err := listen(c.Listen, c.Token)
	if err != nil {
		return nil, err
	}
	at := listener.Addr().(*net.TCPAddr)
	g := &guard{hosts: hostsOf(c.Listen, at)}
	s := &Server{listener: limited(listener, bounds.Connections), files: files, visits: newVisits(bounds.Linger)}
	if c.UntilLeft {
		s.leaving = s.visits.left
	}
	s.address = "http://" + shownHost(c.Listen, at) + "/"
	if c.Token {
		g.token = newToken(at.Port)
		s.address += "?token=" + g.token.secret
	}
	g.next = routes(c.Page, &asks{engine: c.Engine, bounds: bounds, fast: newLane(bounds.Fast, bounds.Queue), slow: newLane(bounds.Slow, bounds.Queue)}, files, s.visits)
	s.http = &http.Server{
		Handler:           s.visits.counted(recovered(g)),
		ReadHeaderTimeout: bounds.Header,
		ReadTimeout:       bounds.Read,
		WriteTimeout:      bounds.write(),
		IdleTimeout:       bounds.Idle,
		MaxHeaderBytes:    bounds.HeaderBytes,
		ErrorLog:          log.New(io.Discard, "", 0), // of connections that broke off
	}
	return s, nil
}

// Address is where a browser finds the page, with the secret where there is one.
func (s *Server) Address() string { return s.address }

// ending is how long answers may still take when the server is stopped.
const ending = 3 * time.Second

// Run answers until the context is done or, with UntilLeft, the page has been closed. Work for the page then ends; a file that is
// being saved is saved first.
func (s *Server) Run(ctx context.Context) error {
	ctx, end := context.WithCancel(ctx)
	defer end()
	s.http.BaseContext = func(net.Listener) context.Context { return ctx }
	served := make(chan error, 1)
	go func() { served <- s.http.Serve(s.listener) }()
	select {
	case err := <-served:
		return err
	case <-ctx.Done():
	case <-s.leaving:
		end()
	}
	last, cancel := context.WithTimeout(context.WithoutCancel(ctx), ending)
	defer cancel()
	if err := s.http.Shutdown(last); err != nil {
		s.http.Close()
	}
	s.files.close()
	if err := <-served; !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// routes says who answers what.
func routes(page fs.FS, a *asks, f *jobFiles, v *visits) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("POST /ask/{name}", a.answer)
	mux.HandleFunc("POST /visit", v.answer)
	mux.HandleFunc("GET /file", f.answerFile)
	mux.HandleFunc("POST /file", f.answerSave)
	mux.HandleFunc("POST /file-as", f.answerSaveAs)
	mux.HandleFunc("POST /file-beside", f.answerSaveBeside)
	mux.HandleFunc("GET /file/changes", f.answerChanges)
	mux.Handle("GET /", pageFiles{page})
	mux.HandleFunc("/", otherwise)
	return mux
}

// otherwise answers what is asked in a way that nothing here is.
func otherwise(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Allow", "GET, HEAD, POST")
	refuse(w, r, http.StatusMethodNotAllowed, "that can't be asked in this way; the page is at /")
}

// recovered answers a request whose handler panics, so that one bad request doesn't
// look like a server that has gone.
func recovered(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			if fault := recover(); fault != nil {
				refuse(w, r, http.StatusInternalServerError, fmt.Sprintf("roundlay made a mistake of its own: %v", fault))
			}
		}()
		next.ServeHTTP(w, r)
	})
}
