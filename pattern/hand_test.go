package pattern

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// rocked and swelled give a motif a hand.
func rocked(left, right float64) func(*job.Motif) {
	return func(m *job.Motif) { m.Rock = &[2]geometry.Angle{geometry.Degrees(left), geometry.Degrees(right)} }
}

func swelled(shares ...float64) func(*job.Motif) { return func(m *job.Motif) { m.Swell = shares } }

// middleOf returns the sample of a cut in its middle.
func middleOf(c Cut) groove.Sample { return c.Samples[len(c.Samples)/2] }

// A mitre of 90° that is rolled 15° to the right reaches out on the right as far as the
// tangent of 60° says, on a flat glass, and on the left as before; on a glass as round as this
// one it is a little less.
func TestRockedFlank(t *testing.T) {
	const deep = 0.5
	for _, roll := range [][2]float64{{0, 15}, {15, 0}, {8, 15}} {
		p := laid(t, jobOn(straight(t), 1, bar(t, 0, 30, 40, rocked(roll[0], roll[1]))))
		s := middleOf(p.Cuts[0])
		for side, wide := range [2]float64{s.Left, s.Right} {
			// The surface falls by w²/2r at a distance w from the middle of an upright cut.
			flat := deep * math.Tan(math.Pi/4+roll[side]*math.Pi/180)
			round := flat
			for range 50 {
				round = (deep - round*round/80) * math.Tan(math.Pi/4+roll[side]*math.Pi/180)
			}
			if !near(wide, round, 0.01) || wide >= flat { // the tails and the rim's own curve are left out here
				t.Errorf("rolled by %v: %.4f mm to side %d, wanted %.4f", roll, wide, side, round)
			}
		}
	}
}

// The fronds to the left of a stem are rolled the other way than those to the right of it, so
// that the leaf stays the same from either side; a fan's middle ray is rolled to both.
func TestRockInHalves(t *testing.T) {
	for _, kind := range []string{"leaf", "fan", "wheat"} {
		p := laid(t, jobOn(straight(t), 3, motif(t, kind, motifs.Values{}, size(0.9, 0.9), rocked(0, 18), swelled(0.5, 1, 0.4))))
		left, right, middle := 0, 0, 0
		for _, c := range p.Cuts {
			if c.Part == "stem" || c.Part == "tip" {
				continue
			}
			s := middleOf(c)
			theta := c.Samples[len(c.Samples)-1].Theta // of the tip
			switch {
			case theta < -1e-9 && s.Left > s.Right+0.05:
				left++
			case theta > 1e-9 && s.Right > s.Left+0.05:
				right++
			case math.Abs(theta) <= 1e-9 && near(s.Left, s.Right, 1e-3) && c.Hand.Rock[0] == c.Hand.Rock[1]:
				middle++
			default:
				t.Errorf("%s, cut %d to %.3f: %.3f mm to the left, %.3f to the right", kind, c.ID, theta, s.Left, s.Right)
			}
			// Its mirror image is on the other side.
			if !hasImage(p, c) {
				t.Errorf("%s, cut %d has no image", kind, c.ID)
			}
		}
		if want := map[string]int{"fan": 1}[kind]; left != right || left == 0 || middle != want {
			t.Errorf("%s: %d left, %d right, %d in the middle", kind, left, right, middle)
		}
	}
}

// hasImage reports whether a plan has the mirror image of a cut of its first repeat.
func hasImage(p *Plan, c Cut) bool {
	for _, d := range p.Cuts {
		if d.Repeat == c.Repeat && images(c, d) {
			return true
		}
	}
	return false
}

// images reports whether one cut is the other seen in a mirror, to a hundredth of a millimetre.
func images(c, d Cut) bool {
	const fine = 0.01
	if len(c.Samples) != len(d.Samples) {
		return false
	}
	for i, s := range c.Samples {
		o := d.Samples[i]
		if !near(s.Theta, -o.Theta, fine/40) || !near(s.Height, o.Height, fine) || !near(s.Left, o.Right, fine) || !near(s.Right, o.Left, fine) || !near(s.Depth, o.Depth, fine) {
			return false
		}
	}
	return true
}

// A mirrored motif is the motif seen in a mirror, with its rock, on every kind of glass; so is
// one inside a mirrored motif. One that is mirrored in a mirrored motif is rolled as before.
func TestRockMirrored(t *testing.T) {
	for name, radii := range map[string][]float64{"straight": {40, 40}, "tapered": {35, 43}, "barrel": {35, 41, 36}} {
		for _, kind := range []string{"sprig", "olives", "leaf"} {
			own := func(change ...func(*job.Motif)) job.Motif {
				return motif(t, kind, motifs.Values{}, append(change, size(0.8, 0.8), rocked(3, 16), swelled(0.3, 1, 0.5))...)
			}
			plain, image := laid(t, jobOn(blankOf(t, radii...), 4, own())), laid(t, jobOn(blankOf(t, radii...), 4, own(mirrored)))
			for i, c := range plain.Cuts {
				if !images(c, image.Cuts[i]) {
					t.Errorf("%s, %s: cut %d isn't mirrored", name, kind, c.ID)
				}
			}
			holder := motif(t, "flute", motifs.Values{"panels": 1}, mirrored, size(1, 1))
			within := func(change ...func(*job.Motif)) *Plan {
				m := own(change...)
				m.Inside = 1
				return laid(t, jobOn(blankOf(t, radii...), 4, holder, m))
			}
			once, twice := within(), within(mirrored)
			for i, c := range plain.Cuts {
				if !images(c, once.Cuts[i+1]) {
					t.Errorf("%s, %s inside a mirrored motif: cut %d isn't mirrored", name, kind, c.ID)
				}
				if d := twice.Cuts[i+1]; c.Hand.Rock != d.Hand.Rock || !near(middleOf(c).Left, middleOf(d).Left, 0.01) {
					t.Errorf("%s, %s mirrored twice: cut %d is another", name, kind, c.ID)
				}
			}
		}
	}
}

// A line goes on into the next copy only where depth and roll do.
func TestHandRunsOn(t *testing.T) {
	for _, c := range []struct {
		change []func(*job.Motif)
		on     bool
	}{
		{nil, true},
		{[]func(*job.Motif){swelled(0.5, 1, 0.5)}, true},
		{[]func(*job.Motif){swelled(0.5, 1, 0.6)}, false},
		{[]func(*job.Motif){rocked(0, 10)}, true},
		{[]func(*job.Motif){rocked(0, 10), swelled(1, 0.5)}, false},
	} {
		p := laid(t, jobOn(straight(t), 4, motif(t, "ring", motifs.Values{"rings": 1, "lines": 1}, c.change...)))
		if on := p.Cuts[0].RunsOn; on != c.on || (len(p.Chains()) == 1 && p.Chains()[0].Closed) != c.on {
			t.Errorf("%+v: runs on is %t, chains %+v", p.Cuts[0].Hand, on, p.Chains())
		}
	}
}

// A wheel isn't rolled onto its own flank. The message says of which part, and what would do.
func TestTooRolled(t *testing.T) {
	j := jobOn(straight(t), 3, motif(t, "leaf", nil, rocked(0, 20)))
	j.Rack[0].Angle = 140 * math.Pi / 180 // flanks 20° off the glass
	_, err := New(t.Context(), j, j.Blanks[0])
	for _, words := range []string{"motif[1].rock", "read a roll of 20 degrees", "a roll of the stem of at most 15 degrees", "140 degrees"} {
		if err == nil || !strings.Contains(err.Error(), words) {
			t.Errorf("%q isn't in %v", words, err)
		}
	}
	j.Motifs[0].Rock = &[2]geometry.Angle{0, geometry.Degrees(15)}
	if _, err := New(t.Context(), j, j.Blanks[0]); err != nil {
		t.Error(err)
	}
}

// With hand = 0 a motif is what it is without a hand at all; with a hand it is another.
func TestNoHand(t *testing.T) {
	for _, kind := range []string{"leaf", "sprig", "wheat", "fan", "olives"} {
		even, by := motif(t, kind, nil, size(0.9, 0.9)), motif(t, kind, nil, size(0.9, 0.9))
		delete(even.Values, motifs.HandParam) // as before there was one
		a, b := laid(t, jobOn(straight(t), 4, even)), laid(t, jobOn(straight(t), 4, by))
		for i := range a.Cuts {
			if off := samePlan(a.Cuts[i].Groove, b.Cuts[i].Groove); off != "" {
				t.Errorf("%s: cut %d differs: %s", kind, i+1, off)
			}
		}
		by.Values[motifs.HandParam] = 1
		if c := laid(t, jobOn(straight(t), 4, by)); samePlan(a.Cuts[1].Groove, c.Cuts[1].Groove) == "" {
			t.Errorf("%s: nothing is seen of the hand", kind)
		}
	}
}

// The findings of one period of a job by hand, carried round the glass, are those of a walk
// over all pairs of all cuts on it.
func TestWholeGlassByHand(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(14, 2))
	all := make([]*job.Job, 60)
	for n := range all {
		all[n] = scattered(t, random)
		jobtest.ByHand(random, all[n])
	}
	all[0] = helices(t)
	for i := range all[0].Motifs {
		rocked(4, 9)(&all[0].Motifs[i])
	}
	wholeGlass(t, all, 8)
}

// What an editor makes of jobs whose hand is changed is what is made of them from scratch.
func TestEditorByHand(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(3, 9))
	e, differ := new(Editor), 0
	for range 8 {
		j := scattered(t, random)
		before := ""
		for range 5 {
			j = j.Clone()
			jobtest.ByHand(random, j)
			plans, err := e.Lay(t.Context(), j)
			fresh, wrong := new(Editor).Lay(t.Context(), j)
			if err != nil || wrong != nil {
				if (err == nil) != (wrong == nil) {
					t.Fatal(err, wrong)
				}
				continue
			}
			if off := samePlan(fresh, plans); off != "" {
				t.Fatalf("it differs from scratch: %s", off)
			}
			if is := Fingerprint(j); is != before {
				before = is
				differ++
			}
		}
	}
	if differ < 20 {
		t.Errorf("%d jobs", differ)
	}
}

// A gang of more mitres than can be worked out rolled is refused, with how many may be.
func TestRolledGangOfManyMitres(t *testing.T) {
	for mitres, refused := range map[int]bool{12: false, 13: true} {
		j := jobOn(straight(t), 1, bar(t, 0, 30, 40, rocked(0, 5)))
		j.Rack[0] = groove.Wheel{Name: "gang", Edge: groove.Gang, Radius: 50, Thick: 12, Angle: math.Pi / 2, Mitres: mitres, Spacing: 0.5}
		_, err := New(t.Context(), j, j.Blanks[0])
		if (err != nil) != refused || refused && !strings.Contains(err.Error(), "at most 12 mitres") {
			t.Errorf("%d mitres: %v", mitres, err)
		}
	}
}

// A drawn cut whose swell is greatest at its end, where the wheel has to be out of the glass,
// isn't short: it is as its swell asks. One touch that is too short still is.
func TestSwellAtTheEnd(t *testing.T) {
	drawn := laid(t, jobOn(straight(t), 1, bar(t, 0, 30, 30, swelled(0.1, 0.1, 0.1, 0.1, 1))))
	if c := drawn.Cuts[0]; c.Touch || c.Plunge >= c.Asked*drawn.Job.Limits.Reach {
		t.Fatalf("a touch: %v, set %g mm deep of %g", c.Touch, c.Plunge, c.Asked)
	}
	if found := drawn.shallow(); len(found) > 0 {
		t.Errorf("found %+v", found)
	}
	// One that is greatest short of its end is still to get there.
	if inner := laid(t, jobOn(straight(t), 1, bar(t, 0, 30, 30, swelled(0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 1, 0.1)))); inner.Cuts[0].Touch || len(inner.shallow()) != 1 {
		t.Errorf("set %g mm deep of %g isn't found shallow", inner.Cuts[0].Plunge, inner.Cuts[0].Asked)
	}
	if touch := laid(t, jobOn(straight(t), 1, bar(t, 0, 30, 6, swelled(0.5, 1)))); len(touch.shallow()) != 1 {
		t.Errorf("a touch %g mm deep of %g isn't found shallow", touch.Cuts[0].Plunge, touch.Cuts[0].Asked)
	}
}
