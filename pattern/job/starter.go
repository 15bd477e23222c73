package job

import (
	"bytes"
	_ "embed" // for starter.toml
	"fmt"
	"text/template"

	"roundlay/geometry"
	"roundlay/motifs"
)

//go:embed starter.toml
var starter string

// Starter returns a job to start from, in inches or in millimetres, with a note
// on every key there is.
func Starter(unit geometry.Unit) []byte {
	inches := unit == geometry.Inch
	words := template.FuncMap{
		"inches": func() bool { return inches },
		"either": func(inch, mm string) string {
			if inches {
				return inch
			}
			return mm
		},
		"line":      func(key, note string) string { return fmt.Sprintf("%-31s# %s", key, note) },
		"kinds":     func() string { return list(kindNames(motifs.All())) },
		"materials": func() string { return list(materialNames()) },
		"default":   defaultNote,
	}
	var b bytes.Buffer
	// The text is our own: a test fills it in for either unit.
	t := template.Must(template.New("starter").Funcs(words).Parse(starter))
	if err := t.Execute(&b, motifs.All()); err != nil {
		panic(err)
	}
	return b.Bytes()
}

// defaultNote returns a parameter's default as a note. It becomes a key when the #
// is taken away.
func defaultNote(p motifs.Param) string {
	if p.Sort == motifs.Switch {
		return fmt.Sprintf("# %s = %t", p.Name, p.Default != 0)
	}
	return fmt.Sprintf("# %s = %g", p.Name, p.Default)
}
