package report

import (
	"strings"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// A price is rounded outwards, and to whole numbers from a hundred on.
func TestPriceOf(t *testing.T) {
	for _, c := range []struct {
		least, most float64
		want        string
	}{
		{97.081, 191.2, "97 to 192"}, {12.501, 12.501, "12.50 to 12.51"}, {37.429934, 63.790631, "37.42 to 63.80"},
		{99.999, 100, "99 to 100"}, {10, 20, "10.00 to 20.00"}, {0.1 + 0.2, 0.3, "0.30 to 0.30"},
	} {
		if got := priceOf(pattern.Quote{Price: pattern.Interval{Least: c.least, Most: c.most}}); got != c.want {
			t.Errorf("%g to %g: %s", c.least, c.most, got)
		}
	}
}

// So is a time, to minutes.
func TestLasting(t *testing.T) {
	for _, c := range []struct {
		least, most float64
		want        string
	}{{40.9, 41.1, "40 minutes to 42 minutes"}, {0.4, 0.4, "no time to 1 minute"}, {59.5, 60, "59 minutes to 1 h 0 min"}} {
		if got := lasting(pattern.Quote{Minutes: pattern.Interval{Least: c.least, Most: c.most}}); got != c.want {
			t.Errorf("%g to %g: %s", c.least, c.most, got)
		}
	}
}

// A quote says of everything that it leaves out that it does, and with which key it would
// count.
func TestQuoteLeavesOut(t *testing.T) {
	q := pattern.Quote{Shop: job.Shop{Spread: job.DefaultSpread}, Pieces: 2, Begun: 2, Blanks: 2, Safe: 2, Cutting: 30, Wheels: 1, Changes: 2}
	said := strings.Join([]string{timesOf(q), changesOf(q), spoilOf(q), spreadOf(q.Shop)}, " ")
	for _, key := range []string{"finishing under [shop]", "change under [shop]", "spoil under [shop]", "spread under [shop]", "common practice, no source"} {
		if !strings.Contains(said, key) {
			t.Errorf("%q isn't in %q", key, said)
		}
	}
	minutes := 0.0
	q.Shop = job.Shop{Change: &minutes, Finishing: &minutes, Spoil: 0.1, Spread: 0.1}
	said = strings.Join([]string{timesOf(q), changesOf(q), spoilOf(q), spreadOf(q.Shop)}, " ")
	for _, words := range []string{"under [shop]", "not counted", "no source"} {
		if strings.Contains(said, words) {
			t.Errorf("%q is in %q", words, said)
		}
	}
}
