package strokes_test

import (
	"bytes"
	"encoding/json"
	"html"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs/strokes"
)

// program returns the first of the named programs that is installed, and skips the
// test where none is.
func program(t *testing.T, names ...string) string {
	t.Helper()
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	const required = "ROUNDLAY_TOOLS"
	if os.Getenv(required) == "required" {
		t.Fatalf("%s is not installed, and %s=required asks for it", names[0], required)
	}
	t.Skipf("%s is not installed; %s=required makes this fail", names[0], required)
	return ""
}

// asked has a browser say, of each shape, how long it is and where its points are, in
// the outermost element's user space.
const asked = `<!doctype html><body><script>
const said = {};
for (const [name, text] of Object.entries(DRAWINGS)) {
  const host = document.body.appendChild(document.createElement('div'));
  const root = document.importNode(new DOMParser().parseFromString(text, 'image/svg+xml').documentElement, true);
  host.attachShadow({mode: 'open'}).appendChild(root);
  said[name] = {};
  const o = root.getScreenCTM(), det = o.a * o.d - o.b * o.c;
  for (const e of root.querySelectorAll('path,line,polyline,polygon,circle,ellipse,rect')) {
    const m = e.getScreenCTM(), length = e.getTotalLength(), points = [];
    for (let i = 0; i <= 40; i++) {
      const p = e.getPointAtLength(length * i / 40);
      const x = m.a * p.x + m.c * p.y + m.e - o.e, y = m.b * p.x + m.d * p.y + m.f - o.f;
      points.push([(o.d * x - o.c * y) / det, (o.a * y - o.b * x) / det]);
    }
    const scale = Math.sqrt((m.a * m.d - m.b * m.c) / det);
    said[name][e.id] = {length, points, scale};
  }
}
document.body.innerHTML = '<pre>' + JSON.stringify(said) + '</pre>';
</script>`

// shape is what the browser says of one.
type shape struct {
	Length, Scale float64
	Points        [][2]float64
}

// browserSays asks headless Chromium about drawings.
func browserSays(t *testing.T, drawings map[string]string) map[string]map[string]shape {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes seconds to start")
	}
	browser := program(t, "chromium", "chromium-browser", "google-chrome")
	// Not the test's own folder: the browser's last processes may still write there.
	folder, err := os.MkdirTemp("", "strokes")
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(folder)
	data, err := json.Marshal(drawings)
	if err != nil {
		t.Fatal(err)
	}
	page := filepath.Join(folder, "ask.html")
	if err := os.WriteFile(page, []byte(strings.Replace(asked, "DRAWINGS", string(data), 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync",
		"--user-data-dir="+folder, "--dump-dom", "file://"+page).Output()
	if err != nil {
		t.Fatal(err)
	}
	_, out, _ = bytes.Cut(out, []byte("<pre>"))
	out, _, _ = bytes.Cut(out, []byte("</pre>"))
	var said map[string]map[string]shape
	if err := json.Unmarshal([]byte(html.UnescapeString(string(out))), &said); err != nil {
		t.Fatalf("%v in %.300s", err, out)
	}
	return said
}

// TestABrowserReadsTheSame compares every shape with Chromium, point by point. The
// bar is a hundredth of the box; its floats, of 24 bits, agree to a ten thousandth.
func TestABrowserReadsTheSame(t *testing.T) {
	drawings := shapes()
	said := browserSays(t, drawings)
	worst := 0.0
	slanted := map[string]bool{"c": true, "d": true, "e": true, "none": true, "o": true}
	for name, svg := range drawings {
		d, err := strokes.Read([]byte(svg), asDrawn())
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		width, height := d.Box.Size()
		size := math.Max(width, height)
		mine := map[string][]strokes.Stroke{}
		for _, s := range d.Strokes {
			mine[s.Part] = append(mine[s.Part], s)
		}
		if len(said[name]) != len(mine) {
			t.Errorf("%s: %d shapes, the browser has %d", name, len(mine), len(said[name]))
		}
		stretch := 1.0
		if name == "stretched" { // by its preserveAspectRatio; the browser answers in the viewBox
			stretch = 120.0 / 300
		}
		for id, shape := range said[name] {
			all := mine[id]
			if len(all) == 0 {
				t.Errorf("%s: %s is missing", name, id)
				continue
			}
			theirs := make([]geometry.Point, len(shape.Points))
			for i, p := range shape.Points {
				theirs[i] = place(p[0], stretch*p[1])
			}
			last := all[len(all)-1].Curves
			off := math.Max(r2.Norm(r2.Sub(theirs[0], all[0].Curves[0][0])), r2.Norm(r2.Sub(theirs[len(theirs)-1], last[len(last)-1][3])))
			for _, p := range theirs {
				off = math.Max(off, apart(p, all))
			}
			if worst = math.Max(worst, off/size); off > 1e-4*size {
				t.Errorf("%s: %s deviates from the browser's by %.2g of the box", name, id, off/size)
			}
			// What is as long, and lies on it from end to end, is it. The browser measures along
			// lines that are up to 0.7 % shorter than a circle. A transform that is not the
			// same in all directions changes the length.
			if length := lengthOf(all); !slanted[id] && math.Abs(length-shape.Length*shape.Scale) > 1e-2*length {
				t.Errorf("%s: %s is %g long, the browser's %g", name, id, length, shape.Length*shape.Scale)
			}
		}
	}
	t.Logf("the worst place deviates by %.2g of the box", worst)
}

// apart returns how far a place is from the nearest of strokes.
func apart(p geometry.Point, all []strokes.Stroke) float64 {
	least := math.Inf(1)
	for _, s := range all {
		line := s.Points(1e-4)
		for i := 1; i < len(line); i++ {
			d := r2.Sub(line[i], line[i-1])
			t := math.Max(0, math.Min(1, r2.Dot(r2.Sub(p, line[i-1]), d)/r2.Norm2(d)))
			least = math.Min(least, r2.Norm(r2.Sub(p, r2.Add(line[i-1], r2.Scale(t, d)))))
		}
	}
	return least
}

func lengthOf(all []strokes.Stroke) float64 {
	sum := 0.0
	for _, s := range all {
		sum += s.Length()
	}
	return sum
}
