package glass

import "testing"

// BenchmarkDistance asks for the glass left half a millimetre in, all the way up.
func BenchmarkDistance(b *testing.B) {
	for _, c := range []struct {
		name     string
		floor    float64
		stations []Station
	}{
		{"straight", 12, []Station{at(0, 33, 8), at(110, 40, 1.6)}},
		{"four stations", 12, []Station{at(0, 33, 8), at(20, 34, 5), at(60, 36.5, 3), at(110, 40, 1.6)}},
		{"barrel", 12, []Station{at(0, 33, 8), at(30, 38, 5), at(55, 40, 3), at(80, 38, 2.4), at(110, 33, 1.6)}},
	} {
		blank, err := NewBlank(c.name, c.floor, c.stations)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(c.name, func(b *testing.B) {
			inner, least := blank.ThinInner(), 99.0
			var places []spot
			for z := 0.0; z < 110; z += 0.3 {
				places = append(places, spot{blank.Profile().Radius(z) - 0.5, z})
			}
			b.ReportAllocs()
			for b.Loop() {
				for _, p := range places {
					if d := inner.Distance(p.radius, p.height); d < least {
						least = d
					}
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(places)), "ns/place")
			b.ReportMetric(float64(len(inner.pieces)), "pieces")
		})
		b.Run(c.name+" made", func(b *testing.B) {
			for b.Loop() {
				blank.innerTimes(1)
			}
		})
	}
}
