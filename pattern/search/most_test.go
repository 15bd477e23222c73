package search

import (
	"math/rand/v2"
	"testing"
)

// TestMostExhaustive holds "most" to the whole check of every count there is,
// from the least to the greatest, on 200 random jobs, some of them with several
// such counts.
func TestMostExhaustive(t *testing.T) {
	t.Parallel()
	const jobs = 200
	random := rand.New(rand.NewPCG(5, 20))
	none, some, all, gaps := 0, 0, 0, 0
	for n := range jobs {
		j := small(t, random)
		for i := range j.Motifs {
			if i > 0 && random.IntN(2) > 0 {
				continue
			}
			names := counts(j.Motifs[i])
			j.Motifs[i].Most = names[:1+random.IntN(len(names))]
		}
		want := j.Clone()
		for i, m := range want.Motifs {
			for _, name := range m.Most {
				param, _ := m.Kind.Param(name)
				want.Motifs[i].Values[name] = param.Min
			}
		}
		for i, m := range want.Motifs {
			for _, name := range m.Most {
				param, _ := m.Kind.Param(name)
				best, missed := 0.0, false
				for c := param.Min; c <= param.Max; c++ {
					want.Motifs[i].Values[name] = c
					if !involves(t, want, i) {
						if missed && best > 0 {
							gaps++
						}
						best = c
					} else if best > 0 {
						missed = true
					}
				}
				switch best {
				case 0:
					best = param.Min
					none++
				case param.Max:
					all++
				default:
					some++
				}
				want.Motifs[i].Values[name] = best
			}
		}
		got, err := Resolve(t.Context(), j)
		if err != nil {
			t.Fatal(err)
		}
		for i, m := range got.Job.Motifs {
			for _, name := range m.Most {
				if m.Values[name] != want.Motifs[i].Values[name] {
					t.Errorf("job %d, motif %d (%s): %s = %g, of all counts the most that clears is %g",
						n, i+1, m.Kind.Name, name, m.Values[name], want.Motifs[i].Values[name])
				}
			}
		}
	}
	t.Logf("%d counts where none clears, %d where some do, %d where all do; %d gaps", none, some, all, gaps)
	if none < 10 || some < 60 {
		t.Errorf("%d counts where none clears, %d where some do: these jobs prove little", none, some)
	}
}
