package job

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
)

// guideFile is the page of the guide on the job file.
const guideFile = "../../cmd/roundlay/guide/job.md"

// The page on the job file is what the tables and the kinds of motif say. It is remade where
// ROUNDLAY_UPDATE is set.
func TestGuideIsTheTables(t *testing.T) {
	text := []byte(jobGuide(t))
	if os.Getenv("ROUNDLAY_UPDATE") != "" && !t.Failed() {
		if err := os.WriteFile(guideFile, text, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if was, err := os.ReadFile(guideFile); err != nil || !bytes.Equal(was, text) {
		t.Errorf("%s is not what the tables say now (%v); remake it with ROUNDLAY_UPDATE=1", guideFile, err)
	}
}

// guideHead begins the page.
const guideHead = "# The job file\n\n" +
	"A job is a text file in TOML. `roundlay new` writes one to start from, with a note on every key. What follows a `#` is a note.\n" +
	"A table whose name stands in double brackets, such as `[[wheel]]`, may be there several times. A key that isn't listed here is\n" +
	"refused, and so is a value out of range, with the file, the line and what would be accepted. This page is made from the\n" +
	"program's own tables.\n"

// jobGuide writes the page: how values are written, each table, each kind of motif.
func jobGuide(t *testing.T) string {
	var b strings.Builder
	b.WriteString(guideHead)
	b.WriteString("\n| table | what it says |\n|---|---|\n")
	for _, table := range Tables() {
		fmt.Fprintf(&b, "| [%s](#%s) | %s |\n", guideName(table), guideAnchor(guideName(table)), table.About)
	}
	b.WriteString("| [motifs](#motifs) | the kinds of motif, with the keys of each |\n")
	b.WriteString("\n## How values are written\n\n| value | it takes | such as |\n|---|---|---|\n")
	for _, w := range writings() {
		fmt.Fprintf(&b, "| %s | %s | `%s` |\n", w.sort, w.takes, strings.Join(w.such, "`, `"))
	}
	for _, table := range Tables() {
		guideTable(t, &b, table)
	}
	b.WriteString("\n## motifs\n\nA `[[motif]]` has the keys of its kind too. A count may be `\"most\"`: as many as clear.\n")
	for _, kind := range motifs.Listed() {
		guideKind(&b, kind)
	}
	return b.String()
}

// guideTable writes one table: each key with what it takes, its default and an example in either
// unit.
func guideTable(t *testing.T, b *strings.Builder, table Table) {
	fmt.Fprintf(b, "\n## %s\n\n%s%s.\n", guideName(table), strings.ToUpper(table.About[:1]), table.About[1:])
	if most, ok := map[string]int{"blank": maxBlanks, "station": maxStations, "wheel": maxWheels, "motif": maxMotifs}[table.Name]; ok {
		fmt.Fprintf(b, "Up to %d of them", most)
		if table.Name == "station" {
			b.WriteString(" a blank, a list under its `station`")
		}
		b.WriteString(".\n")
	}
	if table.Name == "station" {
		fmt.Fprintf(b, "One of them is `%s`, in a job in mm `%s`.\n", stationOf(t, geometry.Inch), stationOf(t, geometry.Millimetre))
	}
	b.WriteString("\n| key | it takes | default | what it is | in inches | in mm |\n|---|---|---|---|---|---|\n")
	for _, k := range table.Keys {
		row := []string{"`" + k.Name + "`", takenWords(k), guideDefault(k), guideAbout(k), inCode(k.inches), inCode(k.mm)}
		fmt.Fprintf(b, "| %s |\n", strings.Join(row, " | "))
	}
}

// stationOf is the second of the starter's stations.
func stationOf(t *testing.T, u geometry.Unit) string {
	_, from, _ := strings.Cut(string(Starter(u)), "\nstation = [\n")
	rows := strings.Split(from, "\n")
	if len(rows) < 2 || !strings.Contains(rows[1], "height = ") {
		t.Fatal("the starter has no stations")
	}
	return strings.TrimSuffix(strings.Join(strings.Fields(rows[1]), " "), ",")
}

// guideName is a table as it is headed in a job.
func guideName(t Table) string {
	switch {
	case t.Name == "":
		return "the top of the file"
	case t.Name == "station":
		return "`station`"
	case t.Name == "part":
		return "`[motif.parts.NAME]`"
	case t.Many:
		return "`[[" + t.Name + "]]`"
	}
	return "`[" + t.Name + "]`"
}

// guideAnchor is what a link to a heading ends with.
func guideAnchor(heading string) string {
	return strings.ToLower(strings.NewReplacer("`", "", "[", "", "]", "", ".", "", " ", "-").Replace(heading))
}

func inCode(text string) string {
	if text == "" {
		return ""
	}
	return "`" + text + "`"
}

func guideAbout(k Key) string {
	if len(k.For) > 0 {
		return "of a " + strings.Join(k.For, " and a ") + ": " + k.About
	}
	return k.About
}

// guideDefault is what holds where the key isn't given.
func guideDefault(k Key) string {
	switch {
	case k.Needed:
		return "needed"
	case k.Default == "":
		return ""
	}
	return inCode(k.Default)
}

// guideKind writes one kind of motif.
func guideKind(b *strings.Builder, kind motifs.Kind) {
	fmt.Fprintf(b, "\n### %s\n\n%s%s.", kind.Name, strings.ToUpper(kind.About[:1]), kind.About[1:])
	fmt.Fprintf(b, " Its parts: `%s`.", strings.Join(kind.Parts, "`, `"))
	if kind.Mirrored {
		b.WriteString(" Its left and right are alike.")
	}
	b.WriteString("\n\n| key | it takes | default | what it is |\n|---|---|---|---|\n")
	for _, p := range kind.Params {
		k := ofParameter(p)
		may := ""
		if p.Sort == motifs.Count {
			may = ", or `\"" + maxWord + "\"`"
		}
		fmt.Fprintf(b, "| `%s` | %s | `%s` | %s |\n", p.Name, p.Range()+may, k.Default, p.About)
	}
	for _, c := range kind.Keys {
		sort := [...]string{motifs.Text: "text", motifs.Texts: "texts", motifs.Choice: "switch"}[c.Sort]
		fmt.Fprintf(b, "| `%s` | %s, such as `%s` | | %s |\n", c.Name, sort, c.Example, c.About)
	}
	if kind.Hand == nil {
		return
	}
	b.WriteString("\nRight of its middle, and mirrored to the left, `hand = 1` is\n\n| part | `swell` | `rock` |\n|---|---|---|\n")
	for _, part := range kind.Parts {
		g := kind.Hand[part]
		swell := make([]string, len(g.Swell))
		for i, share := range g.Swell {
			swell[i] = fmt.Sprintf("%g", share)
		}
		fmt.Fprintf(b, "| `%s` | `[%s]` | `[%s, %s]` |\n", part, strings.Join(swell, ", "), InDegrees(g.Rock[0]), InDegrees(g.Rock[1]))
	}
}
