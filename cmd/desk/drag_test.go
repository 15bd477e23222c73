package desk

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/screen"
)

// glasses are the shapes that drags are tried on: station lists.
var glasses = map[string]string{
	"straight": `[{height=0, across=80, wall=7}, {height=100, across=80, wall=4}]`,
	"tapered":  `[{height=0, across=60, wall=7}, {height=100, across=90, wall=4}]`,
	"narrows":  `[{height=0, across=90, wall=7}, {height=100, across=64, wall=4}]`,
	"curved":   `[{height=0, across=60, wall=7}, {height=30, across=84, wall=6}, {height=70, across=86, wall=5}, {height=100, across=66, wall=4}]`,
}

// dragJob is a job with one leaf and a fan inside it, each as told.
func dragJob(stations, layout, leaf, fan string) string {
	text := "length = \"mm\"\n[blank]\nfloor = 8\nstation = " + stations + "\n[[wheel]]\nname=\"m\"\nedge=\"mitre\"\nacross=60\nthick=8\nangle=90\n" +
		"[layout]\n" + layout + "\n[[motif]]\nkind=\"leaf\"\nwheel=\"m\"\ndepth=0.5\n" + leaf + "\n"
	if fan != "" {
		text += "[[motif]]\nkind=\"fan\"\nwheel=\"m\"\ndepth=0.5\ninside=1\n" + fan + "\n"
	}
	return text
}

// anyOf picks one.
func anyOf(r *rand.Rand, of ...string) string { return of[r.IntN(len(of))] }

// aDragJob draws a job at random, and returns the number of the motif to drag.
func aDragJob(r *rand.Rand, glass string) (text string, motif int) {
	layout := anyOf(r, "repeats = 4\nband = [15, 85]", "repeats = 6\nband = [20, 80]", "repeats = 2\nband = [15, 85]")
	leaf := anyOf(r, "at = [0, 0.5]", "at = [0.1, 0.4]", `at = ["3 mm", 0.5]`, `at = ["-2 mm", "30 mm"]`) + "\n" +
		anyOf(r, "width = 0.5\nheight = 0.5", `width = "20 mm"`+"\nheight = 0.4", `width = 0.4`+"\n"+`height = "25 mm"`) + "\n" +
		anyOf(r, "", "turn = 30", "turn = -100", "turn = 180") + "\n" + anyOf(r, "", "mirror = true") + "\n" +
		anyOf(r, "", `shape = "true"`) + "\n" + anyOf(r, "", "", `on = "even"`, `on = "odd"`, `on = [2]`)
	if r.IntN(2) == 0 {
		return dragJob(glasses[glass], layout, leaf, ""), 0
	}
	fan := anyOf(r, "at = [0.1, 0.5]", `at = ["1 mm", "9 mm"]`) + "\nwidth = 0.4\nheight = 0.4\n" + anyOf(r, "", "turn = 45") + "\n" + anyOf(r, "", "mirror = true")
	return dragJob(glasses[glass], layout, leaf, fan), 1
}

// edited makes edits, and returns the job that comes of them.
func edited(t *testing.T, text string, edits ...Edit) (string, *job.Job) {
	t.Helper()
	out := layAnswer{Job: text}
	j, err := out.revise(layRequest{jobText: jobText{Job: text}, Edits: edits}, false)
	if err != nil || j == nil {
		t.Fatalf("%v, %+v\n%s", err, out.Mistake, text)
	}
	return out.Job, j
}

func middleOf(t *testing.T, j *job.Job, motif int) (geometry.Point, *pattern.Plan) {
	t.Helper()
	p, err := pattern.Bare(j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return flatOf(p, false).Forward(p.Grip(motif).Middle()), p
}

func dragEdit(motif int, grab string, from, to geometry.Point, more string) Edit {
	return Edit{Op: "drag", Path: job.Item("motif", motif), Value: json.RawMessage(fmt.Sprintf(
		`{"grab": %q, "from": [%v, %v], "to": [%v, %v]%s}`, grab, from.X, from.Y, to.X, to.Y, more))}
}

// A motif that is dragged by some way has its middle that way off afterwards, but for what
// its place is rounded to: on any glass, however it is turned and whatever it is inside.
func TestDragMoves(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 7))
	for glass := range glasses {
		for range 120 {
			text, motif := aDragJob(r, glass)
			j, err := readJob(text)
			if err != nil {
				t.Fatal(err)
			}
			from, _ := middleOf(t, j, motif)
			by := geometry.Point{X: 6*r.Float64() - 3, Y: 6*r.Float64() - 3}
			grabbed := geometry.Point{X: from.X + 2, Y: from.Y - 1}
			to := geometry.Point{X: grabbed.X + by.X, Y: grabbed.Y + by.Y}
			after, k := edited(t, text, dragEdit(motif, "middle", grabbed, to, ""))
			got, _ := middleOf(t, k, motif)
			off := math.Hypot(got.X-from.X-by.X, got.Y-from.Y-by.Y)
			// A tenth of a millimetre each way is the step of a caliper and of a share.
			if off > 0.08 {
				t.Errorf("%s: dragged by %.2f, the middle moved by (%.3f, %.3f), %.3f off\n%s\n%s", glass, by, got.X-from.X, got.Y-from.Y, off, text, after)
			}
			if a, b := j.Motifs[motif], k.Motifs[motif]; a.X.Fraction != b.X.Fraction || a.Y.Fraction != b.Y.Fraction {
				t.Errorf("a share became a length, or the other way round:\n%s", after)
			}
		}
	}
}

// A corner that is dragged comes to lie under the pointer, but for rounding, and the middle
// stays.
func TestDragSizes(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 7))
	for glass := range glasses {
		for range 60 {
			text, motif := aDragJob(r, glass)
			j, err := readJob(text)
			if err != nil {
				t.Fatal(err)
			}
			middle, p := middleOf(t, j, motif)
			flat := flatOf(p, false)
			corner := func(p *pattern.Plan) geometry.Point { return flat.Forward(p.Grip(motif).At(0.5, 1)) }
			from := corner(p)
			to := geometry.Point{X: from.X + 2*r.Float64() - 1, Y: from.Y + 2*r.Float64() - 1}
			after, k := edited(t, text, dragEdit(motif, "corner", from, to, ""))
			was, q := middleOf(t, k, motif)
			got := corner(q)
			if off := math.Hypot(got.X-to.X, got.Y-to.Y); off > 0.12 {
				t.Errorf("%s: the corner is %.3f off the pointer\n%s\n%s", glass, off, text, after)
			}
			if off := math.Hypot(was.X-middle.X, was.Y-middle.Y); off > 1e-6 {
				t.Errorf("%s: the middle moved by %.3f\n%s\n%s", glass, off, text, after)
			}
		}
	}
}

// A motif that is turned by a place of it has that place in the pointer's direction.
func TestDragTurns(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 7))
	for glass := range glasses {
		for range 60 {
			text, motif := aDragJob(r, glass)
			j, err := readJob(text)
			if err != nil {
				t.Fatal(err)
			}
			middle, p := middleOf(t, j, motif)
			flat := flatOf(p, false)
			top := func(p *pattern.Plan) geometry.Point { return flat.Forward(p.Grip(motif).At(0, 1)) }
			from := top(p)
			by := geometry.Degrees(60*r.Float64() - 30).Radians()
			sin, cos := math.Sincos(by)
			d := geometry.Point{X: from.X - middle.X, Y: from.Y - middle.Y}
			to := geometry.Point{X: middle.X + cos*d.X - sin*d.Y, Y: middle.Y + sin*d.X + cos*d.Y}
			after, k := edited(t, text, dragEdit(motif, "turn", from, to, ""))
			_, q := middleOf(t, k, motif)
			got := top(q)
			turned := math.Atan2(got.Y-middle.Y, got.X-middle.X) - math.Atan2(d.Y, d.X)
			off := geometry.Angle(math.Remainder(turned-by, 2*math.Pi)).Degrees()
			// Half a degree is what is rounded to; what is drawn along a taper or a chart of
			// curved glass turns a degree otherwise.
			most := 0.6
			if glass != "straight" {
				most = 1.5
			}
			if math.Abs(off) > most {
				t.Errorf("%s: turned %.2f° too far\n%s\n%s", glass, off, text, after)
			}
		}
	}
}

// Where a job states no band, its motifs' places change it. A drag is to the place on the
// glass all the same.
func TestDragWithoutBand(t *testing.T) {
	const leaf = "at = [0, 0.8]\nwidth = 0.4\nheight = 0.3"
	thin := `[{height=0, across=60, wall=7}, {height=60, across=78, wall=3}, {height=100, across=90, wall=1.2}]`
	text := dragJob(thin, "repeats = 4", leaf, "")
	j, err := readJob(text)
	if err != nil {
		t.Fatal(err)
	}
	from, p := middleOf(t, j, 0)
	for _, by := range []geometry.Point{{X: 3, Y: -6}, {X: -2, Y: -12}, {X: 1, Y: -20}} {
		to := geometry.Point{X: from.X + by.X, Y: from.Y + by.Y}
		want := flatOf(p, false).Reverse(to)
		_, k := edited(t, text, dragEdit(0, "middle", from, to, ""))
		_, q := middleOf(t, k, 0)
		if q.Band == p.Band {
			t.Error("the band stays as it is: the test tries nothing")
		}
		got := q.Grip(0).Middle()
		if off := math.Abs(got.Along - want.Along); off > 0.1 {
			t.Errorf("by %v: %.3f mm too high or low", by, off)
		}
	}
}

// What is dragged away stays within what a job may have.
func TestDragIsKept(t *testing.T) {
	text := dragJob(glasses["tapered"], "repeats = 4\nband = [15, 85]", "at = [0, 0.5]\nwidth = 0.5\nheight = 0.5\non = \"odd\"", "")
	for _, grab := range []string{"middle", "corner", "turn"} {
		for _, to := range []geometry.Point{{X: 400, Y: 900}, {X: -400, Y: -900}, {X: 5, Y: 1}} {
			edited(t, text, dragEdit(0, grab, geometry.Point{X: 5, Y: 60}, to, ""))
		}
	}
}

// On a wide cone the map comes round before the glass does. A motif far round is still
// moved by no more than it was dragged.
func TestDragFarRoundWideCone(t *testing.T) {
	const bowl = `[{height=0, across=60, wall=7}, {height=60, across=200, wall=4}]`
	text := dragJob(bowl, "repeats = 6\nband = [25, 50]", "at = [0, 0.5]\nwidth = 0.3\nheight = 0.5\non = [6]", "")
	j, err := readJob(text)
	if err != nil {
		t.Fatal(err)
	}
	p, err := pattern.Bare(j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	flat, was := flatOf(p, false), p.Grip(0).Middle()
	want := geometry.Spot{Theta: was.Theta + 0.1, Along: was.Along + 2}
	_, k := edited(t, text, dragEdit(0, "middle", flat.Forward(was), flat.Forward(want), ""))
	_, q := middleOf(t, k, 0)
	if got := q.Grip(0).Middle(); math.Abs(got.Theta-want.Theta) > 0.01 || math.Abs(got.Along-want.Along) > 0.2 {
		t.Errorf("dragged to %v, it stands at %v", want, got)
	}
}

// On the glass a motif is dragged by an angle and a height.
func TestDragOnGlass(t *testing.T) {
	text := dragJob(glasses["curved"], "repeats = 4\nband = [15, 85]", "at = [0, 0.5]\nwidth = 0.5\nheight = 0.5", "")
	j, err := readJob(text)
	if err != nil {
		t.Fatal(err)
	}
	_, p := middleOf(t, j, 0)
	a := p.Grip(0).Middle()
	z := p.Surface.HeightAt(a.Along)
	_, k := edited(t, text, dragEdit(0, "middle", geometry.Point{X: 0, Y: z}, geometry.Point{X: 9, Y: z + 8}, `, "on": "glass"`))
	_, q := middleOf(t, k, 0)
	b := q.Grip(0).Middle()
	if turned := geometry.Angle(b.Theta - a.Theta).Degrees(); math.Abs(turned-9) > 0.1 {
		t.Errorf("turned by %.3f°", turned)
	}
	if up := q.Surface.HeightAt(b.Along) - z; math.Abs(up-8) > 0.1 {
		t.Errorf("moved up by %.3f", up)
	}
}

func TestDragStation(t *testing.T) {
	const stations = `[{height=0, across="3 1/8", wall="1/4"}, {height=2, across=["3 1/4", "3 17/64"], wall="3/16"}, {height="3 1/2", around="10 1/4", wall="1/8"}]`
	text := strings.Replace(strings.Replace(dragJob(stations, "repeats = 4", "", ""), `"mm"`, `"in"`, 1), "floor = 8", `floor = "1/2"`, 1)
	text = strings.NewReplacer("across=60", "across=3", "thick=8", `thick="1/4"`, "depth=0.5", `depth="1/64"`).Replace(text)
	for _, c := range []struct {
		station int
		to      [2]float64
		want    string
	}{
		{1, [2]float64{40.6, 9}, `across="3 13/64"`},
		{2, [2]float64{42.0, 50.8}, `across=["3 19/64", "3 5/16"]`},
		{2, [2]float64{41.37, 40.1}, `height="1 37/64"`},
		{3, [2]float64{42.0, 92}, `around="10 25/64"`},
		{3, [2]float64{41.4, 10}, `height="2 3/64"`}, // above the one before it
	} {
		after, _ := edited(t, text, Edit{Op: "drag", Path: fmt.Sprintf("blank.station[%d]", c.station),
			Value: json.RawMessage(fmt.Sprintf(`{"to": [%v, %v]}`, c.to[0], c.to[1]))})
		if bare := strings.NewReplacer(" = ", "=", ` in"`, `"`).Replace(after); !strings.Contains(bare, c.want) {
			t.Errorf("station %d to %v: no %s in\n%s", c.station, c.to, c.want, after)
		}
	}
}

// In a set whose motifs have the size that suits all of its blanks, a drag on one blank comes
// out there, whichever blank the size is from.
func TestDragInSet(t *testing.T) {
	text := twelve()
	j, err := readJob(text)
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range []int{0, 3, 11} {
		blank := j.Blanks[i]
		place := func(j *job.Job, x, y float64) (geometry.Point, screen.Flat) {
			p, err := pattern.Bare(j, j.Blanks[i])
			if err != nil {
				t.Fatal(err)
			}
			flat := flatOf(p, false)
			return flat.Forward(p.Grip(0).At(x, y)), flat
		}
		for _, grab := range []struct {
			name string
			x, y float64
		}{{"middle", 0, 0.5}, {"corner", 0.5, 1}} {
			from, _ := place(j, grab.x, grab.y)
			to := geometry.Point{X: from.X - 1.5, Y: from.Y - 2.5}
			out := layAnswer{Job: text}
			k, err := out.revise(layRequest{Blank: blank.Name, Edits: []Edit{dragEdit(0, grab.name, from, to, "")}}, false)
			if err != nil || k == nil {
				t.Fatal(err, out.Mistake)
			}
			if got, _ := place(k, grab.x, grab.y); math.Hypot(got.X-to.X, got.Y-to.Y) > 0.15 {
				t.Errorf("%s on %q: at %v, not at %v", grab.name, blank.Name, got, to)
			}
		}
	}
}
