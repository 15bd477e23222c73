package serve

import (
	"fmt"
	"net"
	"net/netip"
	"os"
	"strconv"
	"strings"

	"roundlay/cmd/disk"
)

// listen takes an address, which without a token must be one that only this machine
// can reach.
func listen(address string, token bool) (net.Listener, error) {
	host, port, err := net.SplitHostPort(address)
	if err == nil {
		_, err = strconv.ParseUint(port, 10, 16)
	}
	if err != nil || strings.ContainsAny(host, "/@?# ") {
		return nil, fmt.Errorf("--listen: read %q; accepted: HOST:PORT, such as 127.0.0.1:8080; port 0 is any that is free", address)
	}
	at, err := net.ResolveTCPAddr("tcp", address)
	if err != nil {
		return nil, fmt.Errorf("--listen: read %q; this machine knows no host %q", address, host)
	}
	if !at.IP.IsLoopback() && !token {
		return nil, fmt.Errorf("--listen: read %q, which other machines can reach: whoever does could read and change the job; "+
			"accepted: 127.0.0.1 with a port or, with --token, any address of this machine", address)
	}
	l, err := net.ListenTCP("tcp", at)
	if err != nil {
		return nil, fmt.Errorf("--listen: %s can't be used: %w", address, bareNet(err))
	}
	return l, nil
}

// bareNet returns what went wrong with an address without the address.
func bareNet(err error) error {
	if op, ok := err.(*net.OpError); ok {
		err = op.Err
	}
	if call, ok := err.(*os.SyscallError); ok {
		err = call.Err
	}
	return disk.Bare(err)
}

// hostsOf returns what a browser may write in Host to reach an address. Any other name
// that leads here is one that another page has had pointed at this machine.
func hostsOf(given string, at *net.TCPAddr) map[string]bool {
	names := []string{at.IP.String()}
	if host, _, err := net.SplitHostPort(given); err == nil && host != "" {
		names = append(names, host)
	}
	if at.IP.IsLoopback() || at.IP.IsUnspecified() {
		names = append(names, "127.0.0.1", "localhost", "::1")
	}
	if at.IP.IsUnspecified() {
		names = append(names, ownAddresses()...)
	}
	hosts := map[string]bool{}
	for _, name := range names {
		name = strings.ToLower(name)
		hosts[net.JoinHostPort(name, strconv.Itoa(at.Port))] = true
		if at.Port == 80 { // browsers leave that one out
			hosts[strings.TrimSuffix(net.JoinHostPort(name, ""), ":")] = true
		}
	}
	return hosts
}

// ownAddresses are this machine's addresses that other machines may know it by, those
// of the fourth version first.
func ownAddresses() []string {
	all, err := net.InterfaceAddrs()
	if err != nil {
		return nil
	}
	var four, six []string
	for _, a := range all {
		prefix, err := netip.ParsePrefix(a.String())
		switch ip := prefix.Addr(); {
		case err != nil || ip.IsLoopback() || ip.IsLinkLocalUnicast():
		case ip.Is4():
			four = append(four, ip.String())
		default:
			six = append(six, ip.String())
		}
	}
	return append(four, six...)
}

// shownHost is the host and port to type.
func shownHost(given string, at *net.TCPAddr) string {
	host, _, err := net.SplitHostPort(given)
	if err != nil || host == "" || at.IP.IsUnspecified() {
		host = at.IP.String()
		if own := ownAddresses(); at.IP.IsUnspecified() && len(own) > 0 {
			host = own[0]
		}
	}
	return net.JoinHostPort(host, strconv.Itoa(at.Port))
}
