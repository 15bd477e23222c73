package printtest

import (
	"fmt"
	"image"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"roundlay/geometry"
)

// browserScale is how many dots of the screen make a pixel of CSS, 96 of which
// make an inch.
const browserScale = 2

// Sized is an SVG file and its size in millimetres.
type Sized struct {
	SVG           []byte
	Width, Height float64
}

// pixels returns the size of a file in whole pixels of CSS.
func (s Sized) pixels() (wide, tall int) {
	count := func(mm float64) int { return int(math.Ceil(mm / geometry.MillimetresPerInch * 96)) }
	return count(s.Width), count(s.Height)
}

// BrowserPicture shows an SVG file of the given size in millimetres by headless
// Chromium.
func BrowserPicture(t testing.TB, svg []byte, width, height float64) Picture {
	t.Helper()
	wide, tall := Sized{svg, width, height}.pixels()
	return browse(t, File(t, "shown.svg", svg), wide, tall)
}

// BrowserPictures shows several SVG files as BrowserPicture does, each in a frame of
// its own on one page: the browser, most of whose time goes by in starting, is
// started once.
func BrowserPictures(t testing.TB, files []Sized) []Picture {
	t.Helper()
	var page strings.Builder
	page.WriteString("<!DOCTYPE html>\n<body style=\"margin:0\">\n")
	const frame = "<iframe src=\"file://%s\" scrolling=\"no\" style=\"position:absolute; border:0; left:0; top:%dpx; width:%dpx; height:%dpx\"></iframe>\n"
	widest, top := 0, 0
	for i, f := range files {
		wide, tall := f.pixels()
		fmt.Fprintf(&page, frame, File(t, fmt.Sprintf("shown%d.svg", i), f.SVG), top, wide, tall)
		widest, top = max(widest, wide), top+tall
	}
	all := browse(t, File(t, "shown.html", []byte(page.String())), widest, top)
	var pictures []Picture
	at := 0
	for _, f := range files {
		wide, tall := f.pixels()
		pictures = append(pictures, all.part(image.Rect(0, at, wide*browserScale, at+tall*browserScale)))
		at += tall * browserScale
	}
	return pictures
}

// part returns a part of a picture as a picture of its own.
func (p Picture) part(of image.Rectangle) Picture {
	whole := image.NewGray(image.Rectangle{Max: of.Size()})
	for y := range of.Dy() {
		copy(whole.Pix[y*whole.Stride:(y+1)*whole.Stride], p.Image.Pix[p.Image.PixOffset(of.Min.X, of.Min.Y+y):])
	}
	return Picture{whole, p.DotsPerInch}
}

// browse returns what a browser's window of a size in pixels shows of a file.
func browse(t testing.TB, path string, wide, tall int) Picture {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes seconds to start")
	}
	browser := Program(t, "chromium", "chromium-browser", "google-chrome")
	// Not the test's own folder: the browser's last processes may still write
	// there when the test ends.
	profile, err := os.MkdirTemp("", "browser")
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(profile)
	shot := filepath.Join(profile, "shot.png")
	Run(t, browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars",
		"--user-data-dir="+profile, fmt.Sprintf("--force-device-scale-factor=%d", browserScale),
		fmt.Sprintf("--window-size=%d,%d", wide, tall), "--screenshot="+shot, "file://"+path)
	data, err := os.ReadFile(shot)
	if err != nil {
		t.Fatal(err)
	}
	return Decode(t, data, browserScale*96)
}
