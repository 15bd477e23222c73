package serve

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"fmt"
	"net/http"
)

// token is the secret that the page's requests carry where other machines can reach the
// address. It comes in the address once, and is a cookie from then on.
type token struct {
	secret string
	cookie string // its name: browsers keep cookies by host, whatever the port
}

// newToken makes a secret of 128 bits for a server at a port.
func newToken(port int) *token {
	var bits [16]byte
	rand.Read(bits[:])
	return &token{secret: hex.EncodeToString(bits[:]), cookie: fmt.Sprintf("roundlay-%d", port)}
}

// is reports whether a text is the secret, in a time that doesn't tell how much of it is.
func (t *token) is(text string) bool {
	return subtle.ConstantTimeCompare([]byte(text), []byte(t.secret)) == 1
}

// admits reports whether a request may go on. If not, the request has been answered:
// one that brings the secret in its address is given the cookie and sent to the page.
func (t *token) admits(w http.ResponseWriter, r *http.Request) bool {
	if given := r.URL.Query(); r.URL.Path == "/" && r.Method == http.MethodGet && given.Has("token") {
		if !t.is(given.Get("token")) {
			refuse(w, r, http.StatusForbidden, "That is not this page's token. Take the address that roundlay printed.")
			return false
		}
		http.SetCookie(w, &http.Cookie{Name: t.cookie, Value: t.secret, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
		// Not a redirect: after a click on a link in a letter the browser would follow it
		// without the cookie, as a request that another site began.
		w.Header().Set("Refresh", "0; url=/")
		w.Header().Set("Content-Type", "text/plain; charset=utf-8")
		fmt.Fprintln(w, "The page is at /")
		return false
	}
	c, err := r.Cookie(t.cookie)
	if err != nil || !t.is(c.Value) {
		refuse(w, r, http.StatusForbidden, "This page wants a token. Take the address that roundlay printed.")
		return false
	}
	return true
}
