package serve

import (
	"net/http"
	"sync"
	"sync/atomic"
	"time"
)

// visits knows which pages are open, as far as they say so: each says when it is shown and when
// it goes. A page that goes without a word, as with a browser that is killed, counts as open.
type visits struct {
	linger time.Duration
	asked  atomic.Int64  // requests of every sort
	left   chan struct{} // closed when the last page has gone, and none has come for a while
	over   sync.Once

	mu   sync.Mutex
	open map[string]bool
	last *time.Timer // since the last page went
}

func newVisits(linger time.Duration) *visits {
	return &visits{linger: linger, left: make(chan struct{}), open: map[string]bool{}}
}

// mostVisits is how many pages are counted. A page beyond it is never told to have gone.
const mostVisits = 1000

// answer is POST /visit: a page, by a name of its own, is shown or goes.
func (v *visits) answer(w http.ResponseWriter, r *http.Request) {
	var given struct {
		Page string
		Here bool
	}
	if !readJSON(w, r, 1<<10, &given) {
		return
	}
	v.note(given.Page, given.Here)
	writeJSON(w, http.StatusOK, struct{}{})
}

func (v *visits) note(page string, here bool) {
	v.mu.Lock()
	defer v.mu.Unlock()
	switch {
	case here && len(v.open) < mostVisits:
		v.open[page] = true
		if v.last != nil {
			v.last.Stop()
		}
	case !here && v.open[page]:
		if delete(v.open, page); len(v.open) == 0 {
			v.wait()
		}
	}
}

// wait waits for another page, or the same one loaded again. It goes on waiting while anything is
// asked, for a page may be there that never said so.
func (v *visits) wait() {
	before := v.asked.Load()
	v.last = time.AfterFunc(v.linger, func() {
		v.mu.Lock()
		defer v.mu.Unlock()
		switch {
		case len(v.open) > 0:
		case v.asked.Load() != before:
			v.wait()
		default:
			v.last = nil
			v.over.Do(func() { close(v.left) }) // a page may come and go once more while the server ends
		}
	})
}

// counted counts requests on their way to a handler.
func (v *visits) counted(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		v.asked.Add(1)
		next.ServeHTTP(w, r)
	})
}
