package strokes_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs/strokes"
)

// svg wraps what is drawn in an outermost element; it begins on line 2.
func svg(inner string) []byte {
	return []byte("<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 100 100' stroke='black'>\n" + inner + "\n</svg>")
}

// read reads a drawing as it is drawn.
func read(t *testing.T, inner string) *strokes.Drawing {
	t.Helper()
	d, err := strokes.Read(svg(inner), asDrawn())
	if err != nil {
		t.Fatalf("%s: %v", inner, err)
	}
	return d
}

// The part is the id of the nearest group, else of the element.
func TestParts(t *testing.T) {
	for inner, want := range map[string]string{
		"<path id='a' d='M0 0H9'/>":                                            "a",
		"<g id='g'><path id='a' d='M0 0H9'/></g>":                              "g",
		"<g id='g'><g id='h'><path id='a' d='M0 0H9'/></g></g>":                "h",
		"<g id='g'><g><path d='M0 0H9'/></g></g>":                              "g",
		"<g><path d='M0 0H9'/></g>":                                            "",
		"<defs><path id='a' d='M0 0H9'/></defs><use id='u' href='#a'/>":        "a",
		"<defs><g id='d'><path d='M0 0H9'/></g></defs><use href='#d'/>":        "d",
		"<symbol id='s'><path d='M0 0H9'/></symbol><use href='#s'/>":           "s",
		"<defs><path id='a' d='M0 0H9'/></defs><g id='g'><use href='#a'/></g>": "g",
		"<svg id='v'><path d='M0 0H9'/></svg>":                                 "v",
	} {
		if d := read(t, inner); len(d.Strokes) != 1 || d.Strokes[0].Part != want {
			t.Errorf("%s: %+v, want part %q", inner, d.Strokes, want)
		}
	}
}

// The box, y up, and how long a unit of it is.
func TestBox(t *testing.T) {
	box := func(x0, y0, x1, y1 float64) geometry.Box {
		return geometry.BoxOf(geometry.Point{X: x0, Y: y0}, geometry.Point{X: x1, Y: y1})
	}
	const pixel = 25.4 / 96
	for _, test := range []struct {
		root, inner string
		box         geometry.Box
		unit        float64
	}{
		{"viewBox='10 20 30 40'", "M12 22 15 30", box(10, -60, 40, -20), 0},
		{"viewBox='0,0,30,40' width='60mm' height='80mm'", "M12 22 15 30", box(0, -40, 30, 0), 2},
		{"viewBox='0 0 30 40' width='3in'", "M12 22 15 30", box(0, -40, 30, 0), 2.54},
		{"viewBox='0 0 30 40' height='400'", "M12 22 15 30", box(0, -40, 30, 0), 10 * pixel},
		{"viewBox='0 0 30 40' width='100%' height='100%'", "M12 22 15 30", box(0, -40, 30, 0), 0},
		// The narrower of both ways counts, and the wider one with slice.
		{"viewBox='0 0 30 40' width='60mm' height='800mm'", "M12 22 15 30", box(0, -40, 30, 0), 2},
		{"viewBox='0 0 30 40' width='60mm' height='800mm' preserveAspectRatio='xMidYMid slice'", "M15 22 15 30", box(0, -40, 30, 0), 20},
		{"viewBox='0 0 30 40' width='60mm' height='40mm' preserveAspectRatio='none'", "M12 22 15 30", box(0, -20, 30, 0), 2},
		{"", "M12 22 15 30", box(12, -30, 15, -22), 0},
		{"width='60mm' height='80mm'", "M12 22 15 30", box(12, -30, 15, -22), pixel},
		{"", "M0 0A10 10 0 0 1 20 0", box(0, 0, 20, 10), 0}, // half a circle is as high as its radius
		// A line has a box all the same: a hundredth as broad as it is long.
		{"", "M0 0V200", box(-1, -200, 1, 0), 0},
		// What goes beyond the page makes it larger.
		{"viewBox='0 0 30 40'", "M12 22 45 30", box(0, -40, 45, 0), 0},
	} {
		file := fmt.Sprintf("<svg xmlns='http://www.w3.org/2000/svg' %s><path stroke='red' d='%s'/></svg>", test.root, test.inner)
		d, err := strokes.Read([]byte(file), asDrawn())
		if err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		const within = 1e-4 // an arc's top is its cubic's, 4e-7 of the radius off
		if !near(d.Box.Min, test.box.Min, within) || !near(d.Box.Max, test.box.Max, within) || math.Abs(d.Unit-test.unit) > 1e-9 {
			t.Errorf("%s: box %v, unit %g; want %v, %g", file, d.Box, d.Unit, test.box, test.unit)
		}
	}
}

// A blade is placed by hand: y up, stretched by its groups' transforms.
func TestPlaces(t *testing.T) {
	d := read(t, "<g transform='translate(10 20) scale(2)'><line x1='1' y1='2' x2='11' y2='7' transform='rotate(90)'/></g>")
	// (1, 2) turns to (−2, 1), doubles to (−4, 2), moves to (6, 22); (11, 7) to (−4, 42).
	c := d.Strokes[0].Curves[0]
	if !near(c[0], place(6, 22), 1e-12) || !near(c[3], place(-4, 42), 1e-12) {
		t.Errorf("from %v to %v", c[0], c[3])
	}
}

// What is left out is told, counted, with its first line.
func TestNotes(t *testing.T) {
	for _, test := range []struct{ inner, note string }{
		{"<text>a</text><text>b</text>", "line 3: 2 texts left out: only strokes are cut"},
		{"<image href='file:///etc/passwd'/>", "line 3: 1 image left out: only strokes are cut"},
		{"<path stroke='none' d='M0 0H9V9z'/>", "line 3: 1 fill left out: only strokes are cut"},
		{"<defs><linearGradient/><radialGradient/></defs>", "line 3: 2 gradients left out: only strokes are cut"},
		{"<clipPath><rect width='9' height='9'/></clipPath>", "line 3: 1 clip path left out: only strokes are cut"},
		{"<mask/>", "line 3: 1 mask left out: only strokes are cut"},
		{"<filter/>", "line 3: 1 filter left out: only strokes are cut"},
		{"<marker><path d='M0 0H9'/></marker>", "line 3: 1 marker left out: only strokes are cut"},
		{"<pattern><path d='M0 0H9'/></pattern>", "line 3: 1 pattern left out: only strokes are cut"},
		{"<script>alert(1)</script>", "line 3: 1 script left out: only strokes are cut"},
		{"<use href='other.svg#a'/>", "line 3: 1 use of another file left out: no other file is opened"},
		{"<use href='#nobody'/>", "line 3: 1 use of what is not there left out"},
		{"<g id='me'><use href='#me'/></g>", "line 3: 1 use of itself left out"},
		{"<path d='M0 0H9' display='none'/>", "line 3: 1 hidden shape left out: not shown"},
		{"<path d='M0 0H9' style='visibility:hidden'/>", "line 3: 1 hidden shape left out: not shown"},
		{"<path d='M0 0H9' stroke-dasharray='2 1'/>", "line 3: 1 dashed stroke cut without gaps"},
		{"<path d='M9 9zM9 9z'/>", "line 3: 2 marks without length left out"},
		{"<path d='M0 0H9' transform='scale(0)'/>", "line 3: 1 shape pressed flat by its transform left out"},
		{"<path d='M0 0H50'/>", "line 3: 1 stroke that lies on another left out"},
		{"<path d='M50 0H0'/>", "line 3: 1 stroke that lies on another left out"},
		{"<svg x='10' y='10' width='20' height='20'><path d='M5 5H30'/></svg>", "line 3: 1 stroke that its viewport crops cut whole"},
		{"<svg x='10' y='10' width='20' height='20'><path d='M25 5H30'/></svg>", "line 3: 1 stroke outside the page or its viewport left out: it would not be seen"},
		{"<path d='M50 50H120'/>", "strokes go beyond the viewBox: the box is made larger, from 100 × 100 to 120 × 100"},
		{"<style>@import url(http://nowhere.example/a.css); path:hover{stroke:none}</style>", `2 style rules not read: "@import", "path:hover"`},
	} {
		d := read(t, "<path d='M0 0H50'/>\n"+test.inner)
		if !slices.ContainsFunc(d.Notes, func(n strokes.Note) bool { return n.String() == test.note }) {
			t.Errorf("%s: notes are %q, want %q", test.inner, d.Notes, test.note)
		}
	}
	if d := read(t, "<title>a</title><desc>b</desc><metadata/><path d='M0 0H50'/>"); len(d.Notes) > 0 {
		t.Errorf("notes on a plain drawing: %q", d.Notes)
	}
}

// A page that holds nothing to cut is an error that says what was there instead.
func TestNothing(t *testing.T) {
	for inner, want := range map[string]string{
		"": "read a drawing without a stroke; accepted: one or more strokes: lines drawn with a stroke colour",
		"<text>a</text><path stroke='none' d='M0 0H9V9'/>": "read a drawing without a stroke (1 text left out: only strokes are cut; 1 fill left out: only strokes are cut); " +
			"accepted: one or more strokes: lines drawn with a stroke colour",
		"<path d='M0 0'/>": "read a drawing without a stroke; accepted: one or more strokes: lines drawn with a stroke colour",
	} {
		if _, err := strokes.Read(svg(inner), strokes.Options{}); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", inner, err, want)
		}
	}
}

// Errors are one line for a person: where, what was read, what is accepted.
func TestErrors(t *testing.T) {
	for _, test := range []struct{ inner, want string }{
		{"<path d='M0 0L1'/>", "line 2, path d, character 7: read the end; accepted: a number such as 12, -3.5 or 2e-3"},
		{"<g>\n<g><path d='M0 0 9 9 X'/></g></g>", `line 3, path d, character 10: read "X"; accepted: a path command: one of M L H V C S Q T A Z, large or small`},
		{"<polygon points='1 2 3'/>", "line 2, polygon points: read 3 numbers; accepted: an x and a y for each point"},
		{"<circle r='-1'/>", `line 2, circle r: read "-1"; accepted: a length not below zero`},
		{"<circle r='one'/>", `line 2, circle r, character 1: read "one"; accepted: a length such as 12, 12px, 3.5mm, 1in or 50%`},
		{"<line x2='3furlongs'/>", `line 2, line x2, character 1: read "3furlongs"; accepted: a length such as 12, 12px, 3.5mm, 1in or 50%`},
		{"<g transform='rotate(1 2)'/>", `line 2, g transform, character 1: read "rotate(1 2)"; accepted: transforms such as translate(10 20), rotate(30), scale(2), skewX(10) or matrix(1 0 0 1 0 0)`},
		{"<g transform='turn(1)'/>", `line 2, g transform, character 1: read "turn(1)"; accepted: transforms such as translate(10 20), rotate(30), scale(2), skewX(10) or matrix(1 0 0 1 0 0)`},
		{"<svg viewBox='1 2 3'/>", `line 2, svg viewBox: read "1 2 3"; accepted: a viewBox of four numbers, its width and height not below zero`},
		{"<svg viewBox='0 0 1 1' preserveAspectRatio='middle'/>", `line 2, svg preserveAspectRatio: read "middle"; accepted: preserveAspectRatio such as none, xMidYMid meet or xMinYMax slice`},
		{"<path style='rotate: 20deg' d='M0 0H9'/>", `line 2, path rotate: read "20deg"; accepted: transform, the one property for this that is read`},
		{"<path transform='scale(2)' style='transform-box: fill-box' d='M0 0H9'/>", `line 2, path transform-box: read "fill-box"; accepted: view-box`},
		{"<g>\n</h>", "line 3: read what is not XML: element <g> closed by </h>; accepted: a drawing saved as plain SVG"},
		{"<path d='M0 0H9'>", "line 3: read what is not XML: element <path> closed by </svg>; accepted: a drawing saved as plain SVG"},
		{"&nowhere;", "line 2: read what is not XML: invalid character entity &nowhere;; accepted: a drawing saved as plain SVG"},
		{"<path d='M0 0H9' transform='scale(1e9) scale(1e9)'/>", `line 2, path transform, character 1: read "scale(1e9) scale(1e9)"; accepted: transforms whose numbers stay below 1e9 together`},
	} {
		_, err := strokes.Read(svg(test.inner), strokes.Options{})
		var e *strokes.Error
		if !errors.As(err, &e) || err.Error() != test.want {
			t.Errorf("%s:\n got %v\nwant %s", test.inner, err, test.want)
		}
	}
	for file, want := range map[string]string{
		"":                         "read no element at all; accepted: a drawing saved as plain SVG",
		"<html/>":                  "line 1: read <html>; accepted: a drawing, which begins with <svg>",
		"\x1f\x8b\x08":             "read a packed file (svgz); accepted: plain SVG: save it again without packing",
		"<svg viewBox='0 0 0 9'/>": `line 1, svg viewBox: read "0 0 0 9"; accepted: a width and a height above zero`,
		"<svg><circle r='10%' stroke='red'/></svg>": `line 1, circle r, character 1: read "10%"; accepted: a length with a unit: the file has neither viewBox nor size, so nothing says what that is a share of`,
	} {
		if _, err := strokes.Read([]byte(file), strokes.Options{}); err == nil || err.Error() != want {
			t.Errorf("%q:\n got %v\nwant %s", file, err, want)
		}
	}
}

// Files as programs write them: entities for namespaces, another encoding, a byte
// order mark, prefixes.
func TestAsProgramsWriteThem(t *testing.T) {
	const inner = "<path id='é' stroke='red' d='M0 0H9'/>"
	for name, file := range map[string]string{
		"entities": `<?xml version="1.0" encoding="utf-8"?><!-- a --><!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd" [
			<!ENTITY ns_svg "http://www.w3.org/2000/svg"> <!ENTITY pen 'red'> ]><svg xmlns="&ns_svg;"><path id='é' stroke="&pen;" d='M0 0H9'/></svg>`,
		"latin":  "<?xml version='1.0' encoding='ISO-8859-1'?><svg>" + strings.ReplaceAll(inner, "é", "\xe9") + "</svg>",
		"mark":   "\ufeff<svg>" + inner + "</svg>",
		"utf-16": utf16("<?xml version='1.0' encoding='UTF-16'?><svg>" + inner + "</svg>"),
		"prefix": "<svg:svg xmlns:svg='http://www.w3.org/2000/svg' xmlns:own='urn:own'><own:view><path d='wrong'/></own:view>" + strings.Replace(inner, "path", "svg:path", 1) + "</svg:svg>",
	} {
		d, err := strokes.Read([]byte(file), strokes.Options{})
		if err != nil || len(d.Strokes) != 1 || d.Strokes[0].Part != "é" {
			t.Errorf("%s: %+v, %v", name, d, err)
		}
	}
}

// utf16 writes a text in UTF-16, the lower byte first.
func utf16(text string) string {
	out := []byte{0xff, 0xfe}
	for _, r := range text {
		out = append(out, byte(r), byte(r>>8))
	}
	return string(out)
}
