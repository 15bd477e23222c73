package job

import (
	"strings"
	"testing"
)

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
		{"too large", strings.Repeat("#", MaxBytes+1), 1, "1048577 bytes", "at most 1 MiB", ""},
		{"words", "Dear glass cutter,\nplease", 1, `"Dear glass cutter,"`, "key = value", ""},
		{"a fraction without quotes", "length = \"in\"\nacross = 3 1/8\n", 2, `"across = 3 1/8"`, "key = value", `in quotes: "3 1/8 in"`},
		{"a fraction with an inch mark", "across = 3-1/8\"\n", 1, "across = 3-1/8", "key = value", `in quotes: "3 1/8 in"`},
		{"a length with its unit", "across = 79.4 mm\n", 1, "across = 79.4 mm", "key = value", `in quotes`},
		{"an inch mark in quotes", "across = \"3 1/8\"\"\n", 1, `3 1/8`, "key = value", "single quotes"},
		{"a decimal comma", "across = 79,4\n", 1, `79,4`, "key = value", "decimal point"},
		{"no digit before the point", "across = .5\n", 1, `.5`, "key = value", "a number begins with a digit"},
		{"a word without quotes", "edge = mitre\n", 1, `edge = mitre`, "key = value", "text goes in quotes"},
		{"a switch with a capital", "terminal = True\n", 1, `terminal = True`, "key = value", "write true and false in small letters"},
		{"a switch in capitals", "mirror = FALSE\n", 1, `mirror = FALSE`, "key = value", "write true and false in small letters"},
		{"a word that begins like a switch with a capital", "edge = Truelove\n", 1, `edge = Truelove`, "key = value", "text goes in quotes"},
		{"a missing closing quote", "name = \"tumbler\n", 1, `tumbler`, "a quote at each end", "the closing quote is missing"},
		{"a missing closing single quote", "name = 'tumbler\n", 1, `tumbler`, "a quote at each end", "the closing quote is missing"},
		{"a word that begins like a switch", "edge = flat\n", 1, `edge = flat`, "key = value", "text goes in quotes"},
		{"far into a line", "station = [ {height=0, across=3, wall=1}, {height=3, across=3 1/8, wall=1} ]\n", 1, `…" wall=1}, {height=3, across=3 1/8, wall=1} ]"`, "key = value", "in quotes"},
		{"a word without quotes, told", "length = inch # 64ths\n", 1, `length = inch`, "key = value", `text goes in quotes: "inch"`},
		{"no comma between tables", "station = [{height=0, across=3} {height=3, across=3}]\n", 1, `{height=3`, "a comma between two", `a comma is missing before {height=3`},
		{"no comma at a line's end", "station = [\n  {height=0}\n  {height=3}\n]\n", 3, `{height=3}`, "a comma between two", `a comma is missing before {height=3`},
		{"no comma between texts", "include = [\"a\" \"b\"]\n", 1, `b`, "a comma between two", `a comma is missing before "b"`},
		{"no comma between keys", "station = [{height=0 across=3}]\n", 1, `across=3`, "a comma between two", `a comma is missing before across=3`},
		{"a list without an end", "station = [\n1,\n", 2, "1,", "array is incomplete", ""},
		{"a second table", "[limits]\n[limits]\n", 2, `"limits" a second time`, "each key once", ""},
		{"a table that is a key", "limits = 1\n[limits]\n", 2, `"limits" a second time`, "each key once", ""},
		{"a list that is a table", "[motif]\n[[motif]]\n", 2, `"motif" a second time`, "or [[motif]] over each", "write [[motif]] over each"},
		{"a table that is a list", "[[motif]]\n[motif]\n", 2, `"motif" a second time`, "or [[motif]] over each", "write [[motif]] over each"},
		{"a list in single brackets", "[motif]\nkind = \"leaf\"\n[motif]\n", 3, `"motif" a second time`, "or [[motif]] over each", "write [[motif]] over each"},
		{"a list that has an end", "motif = [{}]\n[[motif]]\n", 2, `"motif" a second time`, "each key once", ""},
		{"a table that has an end", "limits = {}\n[limits.a]\n", 2, `"limits" a second time`, "each key once", ""},
		{"a dotted key into a table", "[a.limits]\n[a]\nlimits.land = 1\n", 3, `"limits" a second time`, "each key once", ""},
		{"a dotted key into braces", "limits = {}\nlimits.land = 1\n", 2, `"limits" a second time`, "each key once", ""},
		{"a key twice in braces", "limits = {land = 1,\nland = 2}\n", 2, `"land" a second time`, "each key once", ""},
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

// Of several mistakes the first in the file is reported, in whatever order they are found.
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

	// What only follows from another mistake is not reported either.
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
		if e.Line != f.line(t, "motif[1].on") || e.Key != "motif[1].on" || e.Accepted != `"each", a list of repeats, or an even number of them` ||
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
