package job

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"
)

// Whatever stands in a job and in the files that it includes, it is read whole, or refused on a
// line that there is. A job that is read stays one with the same motifs when one of them is
// changed in it, wherever that one stands.
func FuzzInclude(f *testing.F) {
	for _, own := range []string{ownMotif, "[[motif]]\nname = \"fern\"\ndepth = 0.01\n", "motif = 3\n", "[wheel]\n", "[limits]\nland = 0\n[layout]\nrepeats = 2\n", "[[motif]]\nname = \"fern\"\ninside = 2\n"} {
		f.Add(own, shopFile, fernFile, 1)
		f.Add(own, fernFile, shopFile, 2)
		f.Add(own, "motif = []\n", "[[motif]]\nname = \"fern\"\nparts = 3\n", 3)
		f.Add(own, "[[motif]]\nname = \"a\"\n[[motif]]\nname = \"b\"\n", strings.ReplaceAll(fernFile, "fern", "b")+"[[motif]]\nname = \"a\"\ninside = 1\n", 1)
	}
	f.Fuzz(includesWell)
}

// includesWell checks that of a job's own part, its two files and the number of a motif.
func includesWell(t *testing.T, own, shop, fern string, n int) {
	texts := map[string]string{"fuzz.toml": including + own, "shop.toml": shop, "fern.toml": fern}
	j, err := ReadWith("fuzz.toml", []byte(including+own), files(texts))
	if err != nil {
		e := onlyError(t, err)
		text, known := texts[e.File]
		if lines := 1 + strings.Count(text, "\n"); !known || e.Line > lines {
			t.Errorf("line %d of %d in %s", e.Line, lines, e.File)
		}
		return
	}
	for _, m := range j.Motifs {
		if m.Wheel < 0 || m.Wheel >= len(j.Rack) || m.Kind.Name == "" || m.Line < 1 || m.Inside < 0 || m.Inside > len(j.Motifs) {
			t.Errorf("half a motif: %+v", m)
		}
	}
	j.Included()
	n = (n%len(j.Motifs) + len(j.Motifs)) % len(j.Motifs)
	out, err := ReviseWith([]byte(including+own), files(texts), Revision{Op: "set", Path: Item("motif", n) + ".depth", Value: "0.3 mm"})
	if err != nil {
		return
	}
	again, err := j.ReadAgain("fuzz.toml", out)
	if err != nil {
		t.Fatalf("%v after a depth was set in\n%s", err, out)
	}
	if len(again.Motifs) != len(j.Motifs) || math.Abs(again.Motifs[n].Depth-0.3) > 1e-9 {
		t.Errorf("motif %d of %d has depth %g in\n%s", n+1, len(again.Motifs), again.Motifs[n].Depth, out)
	}
	for i, m := range again.Motifs {
		if i != n && m.Depth != j.Motifs[i].Depth {
			t.Errorf("motif %d is another in\n%s", i+1, out)
		}
	}
}

// Every line of the job and of its files is spoilt in the ways in which a careless hand spoils
// it.
func TestIncludeSpoilt(t *testing.T) {
	own := ownMotif + "[[motif]]\nname = \"fern\"\ndepth = 0.01\n[limits]\nland = 0.02\n[[wheel]]\nname = \"olive\"\nedge = \"flat\"\nacross = 3\nthick = 0.2\n"
	texts := []string{own, shopFile, fernFile}
	for which := range texts {
		lines := strings.Split(texts[which], "\n")
		for i, line := range lines {
			key, _, assigns := strings.Cut(line, " = ")
			ways := []string{"", line + "\n" + line, "[blank]", "[[motif]]", "[[wheel]]", "[limits]"}
			if assigns {
				for _, value := range []string{"-1", "nan", "1e300", `"3 stone"`, "[[[]]]", "{}", `"fern"`, `"mitre"`, "1", "2", "3", `"in"`, "true"} {
					ways = append(ways, key+" = "+value)
				}
			}
			for n, way := range ways {
				spoilt := [3]string(texts)
				changed := slices.Clone(lines)
				changed[i] = way
				spoilt[which] = strings.Join(changed, "\n")
				includesWell(t, spoilt[0], spoilt[1], spoilt[2], n)
				if t.Failed() {
					t.Fatalf("with %q for %q in\n%s", way, line, texts[which])
				}
			}
		}
	}
}

// Files of very many motifs, all with names, are refused in a time that grows with their size
// alone.
func TestIncludeManyNames(t *testing.T) {
	var b strings.Builder
	for i := 0; b.Len() < MaxBytes-40; i++ {
		fmt.Fprintf(&b, "[[motif]]\nname=\"%d\"\n", i)
	}
	many := b.String()
	names := `"a.toml", "b.toml", "c.toml", "d.toml", "shop.toml"`
	text := strings.Replace(including, `"shop.toml", "fern.toml"`, names, 1)
	folder := files(map[string]string{"a.toml": many, "b.toml": many, "c.toml": strings.ReplaceAll(many, `"`, `'`), "d.toml": strings.ReplaceAll(many, `"1`, `"x`), "shop.toml": shopFile})
	began := time.Now()
	_, err := ReadWith("x.toml", []byte(text), folder)
	if e := onlyError(t, err); !strings.Contains(e.Accepted, "at most") {
		t.Error(e)
	}
	if _, err := NewFormWith([]byte(text), folder); err != nil {
		t.Error(err)
	}
	if took := time.Since(began); took > 60*time.Second { // a second or two; squared it would be minutes
		t.Errorf("took %v", took)
	}
}
