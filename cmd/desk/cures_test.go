package desk

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
)

// spoilt are jobs with findings of many kinds, from the demo and others.
func spoilt(t testing.TB) map[string]string {
	change := func(text string, pairs ...string) string {
		for i := 0; i < len(pairs); i += 2 {
			if !strings.Contains(text, pairs[i]) {
				t.Fatalf("no %q", pairs[i])
			}
		}
		return strings.NewReplacer(pairs...).Replace(text)
	}
	return map[string]string{
		"crowded":   change(demo(), "fronds = 7", "fronds = 16 # many"),
		"deep":      change(demo(), "height = 0.94", "height = 0.94\nclear = 0.9", "fronds = 7", "fronds = 12"),
		"moved":     change(demo(), "at = [0.5, 0.18]", "at = [0.35, 0.3]"),
		"rim":       change(demo(), "repeats = 5", "repeats = 5\nband = [\"1/4\", \"3 13/16\"]"),
		"thin":      change(demo(), "across = \"3 3/64\",  wall = \"5/64\"", "across = \"3 3/64\",  wall = \"3/64\"", "repeats = 5", "repeats = 5\nband = [\"1/4\", \"3 1/2\"]", "leave = \"1/16\"", "leave = \"3/32\""),
		"shallow":   change(demo(), "fronds = 7", "fronds = 7\ncrown = 0.06", "depth = \"1/32\"\nat = [0, 0.5]", "depth = \"1/16\"\nat = [0, 0.5]"),
		"tight":     change(dragJob(glasses["straight"], "repeats = 4\nband = [15, 85]", "width = 0.9\nheight = 0.5\nsag = 0.5", ""), "kind=\"leaf\"", "kind=\"swag\"", "repeats = 4", "repeats = 9"),
		"quilted":   change(gallery(t, "quilted-highball"), "depth = 1.4", "depth = 3.9"),
		"off":       change(demo(), "at = [0, 0.5]", "at = [0, 0.6]"),
		"twin":      change(demo(), "repeats = 5", "repeats = 6", "width = 0.68", "width = 1.1\non = \"odd\""),
		"set":       change(setOf(3), "fronds = 10", "fronds = 14"),
		"tapertrue": dragJob(glasses["tapered"], "repeats = 4\nband = [15, 85]", "shape = \"true\"\nfronds = 3", ""),
	}
}

// the findings of an answer, by kind and motifs.
func troubles(got map[string]any) map[string]bool {
	all := map[string]bool{}
	for _, f := range got["findings"].([]any) {
		f := f.(map[string]any)
		all[fmt.Sprint(f["kind"], f["motifs"])] = true
	}
	return all
}

// Each way that cures names, made in the job's text, leaves a job on which that finding is
// gone. What it says it brings may be there then, and nothing else.
func TestCuresCure(t *testing.T) {
	tried, kinds := 0, map[string]bool{}
	for name, text := range spoilt(t) {
		d := New()
		before := ask(t, d, "lay", fields{"job": text, "want": []string{}})
		found, _ := before["findings"].([]any)
		if len(found) == 0 {
			t.Errorf("%s: nothing is found: %v", name, before["mistake"])
			continue
		}
		cures := ask(t, d, "cures", fields{"job": text})
		had := troubles(before)
		for i, c := range cures["findings"].([]any) {
			c := c.(map[string]any)
			of := found[i].(map[string]any)
			if c["letter"] != of["letter"] || (c["cure"] == "") != (len(c["ways"].([]any)) > 0) {
				t.Errorf("%s: cure %v of finding %v", name, c, of)
			}
			for _, w := range c["ways"].([]any) {
				w := w.(map[string]any)
				if len(w["edits"].([]any)) == 0 {
					continue // a wheel to buy
				}
				tried++
				kinds[of["kind"].(string)] = true
				after := ask(t, d, "lay", fields{"job": text, "edits": w["edits"], "want": []string{}})
				if after["mistake"] != nil {
					t.Errorf("%s: %v: %v", name, w["edits"], after["mistake"])
					continue
				}
				now := troubles(after)
				if now[fmt.Sprint(of["kind"], of["motifs"])] {
					t.Errorf("%s: %s is still there after %v", name, of["words"], w["edits"])
				}
				if w["brings"] == "" && !strings.Contains(w["words"].(string), "brings") {
					for one := range now {
						if !had[one] {
							t.Errorf("%s: %v brings %s, and doesn't say so", name, w["edits"], one)
						}
					}
				}
			}
		}
	}
	t.Logf("%d ways for %v", tried, kinds)
	if tried < 20 || len(kinds) < 6 {
		t.Errorf("only %d ways were tried, for %v", tried, kinds)
	}
}

// Each of fit's offers, made in the job's text, leaves a job that clears.
func TestFitFits(t *testing.T) {
	tried := 0
	jobs := spoilt(t)
	for name, text := range map[string]string{"crowded": jobs["crowded"], "off": jobs["off"], "moved": jobs["moved"], "clear": demo()} {
		d := New()
		got := ask(t, d, "fit", fields{"job": text})
		if got["words"] == "" || got["clear"] != (name == "clear") {
			t.Errorf("%s: %v", name, got)
		}
		offers, _ := got["offers"].([]any)
		for _, o := range offers {
			o := o.(map[string]any)
			tried++
			after := ask(t, d, "lay", fields{"job": text, "edits": o["edits"], "want": []string{}})
			if after["clear"] != true {
				t.Errorf("%s: %s leaves %v, %v", name, o["words"], after["verdict"], after["mistake"])
			}
		}
	}
	t.Logf("%d offers", tried)
	if tried < 8 {
		t.Errorf("only %d offers", tried)
	}
}

// A way of which a wheel's name is part is read back whatever the name has in it.
func TestTyped(t *testing.T) {
	for value, want := range map[string]any{
		`"3/64 in"`: "3/64 in", `0.5`: 0.5, `[0, "60 mm"]`: []any{0.0, "60 mm"}, `"a\x07b"`: "a\ab", `"é“"`: "é“",
	} {
		var got any
		if err := json.Unmarshal(typed(value), &got); err != nil || fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: %v, %v", value, got, err)
		}
	}
}
