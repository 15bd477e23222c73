package job

import (
	"slices"
	"strings"
	"testing"
)

// Jobs with a leaf, in the ways in which TOML has tables; the first has nothing of parts.
func leavesWith() map[string]string {
	const head = "length = \"mm\"\nblank.station = [{height=0, across=80, wall=6}, {height=100, across=80, wall=6}]\n" +
		"wheel = [{name = \"m\", edge = \"mitre\", across = 80, thick = 6, angle = 90}, {name = \"n\", edge = \"mitre\", across = 80, thick = 6, angle = 90}]\nlayout.repeats = 4\n"
	const leaf = "\n# a leaf\n[[motif]]\nkind = \"leaf\"\nwheel = \"m\"\ndepth = 0.5\n"
	const next = "\n# and a fan\n[[motif]]\nkind = \"fan\"\nwheel = \"m\"\ndepth = 0.5 # the last"
	const inline = "motif = [{kind = \"leaf\", wheel = \"m\", depth = 0.5}]\n"
	return map[string]string{
		"none":              head + leaf + next,
		"none, at the end":  head + leaf,
		"no new line":       strings.TrimSuffix(head+leaf, "\n"),
		"the other":         head + leaf + "[motif.parts.stem]\ndepth = 0.9\n" + next,
		"the other, apart":  head + leaf + "\n  [motif.parts.stem] # deep\n  depth = 0.9\n" + next,
		"itself":            head + leaf + "[motif.parts.frond]\nclear = 0.2\n" + next,
		"itself, empty":     head + leaf + "[motif.parts.frond]\n" + next,
		"itself, with it":   head + leaf + "[motif.parts.frond]\ndepth = 0.3 # light\n" + next,
		"in braces":         head + leaf + "parts = {stem = {depth = 0.9}}\n" + next,
		"both in braces":    head + leaf + "parts = {stem = {depth = 0.9}, frond = {}}\n" + next,
		"with dots":         head + leaf + "parts.stem.depth = 0.9\n" + next,
		"with dots, itself": head + leaf + "parts.frond.clear = 0.2\n" + next,
		"a motif in braces": head + inline,
		"returns":           strings.ReplaceAll(head+leaf+next, "\n", "\r\n"),
	}
}

// A part's own value is written into the file, in whatever way that has the part, and all
// else stays.
func TestWriteParts(t *testing.T) {
	for name, text := range leavesWith() {
		before, err := Read("x.toml", []byte(text))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		change := []Change{{Part: "frond", Key: "depth", Value: 0.25}, {Part: "frond", Key: "wheel", Value: 1}}
		after := before.With(change...)
		edits := make([]Edit, len(change))
		for i, c := range change {
			edits[i] = Edit{Motif: c.Motif, Part: c.Part, Key: c.Key, Value: c.Says(after), Note: "fit: was so"}
		}
		out, err := Rewrite([]byte(text), edits)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		got, err := Read("x.toml", out)
		if err != nil {
			t.Errorf("%s: %v\n%s", name, err, out)
			continue
		}
		if !Alike(got, after) || Alike(got, before) || len(got.Motifs) != len(before.Motifs) {
			t.Errorf("%s became\n%s", name, out)
		}
		rest := slices.DeleteFunc(strings.Split(string(out), "\n"), func(line string) bool {
			return strings.Contains(line, "0.25") || strings.Contains(line, `"n"`) || strings.Contains(line, "# fit") || strings.Contains(line, "parts")
		})
		for _, line := range rest {
			if !strings.Contains(text, strings.TrimRight(line, "\r")) {
				t.Errorf("%s: a line %q is new", name, line)
			}
		}
	}
}

// The form shows the parts that a job has, and their keys are set, removed and dropped by
// their paths; a wheel's new name goes to them too, and another kind takes them away.
func TestReviseParts(t *testing.T) {
	for name, text := range leavesWith() {
		data := revised(t, []byte(text), Revision{Op: "set", Path: "motif[1].parts.frond.depth", Value: "1/64 in"})
		field, ok := formOf(t, data).fields()["motif[1].parts.frond.depth"]
		if !ok || field.Text != "1/64 in" || !field.Given {
			t.Errorf("%s: the form shows %+v of\n%s", name, field, data)
		}
		if j, err := Read("x.toml", data); err != nil || *j.Motifs[0].Part("frond").Depth != 25.4/64 {
			t.Errorf("%s: %v\n%s", name, err, data)
		}
		named := revised(t, data, Revision{Op: "set", Path: "motif[1].parts.frond.wheel", Value: "n"}, Revision{Op: "set", Path: "wheel[2].name", Value: "fine"})
		if j, err := Read("x.toml", named); err != nil || *j.Motifs[0].Part("frond").Wheel != 1 {
			t.Errorf("%s: %v\n%s", name, err, named)
		}
		if _, err := Revise(named, Revision{Op: "drop", Path: "wheel[2]"}); err == nil || !strings.Contains(err.Error(), "give it another wheel first") {
			t.Errorf("%s: the wheel of a part was dropped: %v", name, err)
		}
		bare := revised(t, data, Revision{Op: "remove", Path: "motif[1].parts.frond.depth"})
		if j, err := Read("x.toml", bare); err != nil || j.Motifs[0].Part("frond").Depth != nil {
			t.Errorf("%s: %v\n%s", name, err, bare)
		}
		dropped := revised(t, data, Revision{Op: "drop", Path: "motif[1].parts.frond"})
		if j, err := Read("x.toml", dropped); err != nil || slices.ContainsFunc(j.Motifs[0].Parts, func(p Part) bool { return p.Name == "frond" }) {
			t.Errorf("%s: %v\n%s", name, err, dropped)
		}
		// A sprig has a stem, and leaves in place of fronds.
		sprig := revised(t, data, Revision{Op: "set", Path: "motif[1].kind", Value: "sprig"})
		if j, err := Read("x.toml", sprig); err != nil || slices.ContainsFunc(j.Motifs[0].Parts, func(p Part) bool { return p.Name != "stem" }) {
			t.Errorf("%s: %v\n%s", name, err, sprig)
		}
	}
}

// A part may have any name that a drawing gives it: its keys are set by its path, as the form
// has it, and taken away again.
func TestOddParts(t *testing.T) {
	for _, name := range []string{"left wing", "a.b", `says "so"`, "état", "1"} {
		text := "length=\"mm\"\n[blank]\nstation=[{height=0,across=60,wall=5},{height=100,across=60,wall=5}]\n[[wheel]]\nname=\"m\"\nedge=\"mitre\"\nacross=60\nthick=8\nangle=90\n" +
			"[layout]\nrepeats=3\n[[motif]]\nkind=\"drawing\"\nwheel=\"m\"\ndepth=0.5\nwidth=0.5\nfile=\"odd.svg\"\n"
		drawn := `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10"><g id="` + strings.ReplaceAll(name, `"`, "&quot;") + `" stroke="black"><path d="M1 1L9 9"/></g></svg>`
		beside := func(string) ([]byte, error) { return []byte(drawn), nil }
		path := PartPath(0, name) + ".depth"
		data := revised(t, []byte(text), Revision{Op: "set", Path: path, Value: "0.25"})
		field, ok := formOf(t, data).fields()[path]
		if !ok || field.Text != "0.25" {
			t.Errorf("%s: the form has %+v of\n%s", name, field, data)
		}
		j, err := ReadWith("x.toml", data, beside)
		if err != nil || j.Motifs[0].Part(name).Depth == nil || *j.Motifs[0].Part(name).Depth != 0.25 {
			t.Errorf("%s: %v\n%s", name, err, data)
		}
		data = revised(t, data, Revision{Op: "set", Path: path, Value: "0.4"}, Revision{Op: "set", Path: PartPath(0, name) + ".land", Value: "0"})
		if n := strings.Count(string(data), "parts"); n != 1 {
			t.Errorf("%s: its table stands there %d times:\n%s", name, n, data)
		}
		bare := revised(t, data, Revision{Op: "remove", Path: path})
		if j, err := ReadWith("x.toml", bare, beside); err != nil || j.Motifs[0].Part(name).Depth != nil {
			t.Errorf("%s: %v\n%s", name, err, bare)
		}
	}
}

// What a part has not for itself is the motif's.
func TestOfParts(t *testing.T) {
	j := changeJob()
	m := &j.Motifs[0]
	if m.DepthOf("frond") != 0.5 || m.Deepest() != 0.5 || m.LandOf("frond") != nil {
		t.Error("without parts")
	}
	deep := j.With(Change{Part: "stem", Key: "depth", Value: 1.5})
	if m := &deep.Motifs[0]; m.DepthOf("stem") != 1.5 || m.DepthOf("frond") != 0.5 || m.Deepest() != 1.5 || m.Shallowest() != 0.5 {
		t.Errorf("a deep stem: %+v", m.Parts)
	}
	if len(j.Motifs[0].Parts) != 0 || Alike(j, deep) {
		t.Error("the job it was changed from has changed")
	}
	deeper := deep.With(Change{Part: "stem", Key: "depth", Value: 2})
	if deep.Motifs[0].DepthOf("stem") != 1.5 || deeper.Motifs[0].DepthOf("stem") != 2 {
		t.Error("the job it was changed from has changed")
	}
	if name := (Change{Part: "stem", Key: "depth"}).Name(deep); name != "motif 1 (leaf), stem" {
		t.Error(name)
	}
	all := deep.With(Change{Part: "frond", Key: "depth", Value: 0.2})
	if m := &all.Motifs[0]; m.Deepest() != 1.5 || m.Shallowest() != 0.2 {
		t.Error("the motif's own depth counts, though no part has it")
	}
}
