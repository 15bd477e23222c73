package serve

import (
	"net/http"
	"regexp"
	"strings"
	"testing"
)

// Without its token a page answers nothing, not even its own files.
func TestToken(t *testing.T) {
	s := open(t, func(c *Config) { c.Token = true })
	_, secret, ok := strings.Cut(s.server.Address(), s.address+"/?token=")
	if !ok || !regexp.MustCompile("^[0-9a-f]{32}$").MatchString(secret) {
		t.Fatalf("the address is %s", s.server.Address())
	}
	_, port, _ := strings.Cut(s.host, ":")
	cookie := "roundlay-" + port
	wrong := "0" + secret[1:]
	if secret[0] == '0' {
		wrong = "1" + secret[1:]
	}
	for _, headers := range [][]string{
		nil, {"Cookie", cookie + "=" + wrong}, {"Cookie", cookie + "="}, {"Cookie", cookie + "=" + secret[:31]},
		{"Cookie", cookie + "=" + secret + "0"}, {"Cookie", "roundlay=" + secret}, {"Authorization", "Bearer " + secret},
	} {
		for _, e := range everything {
			if got := s.ask(e.method, e.path, e.body, headers...); got.status != http.StatusForbidden {
				t.Errorf("%s %s with %q: %d, %q", e.method, e.path, headers, got.status, got.text)
			}
		}
	}
	for _, path := range []string{"/?token=" + wrong, "/?token=", "/?token", "/main.js?token=" + secret, "/file?token=" + secret} {
		if got := s.ask("GET", path, ""); got.status != http.StatusForbidden || got.header.Get("Set-Cookie") != "" {
			t.Errorf("%s: %d, %q, cookie %q", path, got.status, got.text, got.header.Get("Set-Cookie"))
		}
	}
	got := s.ask("GET", "/?token="+secret, "")
	if set := got.header.Get("Set-Cookie"); set != cookie+"="+secret+"; Path=/; HttpOnly; SameSite=Strict" {
		t.Errorf("the cookie is %q", set)
	}
	if got.header.Get("Refresh") != "0; url=/" || strings.Contains(got.text, secret) {
		t.Errorf("it goes on at %q, %q", got.header.Get("Refresh"), got.text)
	}
	for _, e := range everything {
		if got := s.ask(e.method, e.path, e.body, "Cookie", "other=1; "+cookie+"="+secret); got.status != http.StatusOK {
			t.Errorf("%s %s with the cookie: %d, %q", e.method, e.path, got.status, got.text)
		}
	}
	// The token is no leave for other pages.
	if got := s.ask("POST", "/ask/lay", "{}", "Cookie", cookie+"="+secret, "Origin", "https://evil.example"); got.status != http.StatusForbidden {
		t.Errorf("from elsewhere with the cookie: %d", got.status)
	}
	if other := open(t, func(c *Config) { c.Token = true }); strings.Contains(other.server.Address(), secret) {
		t.Error("two servers have one token")
	}
}
