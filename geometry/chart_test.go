package geometry

import (
	"math"
	"testing"
)

// A glass that is wide at a shoulder and narrow above, whose band's cone ends below its rim:
// every place of it still has a point of the chart of its own, out to half a turn of the
// chart, and the chart never runs backwards.
func TestChartKeepsOffItsApex(t *testing.T) {
	shoulder := []Circle{{32.5, 0}, {109.9, 19.05}, {35.7, 50.8}, {37.3, 76.2}, {38.7, 98.4}}
	coupe := []Circle{{30, 0}, {6, 10}, {6, 70}, {60, 100}}
	for name, stations := range map[string][]Circle{"shoulder": shoulder, "coupe": coupe} {
		p, err := NewProfile(stations)
		if err != nil {
			t.Fatal(err)
		}
		for _, band := range [][2]float64{{6, 89}, {20, 60}, {82, 98}} {
			cone, _ := p.FitCone(band[0], band[1])
			s := NewSurface(p, cone)
			half := math.Pi / math.Max(math.Abs(s.Chart().sin), 0.5)
			for i := range 101 {
				along := s.Length() * float64(i) / 100
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
}

// A cone whose apex is far from the glass is charted on as it is.
func TestChartIsTheBandsCone(t *testing.T) {
	p, err := NewProfile([]Circle{{35, 0}, {44, 40}, {40, 100}})
	if err != nil {
		t.Fatal(err)
	}
	cone, _ := p.FitCone(10, 90)
	if s := NewSurface(p, cone); s.Chart() != cone {
		t.Errorf("charted on %+v, wanted %+v", s.Chart(), cone)
	}
}
