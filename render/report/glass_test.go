package report

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// shortBar is one upright mark of 12 mm, 0.5 mm deep if it were longer, on a
// straight glass of soda-lime, 2.5 g/cm³.
const shortBar = `length = "mm"
blank.floor = 10
blank.station = [ {height = 0, across = 80, wall = 4}, {height = 100, across = 80, wall = 4} ]
wheel = [ {name = "mitre", edge = "mitre", across = 150, thick = 12, angle = 90} ]
layout = {repeats = 1, band = [20, 80]}

[[motif]]
kind = "fan"
wheel = "mitre"
depth = 0.5
height = "12 mm"
rays = 1
hub = 0
`

func planOf(t *testing.T, text string) *pattern.Plan {
	t.Helper()
	j, err := job.Read("trial", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, err := pattern.New(t.Context(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A glass weighs less when it is cut, by what was ground away: of
// 2.5 π (40² · 100 - 36² · 90)/1000 = 340.5 g the volume of its groove.
func TestWeightAfter(t *testing.T) {
	var b bytes.Buffer
	if err := PlanJSON(&b, planOf(t, shortBar)); err != nil {
		t.Fatal(err)
	}
	var told struct {
		Glass struct {
			Weight float64
			Away   float64 `json:"ground_away"`
			After  float64 `json:"weight_after"`
		}
		Totals struct{ Volume float64 }
	}
	if err := json.Unmarshal(b.Bytes(), &told); err != nil {
		t.Fatal(err)
	}
	uncut, away := 2.5*math.Pi*(160-129.6*0.9), 2.5*told.Totals.Volume/1000
	g := told.Glass
	if away <= 0 || math.Abs(g.Weight-uncut) > 0.01 || math.Abs(g.Away-away) > 1e-3 || math.Abs(g.After-(uncut-away)) > 0.01 || g.After >= g.Weight {
		t.Errorf("%+v; by hand %.2f g less %.4f", g, uncut, away)
	}
}

// The cut list has the depth a mark comes out with, and beside it the one asked:
// 75 - √(75² - 6²) = 0.24 mm of half a millimetre, which leaves 3.76 of 4.
func TestCutListDepths(t *testing.T) {
	var b bytes.Buffer
	if err := CutList(&b, []*pattern.Plan{planOf(t, shortBar)}); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(rows) != 2 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for name, want := range map[string]float64{
		"length (mm)": 12, "depth (mm)": 0.24, "depth asked (mm)": 0.5, "glass left (mm)": 3.76,
		"start height (mm)": 44, "end height (mm)": 56, "start angle (degrees)": 0, "end angle (degrees)": 0,
	} {
		i := slices.Index(rows[0], name)
		if i < 0 {
			t.Errorf("no column %q in %v", name, rows[0])
			continue
		}
		if got, err := strconv.ParseFloat(rows[1][i], 64); err != nil || math.Abs(got-want) > 0.005 {
			t.Errorf("%s: %q, by hand %g", name, rows[1][i], want)
		}
	}
}
