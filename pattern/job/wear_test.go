package job

import (
	"math"
	"strings"
	"testing"
)

// A foot is 304.8 mm exactly (international yard and pound agreement, 1959).
func TestWears(t *testing.T) {
	for text, want := range map[string]float64{
		`"100 ft"`: 30480, `"100ft"`: 30480, `"12 1/2 ft"`: 3810, `"30 m"`: 30000, `"30m"`: 30000, `"0.5 m"`: 500,
		`"3000 cm"`: 30000, `"30000 mm"`: 30000, `"1200 in"`: 30480, `'1200"'`: 30480, `1200`: 30480, `"1200"`: 30480,
	} {
		j, err := Read("six.toml", base().with(t, "wheel[1].wears", `wears = ["0.4 mm", `+text+`]`).bytes())
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		if got := j.Rack[0].Wear; got.Lost != 0.4 || math.Abs(got.Groove-want) > 1e-9 {
			t.Errorf("%s is read as %+v, wanted %g mm of groove", text, got, want)
		}
	}
}

// What is typed into a form for the sorts of a quote, as it stands in the file then.
func TestReviseQuote(t *testing.T) {
	for _, c := range []struct{ path, typed, want string }{
		{"wheel[1].wears", "1/32, 50 ft", `wears = ["1/32", "50 ft"]`},
		{"wheel[1].wears", "0.4 mm; 30 m", `wears = ["0.4 mm", "30 m"]`},
		{"wheel[1].rate", "2.5", "rate = 2.5"},
		{"shop.change", "7", "change = 7"},
		{"shop.change", "1:05", `change = "1:05"`},
		{"shop.finishing", "1 h 20 min", `finishing = "1 h 20 min"`},
		{"shop.spoil", ".15", "spoil = 0.15"},
		{"shop.hour", "41.50", "hour = 41.50"},
	} {
		text, err := Revise(base().bytes(), Revision{Op: "set", Path: c.path, Value: c.typed})
		if err != nil {
			t.Errorf("%s: %v", c.path, err)
			continue
		}
		if !strings.Contains(string(text), "\n"+c.want+"\n") {
			t.Errorf("%s typed for %s isn't written as %s", c.typed, c.path, c.want)
		}
		if _, err := Read("six.toml", text); err != nil {
			t.Error(err)
		}
	}
}
