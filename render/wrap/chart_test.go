package wrap

import (
	"bytes"
	"context"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/render/drawing"
	"roundlay/render/page"
)

func motifsChart(t *testing.T, o Options) *Wrap {
	t.Helper()
	w, err := NewChart(context.Background(), motifs.All(), o)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// The gallery's chart is what the program draws today. Remade with
// ROUNDLAY_UPDATE=1.
func TestSwatchGallery(t *testing.T) {
	const path, most = "../../testdata/gallery/swatches.svg", 400_000
	var picture bytes.Buffer
	if err := motifsChart(t, DefaultOptions(geometry.Inch)).SVG(&picture); err != nil {
		t.Fatal(err)
	}
	if picture.Len() > most {
		t.Errorf("the chart is %d bytes", picture.Len())
	}
	keptPicture(t, path, picture.Bytes())
}

// Every chart, on common papers and on one so small that its rows fold, has its
// check bars on each page, nothing beyond the margins, and no words on others.
func TestChartsKeepToTheirPages(t *testing.T) {
	for _, paper := range []string{"letter", "a4", "a3", "130x200mm"} {
		o := DefaultOptions(geometry.Inch)
		o.Paper, _ = page.ParsePaper(paper)
		charts := []*Wrap{motifsChart(t, o)}
		kinds := motifs.All()
		if paper != "letter" {
			kinds = []motifs.Kind{motifs.Diamond(), motifs.Leaf()} // the longest labels and words
		}
		for _, k := range kinds {
			w, err := NewMotifChart(context.Background(), k, o)
			if err != nil {
				t.Fatal(err)
			}
			charts = append(charts, w)
		}
		for _, w := range charts {
			for i, page := range append(w.Pages, w.Whole) {
				if n := len(page.Drawing.On(drawing.CheckBars)); n == 0 {
					t.Errorf("%s on %s, page %d: no check bars", w.Title, paper, i+1)
				}
				inside := geometry.Box{
					Min: geometry.Point{X: o.Margin, Y: o.Margin},
					Max: geometry.Point{X: page.Width - o.Margin, Y: page.Height - o.Margin},
				}.Grow(1e-6)
				box := page.Drawing.Box()
				var words []geometry.Box
				for _, m := range page.Drawing.On(drawing.Notes) {
					if text, ok := m.(drawing.Text); ok {
						b := w.letters.Box(text)
						for _, other := range words {
							if overlapping(b, other) {
								t.Errorf("%s on %s, page %d: %q lies on other words", w.Title, paper, i+1, text.Words)
							}
						}
						words = append(words, b)
						box = box.Union(b)
					}
				}
				if box.Min.X < inside.Min.X || box.Min.Y < inside.Min.Y || box.Max.X > inside.Max.X || box.Max.Y > inside.Max.Y {
					t.Errorf("%s on %s, page %d: %v reaches beyond %v", w.Title, paper, i+1, box, inside)
				}
			}
		}
	}
}

// overlapping reports whether boxes share more than lines set close do.
func overlapping(a, b geometry.Box) bool {
	const near = 0.8 // mm: tails and capitals of two lines
	return min(a.Max.X, b.Max.X)-max(a.Min.X, b.Min.X) > 0 && min(a.Max.Y, b.Max.Y)-max(a.Min.Y, b.Min.Y) > near
}

// Every swatch has cuts, within its frame, at values that a job may give; and of
// those of one parameter each shows something else.
func TestSwatchesStayInTheirFrames(t *testing.T) {
	letters := motifsChart(t, DefaultOptions(geometry.Inch)).letters
	const repeats, tall, hair = 6, 42, 1e-6
	for _, k := range motifs.All() {
		plain, err := newSwatch(context.Background(), k, repeats, tall)
		if err != nil {
			t.Fatal(err)
		}
		frame := geometry.Box{Max: geometry.Point{X: wide(repeats), Y: tall}}.Grow(hair)
		for _, p := range k.Params {
			all := varied(plain, p)
			if n := distinct(all); n != len(all) {
				t.Errorf("%s: of %d swatches of %s only %d differ", k.Name, len(all), p.Name, n)
			}
			for _, w := range all {
				for name, value := range w.values {
					if param, _ := k.Param(name); !param.Accepts(value) {
						t.Errorf("%s: %s: %s does not take %g", k.Name, w.name, name, value)
					}
				}
				d, err := w.draw(context.Background(), letters)
				if err != nil {
					t.Fatal(err)
				}
				if box := d.Box(); box.Min.X < frame.Min.X || box.Min.Y < frame.Min.Y || box.Max.X > frame.Max.X || box.Max.Y > frame.Max.Y {
					t.Errorf("%s: %s: %v reaches out of its frame", k.Name, w.name, box)
				}
				if len(d.On(drawing.Cuts)) == 0 || len(d.On(drawing.Footprints)) == 0 {
					t.Errorf("%s: %s: nothing is cut", k.Name, w.name)
				}
			}
		}
	}
}

// What runs round the glass is shown to run on; a star's ray that reaches the
// next star's is not.
func TestSpans(t *testing.T) {
	for _, k := range motifs.All() {
		want := map[string]bool{"diamond": true, "lattice": true, "ring": true}[k.Name]
		for _, repeats := range []int{6, 7} {
			if w, err := newSwatch(context.Background(), k, repeats, 50); err != nil || w.spans != want {
				t.Errorf("%s, %d times round: spans is %v, want %v (%v)", k.Name, repeats, w.spans, want, err)
			}
		}
	}
}

func TestShades(t *testing.T) {
	for _, test := range []struct {
		p    motifs.Param
		want []float64
	}{
		{motifs.Param{Sort: motifs.Switch, Default: 1, Max: 1}, []float64{0, 1}},
		{motifs.Param{Sort: motifs.Count, Default: 8, Min: 3, Max: 32}, []float64{5, 8, 14}},
		{motifs.Param{Sort: motifs.Count, Default: 1, Min: 1, Max: 3}, []float64{1, 2, 3}},
		{motifs.Param{Sort: motifs.Count, Default: 0, Min: 0, Max: 4}, []float64{0, 1, 2}},
		{motifs.Param{Default: 80, Min: 10, Max: 180}, []float64{31, 80, 150}},
		{motifs.Param{Default: 0, Min: 0, Max: 1}, []float64{0, 0.4, 0.8}},
		{motifs.Param{Default: 1, Min: 0, Max: 1}, []float64{0.2, 0.6, 1}},
	} {
		got := shades(test.p)
		if len(got) != len(test.want) {
			t.Errorf("%+v: %v, want %v", test.p, got, test.want)
			continue
		}
		for i := range got {
			if got[i] != test.want[i] {
				t.Errorf("%+v: %v, want %v", test.p, got, test.want)
				break
			}
		}
	}
}

func TestChartNeedsRoom(t *testing.T) {
	o := DefaultOptions(geometry.Inch)
	o.Paper, _ = page.ParsePaper("120x120mm")
	if _, err := NewChart(context.Background(), motifs.All(), o); err == nil {
		t.Error("swatches went on paper that is too low for one")
	}
}
