package job

import (
	"reflect"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
)

// handed is a job with a leaf, with lines of its own and of its fronds.
func handed(t *testing.T, motif, frond string) (*Job, []byte) {
	t.Helper()
	text := "title = \"x\"\nlength = \"mm\"\n[blank]\nstation = [{height = 0, across = 80, wall = 5}, {height = 100, across = 80, wall = 5}]\n" +
		"[[wheel]]\nname = \"m\"\nedge = \"mitre\"\nacross = 75\nthick = 6\nangle = 90\n[layout]\nrepeats = 4\n" +
		"[[motif]]\nkind = \"leaf\"\nwheel = \"m\"\ndepth = 0.5\n" + motif
	if frond != "" {
		text += "[motif.parts.frond]\n" + frond
	}
	j, err := Read("x.toml", []byte(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return j, []byte(text)
}

// What a job says of a part holds before what it says of the motif, and that before what
// the kind does by hand; swell and rock each by itself.
func TestGestureOf(t *testing.T) {
	by := func(left, right float64) [2]geometry.Angle {
		return [2]geometry.Angle{geometry.Degrees(left), geometry.Degrees(right)}
	}
	full := motifs.Leaf().Hand
	for name, c := range map[string]struct {
		motif, frond string
		of           map[string]motifs.Gesture
	}{
		"even":           {"", "", map[string]motifs.Gesture{"stem": {}, "frond": {}}},
		"the kind's":     {"hand = 1\n", "", map[string]motifs.Gesture{"stem": full["stem"], "frond": full["frond"]}},
		"the motif's":    {"swell = [0.2, 1]\nrock = [3, 0]\n", "", map[string]motifs.Gesture{"stem": {Swell: []float64{0.2, 1}, Rock: by(3, 0)}, "frond": {Swell: []float64{0.2, 1}, Rock: by(3, 0)}}},
		"the part's":     {"", "rock = [0, 9]\n", map[string]motifs.Gesture{"stem": {}, "frond": {Rock: by(0, 9)}}},
		"over the kind":  {"hand = 1\nrock = [0, 0]\n", "swell = [1]\n", map[string]motifs.Gesture{"stem": {Swell: full["stem"].Swell}, "frond": {Swell: []float64{1}}}},
		"over the motif": {"swell = [0.5, 1]\nrock = [4, 4]\n", "rock = [0, 2]\n", map[string]motifs.Gesture{"stem": {Swell: []float64{0.5, 1}, Rock: by(4, 4)}, "frond": {Swell: []float64{0.5, 1}, Rock: by(0, 2)}}},
	} {
		j, _ := handed(t, c.motif, c.frond)
		for part, want := range c.of {
			if got := j.Motifs[0].GestureOf(part); !reflect.DeepEqual(got, want) {
				t.Errorf("%s: %s: %+v, wanted %+v", name, part, got, want)
			}
		}
		if even := name == "even"; j.ByHand() == even {
			t.Errorf("%s: by hand is %t", name, !even)
		}
	}
}

// A change of the hand is read, made, written and compared like any other.
func TestChangeHand(t *testing.T) {
	j, text := handed(t, "rock = [0, 12]\n", "swell = [0.4, 1]\n")
	roll := NewRock(0, "", [2]geometry.Angle{0, geometry.Degrees(7)})
	own := NewRock(0, "frond", [2]geometry.Angle{geometry.Degrees(2.5), 0})
	fine := NewSwell(0, "frond", []float64{0.25, 1})
	after := j.With(roll, own, fine)
	for i, c := range []struct {
		Change
		was, is string
	}{{roll, "[0, 12]", "[0, 7]"}, {own, "[0, 12]", "[2.5, 0]"}, {fine, "[0.4, 1]", "[0.25, 1]"}} {
		if was, is := c.Says(j), c.Says(after); was != c.was || is != c.is || !c.Allowed(j) {
			t.Errorf("%d: from %s to %s", i, was, is)
		}
	}
	if far := NewRock(0, "", [2]geometry.Angle{0, geometry.Degrees(31)}); far.Allowed(j) {
		t.Error("a rock of 31° is allowed")
	}
	if Alike(j, after) || !Alike(j, j.With(NewRock(0, "", [2]geometry.Angle{0, geometry.Degrees(12)}))) {
		t.Error("jobs with another rock are alike")
	}
	var edits []Edit
	for _, c := range []Change{roll, own, fine} {
		edits = append(edits, Edit{Motif: c.Motif, Part: c.Part, Key: c.Key, Value: c.Says(after), Note: "fit: was so"})
	}
	out, err := Rewrite(text, edits)
	if err != nil {
		t.Fatal(err)
	}
	got, err := Read("x.toml", out)
	if err != nil || !Alike(got, after) {
		t.Errorf("%v\n%s", err, out)
	}
}

// The form shows the hand as a person types it, and takes it so: with or without brackets.
func TestReviseHand(t *testing.T) {
	_, text := handed(t, "rock = [0, 12]\n", "")
	if f := formOf(t, text).fields()["motif[1].rock"]; f.Text != "0, 12" || !f.Given {
		t.Errorf("the form shows %+v", f)
	}
	for typed, want := range map[string]string{
		"0.4, 1, 0.7": "swell = [0.4, 1, 0.7]", "[.4 1 .7]": "swell = [0.4, 1, 0.7]", "0.4;1;0.7": "swell = [0.4, 1, 0.7]", "1": "swell = [1]",
	} {
		out := revised(t, text, Revision{Op: "set", Path: "motif[1].swell", Value: typed})
		if _, err := Read("x.toml", out); err != nil || !strings.Contains(string(out), want+"\n") {
			t.Errorf("%q: %v\n%s", typed, err, out)
		}
	}
	out := revised(t, text, Revision{Op: "set", Path: "motif[1].parts.frond.rock", Value: "3, 5"})
	if j, err := Read("x.toml", out); err != nil || *j.Motifs[0].Part("frond").Rock != [2]geometry.Angle{geometry.Degrees(3), geometry.Degrees(5)} {
		t.Errorf("%v\n%s", err, out)
	}
	// What can't be is written as it was typed, and then refused with its line.
	out = revised(t, text, Revision{Op: "set", Path: "motif[1].rock", Value: "12"})
	if _, err := Read("x.toml", out); err == nil || !strings.Contains(err.Error(), "x.toml:17: motif[1].rock: read a list of 1; accepted: a list of two, to the left") {
		t.Errorf("%v", err)
	}
}
