package pattern

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// TestFindings provokes each kind by itself, with numbers worked by hand, and
// goes just inside the limit, where nothing is found.
//
// The glass is straight, 80 mm across, so that the flat map is (40 θ, z), with a
// band from 20 to 80 mm. The wheel is a right-angled mitre 100 mm across. A cut
// 0.5 mm deep is 0.4969 mm wide on each side where it runs upright: there the
// glass falls away by b²/80, and 0.5 - b²/80 = b. Its tails are 7.05 mm long:
// the other half of a chord 0.5 mm inside a circle of radius 50. Bars run from
// tip to tip, to the thousandth of a millimetre that is not drawn.
func TestFindings(t *testing.T) {
	glassOf := straight(t)
	pitch := 2 * math.Pi * 40 / 4 // of four repeats: 62.83 mm
	// Two upright bars, a given distance apart and side by side.
	pairOf := func(from, to float64) []job.Motif { return []job.Motif{bar(t, from, 30, 40), bar(t, to, 30, 40)} }
	for _, c := range []struct {
		name    string
		blank   *glass.Blank
		repeats int
		motifs  []job.Motif
		change  func(*job.Job)
		want    *Finding // nil where nothing is found
		from    float64  // where not a single height is meant: the least
		degrees float64  // its θ
	}{
		{name: "crowded", motifs: pairOf(-0.89, 0.89), from: 37,
			want: &Finding{Kind: Crowded, Cuts: []int{1, 2}, Repeat: 1, Height: 63, Measured: 1.78 - 2*0.4969, Wanted: 0.8}},
		{name: "not crowded", motifs: pairOf(-0.9, 0.9)},
		{name: "a motif asks for more land", motifs: []job.Motif{bar(t, -1, 30, 40), bar(t, 1, 30, 40, land(1.1))}, from: 37,
			want: &Finding{Kind: Crowded, Cuts: []int{1, 2}, Repeat: 1, Height: 63, Measured: 2 - 2*0.4969, Wanted: 1.1}},
		{name: "polishing widens both", motifs: pairOf(-0.99, 0.99), change: func(j *job.Job) { j.Limits.Polish = 0.1 }, from: 37,
			want: &Finding{Kind: Crowded, Cuts: []int{1, 2}, Repeat: 1, Height: 63, Measured: 1.98 - 2*0.5969, Wanted: 0.8}},
		{name: "crowded across a repeat's edge", motifs: pairOf(0.89-pitch/2, pitch/2-0.89), from: 37, degrees: 45,
			want: &Finding{Kind: Crowded, Cuts: []int{2, 3}, Repeat: 1, Height: 63, Measured: 1.78 - 2*0.4969, Wanted: 0.8}},
		{name: "not crowded across a repeat's edge", motifs: pairOf(0.9-pitch/2, pitch/2-0.9)},
		{name: "crowded across the seam", repeats: 1, motifs: pairOf(0.89-2*pitch, 2*pitch-0.89), from: 37, degrees: 180,
			want: &Finding{Kind: Crowded, Cuts: []int{2, 1}, Repeat: 1, Height: 63, Measured: 1.78 - 2*0.4969, Wanted: 0.8}},
		{name: "not crowded across the seam", repeats: 1, motifs: pairOf(0.9-2*pitch, 2*pitch-0.9)},
		// The two fronds of a level pair join at the stem. Round the other side of
		// the glass, where their tips are 0.4 mm apart, they do not.
		{name: "crowded round the back", repeats: 1, motifs: []job.Motif{levelPair(t, 2*math.Pi*40-0.4)}, from: 50, degrees: 180,
			want: &Finding{Kind: Crowded, Cuts: []int{3, 2}, Repeat: 1, Height: 50, Measured: 0.402, Wanted: 0.8}},
		{name: "not crowded round the back", repeats: 1, motifs: []job.Motif{levelPair(t, 2*math.Pi*40-0.9)}},
		// A bar a turn to the left and one a turn to the right stand side by side.
		{name: "crowded after two turns", repeats: 1, motifs: pairOf(-4*pitch, 4*pitch+1.78), from: 37, degrees: 1.275,
			want: &Finding{Kind: Crowded, Cuts: []int{1, 2}, Repeat: 1, Height: 63, Measured: 1.78 - 2*0.4969, Wanted: 0.8}},
		// The copies of a bar all round, end to end but for 0.432 and 0.932 mm.
		{name: "crowded by its own next copy", motifs: []job.Motif{bar(t, 0, 30, 62.4, turn(90))}, from: 50, degrees: 45,
			want: &Finding{Kind: Crowded, Cuts: []int{1, 2}, Repeat: 1, Height: 50, Measured: pitch - 62.4 + 0.002, Wanted: 0.8}},
		{name: "not crowded by its own next copy", motifs: []job.Motif{bar(t, 0, 30, 61.9, turn(90))}},
		{name: "end to end with its own next copy", motifs: []job.Motif{bar(t, 0, 30, pitch, turn(90))}},
		{name: "end to end with itself", repeats: 1, motifs: []job.Motif{bar(t, 0, 30, 4*pitch, turn(90))}},

		// The wall is 2.4 mm from half way up: 1.6 mm are left under 0.8 mm. The
		// cut, 24 mm long, has its full depth over the middle 6.07 mm.
		{name: "thin", blank: halfThin(t), motifs: []job.Motif{bar(t, 0, 46, 24, depth(0.81))}, from: 62.965,
			want: &Finding{Kind: Thin, Cuts: []int{1}, Repeat: 1, Height: 69.035, Measured: 1.59, Wanted: 1.6}},
		{name: "not thin", blank: halfThin(t), motifs: []job.Motif{bar(t, 0, 46, 24, depth(0.8))}},

		// The rim's margin begins at 100 - 9.5 mm, the foot's ends at 6.4 mm.
		{name: "rim", motifs: []job.Motif{bar(t, 0, 36, 72)}, change: band(20, 92), from: 92,
			want: &Finding{Kind: Rim, Cuts: []int{1}, Repeat: 1, Height: 92, Measured: 92, Wanted: 90.5}},
		// Polishing wears the tip square, 0.2 mm to each side: its left corner is named.
		{name: "rim, polished", motifs: []job.Motif{bar(t, 0, 35.25, 70.5)}, from: 90.7, degrees: -0.286,
			change: func(j *job.Job) { band(20, 90.5)(j); j.Limits.Polish = 0.2 },
			want:   &Finding{Kind: Rim, Cuts: []int{1}, Repeat: 1, Height: 90.7, Measured: 90.7, Wanted: 90.5}},
		// A bar 30 mm long at 60° from upright, about its middle at 84 mm: its left
		// end stands 7.5 mm higher and 12.99 mm, or 18.6°, to the left.
		{name: "rim, askew", motifs: []job.Motif{bar(t, 0, 64, 30, turn(60))}, change: band(20, 92), from: 91.5, degrees: -18.6,
			want: &Finding{Kind: Rim, Cuts: []int{1}, Repeat: 1, Height: 91.5, Measured: 91.5, Wanted: 90.5}},
		{name: "not rim", motifs: []job.Motif{bar(t, 0, 35.25, 70.5)}, change: band(20, 90.5)},
		{name: "foot", motifs: []job.Motif{bar(t, 0, 20, 40)}, change: band(5, 80), from: 5,
			want: &Finding{Kind: Foot, Cuts: []int{1}, Repeat: 1, Height: 5, Measured: 5, Wanted: 6.4}},
		{name: "not foot", motifs: []job.Motif{bar(t, 0, 20, 40)}, change: band(6.4, 80)},

		// A mark of 8 mm is a chord 0.16026 mm inside the wheel's circle:
		// 50 - √(50² - 4²). Half the depth asked is wanted.
		{name: "shallow", motifs: []job.Motif{bar(t, 0, 30, 8, depth(1))}, from: 50,
			want: &Finding{Kind: Shallow, Cuts: []int{1}, Repeat: 1, Height: 50, Measured: 0.16026, Wanted: 0.5}},
		{name: "just shallow", motifs: []job.Motif{bar(t, 0, 30, 8, depth(0.34))}, from: 50,
			want: &Finding{Kind: Shallow, Cuts: []int{1}, Repeat: 1, Height: 50, Measured: 0.16026, Wanted: 0.17}},
		{name: "not shallow", motifs: []job.Motif{bar(t, 0, 30, 8, depth(0.32))}},

		{name: "off above", motifs: []job.Motif{bar(t, 0, 50, 24)}, from: 82,
			want: &Finding{Kind: Off, Cuts: []int{1}, Repeat: 1, Height: 82, Measured: 82, Wanted: 80}},
		{name: "not off above", motifs: []job.Motif{bar(t, 0, 48, 24)}},
		{name: "off below", motifs: []job.Motif{bar(t, 0, 10, 24)}, from: 18,
			want: &Finding{Kind: Off, Cuts: []int{1}, Repeat: 1, Height: 18, Measured: 18, Wanted: 20}},
		{name: "not off below", motifs: []job.Motif{bar(t, 0, 12, 24)}},
		// Turned by 60° as above; the right end stands lowest, 18.6° to the right.
		{name: "off below, askew", motifs: []job.Motif{bar(t, 0, 5, 30, turn(60))}, from: 17.5, degrees: 18.6,
			want: &Finding{Kind: Off, Cuts: []int{1}, Repeat: 1, Height: 17.5, Measured: 17.5, Wanted: 20}},
		{name: "off over itself", motifs: []job.Motif{bar(t, 0, 30, 64, turn(90))}, from: 49.5, degrees: 45,
			want: &Finding{Kind: Off, Cuts: []int{1, 2}, Repeat: 1, Height: 50.5, Measured: 0, Wanted: 0.8}},
		{name: "off over itself, without land", motifs: []job.Motif{bar(t, 0, 30, 64, turn(90), land(0))}, from: 49.5, degrees: 45,
			want: &Finding{Kind: Off, Cuts: []int{1, 2}, Repeat: 1, Height: 50.5, Measured: 0, Wanted: 0}},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := jobOn(glassOf, 4, c.motifs...)
			if c.blank != nil {
				j = jobOn(c.blank, 4, c.motifs...)
			}
			if c.repeats > 0 {
				j.Layout.Repeats = c.repeats
			}
			if c.change != nil {
				c.change(j)
			}
			found := planned(t, j).Findings
			if c.want == nil {
				if len(found) > 0 {
					t.Errorf("found %+v", found)
				}
				return
			}
			if len(found) != 1 {
				t.Fatalf("found %+v", found)
			}
			got := found[0]
			if got.Kind != c.want.Kind || !slices.Equal(got.Cuts, c.want.Cuts) || got.Repeat != c.want.Repeat || got.Share {
				t.Errorf("found %+v", got)
			}
			// The hand's numbers have four figures; what is not drawn of a tip
			// lies within them.
			const figures = 0.002 // mm
			if !near(got.Measured, c.want.Measured, figures) || !near(got.Wanted, c.want.Wanted, 1e-9) {
				t.Errorf("measured %.4f, wanted %.4f; by hand %.4f, %.4f", got.Measured, got.Wanted, c.want.Measured, c.want.Wanted)
			}
			if got.Height < c.from-figures || got.Height > c.want.Height+figures {
				t.Errorf("height %.4f, by hand %g to %g", got.Height, c.from, c.want.Height)
			}
			// Where two overlap, anywhere on the 1.17 mm, or 1.68°, they share.
			within := 0.05
			if got.Kind == Off && len(got.Cuts) == 2 {
				within = 1.68 / 2
			}
			if degrees := got.Theta * 180 / math.Pi; !near(degrees, c.degrees, within) {
				t.Errorf("θ is %.3f°, by hand %g°", degrees, c.degrees)
			}
		})
	}
}

// levelPair returns a leaf of one pair of fronds, level and half way up, so wide
// from tip to tip.
func levelPair(t *testing.T, wide float64) job.Motif {
	t.Helper()
	return motif(t, "leaf", motifs.Values{"fronds": 1, "lean": 90, "arch": 0, "stalk": 0, "crown": 0.5, "fullest": 0.5},
		func(m *job.Motif) { m.Width = mm(wide) })
}

func band(foot, top float64) func(*job.Job) {
	return func(j *job.Job) { j.Layout.Band = &job.Band{Foot: foot, Top: top} }
}

// halfThin returns the straight glass with a wall of 2.4 mm from half way up.
func halfThin(t *testing.T) *glass.Blank {
	return blank(t, glass.Station{Height: 0, Radius: 40, Wall: 7},
		glass.Station{Height: 50, Radius: 40, Wall: 2.4}, glass.Station{Height: 100, Radius: 40, Wall: 2.4})
}

// TestJoints looks for false alarms where cuts meet by design, and for none
// missed beside them.
func TestJoints(t *testing.T) {
	leaf := motif(t, "leaf", motifs.Values{"fronds": 4, "lean": 62, "arch": 0, "stalk": 0.1, "crown": 0.22, "terminal": 1}, size(0.9, 1))
	fan := motif(t, "fan", motifs.Values{"rays": 4, "hub": 0})
	open := motif(t, "fan", motifs.Values{"rays": 4, "hub": 0.05})
	// Cuts that meet at the box's corners meet those of the next repeat.
	diamonds := motif(t, "diamond", motifs.Values{"across": 2, "up": 2})
	shut := motif(t, "diamond", motifs.Values{"across": 1, "up": 1})
	for name, m := range map[string]job.Motif{
		"fronds on a stem": leaf, "rays that meet": fan, "rays at an open hub": open,
		"mitres that cross": diamonds, "a mitre each way": shut,
	} {
		for _, repeats := range []int{1, 2, 4} {
			for _, b := range []*glass.Blank{straight(t), blankOf(t, 36, 44), blankOf(t, 44, 36)} {
				if repeats == 1 && b.Profile().Slope(50) != 0 {
					continue // a straight cut as long as a tapered glass is round sags below its band
				}
				p := planned(t, jobOn(b, repeats, m))
				if len(p.Findings) > 0 {
					t.Errorf("%s, %d repeats: false alarm: %+v", name, repeats, p.Findings[0])
				}
			}
		}
	}

	// A short bar of another motif, beside each joint and across it.
	for _, c := range []struct {
		name       string
		m          job.Motif
		across, up float64 // of the joint
		parts      []string
	}{
		// The lowest pair's root is a seventh of the way up from 0.1 to 0.802.
		{"root", leaf, 0, 60 * (0.1 + 0.702/7), []string{"frond", "frond", "stem"}},
		{"hub", fan, 0, 3.2, []string{"ray", "ray", "ray", "ray"}},
		{"crossing", diamonds, 0, 30, []string{"mitre", "mitre"}},
		{"repeat's edge", diamonds, 2 * math.Pi * 40 / 4 / 2, 30, []string{"mitre", "mitre", "mitre", "mitre"}},
	} {
		for _, beside := range []float64{0, 0.6, -0.6} {
			p := planned(t, jobOn(straight(t), 4, c.m, bar(t, c.across+beside, c.up, 6, depth(0.1))))
			got := map[string]int{}
			for _, f := range p.Findings {
				_, parts := p.About(f)
				at := p.Cuts[(f.Cuts[0]-1)%len(p.Cuts)]
				other := p.Cuts[(f.Cuts[len(f.Cuts)-1]-1)%len(p.Cuts)]
				if f.Kind != Crowded || f.Share || at.Motif == other.Motif {
					t.Errorf("%s, beside by %g: %+v of %v", c.name, beside, f, parts)
					continue
				}
				if at.Motif == 1 {
					at = other
				}
				got[at.Part]++
			}
			want := map[string]int{}
			for _, part := range c.parts {
				want[part]++
			}
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%s, beside by %g: crowded are %v, want %v", c.name, beside, got, want)
			}
		}
	}
}

// TestGroups looks at what is reported together: findings of one kind, on the same
// motifs and parts, that are measured alike.
func TestGroups(t *testing.T) {
	leaf := motif(t, "leaf", motifs.Values{"fronds": 16, "lean": 90, "arch": 0}, size(0.5, 1), depth(1))
	j := jobOn(straight(t), 4, leaf, bar(t, 0, 50, 24), bar(t, 20, 30, 64, turn(90)))
	j.Limits.Clear = 0.95
	p := planned(t, j)
	seen := map[string]bool{}
	told := 0
	for i, g := range p.Groups() {
		if g.Letter != string(rune('A'+i)) {
			t.Errorf("group %d has the letter %s", i, g.Letter)
		}
		key := fmt.Sprint(g.Kind, g.Motifs, g.Parts, g.Findings[0].Share, len(g.Findings[0].Cuts))
		if seen[key] {
			t.Errorf("%s is reported twice", key)
		}
		seen[key] = true
		told += len(g.Findings)
		worst := g.Worst()
		for _, f := range g.Findings {
			if f.Kind != g.Kind || f.Share != worst.Share || len(f.Cuts) != len(worst.Cuts) {
				t.Errorf("group %s has %+v beside %+v", g.Letter, f, worst)
			}
			if math.Abs(f.Measured-f.Wanted) > math.Abs(worst.Measured-worst.Wanted) {
				t.Errorf("group %s: %+v is worse than %+v", g.Letter, f, worst)
			}
		}
	}
	if told != len(p.Findings) {
		t.Errorf("%d findings of %d are reported", told, len(p.Findings))
	}
	// Fronds crowd one another, and pairs of them are too close at the stem; one
	// bar runs out of the band, the other over its own next copy.
	for _, key := range []string{"crowded [0] [frond] false 2", "crowded [0] [frond] true 2", "off [1] [ray] false 1", "off [2] [ray] false 2"} {
		if !seen[key] {
			t.Errorf("%q is not among %v", key, seen)
		}
	}
}
