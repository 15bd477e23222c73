package printtest

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"roundlay/geometry"
)

// Letter is one letter of a PDF file as MuPDF finds it, in millimetres from the
// page's lower left corner.
type Letter struct {
	Sign string
	Size float64      // in points
	Box  geometry.Box // as wide as the letter, from the font's lowest tail to its highest accent
	// Turned says that the letter stands on its side.
	Turned bool
}

// Letters returns the letters of each page of a PDF file, blanks left out.
func Letters(t testing.TB, pdf []byte) [][]Letter {
	t.Helper()
	out, _ := Run(t, Program(t, "mutool"), "draw", "-F", "stext", File(t, "letters.pdf", pdf))
	pages, err := readLetters(out)
	if err != nil {
		t.Fatal("mutool's structured text: ", err)
	}
	return pages
}

func readLetters(text []byte) ([][]Letter, error) {
	var document struct {
		Pages []struct {
			Height float64 `xml:"height,attr"`
			Lines  []struct {
				Way   string `xml:"dir,attr"`
				Fonts []struct {
					Size    float64 `xml:"size,attr"`
					Letters []struct {
						Quad string `xml:"quad,attr"`
						Sign string `xml:"c,attr"`
					} `xml:"char"`
				} `xml:"font"`
			} `xml:"block>line"`
		} `xml:"page"`
	}
	if err := xml.NewDecoder(bytes.NewReader(text)).Decode(&document); err != nil {
		return nil, err
	}
	var pages [][]Letter
	for _, page := range document.Pages {
		var letters []Letter
		for _, line := range page.Lines {
			for _, font := range line.Fonts {
				for _, l := range font.Letters {
					if strings.TrimSpace(l.Sign) == "" {
						continue
					}
					box, err := readQuad(l.Quad, page.Height)
					if err != nil {
						return nil, err
					}
					letters = append(letters, Letter{l.Sign, font.Size, box, line.Way != "1 0"})
				}
			}
		}
		pages = append(pages, letters)
	}
	return pages, nil
}

// readQuad reads the four corners of a letter, in points from the upper left
// corner of a page of a height, and returns the box round them in millimetres
// from the lower left.
func readQuad(quad string, height float64) (geometry.Box, error) {
	box := geometry.EmptyBox()
	corners := strings.Fields(quad)
	if len(corners) != 8 {
		return box, fmt.Errorf("a letter's corners are %q", quad)
	}
	for i := 0; i < len(corners); i += 2 {
		x, errX := strconv.ParseFloat(corners[i], 64)
		y, errY := strconv.ParseFloat(corners[i+1], 64)
		if err := errors.Join(errX, errY); err != nil {
			return box, err
		}
		box = box.Add(geometry.Point{X: x * millimetresPerPoint, Y: (height - y) * millimetresPerPoint})
	}
	return box, nil
}
