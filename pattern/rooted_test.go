package pattern

import (
	"fmt"
	"slices"
	"testing"

	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// Two blades whose ends stop short of their stem's line, by up to most of its groove's half
// width, join it and one another; beyond the groove they don't. The stem is 1.2 mm deep with
// a mitre of 90°, so its groove is 1.2 mm wide to either side of its line, by hand. The box
// is 50 mm high, so a millimetre is two of its units.
func TestEndsInAGrooveJoin(t *testing.T) {
	t.Parallel()
	deep := 1.2
	for _, c := range []struct {
		gap   float64
		joins bool
	}{{0, true}, {0.015, true}, {0.15, true}, {0.39, true}, {1.1, true}, {1.4, false}, {3, false}} {
		svg := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 100" stroke="black">
<path id="stem" d="M30 100V0"/><path id="left" d="M%g 60L5 30"/><path id="right" d="M%g 60L55 30"/></svg>`, 30-2*c.gap, 30+2*c.gap)
		m := drawn(t, svg, func(m *job.Motif) { m.Parts = []job.Part{{Name: "stem", Depth: &deep}} })
		p, err := New(t.Context(), jobtest.On(jobtest.Straight(t), 6, m), jobtest.Straight(t))
		if err != nil {
			t.Fatal(err)
		}
		for i, others := range [][]int{{2, 3}, {1, 3}, {1, 2}} {
			got := slices.Sorted(slices.Values(p.Cuts[i].Joins))
			if c.joins != slices.Equal(got, others) || !c.joins && len(got) > 0 {
				t.Errorf("%g mm short: cut %d joins %v", c.gap, i+1, got)
			}
		}
	}
}

// Lines that run side by side, nearer than their grooves are wide, don't join, wherever the
// shorter one begins, and nor does one that stands beside another's end.
func TestSideBySideDoesNotJoin(t *testing.T) {
	t.Parallel()
	for _, other := range []string{"M30.6 100V20", "M30.6 80V40", "M30.6 60V20", "M30.6 20V100"} {
		svg := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 100" stroke="black"><path d="M30 100V20"/><path d="%s"/></svg>`, other)
		p, err := New(t.Context(), jobtest.On(jobtest.Straight(t), 6, drawn(t, svg)), jobtest.Straight(t))
		if err != nil {
			t.Fatal(err)
		}
		if got := p.Cuts[0].Joins; len(got) > 0 {
			t.Errorf("%s joins: %v", other, got)
		}
	}
}
