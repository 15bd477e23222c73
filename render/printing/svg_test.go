package printing

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"slices"
	"testing"

	"github.com/tdewolff/canvas"

	"roundlay/render/drawing"
)

func TestSVGIsTheSameEachTime(t *testing.T) {
	letters := load(t)
	first := sampleSVG(t, letters)
	samplePDF(t, letters) // which cuts down the same fonts
	for range 20 {        // as often as the order of a map would take to show
		if !bytes.Equal(first, sampleSVG(t, letters)) {
			t.Fatal("the same page makes other bytes")
		}
	}
	var wordy [2]bytes.Buffer
	for i := range wordy {
		if err := SVG(&wordy[i], "", wordyPage(), letters); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(wordy[0].Bytes(), wordy[1].Bytes()) {
		t.Error("the same words make other bytes")
	}
}

// An SVG file is well-formed, true to size, and has all the layers in their
// order, the empty ones too.
func TestSVGIsInLayers(t *testing.T) {
	decoder := xml.NewDecoder(bytes.NewReader(sampleSVG(t, load(t))))
	var ids []string
	var title string
	attributes := map[string]string{}
	for depth := 0; ; {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			if depth == 0 {
				for _, a := range token.Attr {
					attributes[a.Name.Local] = a.Value
				}
			}
			if depth == 1 && token.Name.Local == "title" {
				if err := decoder.DecodeElement(&title, &token); err != nil {
					t.Fatal(err)
				}
				continue
			}
			if depth == 1 && token.Name.Local == "g" {
				ids = append(ids, token.Attr[0].Value)
			}
			depth++
		case xml.EndElement:
			depth--
		}
	}
	if attributes["width"] != "148mm" || attributes["height"] != "170mm" || attributes["viewBox"] != "0 0 148 170" {
		t.Errorf("the size is %v", attributes)
	}
	if title != sampleTitle {
		t.Errorf("the title is %q", title)
	}
	var want []string
	for _, layer := range drawing.Layers() {
		want = append(want, layer.String())
	}
	if !slices.Equal(ids, want) {
		t.Errorf("the layers are %v, want %v", ids, want)
	}
}

// Lines stay within flatness of their places, and where they are rounded to.
func TestSVGCirclesAreTrue(t *testing.T) {
	const rounded = 0.001
	found := false
	for _, d := range regexp.MustCompile(`<path fill="none"[^>]* d="([^"]*)"`).FindAllSubmatch(sampleSVG(t, load(t)), -1) {
		path, err := canvas.ParseSVGPath(string(d[1]))
		if err != nil {
			t.Fatal(err)
		}
		if !path.Closed() {
			continue
		}
		found = true
		for side := path.Scanner(); side.Scan(); {
			for _, p := range []canvas.Point{side.End(), side.Start().Interpolate(side.End(), 0.5)} {
				if side.Cmd() == canvas.MoveToCmd {
					continue
				}
				off := math.Hypot(p.X-circleMiddle.X, sampleHeight-p.Y-circleMiddle.Y) - circleRadius
				if math.Abs(off) > flatness+drawing.Flatness+rounded {
					t.Fatalf("the circle is %.4f mm off at %v", off, p)
				}
			}
		}
	}
	if !found {
		t.Error("there is no circle")
	}
}
