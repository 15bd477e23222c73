package pattern

import (
	"math"
	"math/rand/v2"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// TestVolumeOfCrossingGrooves compares the glass ground away, where grooves cross, with a
// count of places in the wheels' bodies that shares no formula with the code.
func TestVolumeOfCrossingGrooves(t *testing.T) {
	taper, barrel := blankOf(t, 34, 44), blankOf(t, 34, 40, 36)
	deepField := motif(t, "diamond", motifs.Values{"across": 1, "up": 4}, depth(2.8))
	star := func(wheel int, deep float64) job.Motif {
		return motif(t, "star", motifs.Values{"points": 10, "hub": 0}, with(wheel), depth(deep), size(0.9, 0.7), trueShape)
	}
	dressed := jobOn(taper, 9, motif(t, "diamond", motifs.Values{"across": 1, "up": 2}, depth(1.2)))
	dressed.Rack[mitre].Tip = 0.8
	for name, c := range map[string]struct {
		job   *job.Job
		twice float64 // the least share that is counted twice by adding the cuts up
	}{
		"deep pointed field":       {jobOn(straight(t), 18, deepField), 1.2},
		"deep field on a taper":    {jobOn(taper, 18, deepField), 1.2},
		"deep field on a barrel":   {jobOn(barrel, 18, deepField), 1.2},
		"dressed field on a taper": {dressed, 1.04},
		"star":                     {jobOn(straight(t), 5, star(mitre, 1.6)), 1.01},
		"star on a taper":          {jobOn(taper, 5, star(mitre, 1.6)), 1.01},
		"star of round grooves":    {jobOn(straight(t), 5, star(olive, 0.8)), 1.2},
		"lattice of flat grooves":  {jobOn(straight(t), 6, motif(t, "lattice", motifs.Values{"across": 1, "up": 3, "lines": 1}, with(panel), depth(0.6))), 1.02},
		"lattice of gangs":         {jobOn(barrel, 6, motif(t, "lattice", motifs.Values{"across": 1, "up": 3, "lines": 1}, with(lines), depth(0.5))), 1.01},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := laid(t, c.job)
			added := 0.0
			for i := range p.Cuts {
				added += p.Cuts[i].Volume * float64(p.Periods())
			}
			got, want := p.Volume(), countedGround(p, rand.New(rand.NewPCG(14, 3)))
			t.Logf("%.1f mm³, counted %.1f (%+.2f %%); added up %.1f", got, want, 100*(got/want-1), added)
			if math.Abs(got/want-1) > 0.01 {
				t.Errorf("%.1f mm³ is ground away, counted %.1f", got, want)
			}
			if added < c.twice*want {
				t.Errorf("added up %.1f mm³: little crosses", added)
			}
		})
	}
}

// TestVolumeOfAPeriod checks what a map of one period could get wrong: grooves that meet
// none are added up, and it makes no difference whether a pattern recurs after one repeat
// or, drawn as two motifs, after two.
func TestVolumeOfAPeriod(t *testing.T) {
	p := laid(t, jobOn(straight(t), 6, bar(t, -8, 30, 40), bar(t, 8, 30, 40, with(olive))))
	added := 0.0
	for i := range p.Cuts {
		added += p.Cuts[i].Volume * float64(p.Periods())
	}
	if got := p.Volume(); got != added || got == 0 {
		t.Errorf("%g mm³, added up %g", got, added)
	}
	wide := func(on job.On) job.Motif {
		return motif(t, "star", motifs.Values{"points": 6, "hub": 0}, depth(1.2), size(1.3, 0.8), func(m *job.Motif) { m.On = on })
	}
	once, twice := laid(t, jobOn(straight(t), 8, wide(job.Each))), laid(t, jobOn(straight(t), 8, wide(job.Odd), wide(job.Even)))
	if a, b := once.Volume(), twice.Volume(); once.Period != 1 || twice.Period != 2 || math.Abs(a/b-1) > 1e-3 {
		t.Errorf("%g mm³ after %d repeat, %g after %d", a, once.Period, b, twice.Period)
	}
}
