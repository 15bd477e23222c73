package pattern

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// tumblerJob is a job in inches; what is wrong with it is filled in.
const tumblerJob = `length = "in"
[blank]
station = [
 {height=0, across="%s", wall="3/8"},
 {height=2, across="2 7/8", wall="3/16"},
 {height=%s, across="3 1/8", wall="3/32"}]
[limits]
%s
[layout]
repeats = 6
[[wheel]]
name = "m"
edge = "mitre"
across = 3
thick = "1/4"
angle = 90
[[motif]]
kind = "fan"
wheel = "m"
depth = "%s"
`

// A job that can't be laid out is refused at the value that most likely is wrong,
// and what the error says is accepted is.
func TestLayRefuses(t *testing.T) {
	type filled struct{ across, height, limits, depth string }
	for _, c := range []struct {
		name      string
		wrong     filled
		key, says string
		mended    filled
	}{
		{"too much left", filled{"2 5/8", "4", "leave = 1", "1/32"},
			":8: limits.leave: read 1", "accepted: a length up to 5/16 in", filled{"2 5/8", "4", `leave = "5/16"`, "1/32"}},
		{"too deep", filled{"2 5/8", "4", "leave = 0.06", "3/4"},
			`:20: motif[1].depth: read "3/4"`, "accepted: a depth up to 9/32 in", filled{"2 5/8", "4", "leave = 0.06", "9/32"}},
		{"a rim too high", filled{"2 5/8", "4", "rim = 3.9", "1/32"},
			":8: limits.rim: read 3.9", "accepted: a length up to 3 45/64 in", filled{"2 5/8", "4", `rim = "3 45/64"`, "1/32"}},
		{"a foot too high", filled{"2 5/8", "4", "foot = 3.9", "1/64"},
			":8: limits.foot: read 3.9", "accepted: a length up to 3 37/64 in", filled{"2 5/8", "4", "foot = \"3 37/64\"\nleave=0", "1/64"}},
		{"both too high", filled{"2 5/8", "4", "rim = 2\nfoot = 3", "1/64"},
			":9: limits.foot: read 3", "accepted: a length up to 1 61/64 in", filled{"2 5/8", "4", "rim = 2\nfoot = \"1 61/64\"", "1/64"}},
		{"too low", filled{"2 5/8", "2.2", "rim = 2.1", "1/32"},
			":8: limits.rim: read 2.1", "accepted: a length up to 1 29/32 in", filled{"2 5/8", "2.2", `rim = "1 29/32"`, "1/32"}},
	} {
		lay := func(f filled) error {
			j, err := job.Read("tumbler.toml", fmt.Appendf(nil, tumblerJob, f.across, f.height, f.limits, f.depth))
			if err != nil {
				t.Fatal(c.name, err)
			}
			_, err = lay(context.Background(), j, j.Blanks[0])
			return err
		}
		err := lay(c.wrong)
		var wrong *job.Error
		if !errors.As(err, &wrong) || !strings.HasPrefix(err.Error(), "tumbler.toml"+c.key) || !strings.Contains(err.Error(), c.says) || !strings.Contains(err.Error(), `blank "blank": no`) {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if err := lay(c.mended); err != nil {
			t.Errorf("%s, mended: %v", c.name, err)
		}
	}
}

// A glass too low for the usual margins, or too thin for what is usually left.
func TestLayRefusesGlass(t *testing.T) {
	read := func(stations, more string) error {
		j, err := job.Read("low.toml", []byte("length = \"mm\"\n"+more+"\n[blank]\nstation = [\n"+stations+"]\n"+`
[[wheel]]
name = "m"
edge = "mitre"
across = 80
thick = 6
angle = 90
[[motif]]
kind = "fan"
wheel = "m"
depth = 0.5
`))
		if err != nil {
			t.Fatal(err)
		}
		_, err = Lay(context.Background(), j)
		return err
	}
	const layout = "layout.repeats = 6"
	for _, c := range []struct{ stations, more, says string }{
		// 9.525 + 6.35 + 1 = 16.875
		{"{height=0, across=60, wall=5},\n{height=15, across=60, wall=5}", layout,
			`low.toml:6: blank.station[2].height: read 15; accepted: a height of 16.9 mm and more`},
		// 1.5875 + 0.5
		{"{height=0, across=60, wall=1.2},\n{height=90, across=60, wall=1}", layout,
			`low.toml:5: blank.station[1].wall: read 1.2; accepted: walls of 2.1 mm and more above the foot margin`},
		// A band over the disc and the stem of a goblet.
		{"{height=0, across=100, wall=5},\n{height=4, around=34, wall=4},\n{height=60, across=11, wall=4},\n{height=110, across=70, wall=5}",
			"layout = {repeats = 6, band = [0, 15]}", `low.toml:5: blank.station[1].across: read 100; accepted: a diameter in line with the other stations`},
	} {
		if err := read(c.stations, c.more); err == nil || !strings.HasPrefix(err.Error(), c.says) {
			t.Errorf("%v, wanted %s", err, c.says)
		}
	}
}

// By hand: three in a line, 30 + z/10, and one far off it.
func TestAstray(t *testing.T) {
	b := blank(t, glass.Station{Height: 0, Radius: 30, Wall: 5}, glass.Station{Height: 40, Radius: 320, Wall: 5},
		glass.Station{Height: 60, Radius: 36, Wall: 5}, glass.Station{Height: 100, Radius: 40, Wall: 5})
	if i, expected := astray(b.Stations); i != 1 || !near(expected, 34, 1e-9) {
		t.Errorf("station %d, expected at %g", i, expected)
	}
}
