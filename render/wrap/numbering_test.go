package wrap

import (
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// numbersOn returns the numbers of cuts on a drawing, by the size they are set in.
func numbersOn(d drawing.Drawing) []drawing.Text {
	var found []drawing.Text
	for _, m := range d.On(drawing.Notes) {
		if t, ok := m.(drawing.Text); ok && t.Size <= 6 && t.Align == drawing.Centre {
			if _, err := strconv.Atoi(t.Words); err == nil {
				found = append(found, t)
			}
		}
	}
	return found
}

// Every cut of the whole glass bears its number, and of all the lines on the
// paper, looked through one by one, its own is the nearest.
func TestCutsAreNumbered(t *testing.T) {
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	plans := map[string]*pattern.Plan{"demo": demoPlan(t), "leaf": planOf(t, leafJob(taperedGlass, 6))}
	for _, name := range []string{"fern-and-beam", "trellis-beaker", "quilted-highball"} {
		text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "gallery", name+".toml"))
		if err != nil {
			t.Fatal(err)
		}
		plans[name] = planOf(t, string(text))
	}
	for name, p := range plans {
		for _, side := range []Side{Outside, Patches} {
			o := on(t, side, huge)
			s, err := newFacePaper(p, o, letters)
			if err != nil {
				t.Fatal(err)
			}
			seen := map[int]bool{}
			for _, paper := range s.papers() {
				st := s.frame(paper)
				lines := map[int][][]geometry.Point{}
				for _, c := range p.All() {
					for turn := -2; turn <= 2; turn++ { // the paper may begin anywhere on the glass
						var line []geometry.Point
						for _, q := range c.Samples {
							line = append(line, st.at(q.Theta+2*math.Pi*float64(turn), q.Height))
						}
						lines[c.ID] = append(lines[c.ID], line)
					}
				}
				for _, number := range numbersOn(s.draw(paper)) {
					id, _ := strconv.Atoi(number.Words)
					seen[id] = true
					middle := inked(letters, number)
					nearest, own := 0, math.Inf(1)
					least := math.Inf(1)
					for other, copies := range lines {
						for _, line := range copies {
							off := distanceToLine(middle, line)
							if off < least {
								nearest, least = other, off
							}
							if other == id {
								own = min(own, off)
							}
						}
					}
					if nearest != id && own-least > 0.1 {
						t.Errorf("%s, %v: number %d stands %.2f mm from its cut, and %.2f mm from cut %d", name, side, id, own, least, nearest)
					}
					if least < 0.15 {
						t.Errorf("%s, %v: number %d stands on a line", name, side, id)
					}
				}
			}
			for id := range len(p.All()) {
				if !seen[id+1] {
					t.Errorf("%s, %v: cut %d has no number", name, side, id+1)
				}
			}
		}
	}
}

// distanceToLine returns how far an outline's corners and sides are from a line's
// points, tried in small steps.
func distanceToLine(o geometry.Outline, line []geometry.Point) float64 {
	least := math.Inf(1)
	for i := 1; i < len(line); i++ {
		if (geometry.BoxOf(line[i-1], line[i])).Distance2(o.Box()) > 100 {
			continue
		}
		const steps = 10
		for k := range steps + 1 {
			q := r2.Add(line[i-1], r2.Scale(float64(k)/steps, r2.Sub(line[i], line[i-1])))
			least = min(least, o.DistanceTo(q, 1e3))
		}
	}
	return least
}
