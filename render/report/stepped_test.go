package report

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"roundlay/geometry"
)

// A circle of 80.06 mm in two parts has a chord of 80.06 mm, and the nearest a
// caliper shows is 80.1: dividers stand no wider apart on it than it is across,
// before a gap was found as after. A round that closes says nothing of NaN.
func TestSteppedNoWiderThanTheCircle(t *testing.T) {
	c := []Circle{{Radius: 40.03, Parts: 2}}
	stepped := Stepped{Gaps: []float64{0, 0, 0}}
	var b bytes.Buffer
	if err := DivideJSON(&b, geometry.Millimetre, c, stepped, nil); err != nil {
		t.Fatal(err)
	}
	var out struct {
		Rounds []struct{ Used, Chord *float64 }
	}
	if err := json.Unmarshal(b.Bytes(), &out); err != nil {
		t.Fatal(err)
	}
	if len(out.Rounds) != 3 {
		t.Fatalf("rounds: %s", b.String())
	}
	for i, r := range out.Rounds {
		if r.Used == nil || r.Chord == nil || !near(*r.Used, 80.06) || !near(*r.Chord, 80.06) {
			t.Errorf("round %d of %s", i+1, b.String())
		}
	}
	b.Reset()
	if err := Divide(&b, geometry.Millimetre, c, stepped, nil); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(b.String(), "the dividers are right"); n != 3 || strings.Contains(b.String(), "NaN") {
		t.Errorf("%d rounds of three are right:\n%s", n, b.String())
	}
}

// Set to 79.5 mm the same circle leaves 80.06 (π - 2 asin(79.5/80.06)) mm, and is
// mended by its whole width; the caliper's next mark, 80.1, would not fit in it.
func TestSteppedAgainNoWiderThanTheCircle(t *testing.T) {
	gap := 80.06 * (math.Pi - 2*math.Asin(79.5/80.06))
	var b bytes.Buffer
	if err := DivideJSON(&b, geometry.Millimetre, []Circle{{Radius: 40.03, Parts: 2}}, Stepped{Used: 79.5, Gaps: []float64{gap, 0}}, nil); err != nil {
		t.Fatal(err)
	}
	var out struct {
		Rounds []struct{ Used, Chord *float64 }
	}
	if err := json.Unmarshal(b.Bytes(), &out); err != nil || len(out.Rounds) != 2 {
		t.Fatalf("%v: %s", err, b.String())
	}
	for i, used := range []float64{79.5, 80.06} {
		if r := out.Rounds[i]; r.Used == nil || r.Chord == nil || !near(*r.Used, used) || !near(*r.Chord, 80.06) {
			t.Errorf("round %d of %s", i+1, b.String())
		}
	}
}

func near(a, b float64) bool { return a-b < 1e-3 && b-a < 1e-3 }

// Two steps as long as the circle is across end where they began: whatever the
// circle, they never pass it. Set a 64th of an inch short, on a circle a 64th
// wider, they stop 80.4 (π - 2 asin(79.6/80.4)) = 22.6 mm short.
func TestMisreadInTwoParts(t *testing.T) {
	c := Circle{Radius: 40, Parts: 2}
	for gap, misread := range map[float64]bool{-1: true, -0.1: true, 0: false, 22.4: false, 22.8: true} {
		if _, is := (Stepped{Used: 80, Gaps: []float64{gap}}).misread(geometry.Millimetre, c); is != misread {
			t.Errorf("a gap of %g mm: misread %v", gap, is)
		}
	}
}
