package job

import (
	"strings"
	"testing"
)

// A blank whose middle station is read as given, and taken as straight or not.
func straightJob(across, key string) []byte {
	return []byte(`length = "mm"
[blank]
` + key + `
station = [{height=0, across=70, wall=8}, {height=40, across=` + across + `, wall=4}, {height=80, across=78, wall=4}]
[[wheel]]
name = "mitre"
edge = "mitre"
across = 100
thick = 12
angle = 90
[layout]
repeats = 4
[[motif]]
kind = "fan"
wheel = "mitre"
depth = 1
`)
}

func TestStraightKey(t *testing.T) {
	for key, straight := range map[string]bool{"straight = true": true, "straight = false": false, "": false} {
		j, err := Read("straight.toml", straightJob("75", key))
		if err != nil {
			t.Fatal(err)
		}
		b := j.Blanks[0]
		if b.Straight != straight || b.Profile().Straight() != straight || b.Stations[1].Radius != 37.5 {
			t.Errorf("%s: straight %v, profile %v, station of %g", key, b.Straight, b.Profile().Straight(), b.Stations[1].Radius)
		}
	}
}

// What is refused stands on the line of the key, and names the reading furthest
// off: of three even stations the middle one, by two thirds of what it is out.
// The most is a sixteenth of an inch across, so 2.38 mm out.
func TestStraightRefusesWhatIsNot(t *testing.T) {
	for across, refused := range map[string]bool{"76.3": false, "71.7": false, "76.4": true, "71.6": true, "90": true} {
		_, err := Read("straight.toml", straightJob(across, "straight = true"))
		if (err != nil) != refused {
			t.Errorf("%s across: %v", across, err)
		}
		if _, err := Read("straight.toml", straightJob(across, "")); err != nil {
			t.Errorf("%s across, and not taken as straight: %v", across, err)
		}
	}
	e := refused(t, straightJob("77", "straight = true"))
	if e.Line != 3 || e.Key != "blank.straight" || e.Read != "true" ||
		!strings.Contains(e.Accepted, "within 1.5 mm across of one straight line") ||
		!strings.Contains(e.Hint, "at 40.0 mm above the table it was read 77.0 mm across, where 74.00 mm would be straight") {
		t.Error(e)
	}
}
