package report

import (
	"strings"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/pattern/search"
)

// slipJob is three tumblers, the second of them with a wall of 24 that was meant as 2.4.
const slipJob = `title = "Three tumblers"
length = "mm"
[[blank]]
name = "one"
station = [{height=0, across=70.2, wall=7.0}, {height=95, across=84.1, wall=2.6}]
[[blank]]
name = "two"
station = [{height=0, across=70.8, wall=7.2}, {height=96, across=84.8, wall=24}]
[[blank]]
name = "three"
station = [{height=0, across=69.7, wall=6.8}, {height=94.5, across=83.8, wall=2.5}]
[[wheel]]
name = "mitre"
edge = "mitre"
across = 100
thick = 12
angle = 90
[layout]
repeats = 6
[[motif]]
kind = "fan"
wheel = "mitre"
depth = 0.5
width = 0.6
height = 0.6
rays = 3
`

// slipPlans are the plans of slipJob, with a change made to its text.
func slipPlans(t *testing.T, old, replacement string) []*pattern.Plan {
	t.Helper()
	j, err := job.Read("three.toml", []byte(strings.Replace(slipJob, old, replacement, 1)))
	if err != nil {
		t.Fatal(err)
	}
	plans, err := pattern.Lay(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	return plans
}

// A blank with a reading in doubt is never told clear without its condition: not in
// the heading, not in its row and not at the end.
func TestClearOnlyIfRight(t *testing.T) {
	plans := slipPlans(t, "", "")
	var check, one, plan strings.Builder
	if err := CheckSet(&check, plans); err != nil {
		t.Fatal(err)
	}
	if err := Check(&one, plans[1]); err != nil {
		t.Fatal(err)
	}
	if err := Plan(&plan, plans[1]); err != nil {
		t.Fatal(err)
	}
	if said := check.String(); strings.Contains(said, "All clear") || !strings.Contains(said, "\n  two    clear only if right  ") ||
		!strings.Contains(said, "\n  one    clear                ") {
		t.Errorf("the set:\n%s", said)
	}
	for what, b := range map[string]*strings.Builder{"set": &check, "one": &one, "plan": &plan} {
		said := strings.Join(strings.Fields(b.String()), " ")
		if strings.Contains(said, NothingFound) {
			t.Errorf("%s: said to be clear whatever was read:\n%s", what, b)
		}
		if !strings.Contains(said, `Clear only if the wall of "two" at 96.0 mm is right: measure it again first.`) {
			t.Errorf("%s: no condition:\n%s", what, b)
		}
	}
}

// What fit offers a set that doesn't clear carries the condition too, and no blank that
// isn't clear hangs on anything.
func TestOfferedOnlyIfRight(t *testing.T) {
	plans := slipPlans(t, "rays = 3", "rays = 30")
	f := &search.Fit{Job: plans[0].Job, Offers: []search.Offer{{Job: plans[0].Job}}}
	for _, test := range []struct {
		wheels []search.NewWheel
		offers []search.Offer
		want   string
	}{
		{offers: f.Offers, want: `With any one of these it does, but only if the wall of "two" at 96.0 mm is right: measure it again first.`},
		{wheels: []search.NewWheel{{Diameter: 40}}, want: `for motif 1 (fan), but only if the wall of "two" at 96.0 mm is right: measure it again first.`},
	} {
		f.Wheels, f.Offers = test.wheels, test.offers
		var b strings.Builder
		if err := Fit(&b, f); err != nil {
			t.Fatal(err)
		}
		if said := strings.Join(strings.Fields(b.String()), " "); !strings.Contains(said, test.want) {
			t.Errorf("no %q:\n%s", test.want, b.String())
		}
	}
	if on := hangsOn(plans...); len(on) > 0 {
		t.Errorf("not clear, and yet it hangs on %q", on)
	}
}

func TestHowManyClear(t *testing.T) {
	slip, honest := slipPlans(t, "", ""), slipPlans(t, "wall=24}", "wall=2.4}")
	crowded := slipPlans(t, "rays = 3", "rays = 30")
	for _, test := range []struct {
		plans []*pattern.Plan
		want  string
	}{
		{honest, "All clear."},
		{slip, "Clear only if what is questioned below is right: measure it again first."},
		{crowded, "None clears."},
		{[]*pattern.Plan{honest[0], crowded[0]}, "1 of 2 clear."},
		{[]*pattern.Plan{slip[1], crowded[0]}, "1 of 2 clear, only if what is questioned below is right: measure it again first."},
		{[]*pattern.Plan{slip[0], slip[1], crowded[0]}, "2 of 3 clear, 1 of these only if what is questioned below is right: measure it again first."},
	} {
		if got := howManyClear(test.plans); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
	if got := Verdict("Checked", honest...); got != "Checked: "+NothingFound {
		t.Error(got)
	}
}

// Of several readings all are named; of many, how many there are.
func TestOnlyIfOfSeveral(t *testing.T) {
	p := slipPlans(t, "", "")[1]
	want := `Clear only if the wall of "two" at 96.0 mm and the wall of "two" at 96.0 mm are right: measure them again first.`
	if got := OnlyIf(p, p); got != want {
		t.Error(got)
	}
	if got := OnlyIf(p, p, p, p); got != "Clear only if the 4 readings that are questioned are right: measure them again first." {
		t.Error(got)
	}
}
