//go:build unix

package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"
)

// Jobs at several limits at once, on straight, tapered and curved glass, under every edge, even and
// by hand, of one blank and of sets: whatever comes of one, a run stays within what it may take, or
// ends with one line. ROUNDLAY_MOST says how many are tried.
func TestMost(t *testing.T) {
	count := 3
	if given := os.Getenv("ROUNDLAY_MOST"); given != "" {
		var err error
		if count, err = strconv.Atoi(given); err != nil {
			t.Fatal(err)
		}
	}
	for seed := range count {
		rnd := rand.New(rand.NewPCG(uint64(seed), 7))
		text := mostJob(rnd)
		args := mutantCommands()[rnd.IntN(len(mutantCommands()))]
		if status, wrong := runMutant(t, text, args); wrong != "" {
			t.Errorf("seed %d, roundlay %s, status %d: %s\n%s", seed, strings.Join(args, " "), status, wrong, text)
		}
	}
}

// mostJob draws a job of marks that are near a limit on cuts, on what lies over one another, on
// blanks, or on work.
func mostJob(rnd *rand.Rand) string {
	of := func(all ...string) string { return all[rnd.IntN(len(all))] }
	station := of("{height=0, across=80, wall=9}, {height=100, across=80, wall=6}", "{height=0, across=66, wall=9}, {height=110, across=90, wall=5}",
		"{height=0, across=70, wall=9}, {height=30, across=84, wall=7}, {height=60, across=88, wall=6}, {height=100, across=78, wall=5}")
	wheel := of("edge=\"mitre\"\nthick=6\nangle=90", "edge=\"mitre\"\nthick=6\nangle=90\ntip_radius=0.4", "edge=\"round\"\nthick=6\nradius=3",
		"edge=\"flat\"\nthick=5", "edge=\"gang\"\nthick=12\nangle=90\nmitres=5\nspacing=2")
	motifs, repeats, blanks := 1+rnd.IntN(11), 1, 1
	switch rnd.IntN(3) {
	case 0:
		motifs, repeats = 1, 13
	case 1:
		motifs, repeats, blanks = 1, 1, []int{12, 26, 64}[rnd.IntN(3)]
	}
	var b strings.Builder
	b.WriteString("title = \"Most\"\nlength = \"mm\"\n")
	for i := range blanks {
		fmt.Fprintf(&b, "[[blank]]\nname = \"blank %d\"\nfloor = 12\nstation = [%s]\n", i+1, station)
	}
	fmt.Fprintf(&b, "[limits]\nland = %s\n[[wheel]]\nname = \"wheel\"\nacross = 80\n%s\n[layout]\nrepeats = %d\n", of("0", "0.8"), wheel, repeats)
	for range motifs {
		fmt.Fprintf(&b, "[[motif]]\nkind = \"olives\"\nwheel = \"wheel\"\nolives = 24\nrows = %d\nlong = %s\nhand = %d\ndepth = %s\n", 16/(1+blanks/12), of("0.4", "1", "1.5", "4"), rnd.IntN(2), of("0.1", "0.5", "2.5"))
		fmt.Fprintf(&b, "at = [%.3f, %.3f]\nwidth = 0.95\nheight = 0.95\nclear = 0\n", 0.04*rnd.Float64()-0.02, 0.48+0.04*rnd.Float64())
	}
	return b.String()
}
