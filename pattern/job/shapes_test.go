package job

import (
	"fmt"
	"strings"
	"testing"
)

// glassOf returns a job in millimetres with stations, written "height across".
func glassOf(stations ...string) string {
	var rows []string
	for _, s := range stations {
		height, across, _ := strings.Cut(s, " ")
		rows = append(rows, fmt.Sprintf("{height=%s, across=%s, wall=3}", height, across))
	}
	return "length = \"mm\"\nblank.station = [" + strings.Join(rows, ", ") + `]
layout.repeats = 4
[[wheel]]
name = "m"
edge = "mitre"
across = 100
thick = 6
angle = 90
[[motif]]
kind = "leaf"
wheel = "m"
depth = 0.8
`
}

// A station is refused that can't belong to the others, and no real shape is.
func TestShapes(t *testing.T) {
	for name, stations := range map[string][]string{
		"foot ring":                  {"0 60", "2 66", "4 62", "100 80"},
		"goblet on a disc":           {"0 75", "3 12", "70 11", "80 50", "140 70"},
		"cocktail bowl":              {"0 12", "55 110"},
		"coupe":                      {"0 12", "30 95"},
		"flared rim":                 {"0 50", "90 52", "96 84"},
		"bowl on a narrow foot":      {"0 30", "10 34", "14 100", "60 110"},
		"mortar, wide low and heavy": {"0 120", "40 130"},
	} {
		if _, err := Read("shape.toml", []byte(glassOf(stations...))); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for key, stations := range map[string][]string{
		"blank.station[1].across": {"0 670", "50 73", "100 79"},
		"blank.station[2].across": {"0 67", "50 730", "100 79"},
		"blank.station[3].across": {"0 67", "50 73", "100 790"},
	} {
		_, err := Read("shape.toml", []byte(glassOf(stations...)))
		if err == nil || !strings.Contains(err.Error(), key) || !strings.Contains(err.Error(), "one of the two was misread") {
			t.Errorf("%v: %v", stations, err)
		}
	}
}

// One table in single brackets is no list of them.
func TestSingleBrackets(t *testing.T) {
	for _, table := range []string{"wheel", "motif"} {
		_, err := Read("single.toml", []byte(strings.Replace(glassOf("0 60", "100 80"), "[["+table+"]]", "["+table+"]", 1)))
		if err == nil || !strings.Contains(err.Error(), "write [["+table+"]]") {
			t.Error(err)
		}
	}
}

// What can be read but not used is refused where it stands.
func TestRefuseLater(t *testing.T) {
	text := glassOf("0 60", "100 80")
	j, err := Read("-", []byte(strings.Replace(text, "across=80", "across=[79, 81]", 1)))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ key, want string }{
		{"blank[1].station[1].across", "standard input:2: blank.station[1].across: read 60; accepted: less; why"},
		{"blank[1].station[2].across", "standard input:2: blank.station[2].across: read what it is; accepted: less; why"},
		{"motif[1].depth", "standard input:13: motif[1].depth: read 0.8; accepted: less; why"},
		{"motif[1].width", "standard input:10: motif[1].width: read what it is; accepted: less; why"},
		{"limits.leave", "standard input:1: limits.leave: read what it is; accepted: less; why"},
	} {
		if got := j.Refuse(c.key, "what it is", "less", "why").Error(); got != c.want {
			t.Errorf("%s: %s", c.key, got)
		}
	}
	for key, given := range map[string]bool{
		"layout.repeats": true, "limits": false, "limits.leave": false, "motif[1].depth": true, "motif[2].depth": false,
		"motif[0].depth": false, "motif[x].depth": false, "length.in": false, "blank[1].station[2].wall": true,
	} {
		if j.Given(key) != given {
			t.Errorf("%s given: %v", key, !given)
		}
	}
	if got := (&Job{}).Refuse("limits.leave", "3", "less", "why").Error(); got != "limits.leave: read 3; accepted: less; why" {
		t.Error(got)
	}
}
