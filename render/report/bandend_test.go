package report

import (
	"fmt"
	"strings"
	"testing"
)

// A wall of 10 mm at the table that thins to 2 at 100, with 0.8 left: 7 mm deep are carried
// to z = (10 - 7.8) / 0.08 = 27.5 mm, far below the rim; 1 mm deep to 102,
// above it.
func TestLowBand(t *testing.T) {
	const text = "title = \"x\"\nlength = \"mm\"\n[blank]\nfloor = 5\nstation = [{height = 0, across = 80, wall = 10}, {height = 100, across = 80, wall = 2}]\n" +
		"[limits]\nleave = 0.8\n[[wheel]]\nname = \"m\"\nedge = \"mitre\"\nacross = 100\nthick = 30\nangle = 90\n" +
		"[layout]\nrepeats = 6\n[[motif]]\nkind = \"leaf\"\nwheel = \"m\"\ndepth = %s\n"
	for depth, want := range map[string]string{
		"1": "", "7": "motif 1 (leaf), 7.0 mm deep, ends the band 27.5 mm above the table",
	} {
		said := strings.Join(lowBand(planOf(t, fmt.Sprintf(text, depth))), "\n")
		if !strings.HasPrefix(said, want) || (want == "") != (said == "") {
			t.Errorf("%s deep: %q, wanted %q", depth, said, want)
		}
	}
}
