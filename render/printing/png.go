package printing

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/draw"
	"image/png"
	"io"
	"math"
	"slices"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/rasterizer"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// maxDots is the most dots a picture may have: tabloid paper at 800 to the
// inch is below.
const maxDots = 128e6

// PNG writes a page as a picture on white, at a number of dots to the inch. It
// is in greys unless something on the page is in colour.
func PNG(w io.Writer, page Page, dpi float64, letters *lettering.Letters) error {
	if err := page.check(); err != nil {
		return err
	}
	across, up := dots(page.Width, page.Height, dpi)
	if !(across >= 1 && up >= 1 && across*up <= maxDots) {
		return fmt.Errorf("a picture at %g dots to the inch cannot be %.0f by %.0f dots", dpi, across, up)
	}
	colours := image.NewRGBA(image.Rect(0, 0, int(across), int(up)))
	draw.Draw(colours, colours.Rect, image.White, image.Point{}, draw.Src)
	raster := rasterizer.FromImage(colours, canvas.DPI(dpi), canvas.LinearColorSpace{})
	for _, layer := range drawing.Layers() {
		if err := paint(raster, page.Drawing.On(layer), letters); err != nil {
			return err
		}
	}
	raster.Close()
	var picture image.Image = colours
	if !page.Drawing.Coloured() {
		picture = greyed(colours)
	}
	var file bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := encoder.Encode(&file, picture); err != nil {
		return err
	}
	return write(w, sized(file.Bytes(), dpi))
}

// greyed returns a picture without its colours. Every dot of it is opaque. The package
// draw does the same, a dot at a time through the heap.
func greyed(colours *image.RGBA) *image.Gray {
	greys := image.NewGray(colours.Rect)
	for i := range greys.Pix {
		dot := colours.Pix[4*i : 4*i+3 : 4*i+3]
		// The weights of color.GrayModel, of eight bits as sixteen.
		const wide = 0x101
		grey := (19595*uint32(dot[0]) + 38470*uint32(dot[1]) + 7471*uint32(dot[2])) * wide
		greys.Pix[i] = uint8((grey + 1<<15) >> 24)
	}
	return greys
}

// sized returns a PNG file that says how large its dots are, so that it prints
// true to size: a pHYs chunk in front of the picture (PNG specification, third
// edition, 11.3.4.3).
func sized(file []byte, dpi float64) []byte {
	const afterHeader = 8 + 4 + 4 + 13 + 4 // the signature, and IHDR with its 13 bytes of data
	const perMetre = 1000 / geometry.MillimetresPerInch
	dots := uint32(math.Round(dpi * perMetre))
	chunk := []byte("pHYs")
	chunk = binary.BigEndian.AppendUint32(chunk, dots)
	chunk = binary.BigEndian.AppendUint32(chunk, dots)
	chunk = append(chunk, 1) // the unit is the metre
	out := binary.BigEndian.AppendUint32(slices.Clone(file[:afterHeader]), uint32(len(chunk)-4))
	out = append(out, chunk...)
	out = binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(chunk))
	return append(out, file[afterHeader:]...)
}

// dots is how many dots a page of a size in mm has across and up.
func dots(width, height, dpi float64) (across, up float64) {
	perMM := canvas.DPI(dpi).DPMM()
	return math.Round(width * perMM), math.Round(height * perMM)
}

// MaxDPI returns the most dots to the inch, in whole ones, that PNG draws a page
// of a size in mm with.
func MaxDPI(width, height float64) float64 {
	most := math.Ceil(math.Sqrt(maxDots/(width*height)) * geometry.MillimetresPerInch)
	for {
		if across, up := dots(width, height, most); across*up <= maxDots {
			return most
		}
		most--
	}
}
