package job

import "testing"

// What was probably meant: a name of which a part was left out as well as a misspelt one,
// and none where several would do.
func TestNearest(t *testing.T) {
	rack := []string{"small mitre", "broad mitre", "olive stone", "slice", "three lines"}
	for _, c := range []struct{ read, want string }{
		{"olive", "olive stone"}, {"Olive", "olive stone"}, {"stone", "olive stone"}, {"oliv", "olive stone"},
		{"the olive stone wheel", "olive stone"}, {"olive-stone", "olive stone"}, {"lines", "three lines"},
		{"slicee", "slice"}, {"smal mitre", "small mitre"}, {"broad", "broad mitre"},
		{"mitre", ""}, {"o", ""}, {"", ""}, {"polisher", ""},
	} {
		if got := Nearest(c.read, rack); got != c.want {
			t.Errorf("nearest to %q is %q, want %q", c.read, got, c.want)
		}
	}
}
