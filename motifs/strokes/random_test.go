package strokes_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs/strokes"
)

// randomPaths returns path data drawn at random.
func randomPaths(random *rand.Rand, n int) []string {
	all := make([]string, n)
	for i := range all {
		all[i] = randomPath(random)
	}
	return all
}

// randomPath returns the data of one path: every command, absolute and relative,
// numbers that coincide now and then.
func randomPath(random *rand.Rand) string {
	number := func() string {
		switch random.IntN(6) {
		case 0:
			return fmt.Sprint(random.IntN(5) * 25)
		case 1:
			return fmt.Sprintf("%.3e", 100*random.Float64())
		}
		return fmt.Sprintf("%.4g", 140*random.Float64()-20)
	}
	numbers := func(n int) string {
		all := make([]string, n)
		for i := range all {
			all[i] = number()
		}
		return strings.Join(all, []string{" ", ",", " , "}[random.IntN(3)])
	}
	var b strings.Builder
	b.WriteString("M" + numbers(2))
	for range 1 + random.IntN(6) {
		command := "LHVCSQTAMZ"[random.IntN(10)]
		count := map[byte]int{'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2, 'M': 2, 'Z': 0}[command]
		if random.IntN(2) == 0 {
			command |= 0x20
		}
		b.WriteByte(command)
		if command == 'A' || command == 'a' {
			fmt.Fprintf(&b, "%s %d%d%s", numbers(3), random.IntN(2), random.IntN(2), numbers(2))
			continue
		}
		b.WriteString(numbers(count))
	}
	return b.String()
}

// randomDrawing returns a file with shapes and paths in groups, with transforms,
// styles, uses and viewports, all at random.
func randomDrawing(random *rand.Rand) string {
	var b strings.Builder
	share := func() float64 { return 100 * random.Float64() }
	pick := func(all ...string) string { return all[random.IntN(len(all))] }
	transform := func() string {
		if random.IntN(2) == 0 {
			return ""
		}
		return fmt.Sprintf(` transform="%s"`, pick(
			fmt.Sprintf("translate(%g %g)", share()-50, share()-50), fmt.Sprintf("rotate(%g)", 4*share()), fmt.Sprintf("scale(%g,%g)", share()/50-1, share()/50),
			fmt.Sprintf("skewX(%g)", share()), fmt.Sprintf("matrix(%g %g %g %g 0 0)", share()/50-1, share()/50-1, share()/50-1, share()/50-1), "scale(0)"))
	}
	style := func() string {
		return pick("", "", ` stroke="none"`, ` stroke="red"`, ` class="a"`, ` style="stroke:blue;fill:none"`, ` visibility="hidden"`)
	}
	fmt.Fprint(&b, `<svg xmlns="http://www.w3.org/2000/svg" stroke="black"`, pick("", ` viewBox="0 0 100 100"`, ` viewBox="-10 -10 150 120" width="60mm" height="20mm" preserveAspectRatio="none"`), ">")
	fmt.Fprint(&b, "<style>.a{stroke:", pick("none", "green"), "} g > path {fill:none}</style>")
	open := 0
	for i := range 3 + random.IntN(20) {
		switch random.IntN(9) {
		case 0:
			fmt.Fprintf(&b, `<g id="g%d"%s%s>`, i, transform(), style())
			open++
		case 1:
			if open > 0 {
				b.WriteString("</g>")
				open--
			}
		case 2:
			fmt.Fprintf(&b, `<circle cx="%g" cy="%gpt" r="%gmm"%s%s/>`, share(), share(), share()/10, style(), transform())
		case 3:
			fmt.Fprintf(&b, `<rect x="%g" y="%g" width="%g" height="%g" rx="%g"%s/>`, share(), share(), share(), share(), share()/3-5*float64(random.IntN(2))+5, style())
		case 4:
			fmt.Fprintf(&b, `<use href="#g%d" x="%g"%s/>`, random.IntN(i+1), share(), transform())
		case 5:
			fmt.Fprintf(&b, `<svg x="%g" width="%g" height="%g" viewBox="0 0 %g %g"><ellipse cx="9" cy="9" rx="%g" ry="5"/></svg>`, share(), share(), share(), share(), share(), share()/2)
		case 6:
			fmt.Fprintf(&b, `<polyline points="%g,%g %g %g %g %g"%s/>`, share(), share(), share(), share(), share(), share(), style())
		default:
			fmt.Fprintf(&b, `<path d="%s"%s%s/>`, randomPath(random), style(), transform())
		}
	}
	return b.String() + strings.Repeat("</g>", open) + "</svg>"
}

// sound checks what holds for every drawing: strokes that go on without a gap, finite,
// inside the box, closed where they say so; joins on strokes that are there.
func sound(t *testing.T, d *strokes.Drawing) {
	t.Helper()
	width, height := d.Box.Size()
	size := math.Max(width, height)
	if !(width > 0 && height > 0 && size <= 2.1e9) || width < 0.0099*height || height < 0.0099*width {
		t.Fatalf("box %v", d.Box)
	}
	if len(d.Strokes) == 0 {
		t.Error("no strokes, and no error")
	}
	room := d.Box.Grow(1e-9 * size)
	for i, s := range d.Strokes {
		for k, c := range s.Curves {
			for j := range 9 {
				if p := c.At(float64(j) / 8); !room.Contains(p) { // false for a NaN
					t.Errorf("stroke %d leaves the box %v: %v", i, d.Box, p)
				}
			}
			if k > 0 && c[0] != s.Curves[k-1][3] {
				t.Errorf("stroke %d has a gap at %v", i, c[0])
			}
		}
		if !(s.Length() > 0) {
			t.Errorf("stroke %d is %g long", i, s.Length())
		}
		if s.Closed && s.Curves[0][0] != s.Curves[len(s.Curves)-1][3] {
			t.Errorf("stroke %d is closed from %v to %v", i, s.Curves[0][0], s.Curves[len(s.Curves)-1][3])
		}
	}
	for _, j := range d.Joins {
		if j.A < 0 || j.A >= j.B || j.B >= len(d.Strokes) || !d.Box.Grow(0.01*size).Contains(j.At) {
			t.Errorf("join %v of %d strokes", j, len(d.Strokes))
		}
	}
	for _, n := range d.Notes {
		if strings.ContainsAny(n.String(), "\n\r") || n.Text == "" {
			t.Errorf("note %q", n)
		}
	}
}

// Random drawings, with and without the middle of slivers, are sound or refused for
// having no stroke.
func TestRandomDrawings(t *testing.T) {
	random := rand.New(rand.NewPCG(13, 2))
	read, refused := 0, 0
	for i := range 600 {
		file := randomDrawing(random)
		d, err := strokes.Read([]byte(file), strokes.Options{Centre: i%2 == 0})
		if err != nil {
			if !strings.Contains(err.Error(), "without a stroke") {
				t.Errorf("%v: %s", err, file)
			}
			refused++
			continue
		}
		read++
		for _, n := range d.Notes {
			if strings.HasPrefix(n.Text, "no line was moved by more than") && i%2 == 1 && n.Share > 1.05*(strokes.DefaultTremor+strokes.DefaultStep) {
				t.Errorf("a line moved by %g: %s", n.Share, file)
			}
		}
		if sound(t, d); t.Failed() {
			t.Fatal(file)
		}
	}
	if read < 480 {
		t.Errorf("%d read, %d refused", read, refused)
	}
}

// The same file gives the same drawing, whatever the size of its units: a drawing
// enlarged tenfold has the same strokes ten times as large.
func TestSizeDoesNotMatter(t *testing.T) {
	random := rand.New(rand.NewPCG(13, 3))
	for range 100 {
		data := randomPath(random)
		file := func(scale float64) []byte {
			return fmt.Appendf(nil, `<svg viewBox="0 0 %g %g" stroke="red"><path transform="scale(%g)" d="%s"/></svg>`, 100*scale, 100*scale, scale, data)
		}
		one, err := strokes.Read(file(1), strokes.Options{})
		if err != nil {
			continue
		}
		ten, err := strokes.Read(file(8), strokes.Options{})
		if err != nil || len(one.Strokes) != len(ten.Strokes) || len(one.Joins) != len(ten.Joins) {
			t.Errorf("%s: %v and %v, %v", data, one, ten, err)
			continue
		}
		for i, s := range one.Strokes {
			for k, c := range s.Curves {
				for j, p := range c {
					if q := ten.Strokes[i].Curves[k][j]; !near(geometry.Point{X: 8 * p.X, Y: 8 * p.Y}, q, 1e-5) {
						t.Fatalf("%s: %v and %v", data, p, q)
					}
				}
			}
		}
	}
}
