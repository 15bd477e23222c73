package printing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/printtest"
)

// svgThing is an element of a file that has an id.
type svgThing struct {
	layer, title, data string
}

// svgThings returns the elements of a file by their ids, none of which may be
// there twice.
func svgThings(t *testing.T, file []byte) map[string]svgThing {
	t.Helper()
	type element struct {
		XMLName xml.Name
		ID      string    `xml:"id,attr"`
		Data    string    `xml:"d,attr"`
		Words   string    `xml:",chardata"`
		Inside  []element `xml:",any"`
	}
	var svg element
	if err := xml.Unmarshal(file, &svg); err != nil {
		t.Fatal(err)
	}
	things := map[string]svgThing{}
	var walk func(e element, layer string)
	walk = func(e element, layer string) {
		if e.ID != "" {
			if _, twice := things[e.ID]; twice {
				t.Errorf("the id %q is in the file twice", e.ID)
			}
			thing := svgThing{layer: layer, data: e.Data}
			for _, in := range e.Inside {
				if in.XMLName.Local == "title" {
					thing.title = in.Words
				}
			}
			things[e.ID] = thing
		}
		for _, in := range e.Inside {
			walk(in, layer)
		}
	}
	for _, layer := range svg.Inside {
		walk(layer, layer.ID)
	}
	return things
}

// A thing in three pieces is one element with its title, as is one that another
// comes between; a line without a name is in none.
func TestThingsAreElements(t *testing.T) {
	page := Page{Width: 100, Height: 100, Titles: map[drawing.Layer]string{drawing.Cuts: "Lines to trace"}}
	line := func(x float64, name drawing.Name) {
		page.Drawing.Add(drawing.Cuts, drawing.Stroke{
			Points: []geometry.Point{{X: x, Y: 10}, {X: x, Y: 20}}, Pen: drawing.Pen{Width: 0.45}, Name: name,
		})
	}
	twelve, two := drawing.Name{ID: "cut-12", Title: "Cut 12: leaf & stem"}, drawing.Name{ID: "cut-2", Title: "Cut 2"}
	for _, l := range []struct {
		x    float64
		name drawing.Name
	}{{10, twelve}, {20, twelve}, {30, two}, {40, drawing.Name{}}, {50, twelve}} {
		line(l.x, l.name)
	}
	var file bytes.Buffer
	if err := SVG(&file, "", page, load(t)); err != nil {
		t.Fatal(err)
	}
	things := svgThings(t, file.Bytes())
	for id, want := range map[string]svgThing{
		"cut-12": {"cuts", "Cut 12: leaf & stem", "M10 90v-10m10 10v-10m30 10v-10"},
		"cut-2":  {"cuts", "Cut 2", "M30 90v-10"},
	} {
		if things[id] != want {
			t.Errorf("%s is %q, want %q", id, things[id], want)
		}
	}
	if n := strings.Count(file.String(), "<path"); n != 3 {
		t.Errorf("%d paths, want 3", n)
	}
	if got := things["cuts"].title; got != "Lines to trace" {
		t.Errorf("the layer of cuts is called %q", got)
	}
	if got := things["notes"].title; got != "" {
		t.Errorf("a layer without a title is called %q", got)
	}
}

// A browser finds the words of a picture, though what it shows is outlines.
func TestABrowserFindsTheWords(t *testing.T) {
	if testing.Short() {
		t.Skip("a browser takes seconds to start")
	}
	browser := printtest.Program(t, "chromium", "chromium-browser", "google-chrome")
	folder, err := os.MkdirTemp("", "browser")
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(folder)
	var ask strings.Builder
	sought := map[string]bool{"set the dividers to": true, "upright words": true, "quarter turn": true, "set the clock": false}
	for words := range sought {
		fmt.Fprintf(&ask, "document.title += '%s: ' + window.find('%s', false, false, true) + '; ';", words, words)
	}
	page := filepath.Join(folder, "sample.html")
	html := fmt.Sprintf("<!doctype html><title></title><body>%s<script>%s</script>", sampleSVG(t, load(t)), ask.String())
	if err := os.WriteFile(page, []byte(html), 0o600); err != nil {
		t.Fatal(err)
	}
	out, _ := printtest.Run(t, browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync",
		"--user-data-dir="+folder, "--dump-dom", "file://"+page)
	for words, there := range sought {
		if want := fmt.Sprintf("%s: %v;", words, there); !bytes.Contains(out, []byte(want)) {
			t.Errorf("not %q in %.200s", want, out)
		}
	}
}
