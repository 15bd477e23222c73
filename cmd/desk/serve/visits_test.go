package serve

import (
	"testing"
	"testing/synctest"
	"time"
)

// What pages say, on a clock that is set forward: n is a second in which nothing is said, w
// one in which something is asked, letters are pages that come, capitals the same that go.
func TestVisits(t *testing.T) {
	for said, want := range map[string]bool{
		"":              false, // the page may be slow to come
		"a":             false,
		"aAnnnn":        false, // loaded again, say
		"aAnnnnnn":      true,
		"aAnnbnnnnnn":   false,
		"aAnnbBnnnnnn":  true,
		"abAnnnnnnn":    false,
		"abAnBnnnn":     false,
		"abABnnnnnn":    true,
		"aBnnnnnnn":     false, // one that never came
		"aABnnnnnn":     true,
		"aAnwnnnnn":     false, // a page is there that didn't say so
		"aAnwnnnnnnnnn": true,
	} {
		synctest.Test(t, func(t *testing.T) {
			v := newVisits(5 * time.Second)
			for _, one := range said {
				switch {
				case one == 'n', one == 'w':
					if one == 'w' {
						v.asked.Add(1)
					}
					time.Sleep(time.Second + time.Millisecond)
				case one >= 'a':
					v.note(string(one), true)
				default:
					v.note(string(one+'a'-'A'), false)
				}
			}
			synctest.Wait()
			got := false
			select {
			case <-v.left:
				got = true
			default:
			}
			if got != want {
				t.Errorf("%q: left is %v", said, got)
			}
		})
	}
}

// A server that is to end with its page does, and no other.
func TestEndsWithItsPage(t *testing.T) {
	for _, until := range []bool{true, false} {
		s := open(t, func(c *Config) { c.UntilLeft, c.Bounds.Linger = until, 50*time.Millisecond })
		for _, here := range []bool{true, false} {
			if got := s.post("/visit", object{"page": "a", "here": here}); got.status != 200 {
				t.Fatalf("%d, %q", got.status, got.text)
			}
		}
		if until {
			within(t, "it ends", s.server.visits.left)
			s.stop() // it has ended, without an error
			continue
		}
		time.Sleep(300 * time.Millisecond)
		if got := s.ask("GET", "/", ""); got.status != 200 {
			t.Errorf("%d, %q", got.status, got.text)
		}
	}
}
