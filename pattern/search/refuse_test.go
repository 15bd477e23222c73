package search

import (
	"errors"
	"math"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// A motif that can't be drawn is refused by each search, as it is when it is laid
// out.
func TestUndrawable(t *testing.T) {
	kind := motifs.Kind{Name: "trial", Params: []motifs.Param{{Name: "odd", Min: 0, Max: 9}}}
	kind.Draw = func(motifs.Values, float64) []motifs.Cut {
		spot := geometry.Point{X: 0.1, Y: 0.5}
		return []motifs.Cut{{Part: "stroke", Path: geometry.Line(spot, spot)}}
	}
	j := jobOn(straight(t), 4, job.Motif{Kind: kind, Values: motifs.Values{"odd": 7}, Depth: 0.2, Y: of(0.5), Width: of(0.5), Height: of(0.5)})
	for name, search := range map[string]func() error{
		"NewFit": func() error { _, err := NewFit(t.Context(), j); return err },
		"Wheels": func() error { _, err := Wheels(t.Context(), j); return err },
	} {
		err := search()
		var wrong *job.Error
		if !errors.As(err, &wrong) || wrong.Key != "motif[1]" || !strings.Contains(wrong.Hint, "its line 1 (stroke) has no length") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Of a rack on which one wheel is too small for the depth, the others are still told.
func TestTooDeepForOneWheel(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "fan", motifs.Values{"rays": 1}, depth(6), with(fine)))
	j.Rack = append(j.Rack, groove.Wheel{Name: "bead", Edge: groove.Mitre, Radius: 5, Thick: 2, Angle: math.Pi / 2})
	fits, err := Wheels(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	for w, f := range fits {
		if unfit := j.Rack[w].Radius <= 6; (f.Unfit != nil) != unfit {
			t.Errorf("%s: %v", j.Rack[w].Name, f.Unfit)
		}
	}
}
