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

// Slips in what a quote and wear are made of.
func TestRefuseQuote(t *testing.T) {
	for _, c := range []struct{ name, text, key, read, accepted, hint string }{
		{name: "shop.change", text: `change = "601 min"`, accepted: "a time from 0 to 10 h"},
		{name: "shop.change", text: `change = "8 in"`, read: `"8 in"`, accepted: "a time from 0 to 10 h"},
		{name: "shop.spoil", text: `spoil = 10`, read: "10", accepted: "a number from 0 to 0.9"},
		{name: "shop.hour", text: `hour = "38 £"`, accepted: "a number from 0.01", hint: "in digits, without quotes"},
		{name: "wheel[1].rate", text: `rate = 400`, accepted: "a length from 0.04 in to 393 in"},
		{name: "wheel[1].wears", text: `wears = ["100 ft", "1/64"]`, key: "wheel[1].wears[1]", read: `"100 ft"`, accepted: "a length from "},
		{name: "wheel[1].wears", text: `wears = ["1/64", "40 yd"]`, key: "wheel[1].wears[2]", read: `"40 yd"`, accepted: "a length of groove from 4 in", hint: `the unit "yd" is not known: in, ft, mm, cm or m`},
		{name: "wheel[1].wears", text: `wears = ["1/64", 3]`, key: "wheel[1].wears[2]", read: "3", accepted: "a length of groove from 4 in", hint: "a bare number is in inches: say m or ft, in quotes"},
		{name: "wheel[1].wears", text: `wears = ["1/64", "0 ft"]`, key: "wheel[1].wears[2]", accepted: "a length of groove from 4 in"},
		{name: "wheel[1].wears", text: `wears = ["1/64", "1/0 m"]`, key: "wheel[1].wears[2]", accepted: "a length of groove", hint: "not zero below the line"},
		{name: "wheel[1].wears", text: `wears = [0, "100 ft"]`, key: "wheel[1].wears[1]", accepted: "a length from "},
		{name: "wheel[1].wears", text: `wears = [2, "100 ft"]`, key: "wheel[1].wears[1]", accepted: "less than half of what the wheel is across, 2 in"},
		{name: "wheel[1].wears", text: `wears = ["1/64", ["100 ft"]]`, key: "wheel[1].wears[2]", accepted: "a length of groove"},
	} {
		f := base().with(t, c.name, c.text)
		e := refused(t, f.bytes())
		if c.key == "" {
			c.key = c.name
		}
		if e.Line != f.line(t, c.name) || e.Key != c.key || !strings.Contains(e.Read, c.read) || !strings.Contains(e.Accepted, c.accepted) || !strings.Contains(e.Hint, c.hint) {
			t.Errorf("%s: %v", c.text, e)
		}
	}
}
