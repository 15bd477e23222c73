package main

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

// omitted stands on a page for any words within a line, and alone for any lines.
const omitted = "…"

// says is whether what a page shows is what was printed.
func says(shown, printed []string) bool {
	switch {
	case len(shown) == 0:
		return len(printed) == 0
	case strings.TrimSpace(shown[0]) == omitted:
		for i := range len(printed) + 1 {
			if says(shown[1:], printed[i:]) {
				return true
			}
		}
		return false
	}
	return len(printed) > 0 && saysLine(shown[0], printed[0]) && says(shown[1:], printed[1:])
}

// saysLine is whether one line that a page shows is the one that was printed.
func saysLine(shown, printed string) bool {
	if shown == printed {
		return true
	}
	words := strings.Split(shown, omitted)
	for i, w := range words {
		words[i] = regexp.QuoteMeta(w)
	}
	return regexp.MustCompile("^" + strings.Join(words, ".*") + "$").MatchString(printed)
}

// remade returns what a page is to show of what was printed: all of it where it left no
// lines out; else as many lines as it had before the first it left out and after the last.
func remade(shown, printed []string) []string {
	gap := func(line string) bool { return strings.TrimSpace(line) == omitted }
	first := slices.IndexFunc(shown, gap)
	if first < 0 {
		return printed
	}
	last := len(shown) - 1
	for !gap(shown[last]) {
		last--
	}
	after := len(shown) - 1 - last
	if first+after > len(printed) {
		return printed
	}
	now := append(slices.Clone(printed[:first]), shown[first:last+1]...)
	return append(now, printed[len(printed)-after:]...)
}

func TestSays(t *testing.T) {
	printed := []string{"one", "two 2.5", "three"}
	for _, c := range []struct {
		shown []string
		want  bool
	}{
		{printed, true},
		{nil, false},
		{printed[:2], false},
		{append(slices.Clone(printed), "four"), false},
		{[]string{"one", "…"}, true},
		{[]string{"…", "three"}, true},
		{[]string{"…", "one", "two 2.5", "three", "…"}, true},
		{[]string{"one", "two …", "three"}, true},
		{[]string{"one", "two 2x5", "three"}, false},
		{[]string{"one", "…", "two 2.6", "…"}, false},
		{[]string{"…", "three", "two 2.5"}, false},
	} {
		if says(c.shown, printed) != c.want {
			t.Errorf("%q: not %v", c.shown, c.want)
		}
	}
	for _, c := range []struct{ shown, want []string }{
		{[]string{"old"}, printed},
		{[]string{"old", "…"}, []string{"one", "…"}},
		{[]string{"…", "old", "older"}, []string{"…", "two 2.5", "three"}},
		{[]string{"old", "…", "two 2.5", "…", "older"}, []string{"one", "…", "two 2.5", "…", "three"}},
	} {
		if got := remade(c.shown, printed); !slices.Equal(got, c.want) {
			t.Errorf("%q becomes %q, want %q", c.shown, got, c.want)
		}
	}
}
