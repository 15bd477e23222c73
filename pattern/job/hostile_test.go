package job

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// fill repeats a text, numbered where it has a %d, up to the largest file read.
func fill(head, text, tail string) string {
	var b strings.Builder
	b.WriteString(head)
	for i := 0; ; i++ {
		piece := text
		if strings.Contains(text, "%d") {
			piece = fmt.Sprintf(text, i)
		}
		if b.Len()+len(piece)+len(tail) > MostBytes {
			return b.String() + tail
		}
		b.WriteString(piece)
	}
}

// hostile lists files as large as any that is read, each of which would take
// minutes if the time grew with the square of its size, or overflow the stack.
func hostile() map[string]string {
	top := "length = \"mm\"\n"
	noise := make([]byte, MostBytes)
	random := rand.NewChaCha8([32]byte{1})
	_, _ = random.Read(noise)
	return map[string]string{
		"brackets":                fill("", "[", ""),
		"a list in a list":        fill("x = ", "[", ""),
		"closed lists":            "x = " + strings.Repeat("[", 9999) + strings.Repeat("]", 9999),
		"closed lists, too deep":  "x = " + strings.Repeat("[", 400_000) + strings.Repeat("]", 400_000),
		"a table in a table":      fill("", "a={", ""),
		"closed tables":           strings.Repeat("a={", 9999) + strings.Repeat("}", 9999),
		"a dotted key":            fill("a", ".a", "=1"),
		"a dotted header":         fill("[a", ".a", "]"),
		"dotted headers":          fill("", "[a.b.c.d.e.f.g.h.i.j%d]\n", ""),
		"keys":                    fill("", "a%d=1\n", ""),
		"keys of limits":          fill(top+"[limits]\n", "a%d=1\n", ""),
		"keys of a motif":         fill(top+"[[motif]]\n", "a%d=1\n", ""),
		"keys in braces":          fill(top+"limits={", "a%d=1,", "}"),
		"a key once more":         fill("", "a%d=1\n", "a0=1"),
		"headers":                 fill("", "[a%d]\n", ""),
		"motifs":                  fill(top, "[[motif]]\n", ""),
		"motifs in braces":        fill(top+"motif=[", "{},", "]"),
		"motifs of one key":       fill(top, "[[motif]]\na%d=1\n", ""),
		"wheels":                  fill(top, "[[wheel]]\nname=\"%d\"\n", ""),
		"blanks":                  fill(top, "[[blank]]\nname=\"%d\"\n", ""),
		"stations":                fill(top+"[blank]\nstation=[", "{height=%d,across=9,wall=1},\n", "]"),
		"stations by header":      fill(top, "[[blank.station]]\nheight=%d\n", ""),
		"numbers":                 fill(top+"layout.band=[", "1,", "]"),
		"a number":                fill(top+"layout.repeats=", "1", ""),
		"a float":                 fill(top+"layout.repeats=", "1", ".5"),
		"a number in quotes":      fill(top+"limits.land=\"", "1", "\""),
		"a word in quotes":        fill(top+"limits.land=\"", "x ", "\""),
		"an edge":                 fill(top+"[[wheel]]\nedge=\"", "mitre", "\""),
		"a wheel's name":          fill(top+"[[motif]]\nwheel=\"", "mitre", "\""),
		"a kind":                  fill(top+"[[motif]]\nkind=\"", "leaf", "\""),
		"a title":                 fill("title=\"", "é", "\"\nlength=\"mm\""),
		"a title of escapes":      fill("title=\"", "\\n", "\"\nlength=\"mm\""),
		"a title of many lines":   fill("title='''", "\n", "'''\nlength=\"mm\""),
		"an open title":           fill("title='''", "\n", ""),
		"a key":                   fill("", "a", "=1"),
		"a key in quotes":         fill("\"", "\\n", "\"=1"),
		"equals signs":            fill("a", "=", ""),
		"notes":                   fill("", "# nothing\n", ""),
		"new lines":               fill("", "\n", ""),
		"blanks and new lines":    fill("", " \t\r\n", ""),
		"a line that never ends":  fill("x = 3 ", "x", ""),
		"zeros":                   fill("", "\x00", ""),
		"noise":                   string(noise),
		"text, then one bad byte": fill("", "# nothing\n", "\xff"),
		"UTF-16":                  fill("\xff\xfe", "l\x00", ""),
		"escape codes":            fill("", "\x1b[31m", ""),
	}
}

func TestHostile(t *testing.T) {
	// Not a measure of speed: anything that isn't linear would take far longer.
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute)
	defer cancel()
	for name, text := range hostile() {
		done := make(chan error, 1)
		go func() {
			_, err := Read("hostile.toml", []byte(text))
			done <- err
		}()
		select {
		case err := <-done:
			if err == nil {
				t.Errorf("%s: read without an error", name)
				continue
			}
			onlyError(t, err)
		case <-ctx.Done():
			t.Fatalf("%s: not read in time", name)
		}
	}
}

// The largest job there may be is read, and in no time.
func TestReadMost(t *testing.T) {
	var b strings.Builder
	b.WriteString("length = \"mm\"\nlayout.repeats = 360\n")
	for i := range mostBlanks {
		fmt.Fprintf(&b, "[[blank]]\nname = \"blank %d\"\nstation = [\n", i)
		for j := range mostStations {
			fmt.Fprintf(&b, "  {height = %d, across = 80, wall = 3},\n", j)
		}
		b.WriteString("]\n")
	}
	for i := range mostWheels {
		fmt.Fprintf(&b, "[[wheel]]\nname = \"wheel %d\"\nedge = \"flat\"\nacross = 100\nthick = 10\n", i)
	}
	for i := range mostMotifs {
		fmt.Fprintf(&b, "[[motif]]\nkind = \"leaf\"\nwheel = \"wheel %d\"\ndepth = 1\n", i%mostWheels)
	}
	j, err := Read("most.toml", []byte(b.String()))
	if err != nil {
		t.Fatal(err)
	}
	if len(j.Blanks) != mostBlanks || len(j.Blanks[0].Stations) != mostStations || len(j.Rack) != mostWheels || len(j.Motifs) != mostMotifs {
		t.Error("something was lost")
	}

	for name, more := range map[string]string{
		"motif[257]": "[[motif]]\nkind = \"leaf\"\nwheel = \"wheel 0\"\ndepth = 1\n",
		"wheel[65]":  "[[wheel]]\nname = \"w\"\nedge = \"flat\"\nacross = 100\nthick = 10\n",
		"blank[65]":  "[[blank]]\nname = \"b\"\nstation = [ {height = 0, across = 80, wall = 3}, {height = 9, across = 80, wall = 3} ]\n",
	} {
		e := refused(t, []byte(b.String()+more))
		if e.Key != name || e.Line != 1+strings.Count(b.String(), "\n") || !strings.HasPrefix(e.Accepted, "at most ") {
			t.Errorf("%s: %v", name, e)
		}
	}
}

func TestRefuseFile(t *testing.T) {
	for _, c := range []struct {
		name, text           string
		line                 int
		read, accepted, hint string
	}{
		{"empty", "", 1, "an empty file", "a job", "new"},
		{"blank lines and notes", "\n# nothing\n\n", 1, "an empty file", "a job", "new"},
		{"a byte order mark", "\ufeff", 1, "an empty file", "a job", "new"},
		{"a byte that is no text", "title = \"a\"\nlength = \"\xff\"\n", 2, "a byte 0xff", "UTF-8", "plain text"},
		{"a picture", "\x89PNG\r\n\x1a\n\x00\x00", 1, "a byte 0x89", "UTF-8", "plain text"},
		{"an escape code", "# \x1b[31m\n", 1, "a byte 0x1b", "UTF-8", "plain text"},
		{"UTF-16", "\xff\xfel\x00", 1, "a byte 0xff", "UTF-8", "plain text"},
		{"too large", strings.Repeat("#", MostBytes+1), 1, "1048577 bytes", "at most 1 MiB", ""},
		{"words", "Dear glass cutter,\nplease", 1, `"Dear glass cutter,"`, "key = value", ""},
		{"a fraction without quotes", "length = \"in\"\nacross = 3 1/8\n", 2, `"across = 3 1/8"`, "key = value", `in quotes: "3 1/8 in"`},
		{"a fraction with an inch mark", "across = 3-1/8\"\n", 1, "across = 3-1/8", "key = value", `in quotes: "3 1/8 in"`},
		{"a length with its unit", "across = 79.4 mm\n", 1, "across = 79.4 mm", "key = value", `in quotes`},
		{"an inch mark in quotes", "across = \"3 1/8\"\"\n", 1, `3 1/8`, "key = value", "single quotes"},
		{"a decimal comma", "across = 79,4\n", 1, `79,4`, "key = value", "decimal point"},
		{"no digit before the point", "across = .5\n", 1, `.5`, "key = value", "a number begins with a digit"},
		{"a word without quotes", "edge = mitre\n", 1, `edge = mitre`, "key = value", "text goes in quotes"},
		{"a switch with a capital", "terminal = True\n", 1, `terminal = True`, "key = value", "true and false are written small"},
		{"a switch in capitals", "mirror = FALSE\n", 1, `mirror = FALSE`, "key = value", "true and false are written small"},
		{"a word that begins like a switch with a capital", "edge = Truelove\n", 1, `edge = Truelove`, "key = value", "text goes in quotes"},
		{"a missing closing quote", "name = \"tumbler\n", 1, `tumbler`, "a quote at each end", "the closing quote is missing"},
		{"a missing closing single quote", "name = 'tumbler\n", 1, `tumbler`, "a quote at each end", "the closing quote is missing"},
		{"a word that begins like a switch", "edge = flat\n", 1, `edge = flat`, "key = value", "text goes in quotes"},
		{"far into a line", "station = [ {height=0, across=3, wall=1}, {height=3, across=3 1/8, wall=1} ]\n", 1, `…" wall=1}, {height=3, across=3 1/8, wall=1} ]"`, "key = value", "in quotes"},
		{"a list without an end", "station = [\n1,\n", 2, "1,", "array is incomplete", ""},
		{"a second table", "[limits]\n[limits]\n", 2, `"limits" once more`, "each key once", ""},
		{"a table that is a key", "limits = 1\n[limits]\n", 2, `"limits" once more`, "each key once", ""},
		{"a list that is a table", "[motif]\n[[motif]]\n", 2, `"motif" once more`, "or [[motif]] over each", "write [[motif]] over every one"},
		{"a table that is a list", "[[motif]]\n[motif]\n", 2, `"motif" once more`, "or [[motif]] over each", "write [[motif]] over every one"},
		{"a list in single brackets", "[motif]\nkind = \"leaf\"\n[motif]\n", 3, `"motif" once more`, "or [[motif]] over each", "write [[motif]] over every one"},
		{"a list that has an end", "motif = [{}]\n[[motif]]\n", 2, `"motif" once more`, "each key once", ""},
		{"a table that has an end", "limits = {}\n[limits.a]\n", 2, `"limits" once more`, "each key once", ""},
		{"a dotted key into a table", "[a.limits]\n[a]\nlimits.land = 1\n", 3, `"limits" once more`, "each key once", ""},
		{"a dotted key into braces", "limits = {}\nlimits.land = 1\n", 2, `"limits" once more`, "each key once", ""},
		{"a key twice in braces", "limits = {land = 1,\nland = 2}\n", 2, `"land" once more`, "each key once", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			e := refused(t, []byte(c.text))
			if e.Line != c.line || !strings.Contains(e.Read, c.read) || !strings.Contains(e.Accepted, c.accepted) || !strings.Contains(e.Hint, c.hint) {
				t.Error(e)
			}
		})
	}
}

// The name of a file is the one part of a message that doesn't come from it.
func TestErrorNamesFile(t *testing.T) {
	for name, want := range map[string]string{
		"-":                           "standard input:1: ",
		"jobs/a b.toml":               "jobs/a b.toml:1: ",
		"a\nb\x1b.toml":               "a·b·.toml:1: ",
		"\xff":                        "·:1: ",
		strings.Repeat("x", 300):      strings.Repeat("x", 200) + "…:1: ",
		"C:\\jobs\\glass.toml":        "C:\\jobs\\glass.toml:1: ",
		"/srv/jobs/Becher für Ü.toml": "/srv/jobs/Becher für Ü.toml:1: ",
	} {
		_, err := Read(name, nil)
		if e := onlyError(t, err); !strings.HasPrefix(e.Error(), want) {
			t.Errorf("%q: %v", name, e)
		}
	}
	e := &Error{File: "tumbler.toml", Line: 12, Key: "limits.land", Read: `"-1/32"`, Accepted: "a length"}
	if got, want := e.Error(), `tumbler.toml:12: limits.land: read "-1/32"; accepted: a length`; got != want {
		t.Errorf("got %s", got)
	}
}

// Of several mistakes the first in the file is told, in whatever order they are found.
func TestRefuseFirst(t *testing.T) {
	wrong := map[string]string{
		"title":                   `titel = "x"`,
		"blank.floor":             `floor = 0`,
		"blank.station[2].height": `height = -1`,
		"limits.clear":            `clear = 2`,
		"wheel[1].edge":           `edge = "x"`,
		"wheel[4].thick":          `thick = nan`,
		"layout.repeats":          `repeats = 0`,
		"layout.band":             `band = 1`,
		"motif[1].fronds":         `frond = 1`,
		"motif[2].wheel":          `wheel = "x"`,
	}
	f := base()
	for name, text := range wrong {
		f = f.with(t, name, text)
	}
	for _, line := range base() {
		if _, ok := wrong[line.name]; !ok {
			continue
		}
		if e := refused(t, f.bytes()); e.Line != f.line(t, line.name) {
			t.Errorf("wanted line %d: %v", f.line(t, line.name), e)
		}
		f = f.with(t, line.name, line.text)
	}
	if _, err := Read("mended.toml", f.bytes()); err != nil {
		t.Error(err)
	}

	// Neither is told what only follows from another mistake.
	f = base().with(t, "wheel[1].name", `nmae = "mitre"`)
	if e := refused(t, f.bytes()); e.Key != "wheel[1].nmae" {
		t.Error(e)
	}
	turned := fixture{}
	for _, table := range []string{"title", "length", "motif[1]", "blank", "wheel[1]", "layout"} {
		for _, line := range base() {
			if line.name == table || strings.HasPrefix(line.name, table+".") || strings.HasPrefix(line.name, table+"[") {
				turned = append(turned, line)
			}
		}
	}
	if _, err := Read("turned.toml", turned.bytes()); err != nil {
		t.Fatal(err)
	}
	turned = turned.with(t, "wheel[1].name", `nmae = "mitre"`)
	if e := refused(t, turned.bytes()); e.Key != "wheel[1].nmae" {
		t.Error(e)
	}
}

func TestRefuseAlternating(t *testing.T) {
	for _, on := range []string{"odd", "even"} {
		f := base().with(t, "layout.repeats", "repeats = 5").with(t, "motif[1].on", `on = "`+on+`"`)
		e := refused(t, f.bytes())
		if e.Line != f.line(t, "motif[1].on") || e.Key != "motif[1].on" || e.Accepted != `"each", or an even number of repeats` ||
			!strings.Contains(e.Error(), `alternating repeats need an even N: write repeats = 6, or on = "each"`) || !strings.Contains(e.Read, "repeats = 5") {
			t.Error(e)
		}
		f = f.with(t, "layout.repeats", "repeats = 4")
		if _, err := Read("even.toml", f.bytes()); err != nil {
			t.Error(err)
		}
	}
}

// Where the same thing is a line of its own, or one of many in a line or a list.
func TestLines(t *testing.T) {
	const text = `title = "lines"
length = "mm"
limits.land = 1
blank.station = [
  { height = 0, across = 80, wall = 8 },
  # a note

  { height = 50, across = 80,
    wall = 4 },
  { height = 100, across = 80, wall = 3 }, ]
wheel = [
  { name = "m", edge = "mitre",
    across = 100, thick = 6, angle = 90 } ]
layout = { repeats = 6, band = [
  10,
  90,
] }

[[motif]]
kind = "leaf"
wheel = "m"
depth = 1
at = [
  0,
  0.5 ]
`
	if _, err := Read("lines.toml", []byte(text)); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		from, to, key string
		line          int
	}{
		{"land = 1", "land = -1", "limits.land", 3},
		{"land = 1", "lnad = 1", "limits.lnad", 3},
		{"height = 0,", "", "blank.station[1].height", 5},
		{"height = 50", "height = 0", "blank.station[2].height", 8},
		{"wall = 4", "wall = 40", "blank.station[2].wall", 9},
		{"wall = 4", "", "blank.station[2].wall", 8},
		{"wall = 4", "wal = 4", "blank.station[2].wal", 9},
		{"height = 100", "height = inf", "blank.station[3].height", 10},
		{"angle = 90", "angle = 9", "wheel[1].angle", 13},
		{", angle = 90", "", "wheel[1].angle", 12},
		{"repeats = 6,", "", "layout.repeats", 14},
		{"  10,", "  -10,", "layout.band[1]", 15},
		{"  90,", "  101,", "layout.band[2]", 16},
		{"depth = 1", "", "motif[1].depth", 19},
		{"depth = 1", "depth = [\n]", "motif[1].depth", 22},
		{"  0.5 ]", "  5 ]", "motif[1].at[2]", 25},
	} {
		if e := refused(t, []byte(strings.Replace(text, c.from, c.to, 1))); e.Line != c.line || e.Key != c.key {
			t.Errorf("%s for %s: wanted line %d, key %s: %v", c.to, c.from, c.line, c.key, e)
		}
	}
}

// seeds are files to start from for the tests that make files up.
func seeds(f *testing.F) {
	f.Add(base().bytes())
	_, demo := Demo()
	f.Add(demo)
	f.Add(Starter(0))
	for _, text := range []string{
		"", "\ufeff", "a.b=1\n[a]", "[[a.b]]\n[a]\n[a.b.c]", "a=[{b.c=1},[1]]\n[a]", "x=07:32:00", "x=1979-05-27 1", "x=-nan", "x=0x_", "x=1_0", "\"\"=''''''", "[a]\nb.c=1\n[a.b]\n[a.b.d]",
		"length=\"mm\"\n[[blank]]\n[[blank.station]]\n[[blank]]\nstation=[]", "x={a=1,\n\n a.b=2}", "[a.b]\n[a]\nb.c=1",
	} {
		f.Add([]byte(text))
	}
}

func FuzzRead(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := Read("fuzz.toml", data)
		if err != nil {
			e := onlyError(t, err)
			if lines := 1 + strings.Count(string(data), "\n"); e.Line > lines {
				t.Errorf("line %d of %d", e.Line, lines)
			}
			return
		}
		if len(j.Blanks) == 0 || len(j.Rack) == 0 || len(j.Motifs) == 0 || j.Layout.Repeats < 1 {
			t.Errorf("half a job: %+v", j)
		}
		for _, m := range j.Motifs {
			if m.Wheel < 0 || m.Wheel >= len(j.Rack) || m.Kind.Name == "" || len(m.Values) != len(m.Kind.Params) || m.Line < 1 {
				t.Errorf("half a motif: %+v", m)
			}
		}
	})
}

// Any value on any line of a good job is read, or refused on that line or in
// one that depends on it.
func FuzzValue(f *testing.F) {
	for name, rule := range rules() {
		for _, wrong := range rule.wrong {
			f.Add(name, wrong)
		}
	}
	f.Fuzz(func(t *testing.T, name, text string) {
		if rules()[name].accepted == "" || strings.Contains(text, "\n") {
			return
		}
		_, key := split(name)
		j, err := Read("fuzz.toml", base().with(t, name, key+" = "+text).bytes())
		if err != nil {
			onlyError(t, err)
			return
		}
		if j.Layout.Repeats < 1 || len(j.Rack) != 4 || len(j.Motifs) != 2 {
			t.Errorf("half a job: %+v", j)
		}
		for _, length := range []float64{j.Limits.Land, j.Limits.Rim, j.Rack[0].Radius, j.Rack[0].Thick, j.Motifs[0].Depth, j.Motifs[0].Width.Value} {
			if !(length >= 0 && length <= 1000) {
				t.Errorf("%s = %s gives %g", key, text, length)
			}
		}
	})
}

// The tree is the one go-toml builds, and is refused where go-toml refuses it.
func FuzzDocument(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		if !utf8.Valid(data) || notText(data) != nil || strings.HasPrefix(string(data), "\ufeff") {
			return
		}
		var want map[string]any
		err := toml.Unmarshal(data, &want)
		doc, wrong := newDocument(data)
		if wrong != nil {
			if err == nil {
				t.Errorf("refused, though it is TOML: %+v", *wrong)
			}
			return
		}
		got, odd := plain(doc.root)
		switch {
		case errors.Is(odd, errDate): // no key takes one, so nothing reads it
		case err != nil && odd == nil:
			t.Errorf("taken, though it isn't TOML: %v", err)
		case err == nil && odd != nil:
			t.Errorf("a number is refused, though it is TOML: %v", odd)
		case err == nil:
			if diff := cmp.Diff(floats(want), any(got), cmpopts.EquateNaNs()); diff != "" {
				t.Errorf("wanted -, read +:\n%s", diff)
			}
		}
	})
}

var errDate = errors.New("a date")

// plain returns a table as go-toml would, but for whole numbers, which are
// floats too. The error is the first of its numbers', which are read late.
func plain(t *table) (map[string]any, error) {
	all := make(map[string]any)
	var odd error
	var walk func(v *value) any
	walk = func(v *value) any {
		switch {
		case v.table != nil:
			inner, err := plain(v.table)
			odd = errors.Join(odd, err)
			return inner
		case v.kind == unstable.Array:
			list := []any{}
			for _, item := range v.items {
				list = append(list, walk(item))
			}
			return list
		case v.kind == unstable.String:
			return v.text
		case v.kind == unstable.Bool:
			return v.text == "true"
		case v.isNumber():
			x, err := v.number()
			odd = errors.Join(odd, err)
			return x
		}
		odd = errors.Join(odd, errDate)
		return nil
	}
	for _, e := range t.fields {
		all[e.key] = walk(e.value)
	}
	return all, odd
}

// floats returns what go-toml read with its whole numbers made floats.
func floats(v any) any {
	switch v := v.(type) {
	case map[string]any:
		all := make(map[string]any, len(v))
		for key, inner := range v {
			all[key] = floats(inner)
		}
		return all
	case []any:
		list := make([]any, len(v))
		for i := range v {
			list[i] = floats(v[i])
		}
		return list
	case int64:
		return float64(v)
	}
	return v
}
