package job

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

// bladeSVG is two strokes in a box of 40 by 100.
const bladeSVG = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 100" stroke="black">
<g id="stem"><path d="M20 100V10"/></g>
<g id="frond"><path d="M20 60L36 30"/></g>
<text>mine</text>
</svg>`

// withDrawing is the base with its second motif drawn: the lines are its keys.
func withDrawing(t *testing.T, lines ...string) fixture {
	t.Helper()
	f := base().without(t, "motif[2].inside").with(t, "motif[2].kind", `kind = "drawing"`)
	for _, line := range lines {
		key, _, _ := strings.Cut(line, " ")
		f = slices.Insert(f, f.index(t, "motif[3]"), fixture{{"motif[2]." + key, line}}...)
	}
	return f
}

// files is a folder beside a job.
func files(all map[string]string) Beside {
	return func(name string) ([]byte, error) {
		data, ok := all[name]
		if !ok {
			return nil, errors.New("there is no such file")
		}
		return []byte(data), nil
	}
}

func TestReadDrawing(t *testing.T) {
	beside := files(map[string]string{"blade.svg": bladeSVG})
	for _, c := range []struct {
		lines         []string
		cuts          int
		width, height Measure
	}{
		{[]string{`file = "blade.svg"`}, 2, Measure{}, Measure{1, true}},
		{[]string{`file = "blade.svg"`, `width = 0.5`}, 2, Measure{0.5, true}, Measure{}},
		{[]string{`file = "blade.svg"`, `height = "30 mm"`}, 2, Measure{}, Measure{30, false}},
		{[]string{`file = "blade.svg"`, `width = 0.5`, `height = 0.25`}, 2, Measure{0.5, true}, Measure{0.25, true}},
		{[]string{`paths = ["M 0 0 L 10 30", "M 10 0 L 0 30 L 20 30"]`}, 3, Measure{}, Measure{1, true}},
	} {
		j, err := ReadWith("x.toml", withDrawing(t, c.lines...).bytes(), beside)
		if err != nil {
			t.Errorf("%q: %v", c.lines, err)
			continue
		}
		m := j.Motifs[1]
		if got := len(m.Kind.Draw(m.Values, 1)); got != c.cuts || m.Width != c.width || m.Height != c.height {
			t.Errorf("%q: %d cuts, %v by %v", c.lines, got, m.Width, m.Height)
		}
		if again, err := j.ReadAgain("y.toml", withDrawing(t, c.lines...).bytes()); err != nil || !Alike(j, again) {
			t.Errorf("%q: read again: %v", c.lines, err)
		}
	}
}

// What was left out is told, with the file and the line.
func TestDrawingNotes(t *testing.T) {
	j, err := ReadWith("x.toml", withDrawing(t, `file = "blade.svg"`).bytes(), files(map[string]string{"blade.svg": bladeSVG}))
	if err != nil {
		t.Fatal(err)
	}
	notes := j.Motifs[1].Kind.Notes
	if len(notes) != 1 || notes[0].Text != "blade.svg, line 4: 1 text left out: only strokes are cut" {
		t.Errorf("%+v", notes)
	}
}

// Another drawing is another job.
func TestDrawingAlike(t *testing.T) {
	var jobs []*Job
	for _, path := range []string{"M 0 0 L 10 30", "M 0 0 L 10 31", "M 0 0 L 10 30"} {
		j, err := Read("x.toml", withDrawing(t, `paths = ["`+path+`"]`).bytes())
		if err != nil {
			t.Fatal(err)
		}
		jobs = append(jobs, j)
	}
	if Alike(jobs[0], jobs[1]) || !Alike(jobs[0], jobs[2]) {
		t.Error("drawings are not compared")
	}
}

// The mistakes one makes with a drawing.
func TestRefuseDrawing(t *testing.T) {
	const plain = "a plain name: no folder, no drive, no address"
	folder := files(map[string]string{
		"blade.svg":  bladeSVG,
		"broken.svg": strings.Replace(bladeSVG, "M20 60L36 30", "M20 60L36 x", 1),
		"empty.svg":  strings.ReplaceAll(bladeSVG, "path", "text"),
		"note.txt":   "dear diary",
		"huge.svg":   strings.Repeat(" ", MaxBeside+1),
	})
	for _, c := range []struct {
		lines          []string
		key            string
		read, accepted string
		hint           string
	}{
		{lines: nil, key: "file", read: "nothing", accepted: `file = "blade.svg", an SVG file beside the job, or paths = [`},
		{lines: []string{`file = "blade.svg"`, `paths = ["M0 0L1 1"]`}, key: "paths", accepted: "file or paths, one of the two"},
		{lines: []string{`paths = ["M0 0L1 1"]`, `file = "blade.svg"`}, key: "file", accepted: "file or paths, one of the two"},
		{lines: []string{`file = "blad.svg"`}, key: "file", read: `"blad.svg"`, accepted: "in the job's own folder", hint: "there is no such file"},
		{lines: []string{`file = 3`}, key: "file", read: "3", accepted: "the name of an SVG file"},
		{lines: []string{`file = ["blade.svg"]`}, key: "file", accepted: "the name of an SVG file"},
		{lines: []string{`file = ""`}, key: "file", hint: plain},
		{lines: []string{`file = "drawings/blade.svg"`}, key: "file", hint: plain},
		{lines: []string{`file = "../blade.svg"`}, key: "file", hint: plain},
		{lines: []string{`file = ".."`}, key: "file", hint: plain},
		{lines: []string{`file = "/etc/passwd"`}, key: "file", hint: plain},
		{lines: []string{`file = 'C:\blade.svg'`}, key: "file", hint: plain},
		{lines: []string{`file = "http://blade.svg"`}, key: "file", hint: plain},
		{lines: []string{`file = "a\u0000b.svg"`}, key: "file", hint: plain},
		{lines: []string{`file = "huge.svg"`}, key: "file", hint: "more than the 16 MiB that are read"},
		{lines: []string{`file = "note.txt"`}, key: "file", read: `in "note.txt"`},
		{lines: []string{`file = "broken.svg"`}, key: "file", read: `in "broken.svg", line 3, path d, character `},
		{lines: []string{`file = "empty.svg"`}, key: "file", read: "a drawing without a stroke", accepted: "one or more strokes"},
		{lines: []string{`file = true`}, key: "file", read: "true", accepted: "the name of an SVG file"},
		{lines: []string{`file = "blade"`}, key: "file", read: `"blade"`, hint: "there is no such file"},
		{lines: []string{`file = "Blade.svg"`}, key: "file", read: `"Blade.svg"`, hint: "there is no such file"},
		{lines: []string{`file = "blade.svg "`}, key: "file", hint: plain},
		{lines: []string{`paths = "M 0 0 L 1 1"`}, key: "paths", hint: "write it in brackets"},
		{lines: []string{`paths = [["M 0 0 L 1 1"]]`}, key: "paths[1]", accepted: "a list of lines in SVG path data"},
		{lines: []string{`paths = {d = "M 0 0 L 1 1"}`}, key: "paths", accepted: "a list of lines in SVG path data"},
		{lines: []string{`paths = ["blade.svg"]`}, key: "paths[1]", read: " at character 1"},
		{lines: []string{`paths = ["M 0 0 L 1 1"]`, `centre = "yes"`}, key: "centre", read: `"yes"`, accepted: "true or false"},
		{lines: []string{`paths = ["M 0 0 L 1 1"]`, `center = true`}, key: "center", hint: `"centre"`},
		{lines: []string{`paths = []`}, key: "paths", accepted: "a list of lines in SVG path data"},
		{lines: []string{`paths = [3]`}, key: "paths[1]", read: "3"},
		{lines: []string{`paths = ["M 0 0 L 1 1", "dear diary"]`}, key: "paths[2]", read: " at character 1"},
		{lines: []string{`paths = ["M 0 0 L 1 1", ""]`, `centre = 1`}, key: "centre", accepted: "true or false"},
		{lines: []string{`paths = ["M 0 0"]`}, key: "paths", read: "a drawing without a stroke"},
		{lines: []string{`paths = ["M 0 0 L 1e400 1"]`}, key: "paths[1]"},
		{lines: []string{`paths = ["M 0 0 L 1 1"]`, `fronds = 3`}, key: "fronds", accepted: "file, paths, centre"},
	} {
		_, err := ReadWith("tumbler.toml", withDrawing(t, c.lines...).bytes(), folder)
		if err == nil {
			t.Errorf("%q is read", c.lines)
			continue
		}
		e := onlyError(t, err)
		if e.Key != "motif[2]."+c.key || !strings.Contains(e.Read, c.read) || !strings.Contains(e.Accepted, c.accepted) || !strings.Contains(e.Hint, c.hint) {
			t.Errorf("%q: %v", c.lines, e)
		}
	}
	// Where the files beside a job can't be read, that is said.
	e := onlyError(t, func() error { _, err := Read("x.toml", withDrawing(t, `file = "blade.svg"`).bytes()); return err }())
	if !strings.Contains(e.Hint, "can't be read: write its lines as paths") {
		t.Error(e)
	}
	// A leaf has none of these keys.
	e = refused(t, append(base(), struct{ name, text string }{"motif[2].file", `file = "blade.svg"`}).bytes())
	if !strings.Contains(e.Hint, `"file" belongs to a motif of the kind "drawing"`) {
		t.Error(e)
	}
}

// The key of a kind that is made of something must not be taken, and its example reads.
func TestContentKeys(t *testing.T) {
	for _, kind := range allKinds() {
		for _, c := range kind.Keys {
			if _, taken := kind.Param(c.Name); taken || strings.Contains(" "+strings.Join(keysOf("motif"), " ")+" ", " "+c.Name+" ") {
				t.Errorf("%s of a %s is taken", c.Name, kind.Name)
			}
			if !strings.Contains(starter+string(Starter(0)), "# "+c.Name+" = "+c.Example) {
				t.Errorf("%s of a %s is not in the starter", c.Name, kind.Name)
			}
		}
	}
}

// A motif becomes a drawing with an example, and loses what is a drawing's when it becomes
// something else.
func TestReviseDrawing(t *testing.T) {
	data := base().bytes()
	drawn := revised(t, data, Revision{Op: "set", Path: "motif[2].kind", Value: "drawing"})
	if !strings.Contains(string(drawn), "paths = [") {
		t.Errorf("no example:\n%s", drawn)
	}
	if _, err := Read("x.toml", drawn); err != nil {
		t.Error(err)
	}
	typed := revised(t, drawn, Revision{Op: "set", Path: "motif[2].paths", Value: "M 0,0 L 1,4; M 2 2 L 4 4"})
	if !containsLine(typed, `paths = ["M 0,0 L 1,4", "M 2 2 L 4 4"]`) {
		t.Errorf("typed paths:\n%s", typed)
	}
	if field := formOf(t, typed).fields()["motif[2].paths"]; field.Text != "M 0,0 L 1,4; M 2 2 L 4 4" || len(field.List) != 2 {
		t.Errorf("the form shows %+v", field)
	}
	if back := revised(t, typed, Revision{Op: "set", Path: "motif[2].kind", Value: "fan"}); strings.Contains(string(back), "paths") {
		t.Errorf("a fan with paths:\n%s", back)
	}
	added := revised(t, data, Revision{Op: "add", Path: "motif", Value: map[string]any{"kind": "drawing"}})
	j, err := Read("x.toml", added)
	if err != nil {
		t.Fatal(err)
	}
	if m := j.Motifs[len(j.Motifs)-1]; m.Width != (Measure{}) || m.Height != (Measure{0.5, true}) {
		t.Errorf("a new drawing is %v by %v", m.Width, m.Height)
	}
}

// The mistakes one makes with initials.
func TestReadInitials(t *testing.T) {
	with := func(lines ...string) []byte {
		return withDrawing(t, lines...).with(t, "motif[2].kind", `kind = "initials"`).bytes()
	}
	j, err := Read("x.toml", with(`text = "É. & R."`, `height = "12 mm"`))
	if err != nil {
		t.Fatal(err)
	}
	if m := j.Motifs[1]; m.Width != (Measure{}) || m.Kind.Aspect < 1 {
		t.Errorf("%v wide, aspect %g", m.Width, m.Kind.Aspect)
	}
	for _, c := range []struct{ line, read, accepted string }{
		{`turn = 0`, "nothing", "a line of text in quotes"},
		{`text = ["AB"]`, "", "a line of text in quotes"},
		{`text = true`, "true", "a line of text in quotes"},
		{`text = "A\nB"`, "", "a line of text in quotes"},
		{`text = "  "`, `"  "`, "a line of text in quotes"},
		{`text = 3`, "3", "a line of text in quotes"},
		{`text = ""`, `""`, "a line of text in quotes"},
		{`text = "A#B"`, "'#' in \"A#B\"", "A to Z, 0 to 9"},
		{`text = "` + strings.Repeat("A", 25) + `"`, "more than 24 letters", "up to 24"},
		{`text = "."`, "", ""},
	} {
		_, err := Read("tumbler.toml", with(c.line))
		if c.accepted == "" {
			if err != nil {
				t.Error(err)
			}
			continue
		}
		if err == nil {
			t.Errorf("%s is read", c.line)
			continue
		}
		e := onlyError(t, err)
		if e.Key != "motif[2].text" || !strings.Contains(e.Read, c.read) || !strings.Contains(e.Accepted, c.accepted) {
			t.Errorf("%s: %v", c.line, e)
		}
	}
}

// Initials on an arc have the proportions of that arc, and no more of it than their text
// can take.
func TestReadArc(t *testing.T) {
	read := func(arc string) (*Job, error) {
		lines := []string{`text = "E & R"`, `height = "12 mm"`}
		if arc != "" {
			lines = append(lines, "arc = "+arc)
		}
		return Read("x.toml", withDrawing(t, lines...).with(t, "motif[2].kind", `kind = "initials"`).bytes())
	}
	level, err := read("")
	if err != nil {
		t.Fatal(err)
	}
	for _, arc := range []string{"40", "-40", "0.5", "0"} {
		j, err := read(arc)
		if err != nil {
			t.Fatal(err)
		}
		// A bowed line is higher, and hardly wider.
		if k, flat := j.Motifs[1].Kind, level.Motifs[1].Kind; (arc != "0") == Alike(j, level) || strings.Contains(arc, "40") && !(k.Aspect < 0.95*flat.Aspect) {
			t.Errorf("arc %s: aspect %g, level %g", arc, k.Aspect, flat.Aspect)
		}
	}
	for _, c := range []struct{ arc, read, accepted string }{
		{`301`, "301", "a number from -300 to 300"},
		{`-300.5`, "-300.5", "a number from -300 to 300"},
		{`nan`, "nan", "a number from -300 to 300"},
		{`-inf`, "-inf", "a number from -300 to 300"},
		{`"40"`, `"40"`, "a number from -300 to 300"},
		{`"up"`, `"up"`, "a number from -300 to 300"},
		{`"40°"`, `"40°"`, "a number from -300 to 300"},
		{`true`, "true", "a number from -300 to 300"},
		{`[40]`, "", "a number from -300 to 300"},
		{`"most"`, `"most"`, "a number from -300 to 300"},
		{`90`, "90", "for this text"},
		{`-300`, "-300", "for this text"},
	} {
		_, err := read(c.arc)
		if err == nil {
			t.Errorf("arc = %s is read", c.arc)
			continue
		}
		e := onlyError(t, err)
		if e.Key != "motif[2].arc" || !strings.Contains(e.Read, c.read) || !strings.Contains(e.Accepted, c.accepted) {
			t.Errorf("arc = %s: %v", c.arc, e)
		}
		t.Log(e)
	}
	// No other kind has it.
	e := refused(t, append(base(), struct{ name, text string }{"motif[2].arc", `arc = 30`}).bytes())
	if !strings.Contains(e.Hint, `"arc" belongs to a motif of the kind "initials"`) {
		t.Error(e)
	}
}
