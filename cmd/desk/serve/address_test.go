package serve

import (
	"net"
	"net/http"
	"strings"
	"testing"
	"testing/fstest"

	"roundlay/cmd/disk"
)

// tryListen opens a server at an address and closes it again.
func tryListen(address string, token bool) (*net.TCPAddr, string, error) {
	s, err := Open(Config{Listen: address, Token: token, Page: fstest.MapFS{}, Disk: disk.Real{}})
	if err != nil {
		return nil, "", err
	}
	defer s.listener.Close()
	return s.listener.Addr().(*net.TCPAddr), s.Address(), nil
}

func TestListenElsewhere(t *testing.T) {
	for _, address := range []string{"0.0.0.0:0", ":0", "[::]:0", "192.0.2.7:0", "[2001:db8::1]:0"} {
		_, _, err := tryListen(address, false)
		if err == nil || !strings.Contains(err.Error(), "which other machines can reach") || !strings.Contains(err.Error(), "--token") {
			t.Errorf("%s: %v", address, err)
		}
	}
	for _, address := range []string{"", "8080", "127.0.0.1", "127.0.0.1:", "127.0.0.1:http", "127.0.0.1:65536", "127.0.0.1:-1", "::1:80", "http://127.0.0.1:80", "a b:80"} {
		_, _, err := tryListen(address, false)
		if err == nil || !strings.Contains(err.Error(), "accepted: HOST:PORT") {
			t.Errorf("%q: %v", address, err)
		}
	}
	for _, address := range []string{"127.0.0.1:0", "localhost:0", "127.0.0.2:0"} {
		at, shown, err := tryListen(address, false)
		if err != nil && address == "127.0.0.2:0" {
			continue // not every system has all of 127.0.0.0/8
		}
		if err != nil || !at.IP.IsLoopback() || strings.Contains(shown, "token") {
			t.Errorf("%s: %v, %s, %v", address, at, shown, err)
		}
	}
	if _, shown, err := tryListen("0.0.0.0:0", true); err != nil || !strings.Contains(shown, "/?token=") || strings.Contains(shown, "0.0.0.0") && len(ownAddresses()) > 0 {
		t.Errorf("with a token: %s, %v", shown, err)
	}
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	if _, _, err := tryListen(taken.Addr().String(), false); err == nil || !strings.HasPrefix(err.Error(), "--listen: "+taken.Addr().String()+" can't be used: ") {
		t.Errorf("at a taken address: %v", err)
	}
}

// On all addresses, the machine's own are answered, and no other name is.
func TestHostsOfAll(t *testing.T) {
	s := open(t, func(c *Config) { c.Listen, c.Token = "0.0.0.0:0", true })
	_, port, _ := net.SplitHostPort(s.host)
	s.address = "http://127.0.0.1:" + port
	for _, own := range append(ownAddresses(), "127.0.0.1") {
		if got := s.ask("GET", "/", "", "Host", net.JoinHostPort(own, port)); !strings.Contains(got.text, "wants a token") {
			t.Errorf("%s: %d, %q", own, got.status, got.text)
		}
	}
	if got := s.ask("GET", "/", "", "Host", "evil.example:"+port); got.status != http.StatusForbidden || strings.Contains(got.text, "token") {
		t.Errorf("a foreign host: %d, %q", got.status, got.text)
	}
}

func TestHostsOfPort80(t *testing.T) {
	hosts := hostsOf("[::1]:80", &net.TCPAddr{IP: net.IPv6loopback, Port: 80})
	for _, host := range []string{"[::1]", "[::1]:80", "localhost", "localhost:80", "127.0.0.1"} {
		if !hosts[host] {
			t.Errorf("%s is not among %v", host, hosts)
		}
	}
}
