package picture

import (
	"testing"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/jobtest"
	"roundlay/render/printtest"
)

// marks returns the plan of so many rows of round marks on one repeat, 24 in each.
func marks(t *testing.T, rows float64) *pattern.Plan {
	t.Helper()
	m := jobtest.Motif(t, "olives", motifs.Values{"olives": 24, "rows": rows, "long": 0.6}, jobtest.Depth(0.1), jobtest.Wheel(jobtest.Olive), jobtest.Land(0))
	plans, err := printtest.Fresh(jobtest.On(jobtest.Straight(t), 1, m))
	if err != nil {
		t.Fatal(err)
	}
	return plans[0]
}

// A picture of few grooves is of the finest detail, one of many, or of few that are drawn very
// often, has fewer facets; and what is counted beforehand is no less than there are.
func TestDetail(t *testing.T) {
	few, many := marks(t, 2), marks(t, 16)
	fine := details()[0]
	if d := detailOf(few, 1); d.stray != fine.stray {
		t.Errorf("48 marks are drawn with %g mm of stray", d.stray)
	}
	if d := detailOf(few, 1e6); d.stray == fine.stray {
		t.Error("48 marks drawn a million times are as fine as drawn once")
	}
	for _, p := range []*pattern.Plan{few, many} {
		for _, d := range details() {
			there := 0
			for i, c := range p.Cuts {
				there += len(facets(i, *c.Groove, p.Job.Rack[c.Wheel], &p.Surface, d))
			}
			if counted := countFacets(p, d); counted < there && counted <= maxFacets {
				t.Errorf("stray %g: %d facets counted, %d there", d.stray, counted, there)
			}
		}
	}
	// As many marks in one repeat as a glass may have.
	crowd := *many
	for len(crowd.Cuts) < 4992 {
		crowd.Cuts = append(crowd.Cuts, many.Cuts...)
	}
	if n := countFacets(&crowd, details()[0]); n <= maxFacets {
		t.Fatalf("%d facets", n)
	}
	if d := detailOf(&crowd, 1); d.stray == fine.stray || countFacets(&crowd, d) > 1.5*maxFacets {
		t.Errorf("%d cuts have %d facets with %g mm of stray", len(crowd.Cuts), countFacets(&crowd, d), d.stray)
	}
}
