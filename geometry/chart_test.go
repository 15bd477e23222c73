package geometry

import (
	"math"
	"testing"
)

// Of a glass that is wide at a shoulder and narrow above, and of a coupe, the band's cone ends
// within the band or close to it: kept off, every place of the band still has a point of the
// chart of its own, out to half a turn of the chart.
func TestChartKeepsOffItsApex(t *testing.T) {
	shoulder := []Circle{{32.5, 0}, {109.9, 19.05}, {35.7, 50.8}, {37.3, 76.2}, {38.7, 98.4}}
	coupe := []Circle{{30, 0}, {6, 10}, {6, 70}, {60, 100}}
	changed := 0
	for name, stations := range map[string][]Circle{"shoulder": shoulder, "coupe": coupe} {
		p, err := NewProfile(stations)
		if err != nil {
			t.Fatal(err)
		}
		for _, band := range [][2]float64{{6, 89}, {20, 60}, {65, 98}, {82, 98}} {
			cone, _ := p.FitCone(band[0], band[1])
			if cone.RadiusAt(band[0]) <= 0 || cone.RadiusAt(band[1]) <= 0 {
				continue // no cone at all: a job is refused such a band
			}
			from, to := p.Along(band[0]), p.Along(band[1])
			s := NewSurface(p, cone.KeptOff(from, to))
			if s.Chart() != cone {
				changed++
			}
			half := math.Pi / math.Max(math.Abs(s.Chart().sin), 0.5)
			for i := range 101 {
				along := from + (to-from)*float64(i)/100
				if r := s.ChartRadius(along); r <= 0 {
					t.Fatalf("%s, band %v: the chart's radius is %g at %g along", name, band, r, along)
				}
				for _, theta := range []float64{-0.99 * half, -1, 0.5, 0.99 * half} {
					back, to := s.ReverseAlong(s.ForwardAlong(theta, along))
					if math.Abs(back-theta) > 1e-9 || math.Abs(to-along) > 1e-6 {
						t.Errorf("%s, band %v: θ %g, %g along comes back as %g, %g", name, band, theta, along, back, to)
					}
				}
			}
		}
	}
	if changed == 0 {
		t.Error("every cone is its band's own: nothing was kept off")
	}
}

// A cone whose apex is far from the band is charted on as it is.
func TestChartIsTheBandsCone(t *testing.T) {
	p, err := NewProfile([]Circle{{35, 0}, {44, 40}, {40, 100}})
	if err != nil {
		t.Fatal(err)
	}
	if cone, _ := p.FitCone(10, 90); cone.KeptOff(p.Along(10), p.Along(90)) != cone {
		t.Errorf("charted on another cone than %+v", cone)
	}
}
