package wrap

import (
	"math"
	"slices"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
)

// crowdedHourglass has many findings on gores that are hardly wider than a ring's
// letters.
func crowdedHourglass() string {
	return strings.NewReplacer("floor = 16", "floor = 12", "reach = 0\n", "", "across = 80\n", "across = 300\n", "thick = 6", "thick = 12",
		"angle = 90", "angle = 110", "depth = 0.5", "depth = 0.8", "width = 0.6", "width = 0.7", "height = 0.9", "height = 0.8\nat = [0, 0.5]").
		Replace(leafJob(hourGlass, 6))
}

// The letters of a ring stay on the gore of their ring, where no edge strikes
// them through, and meet no other words.
func TestRingLettersStayOnTheirGore(t *testing.T) {
	t.Parallel()
	s := sheetOf(t, crowdedHourglass(), on(t, Outside, "a4"))
	if !s.curved || s.joined {
		t.Fatal("the gores are not apart")
	}
	tried := 0
	for _, paper := range s.papers() {
		d := s.draw(paper)
		st := s.strips(paper)[0]
		gore := geometry.NewOutline(st.region(st.from, st.to, st.low, st.high))
		var words []drawing.Text
		for _, m := range d.On(drawing.Notes) {
			if text, ok := m.(drawing.Text); ok {
				words = append(words, text)
			}
		}
		for _, m := range d.On(drawing.Findings) {
			text, ok := m.(drawing.Text)
			if !ok {
				continue
			}
			tried++
			letter := inked(s.letters, text)
			for _, q := range letter.Points {
				if !gore.Contains(q) {
					t.Errorf("gore %d: %q leaves it at %.1f", paper.paper, text.Words, q)
					break
				}
			}
			for _, other := range words {
				if off, _, _ := letter.Distance(inked(s.letters, other), 0.05); off < 0.05 {
					t.Errorf("gore %d: %q lies on %q", paper.paper, text.Words, other.Words)
				}
			}
			words = append(words, text)
		}
	}
	if tried == 0 {
		t.Error("no ring has a letter")
	}
}

// Where more rings than twelve would lie on one paper, each letter keeps one in a
// period, at its worst, and the notes say so.
func TestManyRingsAreThinnedToTheWorst(t *testing.T) {
	t.Parallel()
	thinned, kept := 0, 0
	for name, text := range map[string]string{"hourglass": crowdedHourglass(), "many fronds": strings.Replace(crowdedHourglass(), "fronds = 6", "fronds = 14", 1), "crowded": crowdedJob(), "barrel": crowdedBarrel(), "swags": swagJob(taperedGlass, 6)} {
		o := on(t, Outside, huge)
		s := sheetOf(t, text, o)
		all := s.findRings(false)
		says := says(wrapOf(t, s.plan, o).Pages[0], "nly the worst of each letter is ringed")
		if says != s.worstRinged {
			t.Errorf("%s: thinned %v, and the notes say it: %v", name, s.worstRinged, says)
		}
		if !s.worstRinged {
			kept++
			if len(s.rings) != len(all) || !s.curved && len(all) > 12 {
				t.Errorf("%s: %d rings of %d", name, len(s.rings), len(all))
			}
			continue
		}
		thinned++
		for _, g := range s.plan.Groups() {
			var worst pattern.Finding
			miss := -1.0
			for _, f := range g.Findings {
				if height := s.face.Height(f.Height); placed(f) && height >= s.low && height <= s.high && math.Abs(f.Measured-f.Wanted) > miss {
					worst, miss = f, math.Abs(f.Measured-f.Wanted)
				}
			}
			if miss < 0 {
				continue
			}
			n := 0
			for _, r := range s.rings {
				if slices.Contains(r.letters, g.Letter) {
					n++
					if math.Abs(r.height-s.face.Height(worst.Height)) > ringOuter {
						t.Errorf("%s: %s is ringed at %.1f, its worst is at %.1f", name, g.Letter, r.height, worst.Height)
					}
				}
			}
			if n != 1 {
				t.Errorf("%s: %s has %d rings", name, g.Letter, n)
			}
		}
	}
	if thinned == 0 || kept == 0 {
		t.Errorf("%d are thinned, %d are not", thinned, kept)
	}
	t.Logf("%d are thinned, %d are not", thinned, kept)
}
