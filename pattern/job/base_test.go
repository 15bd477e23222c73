package job

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// fixture is a job file, line by line. Each line that holds a key or a table is
// found by its name in full.
type fixture []struct{ name, text string }

// base is a job in which every key there is stands on a line of its own.
func base() fixture {
	return fixture{
		{"title", `title = "Six leaves"`},
		{"length", `length = "in"`},
		{"blank", `[blank]`},
		{"blank.name", `name = "tumbler"`},
		{"blank.floor", `floor = "1/2"`},
		{"blank.fill", `fill = 3`},
		{"blank.paper", `paper = ["table", "3 1/4"]`},
		{"blank.glass", `glass = "lead crystal"`},
		{"blank.density", `density = 3.1`},
		{"blank.weighs", `weighs = "18 oz"`},
		{"blank.straight", `straight = true`},
		{"blank.base", `base = "2 7/8"`},
		{"blank.hollow", `hollow = ["5/8", "1/16"]`},
		{"blank.station[1]", `[[blank.station]]`},
		{"blank.station[1].height", `height = 0`},
		{"blank.station[1].across", `across = 3`},
		{"blank.station[1].wall", `wall = "3/8"`},
		{"blank.station[2]", `[[blank.station]]`},
		{"blank.station[2].height", `height = "3 1/2"`},
		{"blank.station[2].around", `around = "10 1/4"`},
		{"blank.station[2].wall", `wall = "2.5 mm"`},
		{"limits", `[limits]`},
		{"limits.land", `land = "1/32"`},
		{"limits.leave", `leave = "1/16"`},
		{"limits.rim", `rim = "3/8"`},
		{"limits.foot", `foot = "1/4"`},
		{"limits.edge", `edge = "1/8"`},
		{"limits.clear", `clear = 0.5`},
		{"limits.polish", `polish = 0`},
		{"limits.reach", `reach = 0.5`},
		{"wheel[1]", `[[wheel]]`},
		{"wheel[1].name", `name = "mitre"`},
		{"wheel[1].edge", `edge = "mitre"`},
		{"wheel[1].across", `across = 4`},
		{"wheel[1].thick", `thick = "1/4"`},
		{"wheel[1].angle", `angle = 90`},
		{"wheel[1].rate", `rate = 2`},
		{"wheel[1].wears", `wears = ["1/64", "100 ft"]`},
		{"wheel[2]", `[[wheel]]`},
		{"wheel[2].name", `name = "olive"`},
		{"wheel[2].edge", `edge = "round"`},
		{"wheel[2].across", `across = 4`},
		{"wheel[2].thick", `thick = "3/8"`},
		{"wheel[2].radius", `radius = "1/4"`},
		{"wheel[3]", `[[wheel]]`},
		{"wheel[3].name", `name = "lines"`},
		{"wheel[3].edge", `edge = "gang"`},
		{"wheel[3].across", `across = 4`},
		{"wheel[3].thick", `thick = "3/8"`},
		{"wheel[3].angle", `angle = 60`},
		{"wheel[3].mitres", `mitres = 3`},
		{"wheel[3].spacing", `spacing = "1/8"`},
		{"wheel[4]", `[[wheel]]`},
		{"wheel[4].name", `name = "panel"`},
		{"wheel[4].edge", `edge = "flat"`},
		{"wheel[4].across", `across = 4`},
		{"wheel[4].thick", `thick = "1/2"`},
		{"shop", `[shop]`},
		{"shop.rate", `rate = "1 1/2"`},
		{"shop.order", `order = ["olive", "mitre"]`},
		{"shop.finish", `finish = "felt"`},
		{"shop.change", `change = "8 min"`},
		{"shop.finishing", `finishing = 20`},
		{"shop.spoil", `spoil = 0.1`},
		{"shop.spread", `spread = 0.2`},
		{"shop.hour", `hour = 38`},
		{"shop.pieces", `pieces = 6`},
		{"layout", `[layout]`},
		{"layout.repeats", `repeats = 6`},
		{"layout.bare", `bare = [2]`},
		{"layout.band", `band = ["1/2", "2 3/4"]`},
		{"layout.match", `match = "own"`},
		{"base", `[base]`},
		{"base.repeats", `repeats = 8`},
		{"base.band", `band = ["1/2", "1 1/4"]`},
		{"motif[1]", `[[motif]]`},
		{"motif[1].kind", `kind = "leaf"`},
		{"motif[1].name", `name = "first"`},
		{"motif[1].wheel", `wheel = "mitre"`},
		{"motif[1].depth", `depth = "1/32"`},
		{"motif[1].at", `at = [0.25, "1 1/4"]`},
		{"motif[1].width", `width = 0.8`},
		{"motif[1].height", `height = "2 in"`},
		{"motif[1].turn", `turn = -90`},
		{"motif[1].mirror", `mirror = true`},
		{"motif[1].on", `on = "even"`},
		{"motif[1].land", `land = 0`},
		{"motif[1].clear", `clear = 0.25`},
		{"motif[1].shape", `shape = "true"`},
		{"motif[1].swell", `swell = [0.4, 1, 0.7]`},
		{"motif[1].rock", `rock = [0, 12]`},
		{"motif[1].cut_order", `cut_order = 2`},
		{"motif[1].fronds", `fronds = 9`},
		{"motif[1].lean", `lean = 45.5`},
		{"motif[1].terminal", `terminal = false`},
		{"motif[1].parts.frond", `[motif.parts.frond]`},
		{"motif[1].parts.frond.wheel", `wheel = "mitre"`},
		{"motif[1].parts.frond.depth", `depth = "1/64"`},
		{"motif[1].parts.frond.land", `land = "1/64"`},
		{"motif[1].parts.frond.clear", `clear = 0.1`},
		{"motif[1].parts.frond.swell", `swell = [0, 1, 0.5]`},
		{"motif[1].parts.frond.rock", `rock = [3.5, 0]`},
		{"motif[2]", `[[motif]]`},
		{"motif[2].kind", `kind = "fan"`},
		{"motif[2].wheel", `wheel = "olive"`},
		{"motif[2].depth", `depth = "1/32"`},
		{"motif[2].inside", `inside = 1`},
		{"motif[3]", `[[motif]]`},
		{"motif[3].kind", `kind = "star"`},
		{"motif[3].wheel", `wheel = "mitre"`},
		{"motif[3].depth", `depth = "1/32"`},
		{"motif[3].face", `face = "base"`},
		{"motif[4]", `[[motif]]`},
		{"motif[4].kind", `kind = "star"`},
		{"motif[4].wheel", `wheel = "mitre"`},
		{"motif[4].depth", `depth = "1/32"`},
		{"motif[4].face", `face = "base"`},
		{"motif[4].middle", `middle = true`},
	}
}

// index returns where a line stands, from 0; it fails the test if it doesn't.
func (f fixture) index(t testing.TB, name string) int {
	t.Helper()
	for i, line := range f {
		if line.name == name {
			return i
		}
	}
	t.Fatalf("the fixture has no line %q", name)
	return 0
}

// with returns the fixture with another text on a line.
func (f fixture) with(t testing.TB, name, text string) fixture {
	t.Helper()
	g := slices.Clone(f)
	g[f.index(t, name)].text = text
	return g
}

// without returns the fixture without a line, and without what is below it if
// it is a table.
func (f fixture) without(t testing.TB, name string) fixture {
	t.Helper()
	f.index(t, name)
	var g fixture
	for _, line := range f {
		if line.name != name && !strings.HasPrefix(line.name, name+".") && !strings.HasPrefix(line.name, name+"[") {
			g = append(g, line)
		}
	}
	return g
}

// bytes returns the file.
func (f fixture) bytes() []byte {
	var b strings.Builder
	for _, line := range f {
		b.WriteString(line.text + "\n")
	}
	return []byte(b.String())
}

// refused reads a file that has a mistake, and checks what every message owes
// its reader.
func refused(t testing.TB, data []byte) *Error {
	t.Helper()
	j, err := Read("tumbler.toml", data)
	if err == nil {
		t.Fatalf("read without an error:\n%s", data)
	}
	if j != nil {
		t.Errorf("a job came with the error %v", err)
	}
	e := onlyError(t, err)
	if e.File != "tumbler.toml" {
		t.Errorf("the file is %q", e.File)
	}
	return e
}

// onlyError checks that an error is an *Error in one line that can be shown.
func onlyError(t testing.TB, err error) *Error {
	t.Helper()
	var e *Error
	if !errors.As(err, &e) {
		t.Fatalf("the error is a %T: %v", err, err)
	}
	line := e.Error()
	for _, r := range line {
		if !unicode.IsPrint(r) {
			t.Errorf("%q in the message %q", r, line)
		}
	}
	if len(line) > 1200 || !utf8.ValidString(line) {
		t.Errorf("a message of %d bytes: %s", len(line), line)
	}
	if e.Line < 1 || e.Read == "" || e.Accepted == "" {
		t.Errorf("incomplete: %+v", e)
	}
	for _, part := range []string{e.Key, e.Read, e.Accepted, e.Hint} {
		if !strings.Contains(line, part) {
			t.Errorf("%q is not in %q", part, line)
		}
	}
	return e
}
