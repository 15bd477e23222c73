package wrap

import (
	"slices"
	"strings"
	"testing"

	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// Of patches, those without cuts are left out; a wrap has the marks of all repeats.
func TestFreeRepeats(t *testing.T) {
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	for name, glass := range map[string]string{"straight": straightGlass, "barrel": barrelGlass} {
		text := strings.Replace(leafJob(glass, 6), "repeats = 6", "repeats = 6\nbare = [2, 5]", 1)
		p := planOf(t, text)
		if free := p.Free(); !slices.Equal(free, []int{2, 5}) {
			t.Fatalf("%s: repeats %v are free", name, free)
		}
		s, err := newFacePaper(p, on(t, Patches, "a4"), letters)
		if err != nil {
			t.Fatal(err)
		}
		each := s.sheets / p.Repeats // one, or the gores of a repeat that don't join
		if printed, out := len(s.papers()), len(s.leftOut()); printed+out != s.sheets || out < 2*each {
			t.Errorf("%s: %d of %d papers, without %v", name, printed, s.sheets, s.leftOut())
		}
		for _, c := range s.papers() {
			if cuts := s.draw(c).On(drawing.Cuts); len(cuts) == 0 {
				t.Errorf("%s: nothing is cut on paper %d", name, c.paper)
			}
		}
		for _, c := range s.allPapers() {
			if slices.Contains(s.leftOut(), c.paper) && len(s.draw(c).On(drawing.Cuts)) > 0 {
				t.Errorf("%s: paper %d is left out, and has cuts", name, c.paper)
			}
		}
		whole, err := newFacePaper(p, on(t, Outside, "a4"), letters)
		if err != nil {
			t.Fatal(err)
		}
		if len(whole.leftOut()) > 0 {
			t.Errorf("%s: the wrap is without %v", name, whole.leftOut())
		}
		every, err := newFacePaper(planOf(t, leafJob(glass, 6)), on(t, Outside, "a4"), letters)
		if err != nil {
			t.Fatal(err)
		}
		marks := func(s *facePaper) int { return len(s.draw(s.papers()[0]).On(drawing.Marks)) }
		if marks(whole) != marks(every) {
			t.Errorf("%s: %d marks, and %d where no repeat is free", name, marks(whole), marks(every))
		}
	}
}
