package pattern

import (
	"errors"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

func own[T any](x T) *T { return &x }

// stemmed is a leaf whose stem is cut deep with one wheel, and its fronds light with
// another.
func stemmed(t testing.TB) job.Motif {
	m := jobtest.Motif(t, "leaf", nil, jobtest.Size(0.6, 0.8), jobtest.Wheel(jobtest.Mitre), depth(0.5))
	m.Parts = []job.Part{
		{Name: "stem", Depth: own(1.2)},
		{Name: "frond", Depth: own(0.2), Wheel: own(jobtest.Fine), Land: own(0.3), Clear: own(0.1)},
	}
	return m
}

// Each part is cut with its own wheel and to its own depth, as if it were in a motif of
// that wheel and depth.
func TestPartsAreCutByThemselves(t *testing.T) {
	for name, radii := range map[string][]float64{"straight": {40, 40}, "tapered": {35, 43}, "barrel": {35, 41, 36}} {
		m := stemmed(t)
		p := planned(t, jobOn(blankOf(t, radii...), 5, m))
		for _, part := range m.Kind.Parts {
			plain := m
			plain.Parts, plain.Wheel, plain.Depth = nil, m.WheelOf(part), m.DepthOf(part)
			like := planned(t, jobOn(blankOf(t, radii...), 5, plain))
			met := 0
			for i, c := range p.Cuts {
				if c.Part != part {
					continue
				}
				met++
				if d := like.Cuts[i]; c.Wheel != d.Wheel || c.Asked != d.Asked || !reflect.DeepEqual(c.Groove, d.Groove) {
					t.Errorf("%s: cut %d (%s) isn't the one that wheel cuts", name, c.ID, part)
				}
			}
			if met == 0 {
				t.Errorf("%s: no %s", name, part)
			}
		}
		if order := p.Order(); len(order) != 2 || order[0].Wheel != jobtest.Mitre || len(order[0].Cuts) != 1 {
			t.Errorf("%s: the order is %+v", name, order)
		}
	}
}

// The limits between two cuts are the stricter of their parts' own.
func TestPartsLimits(t *testing.T) {
	j := jobOn(straight(t), 5, stemmed(t), motif(t, "fan", nil))
	p := planned(t, j)
	stem, frond, ray := partSide{0, "stem"}, partSide{0, "frond"}, partSide{1, "ray"}
	for _, c := range []struct {
		a, b        partSide
		land, clear float64
	}{{stem, stem, 0.8, 0.5}, {frond, frond, 0.3, 0.1}, {stem, frond, 0.8, 0.5}, {frond, ray, 0.8, 0.5}, {ray, ray, 0.8, 0.5}} {
		if land, share := p.landOf(c.a, c.b), p.clearOf(c.a, c.b); land != c.land || share != c.clear {
			t.Errorf("%v and %v: land %g, clear %g", c.a, c.b, land, share)
		}
	}
}

// An editor and an evaluator tell apart jobs that differ only in what a part has.
func TestPartsAreToldApart(t *testing.T) {
	e := new(Editor)
	base := jobOn(straight(t), 5, stemmed(t))
	changes := []func(*job.Part){
		func(*job.Part) {},
		func(p *job.Part) { p.Depth = own(0.3) },
		func(p *job.Part) { p.Wheel = own(jobtest.Olive) },
		func(p *job.Part) { p.Land = own(2.5) },
		func(p *job.Part) { p.Clear = own(0.99) },
		func(p *job.Part) { p.Wheel = nil },
	}
	v := NewEvaluator()
	for i, change := range changes {
		j := base.Clone()
		change(&j.Motifs[0].Parts[1])
		plans, err := e.Lay(t.Context(), j)
		if err != nil {
			t.Fatal(err)
		}
		want := planned(t, j)
		if !reflect.DeepEqual(want.Cuts, plans[0].Cuts) || !reflect.DeepEqual(want.Findings, plans[0].Findings) {
			t.Errorf("change %d: the editor's plan isn't the one from scratch", i)
		}
		d, err := v.TryOn(t.Context(), j, j.Blanks[0], job.Side)
		if err != nil {
			t.Fatal(err)
		}
		if d.Clears() != (len(want.Findings) == 0) {
			t.Errorf("change %d: the evaluator says %t", i, d.Clears())
		}
	}
}

// A part deeper than its own wheel's middle is refused at its own key.
func TestPartTooDeep(t *testing.T) {
	j := jobOn(straight(t), 5, stemmed(t))
	j.Motifs[0].Parts[1].Depth = own(40.0)
	_, err := New(t.Context(), j, j.Blanks[0])
	var e *job.Error
	if !errors.As(err, &e) || e.Key != "motif[1].parts.frond.depth" {
		t.Errorf("%v", err)
	}
	// The band ends where the wall is too thin for the deepest part.
	deep := jobOn(named(t, "thin", 100, 40, 7, 2), 5, stemmed(t))
	deep.Layout.Band, deep.Motifs[0].Height = nil, jobtest.Of(1)
	light := deep.Clone()
	light.Motifs[0].Parts[0].Depth = own(0.3)
	if a, b := planned(t, deep).Band.Top, planned(t, light).Band.Top; a >= b {
		t.Errorf("the band goes up to %g with a deep stem, and to %g", a, b)
	}
}

// Lines that another part's tool goes on with are not one line.
func TestPartsDontRunOn(t *testing.T) {
	m := motif(t, "basket", nil, jobtest.Size(1, 0.5))
	m.Parts = []job.Part{{Name: "level", Depth: own(0.3)}}
	p := planned(t, jobOn(straight(t), 5, m))
	for _, chain := range p.Chains() {
		for _, id := range chain.Cuts {
			a, b := p.Cuts[p.inPeriod(chain.Cuts[0])], p.Cuts[p.inPeriod(id)]
			if a.Asked != b.Asked || a.Wheel != b.Wheel {
				t.Errorf("cuts %d and %d are one line", chain.Cuts[0], id)
			}
		}
	}
}

// TestWholeGlassByPart is TestWholeGlass for motifs whose parts have wheels, depths and
// limits of their own.
func TestWholeGlassByPart(t *testing.T) {
	t.Parallel()
	const jobs = 100
	random := rand.New(rand.NewPCG(141, 42))
	all := []*job.Job{helices(t)}
	for len(all) < jobs {
		j := scattered(t, random)
		for i := range j.Motifs {
			j.Motifs[i].Parts = randomParts(random, j.Motifs[i])
		}
		all = append(all, j)
	}
	wholeGlass(t, all, 30)
}

func randomParts(random *rand.Rand, m job.Motif) []job.Part {
	var all []job.Part
	for _, name := range m.Kind.Parts {
		p := job.Part{Name: name}
		if random.IntN(2) == 0 {
			p.Depth = own(0.1 + 1.2*random.Float64())
		}
		if random.IntN(2) == 0 {
			p.Wheel = own([]int{jobtest.Mitre, jobtest.Fine, jobtest.Olive}[random.IntN(3)])
		}
		if random.IntN(3) == 0 {
			p.Land = own(2 * random.Float64())
		}
		if random.IntN(3) == 0 {
			p.Clear = own(random.Float64())
		}
		all = append(all, p)
	}
	random.Shuffle(len(all), func(i, k int) { all[i], all[k] = all[k], all[i] })
	return slices.DeleteFunc(all, func(p job.Part) bool { return strings.HasPrefix(p.Name, "ray") && random.IntN(2) == 0 })
}
