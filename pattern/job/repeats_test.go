package job

import (
	"slices"
	"strings"
	"testing"
)

// Which repeats carry a motif, and how far its nearest copies stand apart.
func TestCopies(t *testing.T) {
	for _, c := range []struct {
		layout Layout
		motif  Motif
		on     []int
		stride float64
	}{
		{Layout{Repeats: 1}, Motif{}, []int{1}, 1},
		{Layout{Repeats: 3}, Motif{}, []int{1, 2, 3}, 1},
		{Layout{Repeats: 6}, Motif{On: Odd}, []int{1, 3, 5}, 2},
		{Layout{Repeats: 6}, Motif{On: Even}, []int{2, 4, 6}, 2},
		{Layout{Repeats: 6}, Motif{Only: []int{1, 4}}, []int{1, 4}, 3},
		{Layout{Repeats: 6}, Motif{Only: []int{1, 6}}, []int{1, 6}, 1},
		{Layout{Repeats: 6}, Motif{Only: []int{2}}, []int{2}, 6},
		{Layout{Repeats: 6, Bare: []int{2}}, Motif{}, []int{1, 3, 4, 5, 6}, 1},
		{Layout{Repeats: 6, Bare: []int{2}}, Motif{On: Even}, []int{4, 6}, 2},
		{Layout{Repeats: 6, Bare: []int{2}}, Motif{Only: []int{2, 5}}, []int{2, 5}, 3}, // it names the bare one itself
		{Layout{Repeats: 2, Bare: []int{1}}, Motif{}, []int{2}, 2},
	} {
		if got := c.layout.Copies(c.motif); !slices.Equal(got, c.on) {
			t.Errorf("%+v, %+v: on %v, wanted %v", c.layout, c.motif, got, c.on)
		}
		if got := c.layout.Stride(c.motif); got != c.stride {
			t.Errorf("%+v, %+v: %g apart, wanted %g", c.layout, c.motif, got, c.stride)
		}
	}
}

// Lists are read in any order; what is inside a motif has its list.
func TestReadRepeats(t *testing.T) {
	f := base().with(t, "motif[1].on", "on = [5, 2]").with(t, "layout.bare", "bare = [6, 2, 3]")
	j, err := Read("x.toml", f.bytes())
	if err != nil {
		t.Fatal(err)
	}
	for i, m := range j.Motifs[:2] {
		if !slices.Equal(m.Only, []int{2, 5}) {
			t.Errorf("motif %d is on %v", i+1, m.Only)
		}
	}
	if !slices.Equal(j.Layout.Bare, []int{2, 3, 6}) {
		t.Errorf("bare: %v", j.Layout.Bare)
	}
}

// A list of repeats isn't changed, nor the number of repeats where there is one.
func TestChangesByNumber(t *testing.T) {
	j := changeJob()
	more, even := Change{Motif: OfLayout, Key: "repeats", Value: 8}, Change{Key: "on", Value: float64(Even)}
	if !more.Allowed(j) || !even.Allowed(j) {
		t.Error("refused without a list")
	}
	j.Layout.Bare = []int{2, 4, 6}
	if more.Allowed(j) || even.Allowed(j) {
		t.Error("allowed where repeats 2, 4 and 6 are bare")
	}
	j.Layout.Bare, j.Motifs[0].Only = nil, []int{1, 6}
	if more.Allowed(j) {
		t.Error("another number of repeats is allowed where a motif lists its own")
	}
	if _, ok := even.Has(j); ok || even.Says(j) != "" {
		t.Errorf("a list is said to be %q", even.Says(j))
	}
	other := j.Clone()
	other.Motifs[0].Only = []int{1, 5}
	if Alike(j, other) || !Alike(j, j.Clone()) {
		t.Error("lists are not compared")
	}
}

// What a person types for a list becomes one.
func TestTypedRepeats(t *testing.T) {
	data := base().bytes()
	for typed, want := range map[string]string{
		"1, 4": "[1, 4]", "1,4": "[1, 4]", "[1, 4]": "[1, 4]", "1 4": "[1, 4]", "4": "[4]", "odd": `"odd"`, "each": `"each"`, "firts": `"firts"`,
	} {
		out := revised(t, data, Revision{Op: "set", Path: "motif[1].on", Value: typed})
		if !containsLine(out, "on = "+want) {
			t.Errorf("%q was not written as %s", typed, want)
		}
	}
	for typed, want := range map[string]string{"2": "[2]", "1, 3": "[1, 3]", "": "[]", "x": `["x"]`} {
		out := revised(t, data, Revision{Op: "set", Path: "layout.bare", Value: typed})
		if !containsLine(out, "bare = "+want) {
			t.Errorf("%q was not written as %s", typed, want)
		}
	}
	out := revised(t, data, Revision{Op: "set", Path: "motif[1].on", Value: []any{1.0, 4.0}})
	if field := formOf(t, out).fields()["motif[1].on"]; field.Text != "1, 4" || !slices.Equal(field.List, []string{"1", "4"}) {
		t.Errorf("the form shows %+v", field)
	}
}

func containsLine(data []byte, line string) bool {
	return slices.Contains(strings.Split(string(data), "\n"), line)
}
