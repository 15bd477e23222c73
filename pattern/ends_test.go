package pattern

import (
	"context"
	"math"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// st is a station as the calipers read it: height, diameter and wall.
func st(height, across, wall float64) glass.Station {
	return glass.Station{Height: height, Radius: across / 2, Wall: wall}
}

// Glasses that are straight in the band and not at their ends. Paper goes on as
// long as the glass is within maxMisfit of it, and half a millimetre at the most
// further in, so that its height is found on a ruler.
func TestPaperEndsWhereItParts(t *testing.T) {
	for name, test := range map[string]struct {
		stations     []glass.Station
		lower, upper EndReason
		offs         [2]float64 // how much wider the ends are, by hand
	}{
		"straight":      {[]glass.Station{st(0, 70, 6), st(100, 70, 3)}, WholeGlass, WholeGlass, [2]float64{}},
		"flared foot":   {[]glass.Station{st(0, 80, 9), st(8, 70, 6), st(100, 70, 3)}, PartsFromGlass, WholeGlass, [2]float64{5, 0}},
		"rounded foot":  {[]glass.Station{st(0, 60, 9), st(8, 70, 6), st(100, 70, 3)}, PartsFromGlass, WholeGlass, [2]float64{-5, 0}},
		"flared lip":    {[]glass.Station{st(0, 70, 9), st(92, 70, 4), st(100, 76, 3)}, WholeGlass, PartsFromGlass, [2]float64{0, 3}},
		"foot and lip":  {[]glass.Station{st(0, 80, 9), st(8, 70, 6), st(92, 70, 4), st(100, 66, 3)}, PartsFromGlass, PartsFromGlass, [2]float64{5, -2}},
		"hardly flared": {[]glass.Station{st(0, 70.2, 9), st(8, 70, 6), st(100, 70, 3)}, WholeGlass, WholeGlass, [2]float64{}},
	} {
		t.Run(name, func(t *testing.T) {
			p := planned(t, jobOn(blank(t, test.stations...), 5, motif(t, "leaf", nil)))
			f := p.Outside()
			if f.Curved() || f.Lower.Why != test.lower || f.Upper.Why != test.upper {
				t.Fatalf("%+v, %+v, curved %v", f.Lower, f.Upper, f.Curved())
			}
			for i, e := range []struct {
				end        Edge
				at, beyond float64
				own        float64
			}{{f.Lower, f.Low, f.Low - 0.5, 0}, {f.Upper, f.High, f.High + 0.5, 100}} {
				within := func(z float64) bool { return math.Abs(p.Blank.Profile().Radius(z)-35) <= maxMisfit }
				switch {
				case e.end.Own != e.own:
					t.Errorf("the glass ends at %g", e.end.Own)
				case e.end.Why == WholeGlass && e.at != e.own:
					t.Errorf("goes to %g only", e.at)
				case e.end.Why == WholeGlass:
					continue
				}
				if e.at*2 != math.Round(e.at*2) || !within(e.at) || within(e.beyond) || math.Abs(e.end.Off-test.offs[i]) > 1e-9 {
					t.Errorf("ends at %g, where the glass is %g in radius, %g at %g; %+v", e.at,
						p.Blank.Profile().Radius(e.at), p.Blank.Profile().Radius(e.beyond), e.beyond, e.end)
				}
			}
			// Dividers are set for the edge, where it is not at the table.
			edge := p.Chords[1]
			if (edge.Name == PaperEdge) != (test.lower != WholeGlass) {
				t.Errorf("circles: %+v", p.Chords)
			}
			if radius := p.Blank.Profile().Radius(f.Low); edge.Name == PaperEdge &&
				(edge.Height != f.Low || math.Abs(edge.Chord-2*radius*math.Sin(math.Pi/5)) > 1e-9) {
				t.Errorf("paper edge at %g: %+v", f.Low, edge)
			}
		})
	}
}

// In inches edges are at 32nds.
func TestPaperEndsOnARuler(t *testing.T) {
	j := jobOn(blank(t, st(0, 80, 9), st(8, 70, 6), st(100, 70, 3)), 5, motif(t, "leaf", nil))
	j.Length = geometry.Inch
	low := planned(t, j).Outside().Low / geometry.MillimetresPerInch * 32
	if math.Abs(low-math.Round(low)) > 1e-9 || low < 1 {
		t.Errorf("begins %g/32 in up", low)
	}
}

// Of a curved glass the gores go on beyond the band until they no longer lie.
func TestGoresEndWhereTheyPart(t *testing.T) {
	// A barrel on a foot that flares as no paper does.
	p := planned(t, jobOn(blank(t, st(0, 90, 9), st(4, 60, 9), st(15, 68, 6), st(50, 80, 4), st(85, 74, 4), st(100, 66, 3)), 5, motif(t, "leaf", nil)))
	f := p.Outside()
	if !f.Curved() || f.Lower.Why != PartsFromGlass || f.Low < 3 || f.Low > 20 || f.Upper.Why != WholeGlass {
		t.Errorf("from %g to %g: %+v, %+v", f.Low, f.High, f.Lower, f.Upper)
	}
	gore := geometry.Gore{Profile: f.Profile, HalfWidth: math.Pi / 5 / float64(f.Gores(5, 0).PerRepeat)}
	for z, fits := range map[float64]bool{f.Low: true, f.Low - 1: false} {
		if gain, loss := gore.Excess(z, f.Band[0]); (max(gain, loss) <= maxEase) != fits {
			t.Errorf("from %g the edges are out by %g and %g", z, gain, loss)
		}
	}
}

// A goblet with its paper on the bowl: foot, stem and bowl as they are measured.
func goblet(t *testing.T) *glass.Blank {
	return blank(t, st(0, 70, 4), st(4, 10, 4.5), st(50, 10, 4.5), st(60, 40, 6), st(80, 80, 5), st(100, 82, 4), st(120, 82, 3))
}

func TestPaperAsAsked(t *testing.T) {
	for name, test := range map[string]struct {
		low, high    float64
		lower, upper EndReason
	}{
		"bowl":       {60, 120, AsAsked, WholeGlass},
		"to below":   {60, 110, AsAsked, AsAsked},
		"from table": {0, 110, WholeGlass, AsAsked},
	} {
		t.Run(name, func(t *testing.T) {
			b := goblet(t)
			b.Paper = &glass.Extent{Low: test.low, High: test.high}
			j := jobOn(b, 5, motif(t, "leaf", nil))
			j.Layout.Band.Foot, j.Layout.Band.Top = 85, 105
			f := planned(t, j).Outside()
			if f.Low != test.low || f.High != test.high || f.Lower.Why != test.lower || f.Upper.Why != test.upper {
				t.Errorf("from %g to %g: %+v, %+v", f.Low, f.High, f.Lower, f.Upper)
			}
			if !f.Curved() { // it fits from edge to edge, so it is in gores
				t.Error("paper on a cone for a bowl that bends")
			}
		})
	}
	// Without it the paper of a bowl in straight glass ends by itself above the stem.
	j := jobOn(goblet(t), 5, motif(t, "leaf", nil))
	j.Layout.Band.Foot, j.Layout.Band.Top = 102, 118
	if f := planned(t, j).Outside(); f.Lower.Why != PartsFromGlass || f.Low < 80 || f.Low > 102 {
		t.Errorf("from %g: %+v", f.Low, f.Lower)
	}
}

// Where the job states no band, it lies on the paper that is asked for.
func TestBandOnThePaper(t *testing.T) {
	b := goblet(t)
	b.Paper = &glass.Extent{Low: 82, High: 100}
	j := jobOn(b, 5, motif(t, "leaf", nil, depth(0.2)))
	j.Layout.Band = nil
	if p := planned(t, j); p.Band.Foot != 82 || p.Band.Top != 100 {
		t.Errorf("the band is %+v", p.Band)
	}
	if _, end := carried(j, b); end.By != ByPaper {
		t.Errorf("ended by %v", end.By)
	}
	// And it is refused where there can be none.
	b.Paper = &glass.Extent{Low: 0, High: 5}
	for _, band := range []bool{false, true} {
		if band {
			j.Layout.Band = jobOn(b, 5).Layout.Band
		}
		if _, err := New(context.Background(), j, b); err == nil || !strings.Contains(err.Error(), "].paper: read paper from") {
			t.Errorf("a band stated %v: %v", band, err)
		}
	}
}

// On paper that begins at 30 mm the band is searched for as on all the glass: that
// of the straight one gets too thin for 2 mm of depth at 68 mm, or a little lower
// by what is left square to the hollow's slant of 0.05 mm a mm.
func TestBandOnThePaperByCuts(t *testing.T) {
	b := straight(t)
	b.Paper = &glass.Extent{Low: 30, High: 85}
	deep := 68 - 1.6*(math.Sqrt(1.0025)-1)/0.05
	for name, test := range map[string]struct {
		motifs []job.Motif
		top    float64
		by     Bound
	}{
		"shallow":            {[]job.Motif{upright(t, 0.5, 0, 1)}, 85, ByPaper},
		"deep low":           {[]job.Motif{upright(t, 2, 0, 0.5), upright(t, 0.5, 0.6, 1)}, 85, ByPaper},
		"deep in the middle": {[]job.Motif{upright(t, 2, 0.4, 0.85)}, 30 + (deep-30)/0.85, ByWall}, // 30 + 0.85 (T − 30) = deep
	} {
		t.Run(name, func(t *testing.T) {
			j := jobOn(b, 4, test.motifs...)
			j.Layout.Band = nil
			if band, end := carried(j, b); band.Foot != 30 || !near(band.Top, test.top, 1e-3) || end.By != test.by {
				t.Errorf("%+v, ended by %v; by hand up to %g, %v", band, end.By, test.top, test.by)
			}
		})
	}
}

// The band of a set lies on the paper of each of its blanks, and is refused where
// these have nothing in common.
func TestBandOnThePapersOfASet(t *testing.T) {
	extent := func(low, high float64) *glass.Extent { return &glass.Extent{Low: low, High: high} }
	for name, test := range map[string]struct {
		papers  []*glass.Extent
		want    job.Band
		by      int
		bound   Bound
		refused string
	}{
		"one":                    {[]*glass.Extent{nil, extent(30, 80)}, job.Band{Foot: 30, Top: 80}, 1, ByPaper, ""},
		"one ends, one begins":   {[]*glass.Extent{extent(0, 70), extent(30, 100), nil}, job.Band{Foot: 30, Top: 70}, 0, ByPaper, ""},
		"to the rim":             {[]*glass.Extent{nil, extent(30, 100)}, job.Band{Foot: 30, Top: 90.5}, 0, ByRim, ""},
		"nothing in common":      {[]*glass.Extent{extent(0, 25), extent(30, 100)}, job.Band{}, 0, 0, "blank[2].paper"},
		"above all that may be":  {[]*glass.Extent{nil, extent(92, 100)}, job.Band{}, 0, 0, "blank[2].paper"},
		"below all that may be":  {[]*glass.Extent{extent(0, 6), nil}, job.Band{}, 0, 0, "blank[1].paper"},
		"nothing, the other way": {[]*glass.Extent{extent(30, 100), extent(0, 25)}, job.Band{}, 0, 0, "blank[1].paper"},
	} {
		t.Run(name, func(t *testing.T) {
			j := jobOn(nil, 4, upright(t, 0.3, 0, 1))
			j.Layout.Band, j.Layout.Match, j.Blanks = nil, job.Set, nil
			for _, paper := range test.papers {
				b := straight(t)
				b.Paper = paper
				j.Blanks = append(j.Blanks, b)
			}
			band, by, end, err := commonBand(j)
			switch {
			case test.refused != "":
				if err == nil || !strings.Contains(err.Error(), test.refused+": read paper from") {
					t.Errorf("%+v, %v", band, err)
				}
			case err != nil || band != test.want || by != test.by || end.By != test.bound:
				t.Errorf("%+v, by %v of blank %d, %v", band, end.By, by, err)
			}
		})
	}
}

// Cuts beyond the paper asked for are reported: as off it wholly or partly.
func TestCutsOffThePaper(t *testing.T) {
	b := straight(t)
	b.Paper = &glass.Extent{Low: 45, High: 60}
	p := planned(t, jobOn(b, 4,
		bar(t, -10, 12, 16), // from 24 to 40 mm
		bar(t, 0, 25, 16),   // from 37 to 53
		bar(t, 10, 38, 16),  // from 50 to 66
		bar(t, 15, 31, 12),  // from 45 to 57, but for what tails it has
	))
	f := p.Outside()
	found := p.Unseen(f)
	if len(found) != 3 {
		t.Fatalf("%d cuts are off the paper: %+v", len(found), found)
	}
	for i, want := range []struct {
		measured, wanted float64
		hidden           bool
	}{{24, 45, true}, {37, 45, false}, {66, 60, false}} {
		if got := found[i]; math.Abs(got.Measured-want.measured) > 0.1 || got.Wanted != want.wanted || p.Hidden(got) != want.hidden ||
			got.Cure.Advice != MorePaper {
			t.Errorf("%+v, wholly %v", got, p.Hidden(got))
		}
	}
}

// Opposite is square through the wall: on a glass flared by 20° under 5 mm,
// 1.710 mm higher inside, and its band is that much higher there.
func TestFaceHeight(t *testing.T) {
	b, err := glass.NewBlank("flared", 10, []glass.Station{st(0, 60, 5), st(100, 60+200*0.363970234, 5)})
	if err != nil {
		t.Fatal(err)
	}
	p := planned(t, jobOn(b, 5, motif(t, "leaf", nil)))
	inside, err := p.Inside()
	if err != nil {
		t.Fatal(err)
	}
	const up = 5 * 0.342020143
	if got := inside.Height(50); math.Abs(got-50-up) > 1e-6 {
		t.Errorf("50 mm outside is opposite %g", got)
	}
	if math.Abs(inside.Band[0]-20-up) > 1e-6 || math.Abs(inside.Band[1]-80-up) > 1e-6 {
		t.Errorf("the band inside is %v", inside.Band)
	}
	if low, high := inside.Carries(); math.Abs(low-(10-up)) > 1e-6 || math.Abs(high-(100-up)) > 1e-6 {
		t.Errorf("carries what lies between %g and %g outside", low, high)
	}
	if outside := p.Outside(); outside.Height(50) != 50 {
		t.Errorf("50 mm outside is at %g", outside.Height(50))
	}
}

// Inside, the edge of the paper is measured with a ruler from the rim down. A wall that
// thickens below 20 mm by 2 mm for every 5 down parts from the paper where it is
// 0.15 mm thicker, at some 19.6 mm.
func TestPaperInsideEndsOnARulerFromTheRim(t *testing.T) {
	b, err := glass.NewBlank("trial", 5, []glass.Station{st(0, 80, 12), st(20, 80, 4), st(100.3, 80, 4)})
	if err != nil {
		t.Fatal(err)
	}
	j := jobOn(b, 5, motif(t, "leaf", nil))
	j.Layout.Band.Foot = 25
	f, err := planned(t, j).Inside()
	if err != nil {
		t.Fatal(err)
	}
	if down := 2 * (100.3 - f.Low); f.Lower.Why != PartsFromGlass || !near(down, math.Round(down), 1e-6) || f.Low < 19.5 || f.Low > 20.2 {
		t.Errorf("begins at %g mm, %g below the rim: %+v", f.Low, 100.3-f.Low, f.Lower)
	}
}
