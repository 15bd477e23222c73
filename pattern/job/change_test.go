package job

import (
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/groove"
)

// changeJob is a job in millimetres with one leaf.
func changeJob() *Job {
	leaf := motifs.Leaf()
	return &Job{
		Length: geometry.Millimetre, Layout: Layout{Repeats: 6},
		Motifs: []Motif{{Kind: leaf, Values: leaf.Defaults(), Depth: 0.5, X: Measure{0, true}, Y: Measure{0.5, true}, Width: Measure{0.8, true}, Height: Measure{Value: 40}}},
	}
}

// Every key that may be changed can be set, is then had, is written as a job file has
// it, and leaves the job it was changed from as it was.
func TestChanges(t *testing.T) {
	j := changeJob()
	j.Rack = append(j.Rack, groove.Wheel{Name: "broad"}, groove.Wheel{Name: "fine"})
	for _, c := range []struct {
		change Change
		was    string
		is     string
	}{
		{Change{Motif: -1, Key: "repeats", Value: 8}, "6", "8"},
		{Change{Motif: -1, Key: "band", Band: Band{10, 80.5}}, "", `["10.0 mm", "80.5 mm"]`},
		{Change{Key: "depth", Value: 0.4}, `"0.5 mm"`, `"0.4 mm"`},
		{Change{Key: "depth", Value: 0.48}, `"0.5 mm"`, `"0.48 mm"`},
		{Change{Key: "wheel", Value: 1}, `"broad"`, `"fine"`},
		{Change{Key: "width", Value: 0.75, Fraction: true}, "0.8", "0.75"},
		{Change{Key: "height", Value: 38.4}, `"40.0 mm"`, `"38.4 mm"`},
		{Change{Key: "at", At: [2]Measure{{0.1, true}, {Value: 12}}}, "[0, 0.5]", `[0.1, "12.0 mm"]`},
		{Change{Key: "fronds", Value: 3}, "7", "3"},
		{Change{Key: "on", Value: float64(Even)}, `"each"`, `"even"`},
		{Change{Key: "shape", Value: float64(True)}, `"taper"`, `"true"`},
		{Change{Motif: OfLimits, Key: "reach", Value: 0.15}, "0", "0.15"},
	} {
		after := j.With(c.change)
		if has, ok := c.change.Has(after); !ok || has != c.change {
			t.Errorf("%s: has %+v", c.change.Key, has)
		}
		if was, is := c.change.Says(j), c.change.Says(after); was != c.was || is != c.is {
			t.Errorf("%s: %s, and then %s; wanted %s and %s", c.change.Key, was, is, c.was, c.is)
		}
		if Alike(j, after) || !Alike(after, j.With(c.change)) || !Alike(j, changeJobWith(j)) {
			t.Errorf("%s: what is alike is not told from what differs", c.change.Key)
		}
	}
}

// changeJobWith is a copy whose depth is off by less than a text of a length may be.
func changeJobWith(j *Job) *Job {
	j = j.Clone()
	j.Motifs[0].Depth += 4e-6
	return j
}

// What a job may not have is not allowed, at each end.
func TestAllowed(t *testing.T) {
	j := changeJob()
	at := func(across, up float64) Change { return Change{Key: "at", At: [2]Measure{{across, true}, {up, true}}} }
	for _, c := range []struct {
		change Change
		want   bool
	}{
		{Change{Motif: -1, Key: "repeats", Value: 360}, true}, {Change{Motif: -1, Key: "repeats", Value: 361}, false},
		{Change{Motif: -1, Key: "repeats", Value: 0}, false},
		{Change{Key: "depth"}, false}, {Change{Key: "depth", Value: 0.1}, true},
		{Change{Key: "wheel", Value: 0}, false}, // an empty rack
		{Change{Key: "width", Value: 0.001, Fraction: true}, false}, {Change{Key: "width", Value: 0.002, Fraction: true}, true},
		{Change{Key: "height", Value: 0.05}, false}, {Change{Key: "height", Value: 0.1}, true}, // a step of the calipers is 0.1 mm
		{at(0.5, 1), true}, {at(0.501, 1), false}, {at(-0.501, 1), false}, {at(0, 1.001), false}, {at(0, -0.001), false},
		{Change{Key: "fronds", Value: 0}, false}, {Change{Key: "fronds", Value: 2.5}, false}, {Change{Key: "fronds", Value: 2}, true},
		{Change{Key: "no such"}, false},
		{Change{Key: "on", Value: float64(Odd)}, true}, {Change{Key: "on", Value: 3}, false}, {Change{Key: "shape", Value: 2}, false},
		{Change{Motif: OfLimits, Key: "reach", Value: 1}, true}, {Change{Motif: OfLimits, Key: "reach", Value: 1.01}, false},
		{Change{Motif: -1, Key: "band", Band: Band{10, 10}}, false}, {Change{Motif: -1, Key: "band", Band: Band{-1, 10}}, false},
	} {
		if got := c.change.Allowed(j); got != c.want {
			t.Errorf("%+v: allowed is %v", c.change, got)
		}
	}
}
