package report

import (
	"testing"

	"roundlay/pattern"
)

func TestRuns(t *testing.T) {
	for want, ids := range map[string][]int{
		"":                       {},
		"4":                      {4},
		"4, 5":                   {4, 5},
		"4 to 6":                 {4, 5, 6},
		"9, 4 to 7, 1, 2, 12, 8": {9, 4, 5, 6, 7, 1, 2, 12, 8},
		"3, 2, 1":                {3, 2, 1},
		"1 to 3, 7 to 9":         {1, 2, 3, 7, 8, 9},
	} {
		chains := make([]pattern.Chain, len(ids))
		for i, id := range ids {
			chains[i].Cuts = []int{id}
		}
		if got := runs(chains); got != want {
			t.Errorf("%v: %q, wanted %q", ids, got, want)
		}
	}
}

// Lines that go on are listed as such, and break what follows on.
func TestRunsOfLines(t *testing.T) {
	alone := func(id int) pattern.Chain { return pattern.Chain{Cuts: []int{id}} }
	got := runs([]pattern.Chain{alone(1), alone(2), alone(3), {Cuts: []int{4, 20}}, alone(5), {Cuts: []int{6, 22, 38}, Closed: true}})
	if want := "1 to 3, 4→20, 5, 6→22→38→6"; got != want {
		t.Errorf("%q, wanted %q", got, want)
	}
}

func TestLine(t *testing.T) {
	for _, c := range []struct {
		ids    []int
		closed bool
		want   string
	}{
		{[]int{6, 22, 38}, false, "6→22→38"},
		{[]int{1, 2, 3, 4, 5}, false, "1→2→3→4→5"},
		{[]int{1, 2, 3, 4, 5, 6}, false, "1→2→3→…→6"},
		{[]int{1}, true, "1→1"},
		{[]int{6, 22, 38, 54}, true, "6→22→38→54→6"},
		{[]int{6, 22, 38, 54, 70, 86}, true, "6→22→38→…→6"},
	} {
		if got := Line(c.ids, c.closed); got != c.want {
			t.Errorf("%q, wanted %q", got, c.want)
		}
	}
}

func TestMinutes(t *testing.T) {
	for minutes, want := range map[float64]string{
		0.2: "less than a minute", 1: "1 minute", 1.6: "2 minutes", 59.4: "59 minutes", 59.6: "1 h 0 min", 125: "2 h 5 min",
	} {
		if got := Minutes(minutes); got != want {
			t.Errorf("%g: %q, wanted %q", minutes, got, want)
		}
	}
}
