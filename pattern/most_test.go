package pattern

import (
	"math/rand/v2"
	"slices"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// involves reports whether a whole check finds something that has to do with a motif.
func involves(t testing.TB, j *job.Job, i int) bool {
	t.Helper()
	p := checked(t, j)
	return slices.ContainsFunc(p.Findings, func(f Finding) bool {
		about, _ := p.about(f)
		return slices.Contains(about, i)
	})
}

// small draws a job whose counts are soon tried: fine mitres only, and no count
// above eight.
func small(t testing.TB, random *rand.Rand) *job.Job {
	t.Helper()
	j := scattered(t, random)
	if len(j.Motifs) > 1 && random.IntN(3) > 0 {
		j.Motifs = j.Motifs[:1]
	}
	// With the limits of a rough hand, something clears and something doesn't.
	j.Limits.Reach, j.Limits.Clear, j.Limits.Leave = 0, random.Float64()*0.3, 0.5
	j.Limits.Rim, j.Limits.Foot = 0, 0
	for i := range j.Motifs {
		m := &j.Motifs[i]
		m.Kind.Params = slices.Clone(m.Kind.Params)
		for k, p := range m.Kind.Params {
			if p.Sort == motifs.Count {
				m.Kind.Params[k].Most = min(p.Most, 8)
				m.Values[p.Name] = min(m.Values[p.Name], 8)
			}
		}
		m.Wheel, m.Depth = fine, 0.1+1.1*random.Float64()
		m.Values["arch"], m.Land, m.Clear, m.Turn = 0, nil, nil, 0
		m.Up, m.Width, m.Height = of(0.5), of(0.3+0.5*random.Float64()), of(0.4+0.4*random.Float64())
	}
	return j
}

// counts returns the counts of a motif's kind.
func counts(m job.Motif) []string {
	var names []string
	for _, p := range m.Kind.Params {
		if p.Sort == motifs.Count {
			names = append(names, p.Name)
		}
	}
	return names
}

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
				want.Motifs[i].Values[name] = param.Least
			}
		}
		for i, m := range want.Motifs {
			for _, name := range m.Most {
				param, _ := m.Kind.Param(name)
				best, missed := 0.0, false
				for c := param.Least; c <= param.Most; c++ {
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
					best = param.Least
					none++
				case param.Most:
					all++
				default:
					some++
				}
				want.Motifs[i].Values[name] = best
			}
		}
		got, err := Resolve(j)
		if err != nil {
			t.Fatal(err)
		}
		for i, m := range got.Motifs {
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
