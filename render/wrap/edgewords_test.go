package wrap

import (
	"math"
	"slices"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// flareGlass has a foot that flares so that gores lie on it from 14.5 mm up only.
const flareGlass = `{height=0, across=80, wall=8}, {height=6, across=70, wall=7}, {height=15, across=62, wall=5}, {height=25, across=63, wall=4}, {height=60, across=70, wall=3}, {height=100, across=78, wall=2.4}`

// hourGlass is waisted so far that its gores are narrow.
const hourGlass = `{height=0, across=78, wall=6}, {height=30, across=66, wall=4}, {height=50, across=61, wall=3.6}, {height=75, across=68, wall=3}, {height=100, across=82, wall=2.4}`

// edgeJob is one band of leaves, with more keys for its blank.
func edgeJob(stations, blank string, repeats int) string {
	text := strings.Replace(leafJob(stations, repeats), "repeats = ", "band = [22, 88]\nrepeats = ", 1)
	return strings.Replace(text, "floor = 16", blank, 1)
}

// What is said of the lower edge stands nearer to it than to the upper, whatever
// the paper; only where cuts fill that half may it stand higher, and names the edge.
func TestWordsOfAnEdgeStandAtIt(t *testing.T) {
	t.Parallel()
	for name, test := range map[string]struct {
		text string
		side Side
		end  string // of what is said
		full bool   // whether cuts fill the lower half
	}{
		"cone":          {edgeJob(footGlass, "floor = 14", 5), Outside, "table", false},
		"gores":         {edgeJob(flareGlass, "floor = 14", 6), Outside, "table", false},
		"narrow gores":  {edgeJob(flareGlass, "floor = 14", 15), Outside, "table", false},
		"inside":        {edgeJob(flareGlass, "floor = 14", 6), Inside, "floor", false},
		"patches":       {edgeJob(flareGlass, "floor = 14", 6), Patches, "table", false},
		"cone, patches": {edgeJob(footGlass, "floor = 14", 5), Patches, "table", false},
		"asked":         {edgeJob(hourGlass, "floor = 14\npaper = [18, \"rim\"]", 6), Outside, "table", true},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s := sheetOf(t, test.text, on(t, test.side, huge))
			for _, paper := range s.papers() {
				d := s.draw(paper)
				var edges, rims []geometry.Outline
				for _, st := range s.strips(paper) {
					edges = append(edges, geometry.NewOutline(st.level(st.from, st.to, st.low)))
					rims = append(rims, geometry.NewOutline(st.level(st.from, st.to, st.high)))
				}
				said := 0
				for _, m := range d.On(drawing.Notes) {
					text, ok := m.(drawing.Text)
					if !ok || !strings.HasSuffix(text.Words, test.end) {
						continue
					}
					said++
					at := inked(s.letters, text)
					low, high := nearest(at, edges), nearest(at, rims)
					named := test.full && strings.Contains(strings.Join(wordsOf(d), " "), "lower edge 18.0 mm above the table")
					if low >= high && !named {
						t.Errorf("%s %d: %q is %.1f mm from the lower edge, %.1f from the upper", s.paperName(), paper.paper, text.Words, low, high)
					}
				}
				if said != 1 {
					t.Errorf("%s %d tells of its lower edge %d times: %q", s.paperName(), paper.paper, said, wordsOf(d))
				}
			}
		})
	}
}

// nearest returns how far an outline is from the nearest of others.
func nearest(o geometry.Outline, others []geometry.Outline) float64 {
	least := math.Inf(1)
	for _, other := range others {
		off, _, _ := o.Distance(other, 1000)
		least = min(least, off)
	}
	return least
}

// Both limits of the band say how high they are, on narrow gores too.
func TestLimitsOfTheBandSayTheirHeight(t *testing.T) {
	t.Parallel()
	text := strings.NewReplacer("floor = 16", "floor = 12", "reach = 0\n", "").Replace(leafJob(hourGlass, 6))
	s := sheetOf(t, text, on(t, Outside, "a4"))
	if !s.curved || s.joined {
		t.Fatal("the gores are not apart")
	}
	for _, paper := range s.papers() {
		words := wordsOf(s.draw(paper))
		for name, height := range map[string]float64{"band top": s.plan.Band.Top, "band foot": s.plan.Band.Foot} {
			want := s.plan.Job.Length.Format(height)
			if !slices.ContainsFunc(words, func(w string) bool { return w == want || w == name+" "+want }) {
				t.Errorf("gore %d does not say that its %s is at %s: %q", paper.paper, name, want, words)
			}
		}
	}
}
