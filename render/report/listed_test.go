package report

import (
	"fmt"
	"strings"
	"testing"
)

// Of a long list of cuts no more is written than is read, and how many more there are.
func TestListedCuts(t *testing.T) {
	pairs := make([]string, 80)
	for i := range pairs {
		pairs[i] = fmt.Sprintf("%d–%d", i+1, i+2)
	}
	if got := listed(pairs[:20]); got != strings.Join(pairs[:20], ", ") {
		t.Errorf("of 20: %s", got)
	}
	got := listed(pairs)
	if !strings.HasPrefix(got, "1–2, ") || !strings.HasSuffix(got, ", 20–21 and 60 more; plan --json lists all") {
		t.Errorf("of 80: %s", got)
	}
}

// In a report of many pairs, of one blank and of a set, the list is cut short.
func TestLongListIsCutShort(t *testing.T) {
	crowded := slipPlans(t, "rays = 3", "rays = 30")
	var one, set strings.Builder
	if err := Check(&one, crowded[0]); err != nil {
		t.Fatal(err)
	}
	if err := CheckSet(&set, crowded); err != nil {
		t.Fatal(err)
	}
	for what, b := range map[string]*strings.Builder{"one": &one, "set": &set} {
		said := strings.Join(strings.Fields(b.String()), " ")
		if !strings.Contains(said, " more; plan --json lists all") {
			t.Errorf("%s: not cut short:\n%s", what, b)
		}
	}
}
