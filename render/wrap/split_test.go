package wrap

import (
	"math"
	"strings"
	"testing"

	"roundlay/render/drawing"
)

// barJob returns a job with one upright bar in each repeat, across from its middle
// by a share of the repeat.
func barJob(stations string, repeats int, across, height string) string {
	text := strings.Replace(leafJob(stations, repeats), `kind = "leaf"`, "kind = \"fan\"\nrays = 1\nhub = 0\nat = ["+across+", 0.5]", 1)
	text = strings.Replace(text, "fronds = 6\n", "", 1)
	return strings.Replace(text, "height = 0.9", "height = "+height, 1)
}

// A piece shows 6 mm of its neighbour beyond a match line. On a straight glass the
// flat map is as high as the glass, so that a bar that is cut apart by n lines
// between rows comes out 12 n mm longer on all of them together.
func TestPiecesShowTheirNeighbours(t *testing.T) {
	s := sheetOf(t, barJob(`{height=0, across=90, wall=8}, {height=330, across=90, wall=5}`, 5, "0", `"280 mm"`), on(t, Outside, "a4"))
	f := on(t, Outside, "a4").Portrait()
	pieces, _, ok := s.split(s.papers()[0], f)
	if !ok || pieces[0].rows < 2 {
		t.Fatalf("%+v, %v", pieces, ok)
	}
	total := 0.0
	for _, p := range pieces {
		if p.from != pieces[0].from {
			continue // another column
		}
		low, high := math.Inf(1), math.Inf(-1)
		drawn := s.draw(p)
		for _, m := range drawn.On(drawing.Cuts) {
			for _, q := range m.(drawing.Stroke).Points {
				low, high = min(low, q.Y), max(high, q.Y)
			}
		}
		total += high - low
	}
	if want := 280 + 12*float64(pieces[0].rows-1); math.Abs(total-want) > 0.02 {
		t.Errorf("in %d rows the bar is %.3f mm long altogether, by hand %g", pieces[0].rows, total, want)
	}
}

// No edge of a gore runs through the middle of a repeat, where a tick is stood on
// its mark: it stays 4 mm off, though the bars leave it all the room there is.
func TestGoresKeepOffTheMiddle(t *testing.T) {
	for name, stations := range map[string]string{"barrel": barrelGlass, "waist": waistGlass} {
		for repeats := 2; repeats <= 6; repeats++ {
			s := sheetOf(t, barJob(stations, repeats, "0.2", "0.2"), on(t, Outside, "a4"))
			foot := s.plan.Blank.Profile().Radius(0)
			gores := s.parts / repeats
			if gores < 2 {
				t.Errorf("%s: %d gores to a repeat", name, gores)
			}
			for k := range gores {
				off := foot * math.Abs(math.Remainder(s.seam+float64(k)*s.part(), s.plan.PitchAngle()))
				if off < 4 && s.part()*foot > 8.1 {
					t.Errorf("%s, %d repeats, %d gores: the edge %d is %.2f mm off the middle of a repeat", name, repeats, gores, k, off)
				}
			}
		}
	}
}
