package printing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/font"
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// wordyPage has words that recur, in both weights and several sizes, turned and
// aligned every way, and numbers that follow on each other.
func wordyPage() Page {
	p := Page{Width: 200, Height: 150}
	add := func(t drawing.Text) { p.Drawing.Add(drawing.Notes, t) }
	for i, words := range []string{
		"Cuts 1 to 15 of the first repeat: leaf, small mitre, 0.018 to 0.031 in deep.",
		"Cuts 16 to 20 of the first repeat: fan, small mitre, 0.031 in deep.",
		"Cuts 21 to 24 of the first repeat: fan, small mitre, 0.031 in deep.",
		"  blanks  before,  between and  after  ",
		"", "é ½ □", "the the the the the",
	} {
		place := geometry.Point{X: 100, Y: 20 + 17*float64(i)}
		add(drawing.Text{At: place, Words: words, Size: 9, Turn: 0.1 * float64(i)})
		add(drawing.Text{At: place, Words: words, Size: 15, Align: drawing.Centre, Turn: -0.3 * float64(i)})
		add(drawing.Text{At: place, Words: words, Size: 6, Align: drawing.Right, Bold: true, Ink: 90})
	}
	for i := range 30 {
		number := drawing.Text{
			At: geometry.Point{X: 5 + 6*float64(i), Y: 10}, Words: fmt.Sprint(90 + i), Size: 6,
			Align: drawing.Centre, Turn: 0.01 * float64(i-15),
		}
		if i >= 20 {
			number.Size = 5
		}
		add(number)
	}
	return p
}

// Every letter stands where its text has it, at its size, and each label says
// what is set there.
func TestLettersStandInTheirPlaces(t *testing.T) {
	letters := load(t)
	for _, page := range []Page{wordyPage(), samplePage()} {
		var file bytes.Buffer
		if err := SVG(&file, "", page, letters); err != nil {
			t.Fatal(err)
		}
		got := shownTexts(t, file.Bytes())
		shapes := map[string]glyph{} // what each definition stands for
		for _, m := range page.Drawing.On(drawing.Notes) {
			text, ok := m.(drawing.Text)
			if !ok {
				continue
			}
			if len(got) == 0 {
				t.Fatalf("%q is missing", text.Words)
			}
			shown := got[0]
			got = got[1:]
			if shown.words != text.Words {
				t.Errorf("%q is labelled %q", text.Words, shown.words)
			}
			var set []rune
			start := letters.Start(text)
			ahead := r2.Rotate(geometry.Point{X: 1}, text.Turn, geometry.Point{})
			whole := []rune(letters.Printable(text.Words))
			for i, letter := range whole {
				if letter == ' ' {
					continue
				}
				if len(set) == len(shown.letters) {
					t.Fatalf("%q ends after %q", text.Words, string(set))
				}
				s := shown.letters[len(set)]
				set = append(set, letter)
				want := r2.Add(start, r2.Scale(letters.Width(string(whole[:i]), text.Size, text.Bold), ahead))
				want.Y = page.Height - want.Y
				if off := r2.Norm(r2.Sub(s.at, want)); off > 0.01 {
					t.Errorf("%q, letter %d: %.4f mm off", text.Words, i, off)
				}
				size := text.Size * geometry.MillimetresPerInch / 72 / em
				if off := r2.Norm(r2.Sub(s.along, r2.Scale(size, geometry.Point{X: ahead.X, Y: -ahead.Y}))) * em; off > 0.001 {
					t.Errorf("%q, letter %d: an em is %.4f mm off", text.Words, i, off)
				}
				g := glyph{letter, text.Bold}
				if is, ok := shapes[s.id]; ok && is != g {
					t.Errorf("%q: %q has the shape of %q", text.Words, letter, is.letter)
				}
				shapes[s.id] = g
			}
			if len(set) != len(shown.letters) {
				t.Errorf("%q has %d letters too many", text.Words, len(shown.letters)-len(set))
			}
		}
		if len(got) > 0 {
			t.Errorf("%d texts too many, such as %q", len(got), got[0].words)
		}
	}
}

// shownText is a text as a program shows it that follows the uses in a file.
type shownText struct {
	words   string
	letters []shownLetter
}

// shownLetter is one letter: the name of its outline, the place of its origin
// and the unit along its line, y downwards.
type shownLetter struct {
	id        string
	at, along geometry.Point
}

// element is any part of a file.
type element struct {
	XMLName   xml.Name
	ID        string    `xml:"id,attr"`
	Words     string    `xml:",chardata"`
	Transform string    `xml:"transform,attr"`
	Href      string    `xml:"http://www.w3.org/1999/xlink href,attr"`
	X         float64   `xml:"x,attr"`
	Fill      string    `xml:"fill,attr"`
	Inside    []element `xml:",any"`
}

// shownTexts returns the texts of a file: what stands in each, and the letters
// beside it in its group.
func shownTexts(t *testing.T, file []byte) []shownText {
	t.Helper()
	var svg element
	if err := xml.Unmarshal(file, &svg); err != nil {
		t.Fatal(err)
	}
	defined := map[string]element{}
	var letters func(e element, m canvas.Matrix) []shownLetter
	letters = func(e element, m canvas.Matrix) (all []shownLetter) {
		m = m.Mul(matrix(t, e.Transform))
		switch e.XMLName.Local {
		case "use":
			used, ok := defined[strings.TrimPrefix(e.Href, "#")]
			if !ok {
				t.Fatalf("%q is not defined before it is used", e.Href)
			}
			return letters(used, m.Translate(e.X, 0))
		case "path":
			at, along := m.Dot(canvas.Point{}), m.Dot(canvas.Point{X: 1})
			return []shownLetter{{e.ID, geometry.Point(at), geometry.Point(along.Sub(at))}}
		}
		for _, in := range e.Inside {
			all = append(all, letters(in, m)...)
		}
		return all
	}
	var texts []shownText
	var find func(e element, m canvas.Matrix)
	find = func(e element, m canvas.Matrix) {
		defined[e.ID] = e
		if e.XMLName.Local == "defs" {
			for _, in := range e.Inside {
				defined[in.ID] = in
			}
			return
		}
		if len(e.Inside) > 0 && e.Inside[0].XMLName.Local == "text" {
			if e.Inside[0].Fill != "none" {
				t.Errorf("the words %q are painted beside their outlines", e.Inside[0].Words)
			}
			texts = append(texts, shownText{e.Inside[0].Words, letters(e, m)})
			return
		}
		m = m.Mul(matrix(t, e.Transform))
		for _, in := range e.Inside {
			find(in, m)
		}
	}
	find(svg, canvas.Identity)
	return texts
}

// matrix reads a transform.
func matrix(t *testing.T, transform string) canvas.Matrix {
	t.Helper()
	m := canvas.Identity
	for _, part := range regexp.MustCompile(`\w+\([^)]*\)`).FindAllString(transform, -1) {
		var x, y float64
		if n, _ := fmt.Sscanf(part, "translate(%g %g)", &x, &y); n == 2 {
			m = m.Translate(x, y)
		} else if n, _ := fmt.Sscanf(part, "rotate(%g)", &x); n == 1 {
			m = m.Rotate(x)
		} else if n, _ := fmt.Sscanf(part, "scale(%g)", &x); n == 1 {
			m = m.Scale(x, x)
		} else {
			t.Fatalf("a transform %q", transform)
		}
	}
	return m
}

// Each letter's outline is the font's to within two units: 0.01 mm in words of
// 15 points.
func TestOutlinesAreTheFonts(t *testing.T) {
	letters := load(t)
	var file bytes.Buffer
	o := newOutlines(&file, 0, letters)
	for _, bold := range []bool{false, true} {
		face := letters.Face(1, bold, drawing.Black).Font
		for letter := '!'; letter < 0x180; letter++ {
			if letters.Printable(string(letter)) != string(letter) {
				continue
			}
			file.Reset()
			is, err := o.letter(glyph{letter, bold}, face)
			if err != nil {
				t.Fatal(err)
			}
			if is == blank {
				continue
			}
			data := regexp.MustCompile(` d="([^"]*)"`).FindSubmatch(file.Bytes())[1]
			got, err := canvas.ParseSVGPath(string(data))
			if err != nil {
				t.Fatal(err)
			}
			want := &canvas.Path{}
			if err := face.GlyphPath(want, face.GlyphIndex(letter), 0, 0, 0, em/o.perEm, font.NoHinting); err != nil {
				t.Fatal(err)
			}
			if off := apart(got, want.Transform(canvas.Identity.Scale(1, -1))); off > 2 {
				t.Errorf("%q, bold %v: %.2f units off", letter, bold, off)
			}
		}
	}
}

// apart returns how far two outlines are apart at most, to both sides: the parser
// makes one side of two in a line, so that they can't be matched one by one.
func apart(a, b *canvas.Path) float64 {
	sides := func(p *canvas.Path) (all [][2]geometry.Point) {
		for side := p.Scanner(); side.Scan(); {
			start, over, end := side.Start(), side.Start().Interpolate(side.End(), 0.5), side.End()
			switch side.Cmd() {
			case canvas.MoveToCmd:
				continue
			case canvas.QuadToCmd:
				over = side.CP1()
			}
			const parts = 8
			for i, from := 1, start; i <= parts; i++ {
				s := float64(i) / parts
				to := start.Interpolate(over, s).Interpolate(over.Interpolate(end, s), s)
				all = append(all, [2]geometry.Point{geometry.Point(from), geometry.Point(to)})
				from = to
			}
		}
		return all
	}
	most, p, q := 0.0, sides(a), sides(b)
	for range 2 {
		for _, s := range p {
			least := math.Inf(1)
			for _, t := range q {
				along, to := r2.Sub(t[1], t[0]), r2.Sub(s[1], t[0])
				share := 0.0
				if length2 := r2.Norm2(along); length2 > 0 {
					share = min(max(r2.Dot(to, along)/length2, 0), 1)
				}
				least = min(least, r2.Norm(r2.Sub(to, r2.Scale(share, along))))
			}
			most = max(most, least)
		}
		p, q = q, p
	}
	return most
}

// Runs spell the lines they are found in, whatever those are, and save uses.
func TestRunsSpellTheirLines(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		const letters = 3
		var lines, want [][]mark
		before := 0
		for range random.IntN(8) {
			var line []mark
			x := 0
			for range random.IntN(30) {
				x += 1 + random.IntN(2) // so that the same letters stand closer and wider apart
				line = append(line, mark{random.IntN(letters), x})
			}
			lines, want = append(lines, line), append(want, slices.Clone(line))
			before += len(line)
		}
		runs := findRuns(lines, letters)
		after := 0
		for i, line := range lines {
			set := runs.set(line)
			after += len(set)
			var spelled []mark
			for _, m := range set {
				spelled = runs.parts(spelled, m, func(int) bool { return false })
			}
			if !slices.Equal(spelled, want[i]) {
				t.Fatalf("%v is spelled %v", want[i], spelled)
			}
		}
		for i, worth := range runs.worth {
			if worth {
				after += len(runs.spelled(letters + i))
			}
		}
		if after > before {
			t.Errorf("%d uses instead of %d", after, before)
		}
	}
}

func TestLeadingNumbers(t *testing.T) {
	number := drawing.Text{Words: "12", Size: 6}
	bold, large, grey, word := number, number, number, number
	bold.Bold, large.Size, grey.Ink, word.Words = true, 7, 90, "12a"
	for _, stop := range []drawing.Mark{bold, large, grey, word, drawing.Stroke{}} {
		if n := len(leadingNumbers([]drawing.Mark{number, number, stop, number})); n != 2 {
			t.Errorf("%d numbers before %v, want 2", n, stop)
		}
	}
	if n := len(leadingNumbers([]drawing.Mark{word, number})); n != 0 {
		t.Errorf("%d numbers before a word", n)
	}
}
