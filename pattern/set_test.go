package pattern

import (
	"context"
	"math"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

func laidAll(t testing.TB, j *job.Job) []*Plan {
	t.Helper()
	plans, err := Lay(context.Background(), j)
	if err != nil {
		t.Fatal(err)
	}
	return plans
}

func setOf(t testing.TB, j *job.Job) *Set {
	t.Helper()
	s, err := NewSet(context.Background(), laidAll(t, j))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestSetByHand(t *testing.T) {
	j := three(t, motif(t, "fan", motifs.Values{"rays": 5}, depth(1), size(0.5, 1)))
	s := setOf(t, j)
	if want := (job.Band{Foot: 6.4, Top: 80.5}); s.Band != want {
		t.Errorf("band %v, wanted %v", s.Band, want)
	}
	for i, want := range []struct {
		top    float64
		by     Bound
		across float64
		wall   float64
	}{
		{88 - 1.6*(math.Sqrt(1.0025)-1)/0.05, ByWall, 80, 7 - 5*0.805}, {80.5, ByRim, 78, 5}, {86.5, ByRim, 76, 5},
	} {
		m := s.Members[i]
		if !near(m.Own.Top, want.top, 1e-6) || m.By != want.by || m.Diameter != want.across || !near(m.Wall, want.wall, 1e-9) {
			t.Errorf("%s: own top %g by %v, %g across, wall %g; wanted %+v", m.Blank.Name, m.Own.Top, m.By, m.Diameter, m.Wall, want)
		}
		if m.Band != s.Band {
			t.Errorf("%s: laid in a band of its own, %v", m.Blank.Name, m.Band)
		}
	}
	if len(s.Limits) != 2 {
		t.Fatalf("held back by %+v", s.Limits)
	}
	// Without the short one the band ends where the narrow one's does.
	h := s.Limits[0]
	if h.Member.Blank.Name != "short" || h.By != ByRim || !near(h.Taller, 6, 1e-9) || !near(h.Wider, 1, 1e-9) || h.Next.Blank.Name != "narrow" || h.Findings != 0 {
		t.Errorf("the band is held back by %+v", h)
	}
	// Without the narrow one, a repeat is 78π/4 wide in place of 76π/4, and the
	// band still ends where the short one's does.
	h = s.Limits[1]
	if h.Member.Blank.Name != "narrow" || h.By != ByGirth || !near(h.Taller, 0, 1e-9) || !near(h.Wider, 78./76, 1e-9) || h.Next.Blank.Name != "short" {
		t.Errorf("the size is held back by %+v", h)
	}
}

// On every blank of a set the cuts are as long, as deep and as high; only the
// land between the repeats differs.
func TestSetMatches(t *testing.T) {
	j := three(t,
		motif(t, "leaf", nil, size(0.6, 0.8), at(-0.1, 0.5)),
		motif(t, "fan", nil, size(0.25, 0.2), at(0.45, 0.2)),
	)
	plans := laidAll(t, j)
	narrow := plans[2]
	for _, p := range plans {
		for i, c := range p.Cuts {
			want := narrow.Cuts[i]
			// The groove is solved to 0.0001 mm, and deeper by a hair on a flatter glass.
			if !near(c.Length, want.Length, 1e-3) || !near(c.Depth, want.Depth, 0.02) {
				t.Errorf("%s, cut %d: %g by %g, where the narrow one has %g by %g", p.Blank.Name, c.ID, c.Length, c.Depth, want.Length, want.Depth)
			}
			if at, wanted := c.Middle(), want.Middle(); !near(at.Height, wanted.Height, 0.01) {
				t.Errorf("%s, cut %d: %g above the table, where the narrow one has %g", p.Blank.Name, c.ID, at.Height, wanted.Height)
			}
		}
	}
	// The middle of the fan stands at the same share of the repeat on each.
	for _, p := range plans {
		if got := p.set(p.Job.Motifs[1]).theta; !near(got, 0.45*math.Pi/2, 1e-12) {
			t.Errorf("%s: the fan stands at %g", p.Blank.Name, got)
		}
	}

	j.Layout.Match = job.Own
	for i, p := range laidAll(t, j) {
		own, _ := carried(j, p.Blank)
		if p.Band != own {
			t.Errorf("to its own limits, %s has the band %v, and carries %v", p.Blank.Name, p.Band, own)
		}
		alone := j.Clone()
		alone.Blanks = j.Blanks[i : i+1]
		if want := laid(t, alone); !near(p.Cuts[0].Length, want.Cuts[0].Length, 1e-12) {
			t.Errorf("%s differs from what it is alone", p.Blank.Name)
		}
	}
	s := setOf(t, j)
	if len(s.Limits) > 0 {
		t.Errorf("held back, though each goes to its own limits: %+v", s.Limits)
	}
}

// Motifs that meet their next copy go on meeting it on every blank.
func TestSetMeets(t *testing.T) {
	for name, c := range map[string]struct {
		motif job.Motif
		keeps bool // its share of the repeat
	}{
		"nearly":                      {motif(t, "diamond", nil, size(0.99, 0.5)), false},
		"its next copy":               {motif(t, "diamond", nil, size(1, 0.5)), true},
		"astride the edge":            {motif(t, "diamond", nil, size(1, 0.5), at(0.4, 0.5)), true},
		"over its next copy":          {motif(t, "diamond", nil, size(1.3, 0.5)), true},
		"upside down":                 {motif(t, "diamond", nil, size(1, 0.5), turn(180)), true},
		"turned to stand on its side": {motif(t, "fan", nil, size(1, 0.5), turn(90)), false},
		"wide, every other repeat":    {motif(t, "fan", nil, size(1.2, 0.5), on(job.Odd)), false},
		"two repeats wide":            {motif(t, "fan", nil, size(2, 0.5), on(job.Even)), true},
	} {
		t.Run(name, func(t *testing.T) {
			j := three(t, c.motif)
			band, _, _, err := commonBand(j)
			if err != nil {
				t.Fatal(err)
			}
			sized, from, err := oneSize(j, band)
			if err != nil {
				t.Fatal(err)
			}
			if sized[0].Width.Fraction != c.keeps || (from[0] < 0) != c.keeps {
				t.Errorf("width %+v from blank %d", sized[0].Width, from[0])
			}
			if !c.keeps && (from[0] != 2 || !near(sized[0].Width.Value, c.motif.Width.Value*38*math.Pi/2, 1e-9)) {
				t.Errorf("width %g from blank %d", sized[0].Width.Value, from[0])
			}
			if sized[0].Height.Fraction || !near(sized[0].Height.Value, c.motif.Height.Value*(band.Top-band.Foot), 1e-9) {
				t.Errorf("height %+v", sized[0].Height)
			}
		})
	}
	// A length stays what it is, and comes from no blank.
	j := three(t, bar(t, 0, 20, 30, func(m *job.Motif) { m.Width = mm(12) }))
	band, _, _, _ := commonBand(j)
	sized, from, err := oneSize(j, band)
	if err != nil || from[0] != -1 || sized[0].Width != mm(12) || sized[0].Height != mm(30) {
		t.Errorf("%v: %+v from blank %d", err, sized[0], from[0])
	}
	if s := setOf(t, j); len(s.Limits) != 1 || s.Limits[0].By != ByRim || s.Limits[0].Wider != 1 {
		t.Errorf("held back by %+v", s.Limits)
	}
}

// Tapered blanks of unequal taper carry the same size too.
func TestSetTapers(t *testing.T) {
	j := three(t, motif(t, "fan", motifs.Values{"rays": 3}, size(0.5, 0.6)))
	j.Blanks = []*glass.Blank{blankOf(t, 36, 42), blankOf(t, 35, 44), blankOf(t, 38, 40)}
	plans := laidAll(t, j)
	for _, p := range plans {
		for i, c := range p.Cuts {
			// A cut runs straight between ends placed by the taper: the same box is
			// drawn a little differently on each cone.
			if want := plans[0].Cuts[i].Length; !near(c.Length, want, 0.3) {
				t.Errorf("cut %d: %g, and %g", c.ID, c.Length, want)
			}
		}
	}
}

// One blank that breaks the limits is named, and leaving it out clears the set.
func TestSetFindings(t *testing.T) {
	j := three(t, motif(t, "fan", motifs.Values{"rays": 3}, depth(1), size(0.5, 1)))
	j.Layout.Band = &job.Band{Foot: 10, Top: 80}
	j.Blanks[0] = named(t, "thin", 100, 40, 4, 2) // 2.4 mm of wall at 80 mm, for 1 mm and 1.6 mm
	s := setOf(t, j)
	var found *Limit
	for i, h := range s.Limits {
		if h.By == ByFindings {
			found = &s.Limits[i]
		}
	}
	if found == nil || found.Member.Blank.Name != "thin" || found.Findings != 0 || found.Next != nil {
		t.Fatalf("held back by %+v", s.Limits)
	}
	// The stated band asks more of the thin one than it carries: 2.6 mm of
	// wall end at 70 mm, and 1.6 mm square to the slant of 0.02 mm a mm a little below.
	if h := s.Limits[0]; h.By != ByWall || h.Member.Blank.Name != "thin" || !near(h.Member.Own.Top, 70-1.6*(math.Sqrt(1.0004)-1)/0.02, 1e-6) || h.Taller != 0 {
		t.Errorf("held back by %+v", h)
	}
}

// What the others have, and would have, is counted as it is lettered: rays that
// crowd one another are one finding, in however many pairs.
func TestSetCountsLetters(t *testing.T) {
	s := setOf(t, three(t, motif(t, "fan", motifs.Values{"rays": 15}, depth(1), size(0.5, 0.5))))
	if n := len(s.Members[0].Findings); n < 3 {
		t.Fatalf("%d findings are too few to tell", n)
	}
	if len(s.Limits) == 0 {
		t.Fatal("nothing holds the set back")
	}
	for _, h := range s.Limits {
		want := 0
		for i := range s.Members {
			if m := &s.Members[i]; m != h.Member {
				want += len(m.Groups())
			}
		}
		if h.Before != want || h.Findings != want {
			t.Errorf("without %q %d findings, now %d, wanted %d", h.Member.Blank.Name, h.Findings, h.Before, want)
		}
	}
}

func TestSetRefuses(t *testing.T) {
	j := three(t, motif(t, "fan", nil, depth(6)))
	j.Limits.Foot = 12 // over the floor: below it the glass is solid
	if _, err := Lay(context.Background(), j); err == nil {
		t.Error("a set was laid out where one blank can't be cut")
	}
}

// Twelve blanks that differ a little are one set, which carries one design: each has
// the same cuts, and a standing of its own.
func TestSetOfTwelve(t *testing.T) {
	j := three(t, motif(t, "leaf", motifs.Values{"fronds": 12}, size(0.6, 0.9)), motif(t, "fan", motifs.Values{"rays": 5}, at(0.5, 0.15), size(0.3, 0.25)))
	j.Blanks = nil
	for i := range 12 {
		x := float64(i)
		j.Blanks = append(j.Blanks, named(t, "glass "+string(rune('a'+i)), 95+x/3, 39+x/10, 7-x/20, 3+x/30))
	}
	plans := laidAll(t, j)
	s, err := NewSet(context.Background(), plans)
	if err != nil {
		t.Fatal(err)
	}
	if n := len(s.Standings()); n != 12 {
		t.Errorf("%d blanks have a standing", n)
	}
	for _, p := range plans {
		if n := len(p.Cuts); n < 30 || n != len(plans[0].Cuts) {
			t.Errorf("%s has %d cuts, %s %d", p.Blank.Name, n, plans[0].Blank.Name, len(plans[0].Cuts))
		}
	}
}
