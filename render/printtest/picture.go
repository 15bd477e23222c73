package printtest

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"strconv"
	"testing"

	"roundlay/geometry"
)

// Picture is a page as some program shows it.
type Picture struct {
	Image       *image.Gray
	DotsPerInch float64
}

// PopplerPicture shows one page of a PDF file, counted from 1, by poppler.
func PopplerPicture(t testing.TB, pdf []byte, page int, dotsPerInch float64) Picture {
	t.Helper()
	n, dpi := strconv.Itoa(page), fmt.Sprint(dotsPerInch)
	out, _ := Run(t, Program(t, "pdftoppm"), "-f", n, "-l", n, "-r", dpi, "-gray", File(t, "shown.pdf", pdf))
	return decodePlain(t, out, dotsPerInch)
}

// MuPDFPicture shows one page of a PDF file, counted from 1, by MuPDF.
func MuPDFPicture(t testing.TB, pdf []byte, page int, dotsPerInch float64) Picture {
	t.Helper()
	shown := File(t, "shown.png", nil) // what it writes to a pipe it may not finish
	Run(t, Program(t, "mutool"), "draw", "-F", "png", "-c", "gray", "-r", fmt.Sprint(dotsPerInch), "-o", shown,
		File(t, "shown.pdf", pdf), strconv.Itoa(page))
	data, err := os.ReadFile(shown)
	if err != nil {
		t.Fatal(err)
	}
	return Decode(t, data, dotsPerInch)
}

// LibrsvgPicture shows an SVG file by librsvg.
func LibrsvgPicture(t testing.TB, svg []byte, dotsPerInch float64) Picture {
	t.Helper()
	dpi := fmt.Sprint(dotsPerInch)
	out, _ := Run(t, Program(t, "rsvg-convert"), "-d", dpi, "-p", dpi, "-b", "white", File(t, "shown.svg", svg))
	return Decode(t, out, dotsPerInch)
}

// Decode reads a picture from a PNG file, on white.
func Decode(t testing.TB, data []byte, dotsPerInch float64) Picture {
	t.Helper()
	decoded, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	if grey, ok := decoded.(*image.Gray); ok {
		return Picture{grey, dotsPerInch}
	}
	grey := image.NewGray(decoded.Bounds())
	// The package draw would do, a dot at a time through the heap.
	dots := decoded.(image.RGBA64Image)
	for y := grey.Rect.Min.Y; y < grey.Rect.Max.Y; y++ {
		for x := grey.Rect.Min.X; x < grey.Rect.Max.X; x++ {
			dot := dots.RGBA64At(x, y)
			white := 0xffff - dot.A // that shows through
			grey.SetRGBA64(x, y, color.RGBA64{R: dot.R + white, G: dot.G + white, B: dot.B + white, A: 0xffff})
		}
	}
	return Picture{grey, dotsPerInch}
}

// decodePlain reads a picture as poppler writes it fastest: a line each for its
// kind, its size and its white, then the dots (PGM).
func decodePlain(t testing.TB, data []byte, dotsPerInch float64) Picture {
	t.Helper()
	var width, height, white int
	head := bytes.SplitN(data, []byte("\n"), 4)
	if len(head) < 4 || string(head[0]) != "P5" {
		t.Fatalf("a picture that begins with %q", data[:min(len(data), 20)])
	}
	if _, err := fmt.Sscan(string(head[1])+" "+string(head[2]), &width, &height, &white); err != nil || len(head[3]) != width*height {
		t.Fatalf("a picture of %d by %d dots in %d bytes: %v", width, height, len(head[3]), err)
	}
	return Picture{&image.Gray{Pix: head[3], Stride: width, Rect: image.Rect(0, 0, width, height)}, dotsPerInch}
}

// Ink returns how much ink lies in a box, in square millimetres of black, and
// where its middle is. The box is in millimetres from the lower left corner of
// a page of the given height, and the picture begins at the page's upper left.
func (p Picture) Ink(box geometry.Box, height float64) (area float64, middle geometry.Point) {
	dot := geometry.MillimetresPerInch / p.DotsPerInch
	var sum, x, y float64
	for row := max(0, int((height-box.Max.Y)/dot)); row < p.Image.Rect.Dy(); row++ {
		at := geometry.Point{Y: height - (float64(row)+0.5)*dot}
		if at.Y < box.Min.Y {
			break
		}
		if at.Y > box.Max.Y {
			continue
		}
		for column := max(0, int(box.Min.X/dot)); column < p.Image.Rect.Dx(); column++ {
			at.X = (float64(column) + 0.5) * dot
			if at.X > box.Max.X {
				break
			}
			if at.X >= box.Min.X {
				ink := 1 - float64(p.Image.Pix[p.Image.PixOffset(column, row)])/255
				sum, x, y = sum+ink, x+ink*at.X, y+ink*at.Y
			}
		}
	}
	return sum * dot * dot, geometry.Point{X: x / sum, Y: y / sum}
}
