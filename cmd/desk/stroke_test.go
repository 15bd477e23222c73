package desk

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// strokeEdit is a stroke over the wrap, as a hand draws it: with a tremor of some size.
func strokeEdit(path string, r *rand.Rand, tremor float64, points ...geometry.Point) Edit {
	all := make([][2]float64, len(points))
	for i, at := range points {
		all[i] = [2]float64{at.X + tremor*(r.Float64()-0.5), at.Y + tremor*(r.Float64()-0.5)}
	}
	value, err := json.Marshal(stroke{Points: all, Step: tremor})
	if err != nil {
		panic(err)
	}
	return Edit{Op: "stroke", Path: path, Value: value}
}

// bow is points of a bow from one place to another, half a millimetre apart.
func bow(from, to geometry.Point, rise float64) []geometry.Point {
	n := max(8, int(2*math.Hypot(to.X-from.X, to.Y-from.Y)))
	all := make([]geometry.Point, n+1)
	for i := range all {
		t := float64(i) / float64(n)
		all[i] = geometry.Point{
			X: from.X + t*(to.X-from.X) - rise*math.Sin(math.Pi*t)*(to.Y-from.Y)/math.Hypot(to.X-from.X, to.Y-from.Y),
			Y: from.Y + t*(to.Y-from.Y) + rise*math.Sin(math.Pi*t)*(to.X-from.X)/math.Hypot(to.X-from.X, to.Y-from.Y),
		}
	}
	return all
}

// lineOf returns points along the lines of a motif, as they lie on the map in the first repeat
// in which it stands. A groove's own middle leaves its line a little where that bends.
func lineOf(t *testing.T, j *job.Job, motif int) []geometry.Point {
	t.Helper()
	p, err := pattern.Bare(j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	if _, err := pattern.Lay(t.Context(), j, j.Blanks[0]); err != nil {
		t.Error(err)
	}
	g, flat := p.Grip(motif), flatOf(p, false)
	var all []geometry.Point
	for _, c := range j.Motifs[motif].Kind.Draw(nil, 1) {
		for i := range c.Curves() {
			const steps = 500
			for k := range steps + 1 {
				at := c.Curve(i).At(float64(k) / steps)
				all = append(all, flat.Forward(g.At(at.X, at.Y)))
			}
		}
	}
	return all
}

// farFrom returns how far points are at most from the nearest line of a motif.
func farFrom(t *testing.T, text string, motif int, points []geometry.Point) float64 {
	t.Helper()
	j, err := readJob(text)
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	line := lineOf(t, j, motif)
	worst := 0.0
	for _, at := range points {
		least := math.Inf(1)
		for _, c := range line {
			least = min(least, math.Hypot(c.X-at.X, c.Y-at.Y))
		}
		worst = max(worst, least)
	}
	return worst
}

// A stroke drawn on the wrap is cut where it was drawn, on any glass and whatever the job's
// band; one that is added to it leaves the first where it was. A hand's tremor is taken out.
func TestStrokeWhereDrawn(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 8))
	worst := map[string]float64{}
	for name, stations := range glasses {
		for _, layout := range []string{"repeats = 4\nband = [15, 85]", "repeats = 6", "repeats = 3\nbare = [2]"} {
			for _, tremor := range []float64{0, 0.3} {
				text := dragJob(stations, layout, "at = [0.2, 0.3]\nwidth = 0.3\nheight = 0.3", "")
				first, second := bow(geometry.Point{X: -6, Y: 40}, geometry.Point{X: 5, Y: 62}, 2), bow(geometry.Point{X: 2, Y: 35}, geometry.Point{X: 9, Y: 71}, -3)
				if name != "straight" && name != "curved" {
					// On a cone the map is about its apex: the band lies elsewhere.
					up := apexShift(t, text)
					first, second = shifted(first, up), shifted(second, up)
				}
				one, _ := edited(t, text, strokeEdit("motif", r, tremor, first...))
				two, _ := edited(t, one, strokeEdit("motif[2]", r, tremor, second...))
				if j, _ := readJob(two); len(j.Motifs) != 2 || !strings.Contains(two, "\", \"") {
					t.Fatalf("%s: after two strokes it is\n%s", name, two)
				}
				allowed := 0.06 + tremor // shares are written to the ten thousandth, and grooves sampled
				for what, of := range map[string]struct {
					text   string
					points []geometry.Point
				}{"alone": {one, first}, "the first of two": {two, first}, "the second": {two, second}} {
					off := farFrom(t, of.text, 1, of.points)
					worst[what] = max(worst[what], off-tremor)
					if off > allowed {
						t.Errorf("%s, %q, tremor %g: %s is cut %.3f mm off\n%s", name, layout, tremor, what, off, of.text)
					}
				}
			}
		}
	}
	t.Logf("worst in mm, beyond the tremor: %v", worst)
}

// apexShift is where the middle of repeat 1 lies on the map, less the way up the profile.
func apexShift(t *testing.T, text string) float64 {
	t.Helper()
	j, err := readJob(text)
	if err != nil {
		t.Fatal(err)
	}
	p, err := pattern.Bare(j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return flatOf(p, false).Forward(geometry.Spot{Along: 50}).Y - 50
}

func shifted(points []geometry.Point, up float64) []geometry.Point {
	all := make([]geometry.Point, len(points))
	for i, at := range points {
		all[i] = geometry.Point{X: at.X, Y: at.Y + up}
	}
	return all
}

// A stroke added to a drawing that is turned, mirrored and sized otherwise is cut where it was
// drawn too.
func TestStrokeInTurned(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for _, how := range []string{"turn = 40", "turn = -120\nmirror = true", `shape = "true"` + "\nturn = 20", `height = "30 mm"`} {
		text := strings.Replace(dragJob(glasses["straight"], "repeats = 4\nband = [15, 85]",
			"at = [0, 0.5]\nwidth = 0.4\n"+how+"\n"+`paths = ["M 0 0 L 10 30", "M 0 10 C 3 12 5 18 5 25"]`, ""), `kind="leaf"`, `kind="drawing"`, 1)
		added := bow(geometry.Point{X: -14, Y: 40}, geometry.Point{X: 12, Y: 64}, 3)
		before, err := readJob(text)
		if err != nil {
			t.Fatal(err)
		}
		old := lineOf(t, before, 0)
		after, _ := edited(t, text, strokeEdit("motif[1]", r, 0, added...))
		if off := farFrom(t, after, 0, added); off > 0.06 {
			t.Errorf("%s: the stroke is cut %.3f mm off\n%s", how, off, after)
		}
		if off := farFrom(t, after, 0, old); off > 0.06 {
			t.Errorf("%s: the strokes of before are moved by %.3f mm\n%s", how, off, after)
		}
	}
}

// A ring drawn by hand is closed where its ends nearly meet, and a sharp corner parts a stroke
// in two cuts.
func TestStrokeShapes(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	text := dragJob(glasses["straight"], "repeats = 4\nband = [15, 85]", "at = [0.3, 0.2]\nwidth = 0.2\nheight = 0.2", "")
	var ring []geometry.Point
	for i := range 81 {
		a := 2 * math.Pi * float64(i) / 81 * 0.995
		ring = append(ring, geometry.Point{X: 9 * math.Cos(a), Y: 50 + 9*math.Sin(a)})
	}
	after, j := edited(t, text, strokeEdit("motif", r, 0.3, ring...))
	if cuts := j.Motifs[1].Kind.Draw(nil, 1); len(cuts) != 1 || !cuts[0].Closed {
		t.Errorf("a ring is %d cuts\n%s", len(cuts), after)
	}
	var hook []geometry.Point
	for i := range 41 {
		hook = append(hook, geometry.Point{X: -5, Y: 40 + float64(i)/2})
	}
	for i := range 21 {
		hook = append(hook, geometry.Point{X: -5 + float64(i)/2, Y: 60})
	}
	after, j = edited(t, text, strokeEdit("motif", r, 0.2, hook...))
	if cuts := j.Motifs[1].Kind.Draw(nil, 1); len(cuts) != 2 || len(cuts[0].Joins) != 1 {
		t.Errorf("a hook is %d cuts\n%s", len(cuts), after)
	}
}

// What is no stroke, or goes into no drawing, changes nothing and says why.
func TestStrokesRefused(t *testing.T) {
	text := dragJob(glasses["straight"], "repeats = 4", "width = 0.5\nheight = 0.5", "")
	for what, c := range map[string]struct{ path, value, want string }{
		"too short":  {"motif", `{"points": [[0, 40], [0.1, 40]], "step": 0.3}`, "too short"},
		"a leaf":     {"motif[1]", `{"points": [[0, 40], [9, 60]], "step": 0.3}`, "lines in the job"},
		"one point":  {"motif", `{"points": [[0, 40]]}`, ""},
		"far":        {"motif", `{"points": [[0, 40], [1e9, 2]]}`, ""},
		"no motif":   {"motif[7]", `{"points": [[0, 40], [9, 60]]}`, ""},
		"large step": {"motif", `{"points": [[0, 40], [9, 60]], "step": 50}`, ""},
	} {
		body, err := json.Marshal(fields{"job": text, "edits": []fields{{"op": "stroke", "path": c.path, "value": json.RawMessage(c.value)}}})
		if err != nil {
			t.Fatal(err)
		}
		reply, err := New().Answer(t.Context(), "lay", body)
		if c.want == "" {
			if _, bad := err.(*BadRequest); !bad {
				t.Errorf("%s: %v", what, err)
			}
			continue
		}
		var got struct {
			Job     string
			Mistake *mistake
		}
		if err != nil || json.Unmarshal(reply.Data, &got) != nil || got.Mistake == nil || !strings.Contains(got.Mistake.Words, c.want) || got.Job != text {
			t.Errorf("%s: %v, %+v", what, err, got.Mistake)
		}
	}
}
