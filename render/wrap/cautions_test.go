package wrap

import (
	"strings"
	"testing"

	"roundlay/motifs"
	"roundlay/render/printtest"
)

// Every sort of page that this package prints carries the cautions: the paper of each
// side and its picture, the test page and the charts, on a wide sheet and on a narrow one.
func TestCautionsOnEveryPage(t *testing.T) {
	t.Parallel()
	demo := demoPlan(t)
	made := map[string]*Wrap{}
	for side := range WallSides() {
		made[Side(side).String()] = wrapOf(t, demo, on(t, Side(side), "a4"))
	}
	under := printtest.Plan(t, baseJob)
	made["base"], made["base on several pages"] = wrapOf(t, under, on(t, Base, "a4")), wrapOf(t, under, on(t, Base, "150x150mm"))
	made["narrow"] = wrapOf(t, demo, on(t, Patches, "150x150mm"))
	var err error
	if made["test page"], err = NewTestPage(t.Context(), demo, on(t, Outside, "a4")); err != nil {
		t.Fatal(err)
	}
	if made["motif's chart"], err = NewMotifChart(t.Context(), motifs.Flute(), on(t, Outside, "a4")); err != nil {
		t.Fatal(err)
	}
	for name, w := range made {
		for i, page := range append(w.Pages, w.Whole) {
			said := strings.Join(wordsOf(page.Drawing), " ")
			for _, want := range []string{"Keep wheel and glass wet", "eye protection", "annealed"} {
				if !strings.Contains(said, want) {
					t.Errorf("%s, page %d does not say %q", name, i+1, want)
				}
			}
		}
	}
}
