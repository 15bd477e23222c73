package report

import (
	"fmt"
	"strings"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// twelve is a set of twelve, no two alike, none of which clears.
func twelve(t *testing.T) []*pattern.Plan {
	t.Helper()
	var b strings.Builder
	b.WriteString("title = \"Twelve\"\nlength = \"in\"\n")
	for i := range 12 {
		fmt.Fprintf(&b, "[[blank]]\nname = \"no. %d\"\nfloor = \"1/2\"\nstation = [{height=0, across=%.2f, wall=\"3/8\"}, {height=%.2f, across=%.2f, wall=\"5/64\"}]\n",
			i+1, 2.5+0.01*float64(i%5), 3.8+0.02*float64(i%7), 3+0.01*float64(i%4))
	}
	b.WriteString(`
[[wheel]]
name = "small mitre"
edge = "mitre"
across = 3
thick = "1/4"
angle = 90
[layout]
repeats = 5
[[motif]]
kind = "leaf"
wheel = "small mitre"
depth = "1/32"
width = 0.68
fronds = 30
`)
	j, err := job.Read("twelve.toml", []byte(b.String()))
	if err != nil {
		t.Fatal(err)
	}
	plans, err := pattern.Lay(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	return plans
}

// What the blanks of a set share is said once: each pair of cuts that crowd, and
// each blank has one row with whether it clears. Reports of the blanks one by one
// come to more than three hundred lines.
func TestCheckSetOnce(t *testing.T) {
	plans := twelve(t)
	var b strings.Builder
	if err := CheckSet(&b, plans); err != nil {
		t.Fatal(err)
	}
	said := b.String()
	if n := strings.Count(said, "\n"); n > 60 {
		t.Errorf("%d lines", n)
	}
	for _, p := range plans {
		if len(p.Findings) == 0 {
			t.Fatal("a set that clears is no test of this")
		}
		row := "\n  " + p.Blank.Name + " "
		if n := strings.Count(said, row); n != 1 {
			t.Errorf("%q has %d rows", p.Blank.Name, n)
		}
		_, rest, _ := strings.Cut(said, row)
		if row, _, _ := strings.Cut(rest, "\n"); !strings.Contains(row, "NOT CLEAR") || strings.Count(row, " in ") < 2 {
			t.Errorf("%q: %s", p.Blank.Name, row)
		}
	}
	one := strings.Join(strings.Fields(said), " ") + " "
	for _, g := range plans[0].Groups() {
		for i, item := range cutItems(g) {
			if len(g.Findings[0].Cuts) < 2 {
				continue
			}
			n := strings.Count(one, " "+item+", ") + strings.Count(one, " "+item+" ")
			if n > 1 || n < 1 && i < 20 { // of many the first 20
				t.Errorf("%s is listed %d times", item, n)
			}
		}
	}
}

func TestOnBlanks(t *testing.T) {
	plans := twelve(t)
	for want, which := range map[string][]int{
		"all 12 blanks":                         {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11},
		`"no. 3"`:                               {2},
		`"no. 1", "no. 2"`:                      {0, 1},
		`"no. 1" to "no. 3", "no. 5", "no. 12"`: {0, 1, 2, 4, 11},
		`"no. 2", "no. 4", "no. 9" to "no. 12"`: {1, 3, 8, 9, 10, 11},
		`"no. 1", "no. 2", "no. 4" to "no. 12"`: {0, 1, 3, 4, 5, 6, 7, 8, 9, 10, 11},
	} {
		if got := onBlanks(plans, which); got != want {
			t.Errorf("%v: %s, wanted %s", which, got, want)
		}
	}
}
