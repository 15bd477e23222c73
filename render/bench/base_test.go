package bench

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/page"
	"roundlay/render/printtest"
)

// ringsJob has a gang wheel, a finding, a blank out of round, cuts that run on
// from repeat to repeat, and odd and even repeats that differ. Its names are as
// long as they come.
const ringsJob = `title = "A trial of all that a bench sheet has to tell, in a title that is far too long for its line"
length = "mm"
[blank]
name = "the third glass from the left, with a bubble in its foot"
floor = 14
station = [{height=0, across=[70, 71.5], wall=8}, {height=100, across=80, wall=3}]
[[wheel]]
name = "three lines"
edge = "gang"
across = 100
thick = 12
angle = 90
mitres = 3
spacing = 3
[[wheel]]
name = "a mitre with a long name, dressed last week, to be used up"
edge = "mitre"
across = 80
thick = 6
angle = 90
tip = 0.2
[shop]
rate = 40
finish = "felt"
[layout]
repeats = 4
[[motif]]
kind = "ring"
wheel = "three lines"
depth = 0.6
at = [0, 0.1]
height = 0.1
[[motif]]
kind = "leaf"
wheel = "a mitre with a long name, dressed last week, to be used up"
depth = 0.5
at = [0, 0.6]
width = 0.8
height = 0.6
fronds = 14
on = "odd"
`

// setJob is twelve blanks with thirty cuts to a repeat, in inches.
func setJob() string {
	var b strings.Builder
	b.WriteString("title = \"Twelve for a long table\"\nlength = \"in\"\n")
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
[[wheel]]
name = "wide mitre"
edge = "mitre"
across = 4
thick = "3/8"
angle = 120
[layout]
repeats = 5
[[motif]]
kind = "leaf"
wheel = "small mitre"
depth = "1/32"
at = [0, 0.62]
width = 0.68
height = 0.7
fronds = 10
[[motif]]
kind = "fan"
wheel = "wide mitre"
depth = "1/64"
at = [0, 0.12]
width = 0.9
height = 0.2
rays = 9
`)
	return b.String()
}

// plansOf returns a job's plans, which its tests share.
func plansOf(t testing.TB, text string) []*pattern.Plan {
	t.Helper()
	return printtest.Plans(t, text)
}

// retold returns plans with what their job says otherwise in a text: nothing that
// any cut goes by.
func retold(t testing.TB, plans []*pattern.Plan, text string) []*pattern.Plan {
	t.Helper()
	j, err := job.Read("trial", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	all := make([]*pattern.Plan, len(plans))
	for i, p := range plans {
		q := *p
		q.Job = j
		all[i] = &q
	}
	return all
}

// trials are jobs whose sheets are looked at.
func trials(t testing.TB) map[string][]*pattern.Plan {
	t.Helper()
	_, demo := job.Demo()
	all := map[string][]*pattern.Plan{
		"demo": plansOf(t, string(demo)), "rings": plansOf(t, ringsJob), "set": plansOf(t, setJob()),
	}
	for _, name := range []string{"quilted-highball", "trellis-beaker"} {
		text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "gallery", name+".toml"))
		if err != nil {
			t.Fatal(err)
		}
		all[name] = plansOf(t, string(text))
	}
	return all
}

// drawn has the sheets of a run of tests, by their plans and their paper.
var drawn sync.Map

// sheetOf returns the sheet of plans on a paper, which its tests share.
func sheetOf(t testing.TB, plans []*pattern.Plan, paper string) *Sheet {
	t.Helper()
	type order struct {
		first  *pattern.Plan
		blanks int
		paper  string
	}
	of := order{plans[0], len(plans), paper}
	if known, ok := drawn.Load(of); ok {
		return known.(*Sheet)
	}
	s := newSheet(t, plans, paper)
	drawn.Store(of, s)
	return s
}

// newFacePaper draws it anew.
func newSheet(t testing.TB, plans []*pattern.Plan, paper string) *Sheet {
	t.Helper()
	o := page.DefaultOptions(plans[0].Job.Length)
	if paper != "" {
		var err error
		if o.Paper, err = page.ParsePaper(paper); err != nil {
			t.Fatal(err)
		}
	}
	s, err := New(context.Background(), plans, o, nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func pdfOf(t testing.TB, s *Sheet) []byte {
	t.Helper()
	var file bytes.Buffer
	if err := s.PDF(&file); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}
