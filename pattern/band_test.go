package pattern

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// upright is a single upright line from end to end of its box, so high up the band.
func upright(t testing.TB, deep, from, to float64, change ...func(*job.Motif)) job.Motif {
	change = append([]func(*job.Motif){depth(deep), size(0.5, to-from), at(0, (from+to)/2)}, change...)
	return motif(t, "fan", motifs.Values{"rays": 1, "hub": 0}, change...)
}

// TestBandByCuts works by hand how high a band may reach when its motifs stand at
// different heights. The foot's margin is 6.4 mm, the rim's 9.5, and 1.6 mm are to
// be left. The straight glass has 7 mm of wall at the foot and 0.05 mm less for
// each mm: 3.6 mm at 68 mm, 2.6 at 88, 2.1 at 98. Square to the slant of the
// hollow, 1.6 mm are 1.6 √(1 + 0.05²) on the level: all of these lie 0.04 mm lower;
// where the wall changes by 0.1 mm a mm, 0.08 mm.
func TestBandByCuts(t *testing.T) {
	deep, shallow := 68-1.6*(math.Sqrt(1.0025)-1)/0.05, 88-1.6*(math.Sqrt(1.0025)-1)/0.05
	waist := 34 - 1.6*(math.Sqrt(1.01)-1)/0.1
	waisted := blank(t, glass.Station{Height: 0, Radius: 35, Wall: 6}, glass.Station{Height: 40, Radius: 35, Wall: 2},
		glass.Station{Height: 80, Radius: 35, Wall: 6}, glass.Station{Height: 100, Radius: 35, Wall: 6})
	inner := upright(t, 2, 0, 0.5)
	inner.Inside = 1
	for _, c := range []struct {
		name   string
		blank  *glass.Blank
		motifs []job.Motif
		top    float64
		end    End
	}{
		{"deep low, shallow high", straight(t), []job.Motif{upright(t, 2, 0, 0.5), upright(t, 0.5, 0.6, 1)}, 90.5, End{By: ByRim}},
		// 6.4 + 0.85 (T − 6.4) = 68
		{"deep too high", straight(t), []job.Motif{upright(t, 0.5, 0.6, 1), upright(t, 2, 0.4, 0.85)}, 6.4 + (deep-6.4)/0.85, End{ByWall, 1, deep}},
		// Each would end it: the deep one at 78.87 mm, the one over all of it at 88.
		{"two that end it", straight(t), []job.Motif{upright(t, 1, 0, 1), upright(t, 2, 0.4, 0.85)}, 6.4 + (deep-6.4)/0.85, End{ByWall, 1, deep}},
		// A turn by a quarter: it reaches as far up from the middle of the band as half
		// its width, which is 0.8 of a quarter of 2π · 40 mm.
		{"turned", straight(t), []job.Motif{upright(t, 2, 0, 1, turn(90), size(0.8, 0.1))}, 6.4 + 2*(deep-6.4-8*math.Pi), End{ByWall, 0, deep}},
		// The wall is below 2.6 mm from 34 to 46 mm: the low one keeps below it, 31.63
		// at the highest, and the other one has room for itself above.
		{"a thin waist, nothing on it", waisted, []job.Motif{upright(t, 1, 0, 0.3), upright(t, 1, 0.5, 1)}, 90.5, End{By: ByRim}},
		// 6.4 + 0.7 (T − 6.4) = 34
		{"a thin waist", waisted, []job.Motif{upright(t, 1, 0.3, 0.7)}, 6.4 + (waist-6.4)/0.7, End{ByWall, 0, waist}},
		// Inside one that reaches over all of the band, in its lower half.
		{"inside another", straight(t), []job.Motif{upright(t, 0.5, 0, 1), inner}, 90.5, End{By: ByRim}},
		// One that reaches over the band counts as far as the band does.
		{"beyond the band", straight(t), []job.Motif{upright(t, 1, 0.5, 1.5)}, shallow, End{ByWall, 0, shallow}},
		// One whose place is a length stands there whatever the band.
		{"in a place of its own", straight(t), []job.Motif{bar(t, 0, 65, 10, depth(2))}, 90.5, End{By: ByRim}},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := jobOn(c.blank, 4, c.motifs...)
			j.Layout.Band = nil
			band, end := carried(j, c.blank)
			if band.Foot != 6.4 || !near(band.Top, c.top, 1e-3) || end.By != c.end.By || end.Motif != c.end.Motif || !near(end.Thin, c.end.Thin, 1e-6) {
				t.Errorf("up to %g, ended by %+v; by hand %g, %+v", band.Top, end, c.top, c.end)
			}
		})
	}
}

// TestBandAgainstAll tries every band by 0.05 mm, on random glasses with a thin
// place anywhere: the one that is chosen is as high as any that is carried, and
// what is cut in it leaves what must be left.
func TestBandAgainstAll(t *testing.T) {
	const step = 0.05
	random := rand.New(rand.NewPCG(10, 5))
	limited, refused := 0, 0
	for n := range 150 {
		b := randomWalls(t, random)
		var all []job.Motif
		for range 1 + random.IntN(4) {
			from := 0.9 * random.Float64()
			all = append(all, upright(t, 0.3+1.7*random.Float64(), from, from+0.05+(0.95-from)*random.Float64()))
		}
		j := jobOn(b, 6, all...)
		j.Layout.Band = nil
		// An upright line lies at shares of the band, whatever the taper.
		carries := func(top float64) bool {
			for _, m := range all {
				low := j.Limits.Foot + (m.Y.Value-m.Height.Value/2)*(top-j.Limits.Foot)
				high := j.Limits.Foot + (m.Y.Value+m.Height.Value/2)*(top-j.Limits.Foot)
				for z := low; ; z += step / 2 {
					if b.CutTo(m.Depth).Left(min(z, high)) < j.Limits.Leave {
						return false
					}
					if z >= high {
						break
					}
				}
			}
			return true
		}
		want := b.Height() - j.Limits.Rim
		for want >= j.Limits.Foot+MinBand && !carries(want) {
			want -= step
		}
		p, err := lay(context.Background(), j, b)
		if err != nil {
			if refused++; want > j.Limits.Foot+MinBand+step {
				t.Errorf("%d: refused (%v), though %g carries all", n, err, want)
			}
			continue
		}
		if want < b.Height()-j.Limits.Rim {
			limited++
		}
		if got := p.Band.Top; got < want-1e-9 || got > want+step {
			t.Errorf("%d: a top of %g, and by trying all %g", n, got, want)
		}
		if found := p.thin(); len(found) > 0 {
			t.Errorf("%d: thin in the band that was chosen: %+v", n, found[0])
		}
	}
	if limited < 40 || refused < 5 {
		t.Errorf("only %d limited by their walls and %d refused", limited, refused)
	}
}

// randomWalls is a tapered blank whose wall may have a thin place anywhere.
func randomWalls(t testing.TB, random *rand.Rand) *glass.Blank {
	t.Helper()
	foot, rim := 30+15*random.Float64(), 30+15*random.Float64()
	stations := []glass.Station{{Height: 0, Wall: 3 + 4*random.Float64()}}
	for z := 15 + 10*random.Float64(); z < 85; z += 10 + 25*random.Float64() {
		stations = append(stations, glass.Station{Height: z, Wall: 2 + 3*random.Float64()})
	}
	stations = append(stations, glass.Station{Height: 95, Wall: 1.6 + 2*random.Float64()})
	for i := range stations {
		stations[i].Radius = foot + (rim-foot)*stations[i].Height/95
	}
	return blank(t, stations...)
}

// Every blank of a set carries the set's band, and one that reaches a little
// higher not all of them do, or it would run into a rim's margin.
func TestBandOfSet(t *testing.T) {
	random := rand.New(rand.NewPCG(10, 12))
	walls := 0
	for n := range 30 {
		j := jobOn(nil, 6, upright(t, 1+random.Float64(), 0, 0.3+0.4*random.Float64()), upright(t, 0.3+0.3*random.Float64(), 0.7, 1))
		j.Layout.Band, j.Blanks = nil, nil
		for range 2 + random.IntN(6) {
			j.Blanks = append(j.Blanks, randomWalls(t, random))
		}
		band, by, end, err := commonBand(j)
		if err != nil {
			continue
		}
		thin := func(top float64) int {
			higher := j.Clone()
			higher.Layout.Band = &job.Band{Foot: band.Foot, Top: top}
			return slices.IndexFunc(j.Blanks, func(b *glass.Blank) bool {
				c := climb{higher, b, thinFor(higher, b)}
				return !c.carries(band.Foot, top)
			})
		}
		if i := thin(band.Top); i >= 0 {
			t.Errorf("%d: blank %d does not carry the set's band", n, i)
		}
		switch {
		case end.By == ByRim && band.Top != j.Blanks[by].Height()-j.Limits.Rim:
			t.Errorf("%d: ended at %g by the rim of blank %d", n, band.Top, by)
		case end.By == ByWall:
			walls++
			if thin(band.Top+0.02) < 0 {
				t.Errorf("%d: all carry a band that reaches higher than %g", n, band.Top)
			}
		}
	}
	if walls < 10 {
		t.Errorf("only %d sets that a wall ends", walls)
	}
}

// An evaluator remembers the band and the sizes it found, and answers as if it had
// not.
func TestChosenBand(t *testing.T) {
	j := three(t, upright(t, 2, 0.1, 0.6), motif(t, "leaf", motifs.Values{"fronds": 4}, depth(0.3)))
	known := NewEvaluator()
	for _, match := range []job.Match{job.Set, job.Own} {
		j.Layout.Match = match
		for range 2 {
			for _, deep := range []float64{2, 2.5} {
				j.Motifs[0].Depth = deep
				for _, b := range j.Blanks {
					band, sized, err := share(j, b)
					if err != nil {
						t.Fatal(err)
					}
					a, err := known.arrange(j, faceOf{b, job.Side})
					if err != nil {
						t.Fatal(err)
					}
					got, as := a.band, a.sized(j)
					if got != band || as[0].Height != sized[0].Height || as[1].Width != sized[1].Width {
						t.Errorf("%s: %v, sizes %+v and %+v; wanted %v, %+v", b.Name, got, as[0].Height, as[1].Width, band, sized)
					}
				}
			}
		}
	}
}
