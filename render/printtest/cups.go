package printtest

import (
	"bytes"
	"encoding/binary"
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"roundlay/geometry"
)

// filters is where the filters of the printing system live.
const filters = "/usr/lib/cups/filter"

// Spooled prints a PDF file through the filters that a printing system would
// send it through, on a printer for sheets of letter paper with 600 dots to the
// inch and no driver of its own, and returns its first page as dots.
func Spooled(t testing.TB, pdf []byte) Picture {
	t.Helper()
	const dotsPerInch = "600"
	layout, raster := filepath.Join(filters, "pdftopdf"), filepath.Join(filters, "gstoraster")
	for _, path := range []string{layout, raster} {
		if _, err := os.Stat(path); err != nil {
			t.Skipf("%s is not installed (cups-filters)", path)
		}
	}
	pages := filtered(t, layout, File(t, "job.pdf", pdf), "")
	dots := filtered(t, raster, File(t, "pages.pdf", pages), "Resolution="+dotsPerInch+"dpi ColorModel=Gray")
	return unpack(t, dots)
}

// filtered runs one filter, which writes a log to standard error at all times.
func filtered(t testing.TB, program, file, options string) []byte {
	t.Helper()
	cmd := exec.Command(program, "1", "tester", "trial", "1", options, file)
	cmd.Env = append(os.Environ(), "CONTENT_TYPE=application/pdf", "FINAL_CONTENT_TYPE=application/vnd.cups-raster")
	out, err := cmd.Output()
	if err != nil || len(out) == 0 {
		t.Fatalf("%s: %v, %d bytes", filepath.Base(program), err, len(out))
	}
	return out
}

// Places in a page of the printing system's raster, version 2 (its documentation,
// "CUPS Raster Format"): a word, a header of 1796 bytes, and lines.
const (
	rasterHeader   = 1796
	rasterDots     = 276 // dots to the inch, across
	rasterWidth    = 372
	rasterHeight   = 376
	rasterBits     = 388 // to a dot
	rasterPerLine  = 392 // bytes
	rasterColours  = 400
	rasterGrey     = 18 // the colour space in which 255 is white
	rasterBlackInk = 3  // the one in which 255 is black
)

// unpack reads the first page of a raster.
func unpack(t testing.TB, data []byte) Picture {
	t.Helper()
	if len(data) < 4+rasterHeader || string(data[:4]) != "RaS2" {
		t.Fatalf("a raster that begins with %q", data[:min(len(data), 4)])
	}
	header, lines := data[4:4+rasterHeader], data[4+rasterHeader:]
	number := func(at int) int { return int(binary.BigEndian.Uint32(header[at:])) }
	width, height, colours := number(rasterWidth), number(rasterHeight), number(rasterColours)
	if number(rasterBits) != 8 || number(rasterPerLine) != width || colours != rasterGrey && colours != rasterBlackInk {
		t.Fatalf("a raster of %d bits to a dot in colour space %d", number(rasterBits), colours)
	}
	white := byte(255)
	if colours == rasterBlackInk {
		white = 0
	}
	picture := image.NewGray(image.Rect(0, 0, width, height))
	at := 0
	next := func() int { at++; return int(lines[at-1]) }
	for row := 0; row < height; {
		repeats := next() + 1
		line := make([]byte, 0, width)
		for len(line) < width {
			switch n := next(); {
			case n < 128:
				line = append(line, bytes.Repeat(lines[at:at+1], n+1)...)
				at++
			case n == 128: // white to the end
				line = append(line, bytes.Repeat([]byte{white}, width-len(line))...)
			default:
				line = append(line, lines[at:at+257-n]...)
				at += 257 - n
			}
		}
		if colours == rasterBlackInk {
			for i := range line {
				line[i] = 255 - line[i]
			}
		}
		for range repeats {
			copy(picture.Pix[row*picture.Stride:], line)
			row++
		}
	}
	return Picture{picture, float64(number(rasterDots))}
}

// Turned returns the picture a quarter turn on, clockwise.
func (p Picture) Turned() Picture {
	size := p.Image.Rect.Size()
	turned := image.NewGray(image.Rect(0, 0, size.Y, size.X))
	for y := range size.Y {
		for x := range size.X {
			turned.Pix[x*turned.Stride+size.Y-1-y] = p.Image.Pix[y*p.Image.Stride+x]
		}
	}
	return Picture{turned, p.DotsPerInch}
}

// Size returns the size of the picture in millimetres.
func (p Picture) Size() (width, height float64) {
	dot := geometry.MillimetresPerInch / p.DotsPerInch
	return float64(p.Image.Rect.Dx()) * dot, float64(p.Image.Rect.Dy()) * dot
}
