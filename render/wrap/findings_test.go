package wrap

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/printing"
)

// crowdedBarrel has findings of several kinds close together at the foot, short
// marks in pairs, and one of the glass as a whole.
func crowdedBarrel() string {
	return strings.NewReplacer("reach = 0\n", "foot = 8\n", "depth = 0.5", "depth = 0.8", "height = 0.9\n", "height = 0.7\nat = [0, 0.4]\n").
		Replace(leafJob(barrelGlass, 8)) + `[[wheel]]
name = "olive"
edge = "round"
across = 100
thick = 10
radius = 6
[[motif]]
kind = "olives"
wheel = "olive"
depth = 0.4
at = [0, 0.02]
width = 0.9
height = 0.08
rows = 1
olives = 2
`
}

// centreOf returns the centre of a ring or of an arc of one.
func centreOf(points []geometry.Point) geometry.Point {
	a, b, c := points[0], points[len(points)/3], points[2*len(points)/3]
	u, v := r2.Sub(b, a), r2.Sub(c, a)
	k := 2 * r2.Cross(u, v)
	return r2.Add(a, geometry.Point{
		X: (v.Y*r2.Norm2(u) - u.Y*r2.Norm2(v)) / k, Y: (u.X*r2.Norm2(v) - v.X*r2.Norm2(u)) / k,
	})
}

// Each finding that has a place on the paper is inside a ring in each repeat, on
// both sides of the glass, with its letter near by; no ring or letter leaves the
// paper, and no letter stands in another's ring.
func TestFindingsAreRinged(t *testing.T) {
	for name, text := range map[string]string{"crowded": crowdedJob(), "barrel": crowdedBarrel(), "swags": swagJob(taperedGlass, 6)} {
		for side := range WallSides() {
			s := sheetOf(t, text, on(t, Side(side), huge))
			p := s.plan
			groups := p.Groups()
			if len(groups) == 0 {
				continue
			}
			kinds := map[pattern.Kind]int{}
			for _, paper := range s.papers() {
				d := s.draw(paper)
				strips := s.strips(paper)
				var outlines []geometry.Outline
				for _, st := range strips {
					outlines = append(outlines, geometry.NewOutline(st.region(st.from, st.to, st.low, st.high)))
				}
				var centres []geometry.Point
				var letters []drawing.Text
				for _, m := range d.On(drawing.Findings) {
					switch m := m.(type) {
					case drawing.Text:
						letters = append(letters, m)
						if middle := inked(s.letters, m).Points[0]; !onPaper(outlines, middle) {
							t.Errorf("%s, %v: %q is off the paper", name, s.side, m.Words)
						}
					case drawing.Stroke:
						if !m.Pen.Same(ringPen()) {
							continue
						}
						centres = append(centres, centreOf(m.Points))
						for _, q := range m.Points {
							if !onPaper(outlines, q) {
								t.Fatalf("%s, %v: a ring leaves the paper at %.2f", name, s.side, q)
							}
						}
					}
				}
				for _, g := range groups {
					for _, f := range g.Findings {
						if !placed(f) || f.Height < s.low || f.Height > s.high {
							continue
						}
						for turns := range p.Periods() {
							theta := f.Theta + float64(turns*p.Period)*p.PitchAngle()
							for _, st := range strips {
								for k := -2.0; k <= 2; k++ {
									if th := theta + 2*math.Pi*k; th > st.from+0.05 && th < st.to-0.05 {
										kinds[f.Kind]++
										ringedAt(t, name+", "+s.side.String(), st.at(th, f.Height), g.Letter, centres, letters)
									}
								}
							}
						}
					}
				}
			}
			if kinds[pattern.Shallow]+kinds[pattern.Crowded] == 0 {
				t.Errorf("%s, %v: nothing is ringed", name, s.side)
			}
		}
	}
}

func onPaper(outlines []geometry.Outline, q geometry.Point) bool {
	return slices.ContainsFunc(outlines, func(o geometry.Outline) bool { return o.DistanceTo(q, 1) < 0.05 })
}

func ringedAt(t *testing.T, name string, at geometry.Point, letter string, centres []geometry.Point, letters []drawing.Text) {
	t.Helper()
	const farthest = ringOuter + 14 // from a ring to its letter
	for _, c := range centres {
		if r2.Norm(r2.Sub(c, at)) > ringOuter {
			continue
		}
		for _, text := range letters {
			if slices.Contains(strings.Split(text.Words, letterBreak), letter) && r2.Norm(r2.Sub(text.At, c)) < farthest {
				return
			}
		}
	}
	t.Errorf("%s: %s at %.1f has no ring with its letter", name, letter, at)
}

// A page that rings findings says what they are, or on which page that is said;
// letters come in their order, and what has no ring says so.
func TestFindingsAreExplained(t *testing.T) {
	for side := range WallSides() {
		for name, text := range map[string]string{"crowded": crowdedJob(), "barrel": crowdedBarrel()} {
			p := planOf(t, text)
			for _, sheet := range []string{"a4", "letter", "150x150mm"} {
				w := wrapOf(t, p, on(t, Side(side), sheet))
				told := 0
				for i, page := range w.Pages {
					rings := len(page.Drawing.On(drawing.Findings)) > 0
					explains := says(page, "Cure:")
					if explains {
						told++
						ordered(t, page)
					}
					if rings && !explains && !says(page, "says what was found.") {
						t.Errorf("%s, %v, %s: page %d has rings and does not say where they are explained", name, Side(side), sheet, i+1)
					}
				}
				if told == 0 {
					t.Errorf("%s, %v, %s: the findings are explained nowhere", name, Side(side), sheet)
				}
			}
		}
	}
	// No gores lie flat on a glass of two bellies.
	bellies := leafJob(`{height=0, across=60, wall=6}, {height=25, across=120, wall=6}, {height=50, across=60, wall=6}, {height=75, across=120, wall=6}, {height=100, across=60, wall=6}`, 12)
	page := wrapOf(t, planOf(t, bellies), on(t, Outside, huge)).Pages[0]
	if !says(page, "Findings, ringed on the paper where they have a place on it") || !says(page, "Not ringed: it is of the glass as a whole.") {
		t.Error("it is not said that what is uneven is not ringed")
	}
}

// ordered checks that the letters hung beside the notes are in order.
func ordered(t *testing.T, page printing.Page) {
	t.Helper()
	last := ""
	for _, text := range textsOn(page) {
		if text.Bold && len(text.Words) == 1 && text.Words >= "A" && text.Size > 7.9 && text.Turn == 0 && text.Align == drawing.Left {
			if text.Words <= last {
				t.Errorf("%s comes after %s", text.Words, last)
			}
			last = text.Words
		}
	}
}

// Where one ring stands for several places, the words beside its letter say for how many.
func TestSharedRingsSayHowMany(t *testing.T) {
	s := sheetOf(t, crowdedJob(), on(t, Outside, huge))
	told := 0
	for _, g := range s.plan.Groups() {
		places, rings := len(s.ringable(g)), 0
		for _, r := range s.rings {
			if slices.Contains(r.letters, g.Letter) {
				rings++
			}
		}
		words := s.sharing(g)
		if (words != "") != (places > rings) {
			t.Errorf("%d places in %d rings: %q", places, rings, words)
		}
		if words != "" {
			told++
			if !strings.Contains(words, fmt.Sprintf("%d places", places)) || !says(wrapOf(t, s.plan, on(t, Outside, huge)).Pages[0], strings.TrimSpace(words)) {
				t.Errorf("%d places: %q", places, words)
			}
		}
	}
	if told == 0 {
		t.Error("no ring is shared")
	}
}
