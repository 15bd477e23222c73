package browser

import (
	"bytes"
	"cmp"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestScreenshots takes a picture of every view at three widths and in both schemes, into
// the folder that ROUNDLAY_SCREENSHOTS names, for someone to look at.
func TestScreenshots(t *testing.T) {
	folder := os.Getenv("ROUNDLAY_SCREENSHOTS")
	if folder == "" {
		t.Skip("ROUNDLAY_SCREENSHOTS names no folder for them")
	}
	for _, w := range walks() {
		t.Run(w.name, func(t *testing.T) {
			p := open(t, w.job, 1440, 1000)
			for _, v := range w.views {
				v.show(p)
				for _, l := range []struct {
					width, height int
					scheme        string
				}{{1440, 1000, "light"}, {820, 1180, "dark"}, {360, 780, "light"}} {
					name := fmt.Sprintf("%s-%s-%d.png", w.name, v.name, l.width)
					if err := os.WriteFile(filepath.Join(folder, name), p.shot(l.width, l.height, l.scheme), 0o666); err != nil {
						t.Fatal(err)
					}
				}
				p.size(1440, 1000)
				p.media("prefers-color-scheme", "light")
			}
		})
	}
}

// shot takes a picture of the window at a size, in a scheme.
func (p *tab) shot(width, height int, scheme string) []byte {
	p.t.Helper()
	p.media("prefers-color-scheme", scheme)
	p.size(width, height)
	p.quiet()
	// The engine's picture of the glass comes a moment after it comes to rest.
	p.until(`document.documentElement.dataset.job === "mistaken" || document.querySelector("#glass .vessel.rests")`)
	return run(p, chromedp.CaptureScreenshot())
}

// kept are the pictures in the guide.
var kept = []struct {
	name          string
	width, height int
	scheme        string
	show          func(t *testing.T) *tab
}{
	{"wide.png", 1440, 900, "light", func(t *testing.T) *tab {
		p := open(t, "", 1440, 900)
		p.press("#hints", "No more hints")
		p.click("#tab-design")
		p.choose1(1)
		return p
	}},
	{"found.png", 820, 1180, "dark", func(t *testing.T) *tab {
		p := open(t, crowded(), 820, 1180)
		p.click("#tab-check")
		p.quiet()
		eval[chromedp.Void](p, `scrollTo({ top: 0, behavior: "instant" })`)
		return p
	}},
	{"guide.png", 360, 640, "light", func(t *testing.T) *tab {
		p := open(t, "", 360, 640)
		for i := range 5 {
			p.question(i)
		}
		p.fill("#guide-rim", "3 1/8")
		p.until(`/Understood/.test(document.querySelector("#guide-said").innerText)`)
		return p
	}},
}

// update is the setting of the environment under which expected outputs are made anew.
const update = "ROUNDLAY_UPDATE"

// The guide's pictures of the page show it as it is. Letters are drawn otherwise by other
// machines, so shades are compared, patch by patch.
func TestKeptScreenshots(t *testing.T) {
	for _, k := range kept {
		t.Run(k.name, func(t *testing.T) {
			path := filepath.Join("..", "..", "..", "..", "testdata", "page", k.name)
			now := k.show(t).shot(k.width, k.height, k.scheme)
			if os.Getenv(update) == "1" {
				if err := os.WriteFile(path, fewColours(t, now), 0o666); err != nil {
					t.Fatal(err)
				}
			}
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if len(data) > 150<<10 {
				t.Errorf("%d bytes are many for a picture in a guide", len(data))
			}
			was, is := decoded(t, data), decoded(t, now)
			if was.Bounds().Size() != image.Pt(k.width, k.height) || is.Bounds().Size() != was.Bounds().Size() {
				t.Fatalf("%v is kept, %v is drawn, %d by %d is meant", was.Bounds(), is.Bounds(), k.width, k.height)
			}
			off := apart(was, is)
			t.Logf("%d bytes; patches of 20 pixels differ by %.2f of 255 in the mean", len(data), off)
			if off > sameLook {
				t.Errorf("the page no longer looks so: patches differ by %.2f of 255 in the mean", off)
			}
		})
	}
}

// sameLook is how much the shades of patches may differ, of 255 and in the mean. Other fonts
// make about 2; light against dark is over 100, another heading opened about 8.
const sameLook = 5

// apart returns how much the mean shades of two pictures' patches differ, of 255 and in the
// mean.
func apart(a, b image.Image) float64 {
	const patch = 20
	shade := func(of image.Image, x0, y0 int) float64 {
		var sum, n float64
		for y := y0; y < min(y0+patch, of.Bounds().Dy()); y++ {
			for x := x0; x < min(x0+patch, of.Bounds().Dx()); x++ {
				sum += float64(color.GrayModel.Convert(of.At(x, y)).(color.Gray).Y)
				n++
			}
		}
		return sum / n
	}
	var sum, n float64
	for y := 0; y < a.Bounds().Dy(); y += patch {
		for x := 0; x < a.Bounds().Dx(); x += patch {
			sum += math.Abs(shade(a, x, y) - shade(b, x, y))
			n++
		}
	}
	return sum / n
}

func decoded(t *testing.T, data []byte) image.Image {
	t.Helper()
	picture, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// fewColours makes a picture small: up to 128 colours that can be told apart stay, the
// commonest first, and others become the nearest of them.
func fewColours(t *testing.T, data []byte) []byte {
	t.Helper()
	full := decoded(t, data)
	count := map[color.RGBA]int{}
	for y := range full.Bounds().Dy() {
		for x := range full.Bounds().Dx() {
			count[color.RGBAModel.Convert(full.At(x, y)).(color.RGBA)]++
		}
	}
	all := make([]color.RGBA, 0, len(count))
	for c := range count {
		all = append(all, c)
	}
	slices.SortFunc(all, func(a, b color.RGBA) int {
		return cmp.Or(cmp.Compare(count[b], count[a]), cmp.Compare(a.R, b.R), cmp.Compare(a.G, b.G), cmp.Compare(a.B, b.B))
	})
	var palette color.Palette
	for _, c := range all {
		if len(palette) < 128 && !slices.ContainsFunc(palette, func(of color.Color) bool { return near(of.(color.RGBA), c) }) {
			palette = append(palette, c)
		}
	}
	few := image.NewPaletted(full.Bounds(), palette)
	draw.Draw(few, few.Rect, full, image.Point{}, draw.Src)
	var out bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	if err := encoder.Encode(&out, few); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// near reports whether two colours can hardly be told apart.
func near(a, b color.RGBA) bool {
	r, g, u := int(a.R)-int(b.R), int(a.G)-int(b.G), int(a.B)-int(b.B)
	return r*r+g*g+u*u < 150
}
