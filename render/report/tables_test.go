package report

import (
	"strings"
	"testing"
)

// A side with 6 mm of wall and a cut 0.5 mm deep is left with 5.5, a base of 4 mm with a cut
// 1 mm deep with 3. Each face has its own figure in its own table.
func TestRoomOfEachFace(t *testing.T) {
	const text = `length = "mm"
blank = {floor = 4, base = 60, station = [ {height = 0, across = 80, wall = 6}, {height = 100, across = 80, wall = 6} ]}
wheel = [ {name = "mitre", edge = "mitre", across = 50, thick = 12, angle = 90} ]
layout = {repeats = 4, band = [30, 80]}
base = {repeats = 6, band = [8, 25]}

[[motif]]
kind = "fan"
wheel = "mitre"
depth = 0.5
rays = 1
hub = 0
[[motif]]
kind = "fan"
face = "base"
wheel = "mitre"
depth = 1
rays = 1
hub = 0
`
	want := map[string]string{"Room": "5.50 mm", "Room of the base": "3.00 mm"}
	for _, table := range Tables(planOf(t, text)) {
		for _, row := range table.Rows {
			if row.Name != "least glass left" {
				continue
			}
			if row.Value != want[table.Title] || !strings.HasPrefix(row.Hint, "cut ") {
				t.Errorf("%s: %+v, wanted %s", table.Title, row, want[table.Title])
			}
			delete(want, table.Title)
		}
	}
	if len(want) > 0 {
		t.Errorf("no figure for %v", want)
	}
}
