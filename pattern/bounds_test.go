package pattern

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// drawnBy returns a motif of a kind that draws just the given lines.
func drawnBy(lines ...geometry.Bezier) job.Motif {
	kind := motifs.Kind{Name: "trial", Params: []motifs.Param{{Name: "odd", Min: 0, Max: 9}}}
	kind.Draw = func(motifs.Values, float64) []motifs.Cut {
		var cuts []motifs.Cut
		for _, l := range lines {
			cuts = append(cuts, motifs.Cut{Part: "stroke", Path: l})
		}
		return cuts
	}
	return job.Motif{Kind: kind, Values: motifs.Values{"odd": 7}, Depth: 0.2, Y: of(0.5), Width: of(0.5), Height: of(0.5)}
}

// A line that no wheel can cut is refused where its motif is drawn, in words that
// name the motif, its parameters and its size.
func TestUndrawable(t *testing.T) {
	good := geometry.Line(geometry.Point{X: -0.2, Y: 0.2}, geometry.Point{X: 0.3, Y: 0.9})
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name, says string
		line       geometry.Bezier
	}{
		{"no length", "has no length", geometry.Line(geometry.Point{X: 0.1, Y: 0.5}, geometry.Point{X: 0.1, Y: 0.5})},
		// A half of a pitch of 62.8 mm is 31.4 mm: 0.009 mm of it.
		{"hardly a length", "has no length", geometry.Line(geometry.Point{X: 0.1, Y: 0.5}, geometry.Point{X: 0.1 + 0.009/31.4, Y: 0.5})},
		{"not a number", "leaves its box", geometry.Line(geometry.Point{X: nan, Y: 0.5}, geometry.Point{X: 0.1, Y: 0.5})},
		{"without an end", "leaves its box", geometry.Line(geometry.Point{X: 0, Y: 0.5}, geometry.Point{X: inf, Y: 0.5})},
		{"far outside", "leaves its box", geometry.Line(geometry.Point{X: 0, Y: 0.5}, geometry.Point{X: 1e16, Y: 0.5})},
		{"a bend outside", "leaves its box", geometry.Bezier{{X: -0.4, Y: 0}, {X: -0.4, Y: -3}, {X: 0.4, Y: -3}, {X: 0.4, Y: 0}}},
	} {
		j := jobOn(straight(t), 4, drawnBy(good), drawnBy(good, c.line))
		_, err := New(context.Background(), j, j.Blanks[0])
		var wrong *job.Error
		if !errors.As(err, &wrong) || wrong.Key != "motif[2]" || wrong.Read != "a trial with odd = 7" || !strings.Contains(wrong.Hint, "its line 2 (stroke) "+c.says) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	planned(t, jobOn(straight(t), 4, drawnBy(good)))
	// Just long enough.
	planned(t, jobOn(straight(t), 4, drawnBy(geometry.Line(geometry.Point{X: 0.1, Y: 0.5}, geometry.Point{X: 0.1 + 0.02/31.4, Y: 0.5}))))
}

// On a glass that would come to a point 20 mm above its rim no line runs past it.
func TestUndrawableBeyondThePoint(t *testing.T) {
	b := blank(t, glass.Station{Height: 0, Radius: 60, Wall: 8}, glass.Station{Height: 100, Radius: 10, Wall: 4})
	long := motif(t, "fan", motifs.Values{"rays": 1, "hub": 0}, with(fine), turn(90), trueShape)
	long.Width, long.Height, long.Turn = mm(20), mm(200), 0
	j := jobOn(b, 2, long)
	if _, err := New(context.Background(), j, b); err == nil || !strings.Contains(err.Error(), "runs off the glass, past where it comes to a point") {
		t.Errorf("laid out: %v", err)
	}
	j.Motifs[0].Height = mm(60)
	planned(t, j)
}

// A depth that is as much as the wheel's radius, or the glass's, is refused, and
// what the message says is accepted is.
func TestTooDeep(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "fan", motifs.Values{"rays": 1}, depth(50), with(fine)))
	across := 2 * j.Rack[fine].Radius
	_, err := New(context.Background(), j, j.Blanks[0])
	var wrong *job.Error
	if !errors.As(err, &wrong) || wrong.Key != "motif[1].depth" || !strings.Contains(wrong.Hint, "wheel's middle") {
		t.Fatal(err)
	}
	most, err := j.Length.Parse(strings.TrimPrefix(wrong.Accepted, "a depth below "))
	if err != nil || most > across/2 || most < across/2-0.1 {
		t.Errorf("accepted %q, of a wheel %g across: %v", wrong.Accepted, across, err)
	}
	// A glass 20 mm across under a wheel of 50.
	thin := blankOf(t, 10, 10)
	j = jobOn(thin, 2, motif(t, "fan", motifs.Values{"rays": 1}, depth(10), with(fine)))
	if _, err := New(context.Background(), j, thin); err == nil || !strings.Contains(err.Error(), "glass's middle") {
		t.Errorf("laid out: %v", err)
	}
}

// olives returns a motif of rows of marks.
func olives(t *testing.T, across, rows int) job.Motif {
	m := motif(t, "olives", motifs.Values{"olives": float64(across), "rows": float64(rows), "long": 0.4}, depth(0.05), with(fine))
	none := 0.0
	m.Land = &none
	return m
}

// What is more than anybody cuts is refused, with its amount and the motif that has
// most, and what is accepted is.
func TestBounds(t *testing.T) {
	set := func(n int, m ...job.Motif) *job.Job {
		j := jobOn(nil, 10, m...)
		j.Blanks = nil
		for range n {
			j.Blanks = append(j.Blanks, straight(t))
		}
		return j
	}
	// 10 × 24 × 16 = 3,840 and 10 × 12 × 8 = 960.
	j := set(1, olives(t, 12, 8), olives(t, 24, 16), olives(t, 5, 5))
	for _, c := range []struct {
		name           string
		job            *job.Job
		key            string
		read, accepted string
	}{
		{"cuts", j, "motif[2]", "5050 cuts round the glass", "up to 5000"},
		// 10 × 10 × 8 = 800 on each.
		{"cuts of a set", set(13, olives(t, 10, 8)), "motif[1]", "800 cuts on each of 13 blanks, 10400 in all", "up to 10000 in all: 12 blanks in a job, or 769 cuts on each"},
		// Forty metres are 667 flutes of 60 mm; 40 each repeat, 17 repeats.
		{"groove", set(1, motif(t, "flute", motifs.Values{"panels": 40, "arch": 0}, with(fine))).With(job.Change{Motif: -1, Key: "repeats", Value: 17}),
			"motif[1]", "40.8 m of groove round the glass", "up to 40 m"},
		{"groove of a set", set(5, motif(t, "flute", motifs.Values{"panels": 40, "arch": 0}, with(fine))).With(job.Change{Motif: -1, Key: "repeats", Value: 10}),
			"motif[1]", "24 m of groove on each of 5 blanks, 120 m in all", "up to 100 m in all: 4 blanks in a job, or 20 m on each"},
	} {
		_, err := Lay(context.Background(), c.job)
		var wrong *job.Error
		if !errors.As(err, &wrong) || wrong.Key != c.key || wrong.Read != c.read || wrong.Accepted != c.accepted ||
			!strings.Contains(wrong.Hint, strings.Replace(strings.TrimSuffix(c.key, "]"), "[", " ", 1)+", a ") {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	j.Motifs = j.Motifs[:2] // 4,800
	if _, err := lay(context.Background(), j, j.Blanks[0]); err != nil {
		t.Error(err)
	}
}

// Too many cuts on one spot are refused, with the place: upright lines,
// turned evenly about the middle of one square millimetre.
func TestPiled(t *testing.T) {
	heap := func(n int) *job.Job {
		j := jobOn(straight(t), 1)
		for i := range n {
			m := motif(t, "fan", motifs.Values{"rays": 1, "hub": 0}, depth(0.2), with(fine), land(0), turn(180*float64(i)/float64(n)))
			m.X, m.Y, m.Width, m.Height = mm(0.5), mm(30.5), mm(10), mm(10)
			j.Motifs = append(j.Motifs, m)
		}
		j.Limits.Land = 0
		return j
	}
	j := heap(maxThrough + 1)
	_, err := New(context.Background(), j, j.Blanks[0])
	var wrong *job.Error
	if !errors.As(err, &wrong) || !strings.HasPrefix(wrong.Read, "more than 80 cuts through one spot, ") || wrong.Accepted != "up to 80" {
		t.Errorf("laid out: %v", err)
	}
	planned(t, heap(maxThrough))
}

// A grid of bars under a gang of eight crosses in 12 × 12 places of 64 each, 9,216
// in all; half as many level bars, all of two, in twice as many.
func TestPiledMitres(t *testing.T) {
	grid := func(up, lines float64) *job.Job {
		j := jobOn(straight(t), 1, motif(t, "lattice", motifs.Values{"across": 12, "up": up, "lines": lines}, depth(0.05), land(0)))
		j.Rack = []groove.Wheel{{Name: "eight", Edge: groove.Gang, Radius: 25, Thick: 2, Angle: math.Pi / 2, Mitres: 8, Spacing: 0.1}}
		none := 0.0
		j.Motifs[0].Clear = &none
		return j
	}
	if err := laid(t, grid(12, 1)).refuseCrossed(); err != nil {
		t.Error(err)
	}
	j := grid(6, 2)
	_, err := New(context.Background(), j, j.Blanks[0])
	var wrong *job.Error
	if !errors.As(err, &wrong) || wrong.Key != "motif[1]" || !strings.Contains(wrong.Read, "more than 12000 pairs of them in a repeat") {
		t.Errorf("laid out: %v", err)
	}
}

// More pairs that crowd one another than anyone could mend are refused.
func TestHeaped(t *testing.T) {
	crowd := func(across float64) *job.Job {
		m := motif(t, "olives", motifs.Values{"olives": across, "rows": 16, "long": 0.4}, depth(0.05), with(fine))
		j := jobOn(straight(t), 1, m)
		j.Limits.Land = 49
		return j
	}
	j := crowd(24) // 384 marks, each near two fifths of the others: 28,000 pairs
	_, err := New(context.Background(), j, j.Blanks[0])
	var wrong *job.Error
	if !errors.As(err, &wrong) || wrong.Key != "motif[1]" || !strings.Contains(wrong.Read, "more than 20000 pairs of cuts") {
		t.Errorf("laid out: %v", err)
	}
	p := laid(t, crowd(8)) // 128: 8,128 pairs there are
	if c, _ := p.check(t.Context(), nil); c.overfull || len(c.found) == 0 {
		t.Errorf("%d findings, overfull %v", len(c.found), c.overfull)
	}
}

// The gores and the cone of a blank are computed once, however many jobs are tried
// on it in its band.
func TestStagesAreKept(t *testing.T) {
	j := jobOn(nil, 5, motif(t, "leaf", nil, with(fine)))
	j.Blanks = nil
	for i := range 4 {
		r := 40 + 0.2*float64(i)
		j.Blanks = append(j.Blanks, blank(t, glass.Station{Height: 0, Radius: r - 6, Wall: 7}, glass.Station{Height: 50, Radius: r, Wall: 5}, glass.Station{Height: 100, Radius: r - 5, Wall: 4}))
	}
	e := NewEvaluator()
	for n := range 30 {
		on := j.With(job.Change{Motif: 0, Key: "depth", Value: 0.1 + 0.01*float64(n)})
		for _, b := range on.Blanks {
			one, err := e.TryOn(t.Context(), on, b, job.Side)
			if err != nil {
				t.Fatal(err)
			}
			if got, want := one.Plan.goreError(), one.Plan.Outside().Gores(5, 0).Worst(); got != want || got == 0 {
				t.Fatalf("gores off by %g, reckoned anew %g", got, want)
			}
		}
	}
	if len(e.stages) != len(j.Blanks) {
		t.Errorf("%d stages of %d blanks", len(e.stages), len(j.Blanks))
	}
}

// The two lines that come nearest are those that a look at every pair finds.
func TestNearestByEveryPair(t *testing.T) {
	rnd := rand.New(rand.NewPCG(11, 3))
	for _, k := range motifs.All() {
		for range 12 {
			v := k.Defaults()
			for _, p := range k.Params {
				switch {
				case p.Sort == motifs.Count:
					v[p.Name] = p.Min + float64(rnd.IntN(min(9, int(p.Max-p.Min)+1)))
				case rnd.IntN(2) == 0:
					v[p.Name] = []float64{p.Min, p.Max}[rnd.IntN(2)]
				}
			}
			d := drawing{setting: setting{width: 1 + 60*rnd.Float64(), height: 30}}
			d.cuts = k.Draw(v, d.width/d.height)
			near, want := math.Inf(1), [2]int{}
			for a := range d.cuts {
				for b := a + 1; b < len(d.cuts); b++ {
					off := apart(d.sketch(d.cuts[a], a).points, d.sketch(d.cuts[b], b).points)
					if off < near && !slices.Contains(d.cuts[a].Joins, b) {
						near, want = off, [2]int{a, b}
					}
				}
			}
			if got, ok := d.nearest(); ok == math.IsInf(near, 1) || ok && got != want {
				t.Errorf("%s %v: %v, every pair says %v", k.Name, v, got, want)
			}
		}
	}
}
