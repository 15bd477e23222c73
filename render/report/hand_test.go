package report

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// What the hand does is said as a cutter thinks of it.
func TestHandWords(t *testing.T) {
	roll := func(left, right float64) [2]float64 {
		return [2]float64{geometry.Degrees(left).Radians(), geometry.Degrees(right).Radians()}
	}
	for _, c := range []struct {
		hand groove.Hand
		want string
	}{
		{groove.Hand{}, ""},
		{groove.Hand{Swell: []float64{0.6, 0.6}}, ""},
		{groove.Hand{Rock: roll(0, 12)}, "rock 12° to the right"},
		{groove.Hand{Rock: roll(7.5, 0)}, "rock 7.5° to the left"},
		{groove.Hand{Rock: roll(5, 5)}, "rock 5° to both sides"},
		{groove.Hand{Rock: roll(4, 8)}, "rock 4° to the left and 8° to the right"},
		{groove.Hand{Swell: []float64{0.4, 1, 0.7}}, "3/8 of its depth at the root, full in the middle, lifting to 2/3 of it at the tip"},
		{groove.Hand{Swell: []float64{0, 1, 0.75}}, "from nothing at the root, full in the middle, lifting to 3/4 of it at the tip"},
		{groove.Hand{Swell: []float64{1, 0.95, 0.8, 0.4}}, "full at the root, lifting to 3/8 of it at the tip"},
		{groove.Hand{Swell: []float64{0.5, 1, 0.8, 0}}, "1/2 of its depth at the root, full near the root, lifting out at the tip"},
		{groove.Hand{Swell: []float64{0.25, 0.6, 1, 0.75}}, "1/4 of its depth at the root, full towards the tip, lifting to 3/4 of it at the tip"},
		{groove.Hand{Swell: []float64{0.5, 1}}, "1/2 of its depth at the root, full at the tip"},
		{groove.Hand{Swell: []float64{1, 0.5, 1}}, "full at the root, easing to 1/2 of it in the middle, full at the tip"},
		{groove.Hand{Swell: []float64{0.2, 0.4, 0.1}}, "1/2 of its depth at the root, full in the middle, lifting to 1/4 of it at the tip"}, // of its greatest
		{groove.Hand{Swell: []float64{0.5, 1, 1, 0.5}, Rock: roll(0, 3)}, "1/2 of its depth at the root, full near the root, lifting to 1/2 of it at the tip; rock 3° to the right"},
	} {
		if got := Hand(geometry.Millimetre, pattern.Cut{Groove: new(groove.Groove), Hand: &c.hand}); got != c.want {
			t.Errorf("%v:\n%q, wanted\n%q", c.hand, got, c.want)
		}
	}
	touch := pattern.Cut{Groove: new(groove.Groove), Hand: &groove.Hand{Swell: []float64{0.5, 1}, Rock: roll(0, 3)}}
	touch.Touch = true
	if got := Hand(geometry.Millimetre, touch); got != "rock 3° to the right" {
		t.Errorf("a touch: %q", got)
	}
}

// A roll takes a broad edge deeper at one side than the wheel is set, and the list has the
// greater depth: whoever set the wheel to that would cut too deep.
func TestHandSaysHowDeepToSet(t *testing.T) {
	rolled := pattern.Cut{Groove: &groove.Groove{Depth: 0.8, Plunge: 0.5}, Hand: &groove.Hand{Rock: [2]float64{0, geometry.Degrees(10).Radians()}}}
	if got, want := Hand(geometry.Millimetre, rolled), "rock 10° to the right; set the wheel 0.50 mm deep: the roll makes it 0.80 mm at one side"; got != want {
		t.Errorf("%q, wanted %q", got, want)
	}
	rolled.Plunge = 0.8
	if got := Hand(geometry.Millimetre, rolled); got != "rock 10° to the right" {
		t.Errorf("a sharp edge: %q", got)
	}
}

// A wheel's depths are listed with the depth to set it to where one of its cuts is rolled.
func TestDeepOfSeveral(t *testing.T) {
	even := pattern.Cut{Groove: &groove.Groove{Depth: 0.8, Plunge: 0.8}, Hand: new(groove.Hand)}
	rolled := pattern.Cut{Groove: &groove.Groove{Depth: 0.8, Plunge: 0.5}, Hand: &groove.Hand{Rock: [2]float64{0.1, 0}}}
	for _, c := range []struct {
		cuts      []pattern.Cut
		deep, set string
	}{
		{[]pattern.Cut{even}, "0.80 mm", ""},
		{[]pattern.Cut{rolled}, "0.80 mm", "0.50 mm"},
		{[]pattern.Cut{even, rolled}, "0.80 mm", "0.50 to 0.80 mm"},
	} {
		if deep, set := Deep(geometry.Millimetre, c.cuts); deep != c.deep || set != c.set {
			t.Errorf("%q, %q; wanted %q, %q", deep, set, c.deep, c.set)
		}
	}
}

// handedPlan is a leaf rolled and swelled on its fronds.
func handedPlan(t *testing.T, hand bool) *pattern.Plan {
	leaf := jobtest.Motif(t, "leaf", motifs.Values{"fronds": 3, "arch": 0}, jobtest.Wheel(jobtest.Fine))
	j := jobtest.On(jobtest.Straight(t), 4, leaf)
	if hand {
		j = j.With(job.NewSwell(0, "frond", []float64{0.4, 1, 0.25}), job.NewRock(0, "frond", [2]geometry.Angle{geometry.Degrees(2), geometry.Degrees(12)}))
	}
	p, err := pattern.New(t.Context(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The plan says of every cut what the hand does, in words, JSON and the cut list: of the left
// fronds, rolled the other way. An even plan says nothing of it.
func TestPlanByHand(t *testing.T) {
	p, even := handedPlan(t, true), handedPlan(t, false)
	var words, data, list bytes.Buffer
	for _, err := range []error{Plan(&words, p), PlanJSON(&data, p), CutList(&list, []*pattern.Plan{p})} {
		if err != nil {
			t.Fatal(err)
		}
	}
	want := "By hand, each from its root to its tip as seen from outside:\n" +
		"  2, 4, 6: 3/8 of its depth at the root, full in the middle, lifting to 1/4 of\n    it at the tip; rock 12° to the left and 2° to the right\n" +
		"  3, 5, 7: 3/8 of its depth at the root, full in the middle, lifting to 1/4 of\n    it at the tip; rock 2° to the left and 12° to the right\n"
	if !strings.Contains(words.String(), want) {
		t.Errorf("the plan says\n%s", words.String())
	}
	var read struct {
		Cuts []struct {
			Part  string
			Swell []float64
			Rock  []float64
			Path  []struct{ Left, Right float64 }
		}
	}
	if err := json.Unmarshal(data.Bytes(), &read); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&list).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	n := len(rows[0])
	if strings.Join(rows[0][n-3:], "|") != "swell (shares of the depth asked)|rock left (degrees)|rock right (degrees)" {
		t.Errorf("the list's head ends with %q", rows[0][n-3:])
	}
	for i, c := range read.Cuts[:7] {
		row := rows[1+indexOf(rows[1:], i+1)]
		switch {
		case c.Part == "stem":
			if c.Swell != nil || c.Rock != nil || strings.Join(row[n-3:], "") != "" {
				t.Errorf("a stem: %v, %v, %q", c.Swell, c.Rock, row)
			}
			continue
		case len(c.Swell) != 3 || c.Swell[0] != 0.4 || len(c.Rock) != 2 || c.Rock[i%2] != 2 || c.Rock[1-i%2] != 12:
			t.Errorf("cut %d: %v, %v", i+1, c.Swell, c.Rock)
		}
		if mid := c.Path[len(c.Path)/2]; (mid.Left > mid.Right) != (i%2 == 1) {
			t.Errorf("cut %d: %+v in the middle", i+1, mid)
		}
		if want := map[int]string{0: "0.4 1 0.25|2|12", 1: "0.4 1 0.25|12|2"}[i%2]; strings.Join(row[n-3:], "|") != want {
			t.Errorf("cut %d in the list: %q", i+1, row[n-3:])
		}
	}
	words.Reset()
	data.Reset()
	if Plan(&words, even) != nil || PlanJSON(&data, even) != nil || strings.Contains(words.String(), "y hand") || strings.Contains(data.String(), "swell") || strings.Contains(data.String(), "rock") {
		t.Error("an even plan speaks of the hand")
	}
}

// indexOf returns the row of a cut by its number.
func indexOf(rows [][]string, id int) int {
	for i, row := range rows {
		if row[3] == strings.TrimSpace(string(rune('0'+id))) {
			return i
		}
	}
	return 0
}
