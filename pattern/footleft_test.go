package pattern

import (
	"math"
	"slices"
	"testing"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// onStem returns a job with a base of 70 mm across under a stemmed glass. Its foot is a plate
// of 2 mm at the edge that rises straight to 10 mm at the stem, 10 mm from the middle.
func onStem(t *testing.T, band *job.Band, on ...job.Motif) *job.Job {
	t.Helper()
	j := withBase(t, 4, band, on...)
	b, err := glass.NewBlank("stemmed", 80, []glass.Station{
		{Height: 0, Radius: 35, Wall: 30}, {Height: 2, Radius: 35, Wall: 30}, {Height: 10, Radius: 10, Wall: 9},
		{Height: 70, Radius: 10, Wall: 9}, {Height: 90, Radius: 40, Wall: 5}, {Height: 150, Radius: 40, Wall: 3},
	})
	if err != nil {
		t.Fatal(err)
	}
	b.BaseAcross = 70
	j.Blanks[0] = b
	j.Layout.Band = &job.Band{Foot: 100, Top: 140}
	return j
}

// Under a foot's rim the glass ends at the top of the foot, far below the inside floor. What
// is left is looked for by trying all of the outside, as its profile has it.
func TestBaseLeftUnderFoot(t *testing.T) {
	for _, deep := range []float64{1, 2} {
		j := onStem(t, &job.Band{Foot: 15, Top: 32}, ray(t, 15, 18, 30, depth(deep), with(fine)))
		p := planned(t, j).Base
		profile, nearest := j.Blanks[0].Profile(), math.Inf(1)
		// Full depth ends where the tail begins; the wheel's tail is on its circle.
		wheel := j.Rack[fine].Radius
		for out := 18.0; out <= 30; out += 0.02 {
			tail := math.Sqrt(2*wheel*deep - deep*deep)
			up := deep
			if over := max(out-(30-tail), 18+tail-out); over > 0 {
				up = deep - wheel + math.Sqrt(wheel*wheel-over*over)
			}
			for z := 0.0; z < 15; z += 0.02 {
				nearest = min(nearest, math.Hypot(profile.Radius(z)-out, z-up))
			}
		}
		if got := p.Cuts[0].Left; math.Abs(got-nearest) > 0.03 {
			t.Errorf("%g deep: %.3f left, by search %.3f", deep, got, nearest)
		}
		if thin := slices.ContainsFunc(p.Findings, func(f Finding) bool { return f.Kind == Thin }); thin != (nearest < j.Limits.Leave) {
			t.Errorf("%g deep: %v, %.3f by search", deep, p.Findings, nearest)
		}
	}
}

// A cut deeper than the foot is thick breaks through it, and a punty mark's hollow is gone too.
func TestBaseThroughFoot(t *testing.T) {
	j := onStem(t, &job.Band{Foot: 15, Top: 32}, ray(t, 15, 18, 31, depth(6), with(fine)))
	j.Rack[fine].Radius = 6.1
	if left := planned(t, j).Base.Cuts[0].Left; left > 0 {
		t.Errorf("%.3f left", left)
	}
	bare := onStem(t, nil).Blanks[0]
	plain := bare.Underside().Distance(20, 1)
	bare.Hollow = glass.Hollow{Across: 50, Depth: 2}
	if got, want := bare.Underside().Distance(20, 1), bare.Underside().Distance(20, 3); got >= plain || want >= got {
		t.Errorf("%.3f left without a hollow, %.3f with one, %.3f 2 mm higher in it", plain, got, want)
	}
	if in := bare.Underside().Distance(20, 5); in >= 0 {
		t.Errorf("5 mm up and 2 mm of hollow: %.3f left", in)
	}
}
