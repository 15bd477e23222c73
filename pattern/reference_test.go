package pattern

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// standing is two cuts on the glass, the lower id first, and by how many full
// turns the second was rolled to stand beside it.
type standing struct{ first, second, roll int }

// TestLandsAgainstReference holds the land between any two cuts on the glass to
// the polygon distance of peterstace/simplefeatures v0.50.0, on the same
// outlines: across repeats, and across the seam of the flat map by a full turn.
func TestLandsAgainstReference(t *testing.T) {
	leaf := func(fronds float64, change ...func(*job.Motif)) job.Motif {
		return motif(t, "leaf", motifs.Values{"fronds": fronds}, change...)
	}
	fan := func(rays float64, change ...func(*job.Motif)) job.Motif {
		return motif(t, "fan", motifs.Values{"rays": rays}, change...)
	}
	diamond := func(across, up float64, change ...func(*job.Motif)) job.Motif {
		return motif(t, "diamond", motifs.Values{"across": across, "up": up}, change...)
	}
	straight, widening, narrowing := blankOf(t, 38, 38), blankOf(t, 30, 45), blankOf(t, 42, 31)
	for name, c := range map[string]struct {
		blank   *glass.Blank
		repeats int
		motifs  []job.Motif
	}{
		// The stem goes all round, and ends 0.3 mm short of its start.
		"one repeat, closed on itself": {straight, 1, []job.Motif{
			leaf(6, turn(90), size(0.2, 0), func(m *job.Motif) { m.Height = mm(2*math.Pi*38 - 0.3) }),
			fan(5, at(0.5, 0.2), size(0.8, 0.3)),
		}},
		"two repeats, widening":          {widening, 2, []job.Motif{leaf(5, size(0.99, 0.9)), diamond(3, 2, at(0.5, 0.3), size(0.6, 0.5))}},
		"three repeats, narrowing":       {narrowing, 3, []job.Motif{leaf(5), fan(7, at(0.5, 0.7), size(1, 0.3))}},
		"five repeats, astride the edge": {widening, 5, []job.Motif{leaf(4, at(0.47, 0.5), size(1, 0.8)), fan(4, at(-0.1, 0.5), size(0.8, 0.3))}},
		"odd and even":                   {narrowing, 4, []job.Motif{leaf(5, on(job.Odd), size(1.2, 0.9)), fan(6, on(job.Even), at(0, 0.3), size(1.2, 0.6)), fan(2, at(0.5, 0.5), size(0.4, 0.4))}},
		"turned and mirrored":            {straight, 3, []job.Motif{leaf(5, turn(35), mirrored), fan(5, turn(-110), mirrored, at(0.4, 0.5))}},
		"true shape, wide taper":         {widening, 5, []job.Motif{leaf(5, trueShape), diamond(2, 3, trueShape, at(0.5, 0.6), size(0.7, 0.7))}},
		"diamonds all round":             {straight, 3, []job.Motif{diamond(5, 4), leaf(3, size(0.5, 0.5))}},
		"every edge":                     {widening, 2, []job.Motif{leaf(4, with(olive)), fan(4, with(panel), at(0.5, 0.5), size(0.9, 0.5)), fan(3, with(lines), at(0.4, 0.2), size(0.5, 0.3))}},
	} {
		t.Run(name, func(t *testing.T) {
			p := laid(t, jobOn(c.blank, c.repeats, c.motifs...))
			want := referenceLands(t, p)
			got := lands(p)
			// Both take the same outlines, but one turns them round the glass by
			// repeats and the other by full turns.
			const same = 1e-6 // mm
			apart, seam := 0, 0
			for s, land := range want {
				if other, found := got[s]; !found || !near(land, other, same) {
					t.Errorf("%+v: land %.9f, here %.9f (%v)", s, land, other, found)
				}
				if land > 0 {
					apart++
				}
				if s.roll != 0 {
					seam++
				}
			}
			for s, land := range got {
				if _, found := want[s]; !found {
					t.Errorf("%+v: land %.9f here, none there", s, land)
				}
			}
			if apart < c.repeats || seam == 0 {
				t.Errorf("the job shows little: of %d pairs %d have land between them, and %d stand across the seam", len(want), apart, seam)
			}
		})
	}
}

// referenceLands walks all pairs of all cuts, as they stand and with the second
// rolled a full turn either way, and returns the lands below the limit.
func referenceLands(t *testing.T, p *Plan) map[standing]float64 {
	t.Helper()
	lands := map[standing]float64{}
	cuts := p.All()
	footprints := make([][]geom.Geometry, len(cuts))
	for i, c := range cuts {
		footprints[i] = polygons(*c.Groove)
	}
	limit := p.Job.Limits.Land
	for roll := -1; roll <= 1; roll++ {
		for j, b := range cuts {
			rolled := polygons(b.Turned(&p.Surface, float64(roll)*2*math.Pi))
			for i, a := range cuts[:j+1] {
				if i == j && roll != 1 {
					continue // the cut itself, or seen from the other side
				}
				if land := referenceLand(t, footprints[i], rolled, limit); land < limit {
					lands[standing{a.ID, b.ID, roll}] = land
				}
			}
		}
	}
	return lands
}

// referenceLand returns the reference's distance between two footprints; the
// limit where their envelopes, by its own computation, are farther apart.
func referenceLand(t *testing.T, a, b []geom.Geometry, limit float64) float64 {
	t.Helper()
	land := limit
	for _, x := range a {
		for _, y := range b {
			if d, ok := x.Envelope().Distance(y.Envelope()); ok && d > limit {
				continue
			}
			d, ok := geom.Distance(x, y)
			if !ok {
				t.Fatal("the reference has no distance for a footprint")
			}
			land = min(land, d)
		}
	}
	return land
}

// lands returns the same as the check finds it: the pairs of one period, before
// joins are sorted out, carried round the glass.
func lands(p *Plan) map[standing]float64 {
	lands := map[standing]float64{}
	c := crowding{plan: p, turned: map[[2]int]*groove.Groove{}}
	limit := p.Job.Limits.Land
	period, turns := len(p.Cuts), p.Repeats/p.Period
	p.neighbours(limit, func(q pair) bool {
		land, _, _ := distance(p.Cuts[q.first].Groove, c.standing(q), limit)
		if land >= limit {
			return true
		}
		for turn := range turns {
			further := turn + q.turns
			s := standing{q.first + 1 + turn*period, q.second + 1 + further%turns*period, further / turns}
			if s.second < s.first {
				s = standing{s.second, s.first, -s.roll}
			}
			lands[s] = land
		}
		return true
	})
	return lands
}
