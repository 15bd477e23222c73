package wrap

import (
	"encoding/xml"
	"fmt"
	"strings"
	"testing"

	"roundlay/geometry"
)

// svgElement is any part of a file.
type svgElement struct {
	XMLName xml.Name
	ID      string       `xml:"id,attr"`
	Data    string       `xml:"d,attr"`
	Words   string       `xml:",chardata"`
	Inside  []svgElement `xml:",any"`
}

func (e svgElement) title() string {
	for _, in := range e.Inside {
		if in.XMLName.Local == "title" {
			return in.Words
		}
	}
	return ""
}

func (e svgElement) each(yield func(svgElement)) {
	yield(e)
	for _, in := range e.Inside {
		in.each(yield)
	}
}

// In the picture each cut of the whole glass is one element in the layer of cuts, by
// its number and with a title, in however many pieces it is drawn: round a glass, on
// gores joined and apart, on patches. No id is there twice, and words are words.
func TestCutsAreElements(t *testing.T) {
	t.Parallel()
	for name, text := range map[string]string{
		"straight": leafJob(straightGlass, 5), "barrel": crowdedBarrel(), "waist": leafJob(waistGlass, 5), "demo": "",
	} {
		for _, side := range []Side{Outside, Patches} {
			p := demoPlan(t)
			if text != "" {
				p = planOf(t, text)
			}
			var svg svgElement
			if err := xml.Unmarshal(svgOf(t, wrapOf(t, p, on(t, side, "a4"))), &svg); err != nil {
				t.Fatal(err)
			}
			ids, layers, words := map[string]int{}, map[string]svgElement{}, map[string]bool{}
			svg.each(func(e svgElement) {
				if e.ID != "" {
					ids[e.ID]++
				}
				if e.XMLName.Local == "text" {
					words[e.Words] = true
				}
			})
			for _, layer := range svg.Inside {
				layers[layer.ID] = layer
				if layer.XMLName.Local == "g" && layer.title() == "" {
					t.Errorf("%s, %v: the layer %s has no title", name, side, layer.ID)
				}
			}
			for id, n := range ids {
				if n > 1 {
					t.Errorf("%s, %v: the id %q is there %d times", name, side, id, n)
				}
			}
			cuts := map[string]svgElement{}
			layers["cuts"].each(func(e svgElement) { cuts[e.ID] = e })
			for _, c := range p.All() {
				e, ok := cuts[fmt.Sprintf("cut-%d", c.ID)]
				want := fmt.Sprintf("Cut %d, repeat %d: %s, %s", c.ID, c.Repeat, p.Job.Motifs[c.Motif].Kind.Name, c.Part)
				if !ok || e.title() != want || !strings.HasPrefix(e.Data, "M") {
					t.Fatalf("%s, %v: cut %d is the element %q, want %q", name, side, c.ID, e.title(), want)
				}
			}
			if heading := fmt.Sprintf("Dividers for %d equal parts", p.Repeats); !words[heading] || !words["100 mm: --printed-up"] {
				t.Errorf("%s, %v: the words are not to be found", name, side)
			}
		}
	}
}

// Of a mark drawn over the seam and on the tab, both pieces are one element.
func TestACutOverTheSeamIsOneElement(t *testing.T) {
	t.Parallel()
	file := svgOf(t, wrapOf(t, demoPlan(t), DefaultOptions(geometry.Inch)))
	var svg svgElement
	if err := xml.Unmarshal(file, &svg); err != nil {
		t.Fatal(err)
	}
	most := 0
	svg.each(func(e svgElement) {
		if strings.HasPrefix(e.ID, "cut-") {
			most = max(most, strings.Count(strings.ToLower(e.Data), "m"))
		}
	})
	if most < 2 {
		t.Error("every cut is in one piece: nothing is tried")
	}
}
