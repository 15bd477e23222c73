package job

import (
	"strings"
	"testing"

	"roundlay/geometry"
)

// nowhere is a job with all that a shop's file and a motif's don't have.
const nowhere = `length = "in"
include = ["shop.toml", "fern.toml"]
[blank]
station = [{height = 0, across = 3, wall = "5/16"}, {height = "3 1/2", across = 3.25, wall = "1/8"}]
[layout]
repeats = 5
`

// The files that are written to be included are, with every kind of motif, in either unit,
// and hold what the tables say.
func TestBeginFiles(t *testing.T) {
	for _, unit := range []geometry.Unit{geometry.Inch, geometry.Millimetre} {
		shop := string(ShopFile("shop.toml", unit))
		for _, kind := range allKinds() {
			fern := string(MotifFile("fern.toml", kind, unit))
			j, err := ReadWith("x.toml", []byte(nowhere), files(map[string]string{"shop.toml": shop, "fern.toml": fern}))
			if err != nil {
				t.Fatalf("%v\n%s", err, fern)
			}
			if len(j.Rack) != 2 || len(j.Motifs) != 1 || j.Motifs[0].Kind.Name != kind.Name || len(j.Motifs[0].Parts) != 0 {
				t.Errorf("%+v", j)
			}
			for _, p := range kind.Params {
				if got := j.Motifs[0].Values[p.Name]; got != p.Default {
					t.Errorf("%s of %s is %g", p.Name, kind.Name, got)
				}
			}
			explained(t, fern, "motif", "part")
			for _, part := range kind.Parts {
				if !strings.Contains(fern, quoted(part)) {
					t.Errorf("a file of %s doesn't name its part %s", kind.Name, part)
				}
			}
			changed := nowhere + "[[motif]]\nname = \"fern\"\nturn = 180\n"
			if _, err := ReadWith("x.toml", []byte(changed), files(map[string]string{"shop.toml": shop, "fern.toml": fern})); err != nil {
				t.Error(err)
			}
		}
		explained(t, shop, "limits", "wheel", "shop")
	}
}

// explained checks that every key of tables has a note in a text.
func explained(t *testing.T, text string, tables ...string) {
	t.Helper()
	for _, name := range tables {
		table, _ := tableOf(name)
		for _, k := range table.Keys {
			if k.Sort != OfTables && !strings.Contains(text, k.Name+" = ") && !strings.Contains(text, "#   "+k.Name) {
				t.Errorf("%s of %s is not explained in\n%s", k.Name, name, text)
			}
		}
	}
}

// Each note of such a file that is a key can be made one.
func TestBeginFileNotes(t *testing.T) {
	leaf := allKinds()[0]
	folder := map[string]string{"shop.toml": string(ShopFile("shop.toml", 0)), "fern.toml": string(MotifFile("fern.toml", leaf, 0))}
	for name, text := range folder {
		var b strings.Builder
		for line := range strings.Lines(text) {
			if rest, note := strings.CutPrefix(line, "# "); note && !strings.HasPrefix(rest, " ") && (strings.Contains(rest, " = ") || strings.HasPrefix(rest, "[")) {
				line = rest
			}
			b.WriteString(line)
		}
		folder[name] = b.String()
	}
	j, err := ReadWith("x.toml", []byte(nowhere), files(folder))
	if err != nil {
		t.Fatalf("%v\n%s\n%s", err, folder["shop.toml"], folder["fern.toml"])
	}
	if len(j.Rack) != 3 || j.Shop.Rate == 0 || len(j.Motifs[0].Parts) != 1 || j.Motifs[0].Land == nil {
		t.Errorf("%+v", j)
	}
}

// A name that no motif could have is the kind's.
func TestMotifFileName(t *testing.T) {
	for name, want := range map[string]string{"fern.toml": "fern", "two words.toml": "two words", ".toml": "leaf", "a\nb.toml": "leaf", strings.Repeat("x", 300): "leaf"} {
		if text := string(MotifFile(name, allKinds()[0], 0)); !strings.Contains(text, "\nname = "+quoted(want)+" ") {
			t.Errorf("%q:\n%s", name, text)
		}
	}
}
