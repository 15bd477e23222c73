package pattern

import (
	"math"
	"testing"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// A foot that flares by 10 mm below 8 mm, straight glass above: drawn in at its
// foot, the band has paper in one piece; a step less, and it has not.
func TestBandDrawnInFromAFlare(t *testing.T) {
	flared := func(foot float64) *Plan {
		b, err := glass.NewBlank("flared", 12, []glass.Station{
			{Radius: 40, Wall: 8}, {Height: 8, Radius: 35, Wall: 6}, {Height: 50, Radius: 35, Wall: 3.5}, {Height: 100, Radius: 35, Wall: 3},
		})
		if err != nil {
			t.Fatal(err)
		}
		j := jobOn(b, 5, motif(t, "leaf", nil))
		j.Layout.Band = &job.Band{Foot: foot, Top: 90.55}
		return planned(t, j)
	}
	for _, foot := range []float64{5.03, 6.03} {
		p := flared(foot)
		band, ok := p.DrawnIn()
		if !ok || !p.Outside().Curved() {
			t.Errorf("band from %g mm: %v, %v", foot, band, ok)
			continue
		}
		if math.Abs(band.Top-90.5) > 1e-9 || math.Abs(band.Foot*10-math.Round(band.Foot*10)) > 1e-9 || band.Foot <= foot || band.Foot > 8 {
			t.Errorf("band from %g mm: drawn in to %v", foot, band)
		}
		if q := flared(band.Foot); q.Outside().Curved() {
			t.Errorf("from %g mm the misfit is %.3f mm", band.Foot, q.Outside().Misfit)
		}
		if q := flared(band.Foot - 0.1); !q.Outside().Curved() {
			t.Errorf("from %g mm it would do already", band.Foot-0.1)
		}
	}
	if band, ok := flared(9).DrawnIn(); ok {
		t.Errorf("one paper is drawn in, to %v", band)
	}
}

// A barrel is curved all over: a tenth of its band less makes no cone of it.
func TestBandNotDrawnIn(t *testing.T) {
	p := planned(t, jobOn(blankOf(t, 35, 37.25, 38, 37.25, 35), 5, motif(t, "fan", nil)))
	if band, ok := p.DrawnIn(); ok || !p.Outside().Curved() {
		t.Errorf("a barrel: %v, %v", band, ok)
	}
}

// A band is drawn in by a tenth of itself and no more: where a foot flares up to 8 mm
// that does for a tall band from 1 mm, and not for a low one.
func TestBandDrawnInByATenth(t *testing.T) {
	b, err := glass.NewBlank("flared", 12, []glass.Station{
		{Radius: 40, Wall: 8}, {Height: 8, Radius: 35, Wall: 6}, {Height: 50, Radius: 35, Wall: 3.5}, {Height: 100, Radius: 35, Wall: 3},
	})
	if err != nil {
		t.Fatal(err)
	}
	met := map[bool]int{}
	for top := 35.0; top <= 75; top += 2.5 {
		j := jobOn(b, 5, bar(t, 0, 15, 10))
		j.Layout.Band = &job.Band{Foot: 1, Top: top}
		foot := 1.0
		for ; ; foot += 0.1 {
			if _, misfit := b.Profile().FitCone(foot, top); misfit <= maxMisfit {
				break
			}
		}
		want := foot-1 <= 0.1*(top-1)
		met[want]++
		if band, ok := laid(t, j).DrawnIn(); ok != want || ok && !near(band.Foot, foot, 1e-6) {
			t.Errorf("a band from 1 to %g mm is drawn in to %v, %v; tried, it would be one paper from %g mm", top, band, ok, foot)
		}
	}
	if met[true] < 3 || met[false] < 3 {
		t.Errorf("met %v", met)
	}
}
