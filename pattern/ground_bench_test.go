package pattern

import (
	"testing"

	"roundlay/pattern/job"
)

// BenchmarkGround computes the glass that the demo's cuts take, and 5,000: ten repeats, and
// all different, on a straight glass and a barrel.
func BenchmarkGround(b *testing.B) {
	demo, err := job.Read(job.Demo())
	if err != nil {
		b.Fatal(err)
	}
	for name, p := range map[string]*Plan{
		"cuts=5000":              laid(b, field(b, 80, 10, 5, 10)),
		"differing=5000":         laid(b, field(b, 80, 1, 50, 10)),
		"differing=5000, barrel": laid(b, barrelled(b, field(b, 80, 1, 50, 10))),
		"demo":                   laid(b, demo),
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
