// Package scanx fills outlines with one colour, dot by dot, for canvas's rasterizer.
//
// It stands in for a module of this name, which canvas asks for and which says nowhere on
// what terms it may be passed on; go.mod has the line that puts this in its place. It has
// what canvas calls, and nothing else. The dots are found by package raster of the
// FreeType project, in whole numbers, so that they are the same on every processor.
package scanx

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"

	"github.com/golang/freetype/raster"
	"golang.org/x/image/math/fixed"
)

// ImgSpanner is a picture to fill in.
type ImgSpanner struct{ painter *raster.RGBAPainter }

// NewImgSpanner returns a picture to fill in. It panics for any but an *image.RGBA.
func NewImgSpanner(picture draw.Image) *ImgSpanner {
	dots, ok := picture.(*image.RGBA)
	if !ok {
		panic(fmt.Sprintf("scanx: a picture of type %T; only *image.RGBA is known", picture))
	}
	return &ImgSpanner{raster.NewRGBAPainter(dots)}
}

// Scanner gathers outlines until Draw fills them all, by nonzero winding.
type Scanner struct {
	to      *ImgSpanner
	inside  *raster.Rasterizer
	started bool
	first   fixed.Point26_6
	last    fixed.Point26_6
}

// NewScanner returns a Scanner for a picture of so many dots across and down.
func NewScanner(to *ImgSpanner, across, down int) *Scanner {
	inside := raster.NewRasterizer(across, down)
	inside.UseNonZeroWinding = true
	return &Scanner{to: to, inside: inside}
}

// SetColor sets the colour that Draw fills with. It panics for anything that has no colour
// of its own: roundlay has no gradients.
func (s *Scanner) SetColor(ink any) {
	one, ok := ink.(color.Color)
	if !ok {
		panic(fmt.Sprintf("scanx: a colour of type %T; only one for all dots is known", ink))
	}
	s.to.painter.SetColor(one)
}

// Start begins an outline at a place in 64ths of a dot; the one before is closed.
func (s *Scanner) Start(at fixed.Point26_6) {
	s.close()
	s.inside.Start(at)
	s.started, s.first, s.last = true, at, at
}

// Line goes straight on to a place.
func (s *Scanner) Line(to fixed.Point26_6) {
	s.inside.Add1(to)
	s.last = to
}

func (s *Scanner) close() {
	if s.started && s.last != s.first {
		s.inside.Add1(s.first)
	}
	s.started = false
}

// Draw fills what has been outlined since Clear.
func (s *Scanner) Draw() {
	s.close()
	s.inside.Rasterize(s.to.painter)
}

// Clear forgets all outlines.
func (s *Scanner) Clear() {
	s.inside.Clear()
	s.started = false
}
