package picture

import (
	"bytes"
	"context"
	"image/color"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/printtest"
)

// crowded is a job with findings: its fronds stand too close.
const crowdedJob = `
title = "Crowded"
length = "mm"
[blank]
station = [{height=0, across=80, wall=8}, {height=100, across=80, wall=5}]
[limits]
reach = 0
[[wheel]]
name = "mitre"
edge = "mitre"
across = 80
thick = 6
angle = 90
[layout]
repeats = 4
[[motif]]
kind = "leaf"
wheel = "mitre"
depth = 0.8
width = 0.6
fronds = 24
arch = 0
stalk = 0.25
crown = 0.4
`

func wordsOn(d drawing.Drawing) string {
	var all []string
	for _, layer := range drawing.Layers() {
		for _, m := range d.On(layer) {
			if t, ok := m.(drawing.Text); ok {
				all = append(all, t.Words)
			}
		}
	}
	return strings.Join(all, "\n")
}

func TestPageHoldsEverything(t *testing.T) {
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	long := strings.Replace(crowdedJob, "Crowded", strings.Repeat("A long title ", 9), 1)
	small := strings.NewReplacer("across=80, wall=8", "across=36, wall=8", "across=80, wall=5", "across=40, wall=4",
		"height=100", "height=60", "fronds = 24", "fronds = 3").Replace(crowdedJob)
	for name, text := range map[string]string{"crowded": crowdedJob, "long": long, "small": small, "upright": upright} {
		for _, o := range []Options{{}, {Tilt: DefaultTilt, Findings: true}, {Turn: 1, Round: true, Tilt: MaxTilt}} {
			v, err := New(context.Background(), planFor(t, text), o)
			if err != nil {
				t.Fatal(err)
			}
			for _, printed := range []bool{false, true} {
				page := v.board().page(printed)
				box := page.Drawing.Box()
				for _, layer := range drawing.Layers() {
					for _, m := range page.Drawing.On(layer) {
						if text, ok := m.(drawing.Text); ok {
							box = box.Union(letters.Box(text))
						}
					}
				}
				if box.Min.X < 0 || box.Min.Y < 0 || box.Max.X > page.Width || box.Max.Y > page.Height {
					t.Errorf("%s, %+v: the page of %g by %g mm has marks in %.2f", name, o, page.Width, page.Height, box)
				}
				if got := len(page.Drawing.On(drawing.CheckBars)) > 0; got != printed {
					t.Errorf("%s: check bars %v, want %v", name, got, printed)
				}
				if got := strings.Contains(strings.ReplaceAll(wordsOn(page.Drawing), "\n", " "), "Keep wheel and glass wet"); got != printed {
					t.Errorf("%s, %+v: cautions %v, want %v", name, o, got, printed)
				}
			}
		}
	}
}

func TestWords(t *testing.T) {
	p := planFor(t, crowdedJob)
	words := func(o Options) string {
		v, err := New(context.Background(), p, o)
		if err != nil {
			t.Fatal(err)
		}
		return wordsOn(v.board().page(false).Drawing)
	}
	plain := words(Options{})
	for _, want := range []string{"Crowded", "blank: 4 repeats, 196 cuts", "Drawn true to size: 100.0 mm high, 80.0 mm across", "floor was not measured"} {
		if !strings.Contains(strings.ReplaceAll(plain, "\n", " "), want) {
			t.Errorf("%q is not among the words:\n%s", want, plain)
		}
	}
	if strings.Contains(plain, "turned") || strings.Contains(plain, "crowded") {
		t.Errorf("a plain picture says more than is asked:\n%s", plain)
	}
	if got := words(Options{Turn: -30 * degree}); !strings.Contains(got, "turned 330°") {
		t.Errorf("how the glass is turned is not said:\n%s", got)
	}
	round := words(Options{Round: true})
	for _, want := range []string{"turned 0°", "turned 90°", "turned 180°", "turned 270°"} {
		if !strings.Contains(round, want) {
			t.Errorf("%q is not among the words:\n%s", want, round)
		}
	}
	if got := words(Options{Findings: true}); !strings.Contains(got, "crowded: land of") {
		t.Errorf("the findings are not listed:\n%s", got)
	}
	if v, _ := New(context.Background(), planFor(t, trellis), Options{Findings: true}); !strings.Contains(wordsOn(v.board().page(false).Drawing), "Checked: nothing is crowded") {
		t.Error("nothing is said where nothing is found")
	}
}

// Each finding on the near side is ringed where it lies, and none of the others.
func TestRingsStandAtTheFindings(t *testing.T) {
	p := planFor(t, crowdedJob)
	if len(p.Findings) == 0 {
		t.Fatal("the job has no findings")
	}
	for _, turn := range []float64{0, 40, 200} {
		var d drawing.Drawing
		s := stance{turn * degree, math.Tan(DefaultTilt)}
		rings{p, s}.draw(&d)
		var centres []geometry.Point
		for _, m := range d.On(drawing.Findings) {
			if ring, ok := m.(drawing.Stroke); ok && ring.Pen.Ink == warning() {
				box := geometry.BoxOf(ring.Points...)
				centres = append(centres, between(box.Min, box.Max, 0.5))
			}
		}
		near := func(at geometry.Point, within float64) bool {
			for _, c := range centres {
				if math.Hypot(c.X-at.X, c.Y-at.Y) < within {
					return true
				}
			}
			return false
		}
		for _, f := range p.Findings {
			for repeat := range p.Repeats {
				angle := math.Remainder(f.Theta+float64(repeat)*math.Pi/2-s.turn, 2*math.Pi)
				at := geometry.Point{X: 40 * math.Sin(angle), Y: f.Height - s.down*40*math.Cos(angle)}
				if math.Abs(angle) < math.Pi/2 && !near(at, 2*ringRadius) {
					t.Errorf("turned %g°: no ring at %.1f° and %.1f mm", turn, angle/degree, f.Height)
				}
			}
		}
		for _, c := range centres {
			if math.Abs(c.X) > 40.01 {
				t.Errorf("turned %g°: a ring off the glass, at %v", turn, c)
			}
		}
	}
}

func write(t *testing.T, to func(io.Writer) error) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := to(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestSameBytes(t *testing.T) {
	o := Options{Turn: 0.3, Tilt: DefaultTilt, Findings: true}
	files := func() [3][]byte {
		v, err := New(context.Background(), planFor(t, crowdedJob), o)
		if err != nil {
			t.Fatal(err)
		}
		return [3][]byte{write(t, v.SVG), write(t, v.PDF), write(t, v.PNG)}
	}
	first := files()
	for range 3 {
		for i, again := range files() {
			if !bytes.Equal(first[i], again) {
				t.Errorf("%s differs the second time", [...]string{"SVG", "PDF", "PNG"}[i])
			}
		}
	}
}

// In the finished PDF the glass's outline is as high and as wide as the glass.
func TestGlassIsTrueToSizeInThePDF(t *testing.T) {
	for _, tilt := range []float64{0, DefaultTilt} {
		p := demo(t)
		v, err := New(context.Background(), p, Options{Tilt: tilt})
		if err != nil {
			t.Fatal(err)
		}
		pages := printtest.Trace(t, write(t, v.PDF))
		rim := p.Blank.Profile().Radius(p.Blank.Height())
		foot := p.Blank.Profile().Radius(0)
		wide, high := 2*rim, p.Blank.Height()+math.Tan(tilt)*(rim+foot)
		found := false
		for _, s := range pages[0].Strokes {
			w, h := geometry.BoxOf(s.Points...).Size()
			if s.Closed && near(w, wide, 0.01) && near(h, high, 0.01) {
				found = true
			}
		}
		if len(pages) != 1 || !found {
			t.Errorf("tilt %.0f°: on %d pages no outline of %.3f by %.3f mm", tilt/degree, len(pages), wide, high)
		}
	}
}

func TestPNGIsInColour(t *testing.T) {
	v, err := New(context.Background(), planFor(t, upright), Options{})
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(write(t, v.PNG)))
	if err != nil {
		t.Fatal(err)
	}
	page := v.board().page(false)
	size := picture.Bounds().Size()
	if want := page.Width / 25.4 * 200; math.Abs(float64(size.X)-want) > 1 {
		t.Errorf("%d dots across, want %.0f", size.X, want)
	}
	// In the middle of its ground's upper edge.
	got := color.RGBAModel.Convert(picture.At(size.X/2, size.Y/5))
	red, green, blue := backdrop(1).RGB()
	if want := (color.RGBA{red, green, blue, 255}); got != want {
		t.Errorf("the ground is %v, want %v", got, want)
	}
}

// Tags stand clear of each other, also where several findings have one place.
func TestTagsStandApart(t *testing.T) {
	// A ring of two lines, so close that they crowd each other and lie on their own
	// next copies, at one place.
	text := crowdedJob + `[[motif]]
kind = "ring"
wheel = "` + wheelOf(crowdedJob) + `"
depth = 0.8
at = [0, 0.02]
width = 1
height = 0.05
lines = 2
`
	p := planFor(t, text)
	if n := len(p.Groups()); n < 3 {
		t.Fatalf("%d groups of findings", n)
	}
	for _, turn := range []float64{0, 40, 200} {
		var d drawing.Drawing
		rings{p, stance{turn * degree, math.Tan(DefaultTilt)}}.draw(&d)
		var tags []drawing.Text
		for _, m := range d.On(drawing.Findings) {
			if text, ok := m.(drawing.Text); ok {
				for _, other := range tags {
					if off := math.Hypot(text.At.X-other.At.X, text.At.Y-other.At.Y); off < 2*tagRadius {
						t.Errorf("turned %g°: tags %s and %s are %.1f mm apart", turn, text.Words, other.Words, off)
					}
				}
				tags = append(tags, text)
			}
		}
	}
}

// wheelOf returns the name of a job's first wheel.
func wheelOf(text string) string {
	_, after, _ := strings.Cut(text, "[[wheel]]\nname = \"")
	name, _, _ := strings.Cut(after, "\"")
	return name
}
