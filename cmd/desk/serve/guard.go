package serve

import (
	"mime"
	"net/http"
	"path"
	"strings"
)

// guard lets through what the page itself asks, and nothing that another page or, where
// there is a token, another machine does.
type guard struct {
	hosts map[string]bool // what may be written in Host
	token *token          // nil where none is wanted
	next  http.Handler
}

// policy lets the page load its own files and ask its own server, nothing else; no
// script or style is part of a document.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; " +
	"connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'"

func (g *guard) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Content-Security-Policy", policy)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Cache-Control", "no-store")
	switch {
	case !g.hosts[strings.ToLower(r.Host)]:
		refuse(w, r, http.StatusForbidden, "This page answers only to its own address, the one that roundlay printed.")
	case !strings.HasPrefix(r.URL.Path, "/") || r.URL.Path != path.Clean(r.URL.Path) || strings.ContainsAny(r.URL.Path, "\\\x00"):
		refuse(w, r, http.StatusNotFound, "there is nothing here; the page is at /")
	case !pageFile(r) && foreign(r):
		refuse(w, r, http.StatusForbidden, "only the page itself may ask that")
	case r.Method == http.MethodPost && !isJSON(r):
		refuse(w, r, http.StatusUnsupportedMediaType, "only JSON is accepted, as application/json")
	case g.token == nil || g.token.admits(w, r):
		g.next.ServeHTTP(w, r)
	}
}

// pageFile reports whether a request is for one of the page's own files, which any page
// may ask for and none but this one is given.
func pageFile(r *http.Request) bool {
	return (r.Method == http.MethodGet || r.Method == http.MethodHead) && !strings.HasPrefix(r.URL.Path, "/file")
}

// foreign reports whether another page makes a request. A request in which the browser
// says nothing about that doesn't come from a page.
func foreign(r *http.Request) bool {
	switch r.Header.Get("Sec-Fetch-Site") {
	case "", "same-origin", "none":
	default:
		return true
	}
	origins := r.Header.Values("Origin")
	for _, o := range origins {
		if !strings.EqualFold(o, "http://"+r.Host) {
			return true
		}
	}
	return false
}

func isJSON(r *http.Request) bool {
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	return err == nil && kind == "application/json"
}
