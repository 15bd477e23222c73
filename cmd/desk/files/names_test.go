package files

import (
	"strings"
	"testing"
	"unicode/utf8"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Whatever title and name a job may have, the longest file name made of them is
// one that file systems take: 255 bytes.
func TestLongNames(t *testing.T) {
	for _, sign := range []string{"a", "é", "杯", "𠀀"} {
		b := []*glass.Blank{{Name: strings.Repeat(sign, 60)}, {Name: strings.Repeat(sign, 59)}}
		j := &job.Job{Title: strings.Repeat(sign, 120), Blanks: b}
		one, other := BlankFile(j, b[0]), BlankFile(j, b[1])
		if name := one + "-inside-wrap.pdf"; len(name) > 255 || !utf8.ValidString(name) || !strings.HasPrefix(name, sign+sign+sign) {
			t.Errorf("%q has %d bytes", name, len(name))
		}
		if one == other {
			t.Errorf("two blanks are called %s", one)
		}
	}
	for _, n := range []int{2, 3, 6} {
		jobs := make([]*job.Job, n)
		for i := range jobs {
			jobs[i] = &job.Job{Title: strings.Repeat("é", 120)}
		}
		if name := ViewsFile(jobs) + ".svg"; len(name) > 255 || !utf8.ValidString(name) {
			t.Errorf("%q has %d bytes", name, len(name))
		}
	}
	short := &job.Job{Title: "Hedgerow tumblers, 2nd", Blanks: make([]*glass.Blank, 1)}
	if got := BlankFile(short, nil); got != "hedgerow-tumblers-2nd" {
		t.Error(got)
	}
	if got := ViewsFile([]*job.Job{short, {Title: "Oak"}}); got != "hedgerow-tumblers-2nd-and-oak-view" {
		t.Error(got)
	}
}
