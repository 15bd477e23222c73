package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// reported is JSON that a command wrote of a job, and its name in the schema.
type reported struct {
	what, schema string
	text         []byte
}

// jobFor is a job of a blank, with wheels, that is laid out in some repeats with
// motifs of one kind.
func jobFor(blanks, layout, motif string) string {
	return "title = \"Trial\"\nlength = \"mm\"\n" + blanks + `
[[wheel]]
name = "mitre"
edge = "mitre"
across = 80
thick = 6
angle = 90
[[wheel]]
name = "wide"
edge = "flat"
across = 300
thick = 6
` + layout + "\n[[motif]]\nwheel = \"mitre\"\n" + motif
}

// jobsForJSON are jobs of which something is not known, or is not there.
func jobsForJSON() map[string]string {
	const (
		floorless = "blank.station = [{height=0, across=80, wall=6}, {height=100, across=80, wall=6}]\n"
		barrel    = "[blank]\nfloor = 10\nstation = [{height=0, across=70, wall=7}, {height=50, across=86, wall=5}, {height=100, across=72, wall=4}]\n"
		waist     = "[blank]\nfloor = 14\nstation = [{height=0, across=92, wall=8}, {height=30, across=76, wall=3}, {height=60, across=66, wall=3}, {height=90, across=76, wall=3}, {height=120, across=92, wall=3}]\n"
		oval      = "[blank]\nfloor = 12\nfill = 80\nweighs = \"380 g\"\nstation = [{height=0, across=[79, 81], wall=6}, {height=100, across=[80, 82], wall=6}]\n"
		bent      = "[blank]\nstraight = true\nstation = [{height=0, across=80, wall=6}, {height=50, across=80.8, wall=6}, {height=100, across=80, wall=6}]\n"
		three     = "[[blank]]\nname = \"a\"\nstation = [{height=0, across=80, wall=6}, {height=100, across=80, wall=6}]\n" +
			"[[blank]]\nname = \"b\"\nfloor = 12\nstation = [{height=0, across=70, wall=6}, {height=100, across=70, wall=6}]\n" +
			"[[blank]]\nname = \"c\"\nfloor = 12\nstation = [{height=0, across=80, wall=2.2}, {height=96, across=84, wall=2}]\n"
		ray    = "kind = \"fan\"\ndepth = 0.5\nwidth = 0.3\nrays = 1\nhub = 0\n"
		leaf   = "kind = \"leaf\"\ndepth = 0.8\nwidth = 0.6\n"
		flutes = "kind = \"flute\"\ndepth = 0.7\nwidth = \"8 mm\"\nheight = \"60 mm\"\npanels = 1\n"
	)
	repeats := func(n int) string { return fmt.Sprintf("[layout]\nrepeats = %d", n) }
	return map[string]string{
		"clear":          jobFor(floorless, repeats(4), ray),
		"one repeat":     jobFor(floorless, repeats(1), ray),
		"crowded":        jobFor(floorless, repeats(4), leaf+"fronds = 24\n"),
		"none of most":   jobFor(floorless, "[limits]\nland = 40\n"+repeats(4), leaf+"fronds = \"most\"\n"),
		"thin":           jobFor(strings.ReplaceAll(floorless, "wall=6", "wall=1"), "[limits]\nleave = 0.3\n"+repeats(4)+"\nband = [20, 60]", strings.Replace(ray, "0.5", "1.2", 1)),
		"curved":         jobFor(barrel, repeats(6), ray),
		"bridged":        strings.Replace(jobFor(waist, repeats(6), flutes), "across = 80", "across = 300", 1),
		"oval, by two":   jobFor(oval, repeats(2), ray),
		"oval, by five":  jobFor(oval, "[shop]\nrate = 40\n"+repeats(5), ray),
		"taken straight": jobFor(bent, repeats(4), ray),
		"three":          jobFor(three, repeats(4)+"\nband = [20, 80]", leaf),
		"three, own":     jobFor(three, repeats(4)+"\nband = [20, 80]\nmatch = \"own\"", ray),
		"quoted": jobFor("", "[shop]\nrate = 40\nchange = 8\nfinishing = 20\nspoil = 0.1\nhour = 38\npieces = 6\n"+repeats(4), "kind = \"ladder\"\ndepth = 3\nwidth = 0.3\n") +
			"\n[blank]\nfloor = 12\nstation = [{height=0, across=80, wall=6}, {height=100, across=80, wall=6}]\n[[wheel]]\nname = \"hub\"\nedge = \"mitre\"\nacross = 5\nthick = 2\nangle = 90\n",
		"worn":     strings.Replace(jobFor(floorless, repeats(4), "kind = \"star\"\ndepth = 1\nwidth = \"14 mm\"\nheight = \"14 mm\"\n"), "angle = 90\n", "angle = 90\nwears = [0.4, \"30 m\"]\n", 1),
		"includes": "include = [\"shop.toml\"]\n" + jobFor(floorless, repeats(4), ray),
		"rolled":   strings.Replace(jobFor(floorless, repeats(4), ray+"rock = [0, 10]\n"), "wheel = \"mitre\"", "wheel = \"wide\"", 1),
		"ring":     jobFor(floorless, repeats(4), "kind = \"ring\"\ndepth = 0.3\n"),
	}
}

// everyJSON runs every command that reports in JSON on many jobs.
func everyJSON(t *testing.T) []reported {
	t.Helper()
	folder := t.TempDir()
	var all []reported
	say := func(args ...string) {
		var out, wrong bytes.Buffer
		if status := run(args, strings.NewReader(""), &out, &wrong); status == exitNotDone {
			t.Errorf("%s: %s", strings.Join(args, " "), wrong.String())
			return
		}
		all = append(all, reported{strings.Join(args, " "), schemaOf(t, args), out.Bytes()})
	}
	for _, command := range []string{"plan", "check", "divide"} {
		say(command, "--json")
	}
	say("motifs", "--json")
	say("divide", "--across", "80mm", "--parts", "2", "--set", "60mm", "--gap=-30mm", "--gap=1mm", "--json")
	say("divide", "--across", "79.4mm", "--parts", "3", "--set", "69.8mm", "--gap=3.2mm", "--json")
	bare := []string{"groove", "--json", "--across=80mm", "--edge=mitre", "--angle=90", "--wheel-across=80mm"}
	say(append(bare, "--thick=6mm", "--length=12mm")...)
	say(append(bare, "--thick=1mm", "--depth=2mm")...)
	say(append(bare, "--thick=6mm", "--width=30mm")...)
	for _, asked := range []string{"", "--length=12mm", "--depth=40mm", "--like --length=12mm --width=2mm"} {
		say(append([]string{"groove", "--json"}, strings.Fields(asked)...)...)
	}
	say("groove", "--json", "--like", "--length=3mm", "--width=2mm", "--across=80mm", "--edge=round", "--radius=6mm")
	const shop = "[limits]\nland = 0.7\npolish = 0.1\n[shop]\nrate = 40\n[[wheel]]\nname = \"mitre\"\nedge = \"mitre\"\nacross = 70\nthick = 6\nangle = 90\n"
	if err := os.WriteFile(filepath.Join(folder, "shop.toml"), []byte(shop), 0o600); err != nil {
		t.Fatal(err)
	}
	for name, text := range jobsForJSON() {
		file := filepath.Join(folder, name+".toml")
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if strings.Contains(text, "[[blank]]") {
			for _, blank := range []string{"a", "b", "c"} {
				say("plan", "--json", "--blank", blank, file)
			}
		} else {
			say("plan", "--json", file)
		}
		say("check", "--json", file)
		if !strings.Contains(text, "[[blank]]") {
			say("groove", "--json", "--length=12mm", file)
		}
		say("divide", "--json", file)
		if slices.Contains([]string{"clear", "ring", "thin", "quoted"}, name) { // fit takes longest
			say("fit", "--json", file)
			say("fit", "--rack", "--json", file)
		}
	}
	say("groove", "--json", "--length=12mm", "--wheel=mitre", filepath.Join(folder, "clear.toml"))
	for _, asked := range []string{"--length=12mm", "--like --length=12mm --width=2mm"} {
		say(append([]string{"groove", "--json", "--wheel=mitre", filepath.Join(folder, "bridged.toml")}, strings.Fields(asked)...)...)
	}
	say("check", "--json", filepath.Join(folder, "crowded.toml"), filepath.Join(folder, "three.toml"), filepath.Join(folder, "oval, by five.toml"))
	return all
}

// What is not known is left out of JSON: nothing is null, and nothing minus zero.
func TestJSONSaysWhatIsKnown(t *testing.T) {
	s := readSchema(t)
	minusZero := regexp.MustCompile(`-0(\.0*)?([,\s\]}]|$)`)
	for _, r := range everyJSON(t) {
		if found := minusZero.Find(r.text); found != nil {
			t.Errorf("%s: minus zero", r.what)
		}
		var value any
		if err := json.Unmarshal(r.text, &value); err != nil {
			t.Errorf("%s: %v", r.what, err)
		}
		walk(value, "", func(path string, v any) {
			if v == nil {
				t.Errorf("%s: %s is null", r.what, path)
			}
		})
		s.holds(t, r)
	}
	for _, r := range scriptsJSON(t) {
		s.holds(t, r)
	}
	s.allSeen(t)
}

// walk visits all that JSON holds, each with its path.
func walk(v any, path string, visit func(path string, v any)) {
	visit(path, v)
	switch v := v.(type) {
	case map[string]any:
		for key, inner := range v {
			walk(inner, path+"."+key, visit)
		}
	case []any:
		for _, inner := range v {
			walk(inner, path+".[]", visit)
		}
	}
}
