package job

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"roundlay/geometry"
)

// probes names a line of base for every key there is. Two keys have none and are put
// beside another.
func probes(t *testing.T, table Table, key Key, value string) (data []byte, path string) {
	t.Helper()
	written := key.Name + " = " + value
	f := base()
	if beside, ok := map[string]string{"tip": "wheel[1].angle", "tip_radius": "wheel[1].angle"}[key.Name]; ok {
		return f.with(t, beside, "angle = 90\n"+written).bytes(), "wheel[1]." + key.Name
	}
	if key.Name == "include" { // base stands alone
		return f.with(t, "title", written).bytes(), key.Name
	}
	for _, line := range f {
		owner, name := split(line.name)
		_, step := split(owner)
		if step, _ = numbered(step); strings.Contains(owner, ".parts.") {
			step = "part"
		}
		if step == table.Name && name == key.Name {
			return f.with(t, line.name, written).bytes(), line.name
		}
	}
	t.Fatalf("no line for %s of %q", key.Name, table.Name)
	return nil, ""
}

// verdict is what the reader says of one key: nothing, what it would accept, or that
// another key is wrong.
func verdict(t *testing.T, data []byte, path string) (accepted string) {
	t.Helper()
	_, err := Read("x.toml", data)
	if err == nil {
		return ""
	}
	if e := onlyError(t, err); e.Key == path || strings.HasPrefix(e.Key, path+"[") {
		return e.Accepted
	}
	return ""
}

// eachKey runs a test for every key that has a value.
func eachKey(t *testing.T, test func(t *testing.T, table Table, key Key)) {
	for _, table := range Tables() {
		for _, key := range table.Keys {
			if key.Sort != OfTables {
				t.Run(table.Name+"."+key.Name, func(t *testing.T) { test(t, table, key) })
			}
		}
	}
}

// A key of the table is one that is read: what no key takes is refused there.
func TestTablesAreRead(t *testing.T) {
	eachKey(t, func(t *testing.T, table Table, key Key) {
		data, path := probes(t, table, key, "{}")
		if verdict(t, data, path) == "" {
			t.Error("the reader doesn't look at it")
		}
		if key.About == "" || strings.HasSuffix(key.About, ".") {
			t.Errorf("about: %q", key.About)
		}
	})
}

// A key that is read is one of the table: every name that the readers ask for.
func TestReadersAskForTables(t *testing.T) {
	asked := regexp.MustCompile(`(?:optional|required|has)\("([a-z_]+)"\)`)
	listed := regexp.MustCompile(`(?m)^\t\t\{"([a-z_]+)", (?:&|\[\])`)
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	found := make(map[string]bool)
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, pattern := range []*regexp.Regexp{asked, listed} {
			for _, m := range pattern.FindAllStringSubmatch(string(text), -1) {
				found[m[1]] = true
				if !slices.ContainsFunc(Tables(), func(t Table) bool { _, ok := t.key(m[1]); return ok }) {
					t.Errorf("%s asks for %s, which no table has", file, m[1])
				}
			}
		}
	}
	for _, table := range Tables() {
		for _, key := range table.Keys {
			if !found[key.Name] {
				t.Errorf("no reader asks for %s of %q", key.Name, table.Name)
			}
		}
	}
}

// inRange writes a value of a range as a job has it.
func (k Key) inRange(x float64) string {
	switch k.Sort {
	case OfText:
		return `"` + strings.Repeat("x", int(x)) + `"`
	case OfWeight:
		return fmt.Sprintf(`"%.12f g"`, x)
	case OfLength, OfLengths:
		return fmt.Sprintf(`"%.12f mm"`, x)
	case OfHeights:
		return fmt.Sprintf(`["%.12f mm", "%.12f mm"]`, x, x)
	case OfShares, OfRock:
		return fmt.Sprintf("[1, %.12g]", x)
	}
	return fmt.Sprintf("%.12g", x)
}

// The ranges of the table are the reader's: their ends are taken, or refused for the sake
// of another key, and what is just past them is refused as out of range.
func TestTablesRanges(t *testing.T) {
	count := 0
	eachKey(t, func(t *testing.T, table Table, key Key) {
		if key.Max <= key.Min {
			if slices.Contains([]Sort{OfText, OfLength, OfLengths, OfHeights, OfNumber, OfWhole, OfShare, OfDegrees, OfMeasure, OfWeight}, key.Sort) {
				t.Error("it has no range")
			}
			return
		}
		count++
		past := 1e-6
		if key.Sort == OfText || key.Sort == OfWhole {
			past = 1
		}
		said := func(x float64) string {
			data, path := probes(t, table, key, key.inRange(x))
			return verdict(t, data, path)
		}
		out := said(key.Max * 1e5)
		if key.Sort == OfText {
			out = said(key.Max * 2)
		}
		for _, end := range []struct{ at, past float64 }{{key.Min, key.Min - past}, {key.Max, key.Max + past}} {
			if got := said(end.at); got == out {
				t.Errorf("%g is refused: %s", end.at, got)
			}
			if got := said(end.past); got != out || got == "" {
				t.Errorf("%.9g: %q, wanted %q", end.past, got, out)
			}
		}
	})
	if count < 30 {
		t.Errorf("%d ranges", count)
	}
}

// The words of the table are the reader's.
func TestTablesWords(t *testing.T) {
	eachKey(t, func(t *testing.T, table Table, key Key) {
		if key.Sort != OfWord && key.Sort != OfKind {
			return
		}
		data, path := probes(t, table, key, `"zebra"`)
		out := verdict(t, data, path)
		if out != list(key.Words) || len(key.Words) < 2 {
			t.Errorf("accepted: %s; the table has %q", out, key.Words)
		}
		for _, word := range key.Words {
			if data, path := probes(t, table, key, inTOML(word)); verdict(t, data, path) == out {
				t.Errorf("%s is refused", word)
			}
		}
	})
}

// A key that isn't needed may be left out, and then its default is what holds.
func TestTablesDefaults(t *testing.T) {
	float := regexp.MustCompile(`[0-9]+\.[0-9]+`)
	holds := func(t *testing.T, text string) string {
		j, err := Read("x.toml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		b, m := *j.Blanks[0], j.Motifs[0]
		m.Kind.Draw, m.Kind.Params, m.Line = nil, nil, 0
		all := fmt.Sprintf("%q %+v %+v %+v %s %v %v %+v %+v", j.Title, j.Limits, j.Shop, j.Layout, b.Name, b.Material, b.Straight, m, j.Rack)
		return float.ReplaceAllStringFunc(all, func(digits string) string { // the last digit depends on the way
			x, err := strconv.ParseFloat(digits, 64)
			if err != nil {
				t.Fatal(err)
			}
			return fmt.Sprintf("%.9g", x)
		})
	}
	small := "length = \"in\"\n[blank]\nstation = [{height = 0, across = 3, wall = 0.3}, {height = 4, across = 3, wall = 0.2}]\n" +
		"[limits]\n[[wheel]]\nname = \"mitre\"\nedge = \"mitre\"\nacross = 3\nthick = 0.25\nangle = 90\n[shop]\n[layout]\nrepeats = 5\n" +
		"[[motif]]\nkind = \"leaf\"\nwheel = \"mitre\"\ndepth = \"1/32\"\n"
	without := holds(t, small)
	count := 0
	for _, table := range Tables() {
		for _, key := range table.Keys {
			if key.Default == "" || key.Name == "paper" { // paper is there or not; the ends are where it would lie
				continue
			}
			count++
			path := joined(table.Name, key.Name)
			if table.Name == "wheel" || table.Name == "motif" {
				path = Item(table.Name, 0) + "." + key.Name
			}
			given, err := Revise([]byte(small), Revision{Op: "set", Path: path, Value: key.Default})
			if err != nil {
				t.Fatal(err)
			}
			if string(given) == small {
				t.Errorf("%s was not set", path)
			}
			if with := holds(t, string(given)); with != without {
				t.Errorf("%s = %s isn't what holds without it:\n%s\n%s", path, key.Default, with, without)
			}
		}
	}
	if count < 18 {
		t.Errorf("%d defaults", count)
	}
}

// The needed keys are those without which a job isn't read.
func TestTablesNeeded(t *testing.T) {
	eachKey(t, func(t *testing.T, table Table, key Key) {
		data, path := probes(t, table, key, "1")
		r, err := newRevising(data, nil)
		if err != nil {
			t.Fatal(err)
		}
		if err := r.removeAsked(path); err != nil {
			t.Fatal(err)
		}
		_, err = Read("x.toml", r.bytes())
		missing := err != nil && onlyError(t, err).Key == path && onlyError(t, err).Read == "nothing"
		// Of across and around one is needed; fill and weighs need the floor.
		if either := key.Name == "across" && table.Name == "station" || key.Name == "floor"; missing != key.Needed && !either {
			t.Errorf("needed: %t; without it: %v", key.Needed, err)
		}
	})
}

// A key that is new in the table comes into the starter by itself.
func TestStarterNewKey(t *testing.T) {
	tables := Tables()
	for i := range tables {
		tables[i].Keys = append(tables[i].Keys,
			Key{Name: "novel", About: "what no one had before", Sort: OfLength, inches: `"1/8"`, mm: "3"},
			Key{Name: "plain", About: "without an example"})
	}
	for unit, value := range map[geometry.Unit]string{geometry.Inch: `"1/8"`, geometry.Millimetre: "3"} {
		text := string(started(unit, tables))
		if n := strings.Count(text, "\n"+noted("# novel = "+value, "what no one had before")); n != len(tables) {
			t.Errorf("%d of %d in %s", n, len(tables), unit)
		}
		if n := strings.Count(text, "\n#   plain    without an example"); n != len(tables) {
			t.Errorf("%d plain ones of %d in %s", n, len(tables), unit)
		}
		if _, err := Read("x.toml", []byte(text)); err != nil {
			t.Error(err)
		}
	}
}
