package desk

import (
	"errors"
	"strings"
	"testing"
)

const blade = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 60"><g stroke="black" fill="none">` +
	`<g id="stem"><path d="M10 60L10 0"/></g><g id="left wing"><path d="M10 40L2 20"/><path d="M10 50L2 30"/></g></g></svg>`

// withBlade is the demo with a drawing from a file beside it.
func withBlade(file string) string {
	return demo() + "\n[[motif]]\nkind = \"drawing\"\nwheel = \"small mitre\"\ndepth = \"1/64\"\nheight = 0.2\nat = [0, 0.9]\nfile = \"" + file + "\"\n"
}

// A file beside the job comes with the request, or from the disk; every request reads it.
func TestFilesBeside(t *testing.T) {
	text := withBlade("blade.svg")
	asked := ""
	onDisk := New()
	onDisk.Beside = func(name string) ([]byte, error) {
		asked = name
		return []byte(strings.Replace(blade, "left wing", "wing", 1)), nil
	}
	for _, name := range []string{"lay", "most", "cures", "fit", "set", "ground", "picture", "pages"} {
		if got := ask(t, New(), name, fields{"job": text, "files": fields{"blade.svg": blade}}); got["mistake"] != nil {
			t.Errorf("%s, brought: %v", name, got["mistake"])
		}
		asked = ""
		if got := ask(t, onDisk, name, fields{"job": text}); got["mistake"] != nil || asked != "blade.svg" {
			t.Errorf("%s, of the disk: %v, asked %q", name, got["mistake"], asked)
		}
	}
	names := func(d *Desk, with fields) []string {
		with["job"], with["want"] = text, []string{"wrap"}
		motifs := ask(t, d, "lay", with)["wrap"].(map[string]any)["motifs"].([]any)
		var all []string
		for _, p := range motifs[len(motifs)-1].(map[string]any)["parts"].([]any) {
			all = append(all, p.(map[string]any)["path"].(string))
		}
		return all
	}
	if got := strings.Join(names(onDisk, fields{}), " "); got != "motif[4].parts.stem motif[4].parts.wing" {
		t.Errorf("of the disk it has the parts %s", got)
	}
	// What was brought goes before what is on disk.
	if got := strings.Join(names(onDisk, fields{"files": fields{"blade.svg": blade}}), " "); got != `motif[4].parts.stem motif[4].parts."left wing"` {
		t.Errorf("brought it has the parts %s", got)
	}
}

// Each piece of a motif's line is of one of its parts.
func TestPartOf(t *testing.T) {
	got := ask(t, New(), "lay", fields{"job": withBlade("blade.svg"), "files": fields{"blade.svg": blade}, "want": []string{"wrap"}})
	for _, m := range got["wrap"].(map[string]any)["motifs"].([]any) {
		m := m.(map[string]any)
		of, parts := m["part_of"].([]any), m["parts"].([]any)
		if n := strings.Count(m["line"].(string), "M"); n != len(of) || n == 0 {
			t.Errorf("motif %v has %d pieces and %d parts of them", m["motif"], n, len(of))
		}
		for _, i := range of {
			if i := int(i.(float64)); i < 0 || i >= len(parts) {
				t.Errorf("motif %v: a piece is of part %d of %d", m["motif"], i, len(parts))
			}
		}
	}
}

// A file that is missing, hostile or no drawing is a mistake in the job, and no name leads
// out of its folder.
func TestFilesRefused(t *testing.T) {
	d := New()
	asked := []string{}
	d.Beside = func(name string) ([]byte, error) {
		asked = append(asked, name)
		return nil, errors.New("there is no such file")
	}
	for file, want := range map[string]string{
		"blade.svg": "drop the file on the page", "../blade.svg": "a plain name", "/etc/passwd": "a plain name", `..\\b.svg`: "a plain name", "c:b.svg": "a plain name",
	} {
		got := ask(t, d, "lay", fields{"job": withBlade(file)})
		wrong, _ := got["mistake"].(map[string]any)
		if wrong == nil || wrong["path"] != "motif[4].file" || !strings.Contains(wrong["hint"].(string), want) {
			t.Errorf("%s: %v", file, got["mistake"])
		}
	}
	if len(asked) != 1 || asked[0] != "blade.svg" {
		t.Errorf("the disk was asked for %q", asked)
	}
	for what, svg := range map[string]string{
		"empty": "", "no SVG": "solid blade\n", "nothing to cut": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><rect width="9" height="9"/></svg>`,
		"an entity": `<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]><svg xmlns="http://www.w3.org/2000/svg"><text>&x;</text></svg>`,
		"many uses": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9" stroke="black"><g id="a"><path d="M0 0L1 1"/>` + strings.Repeat(`<use href="#a"/>`, 50) + `</g></svg>`,
	} {
		got := ask(t, New(), "lay", fields{"job": withBlade("b.svg"), "files": fields{"b.svg": svg}})
		wrong, _ := got["mistake"].(map[string]any)
		if what == "many uses" {
			continue // answered, whatever of it can be cut
		}
		if wrong == nil || wrong["path"] != "motif[4].file" || wrong["words"] == "" || strings.Contains(wrong["words"].(string), "root:") {
			t.Errorf("%s: %v", what, got["mistake"])
		}
	}
}
