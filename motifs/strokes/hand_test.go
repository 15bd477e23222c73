package strokes_test

import (
	"fmt"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs/strokes"
)

// Which rule wins (CSS 2.1, 6.4, from memory): the stronger selector, then the later rule; a style
// attribute over both, what is important over that; attributes under all.
func TestWhichRuleWins(t *testing.T) {
	for _, test := range []struct {
		rules, path string
		stroke      bool
	}{
		{"#a{stroke:none} .b{stroke:red}", "id='a' class='b'", false},
		{".b{stroke:none} path{stroke:red}", "class='b'", false},
		{"g path{stroke:none} path{stroke:red}", "", false},
		{"#a{stroke:none} .b.c.d.e path, .b.c.d.e{stroke:red}", "id='a' class='b c d e'", false},
		{"path{stroke:red} path{stroke:none}", "", false},
		{"path{stroke:none} path{stroke:red}", "", true},
		{"path{stroke:none !important} #a{stroke:red}", "id='a' style='stroke:red'", false},
		{"path{stroke:none}", "style='stroke:red'", true},
		{"path{stroke:red}", "stroke='none'", true},
		{"*{stroke:red}", "stroke='none'", true},
		{"g{stroke:none} path{stroke:inherit}", "stroke='red'", false},
		{"path{stroke:initial}", "", false},
		{"g>path{stroke:none}", "", false}, {"svg>path{stroke:none}", "", true},
		{"path[d^=M]{stroke:none}", "", false}, {"path[d$=X]{stroke:none}", "", true},
		{"@media print{path{stroke:none}}", "", true},
		{"path{stroke-width:0}", "", false}, {"path{stroke-opacity:0}", "", false}, {"g{stroke:transparent} path{stroke:#12345600}", "", false},
	} {
		file := fmt.Sprintf("<svg stroke='black'><style>%s</style><line y1='9' y2='9' x2='9' style='stroke:red !important;stroke-width:1;stroke-opacity:1'/><g><path %s d='M0 0H9'/></g></svg>", test.rules, test.path)
		d, err := strokes.Read([]byte(file), asDrawn())
		if err != nil {
			t.Errorf("%s: %v", test.rules, err)
			continue
		}
		if got := len(d.Strokes) == 2; got != test.stroke {
			t.Errorf("%s on %s: a stroke is %v", test.rules, test.path, got)
		}
	}
}

// Where one line of 1, 2 to 3, 5 comes to, by hand.
func TestTransformsByHand(t *testing.T) {
	for transform, want := range map[string][2]geometry.Point{
		"translate(10)":            {place(11, 2), place(13, 5)},
		"translate(10 -20)":        {place(11, -18), place(13, -15)},
		"scale(2)":                 {place(2, 4), place(6, 10)},
		"scale(2,-1)":              {place(2, -2), place(6, -5)},
		"rotate(90)":               {place(-2, 1), place(-5, 3)},
		"rotate(180 1 2)":          {place(1, 2), place(-1, -1)},
		"skewX(45)":                {place(3, 2), place(8, 5)},
		"skewY(45)":                {place(1, 3), place(3, 8)},
		"matrix(1 2 3 4 5 6)":      {place(1+6+5, 2+8+6), place(3+15+5, 6+20+6)},
		"translate(1 1) scale(10)": {place(11, 21), place(31, 51)},
	} {
		d, err := strokes.Read(fmt.Appendf(nil, "<svg stroke='red'><line x1='1' y1='2' x2='3' y2='5' transform='%s'/></svg>", transform), asDrawn())
		if err != nil {
			t.Errorf("%s: %v", transform, err)
			continue
		}
		if c := d.Strokes[0].Curves[0]; !near(c[0], want[0], 1e-12) || !near(c[3], want[1], 1e-12) {
			t.Errorf("%s: from %v to %v", transform, c[0], c[3])
		}
	}
}

// How long units are: CSS Values 3, 5.2, from memory, and half of the type's size for ex and ch.
func TestUnitsByHand(t *testing.T) {
	for text, want := range map[string]float64{
		"12": 12, "12px": 12, "1in": 96, "2.54cm": 96, "25.4mm": 96, "101.6q": 96, "72pt": 96, "6pc": 96,
		"2em": 40, "2ex": 20, "2ch": 20, "2rem": 32, "10%": 10, " 12 ": 12, "1e1px": 10,
	} {
		d := read(t, fmt.Sprintf("<g font-size='20'><line x2='%s'/></g>", text))
		if got := d.Strokes[0].Curves[0][3]; !near(got, place(want, 0), 1e-9) {
			t.Errorf("%q ends at %v, want %g", text, got, want)
		}
	}
}

// Where a viewBox of 10 by 20 puts its point 1, 1 in a viewport of 100 by 100: it is
// enlarged 5 times to fit and 10 times to fill, and leaves 50 to the sides or −100
// above and below.
func TestAspectsByHand(t *testing.T) {
	for aspect, want := range map[string]geometry.Point{
		"": place(30, 5), "xMinYMin": place(5, 5), "xMidYMax meet": place(30, 5), "xMaxYMid": place(55, 5),
		"none":           place(10, 5),
		"xMinYMin slice": place(10, 10), "xMinYMid slice": place(10, -40), "xMaxYMax slice": place(10, -90), "xMidYMin slice": place(10, 10),
	} {
		d := read(t, fmt.Sprintf("<svg width='100' height='100' viewBox='0 0 10 20' preserveAspectRatio='%s' overflow='visible'><path d='M1 1L9 19'/></svg>", aspect))
		if got := d.Strokes[0].Curves[0][0]; !near(got, want, 1e-9) {
			t.Errorf("%q: %v, want %v", aspect, got, want)
		}
	}
}

// Radii of a rectangle (SVG 2, 10.2, from memory): one given stands for both, none is more
// than half of its side.
func TestRectsByHand(t *testing.T) {
	for radii, want := range map[string]geometry.Point{ // where the upper side begins
		"": place(10, 20), "rx='3'": place(13, 20), "ry='3'": place(13, 20), "rx='3' ry='5'": place(13, 20),
		"rx='99'": place(25, 20), "rx='3' ry='0'": place(10, 20), "rx='auto' ry='4'": place(14, 20),
	} {
		d := read(t, fmt.Sprintf("<rect x='10' y='20' width='30' height='40' %s/>", radii))
		if got := d.Strokes[0].Curves[0][0]; !near(got, want, 1e-9) {
			t.Errorf("%s: begins at %v, want %v", radii, got, want)
		}
	}
}

// A use inside what it uses draws nothing, not even once.
func TestUseInsideItself(t *testing.T) {
	if d := read(t, "<g id='me'><path d='M0 0H9'/><use href='#me' y='5'/></g>"); len(d.Strokes) != 1 {
		t.Errorf("%d strokes", len(d.Strokes))
	}
}
