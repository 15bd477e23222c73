package pattern

import "testing"

// BenchmarkGround computes the glass that 5,000 cuts take: all alike but for their place,
// and all different; joined and so overlapping in either.
func BenchmarkGround(b *testing.B) {
	for name, p := range map[string]*Plan{
		"cuts=5000":              laid(b, field(b, 80, 10, 5, 10)),
		"differing=5000":         laid(b, field(b, 80, 1, 50, 10)),
		"differing=5000, barrel": laid(b, barrelled(b, field(b, 80, 1, 50, 10))),
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if v := p.grinds(); !(v > 0) {
					b.Fatal(v)
				}
			}
		})
	}
}
