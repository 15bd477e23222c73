package printing

import (
	"fmt"

	"roundlay/render/drawing"
)

// thing is the strokes that have one name: a cut, in as many pieces as the
// papers it lies on.
type thing struct {
	name   drawing.Name
	pieces []drawing.Stroke
}

// named parts marks into things, in the order of their first pieces, and the
// marks that have no name.
func named(marks []drawing.Mark) (things []thing, others []drawing.Mark) {
	known := map[string]int{}
	for _, m := range marks {
		s, ok := m.(drawing.Stroke)
		if !ok || s.Name.ID == "" {
			others = append(others, m)
			continue
		}
		i, found := known[s.Name.ID]
		if !found {
			i = len(things)
			known[s.Name.ID], things = i, append(things, thing{name: s.Name})
		}
		things[i].pieces = append(things[i].pieces, s)
	}
	return things, others
}

// things writes each thing as one path with its id, so that no id is in a file twice.
// A thing is drawn with the pen of its first piece. Things drawn alike share a group
// that holds their look.
func (p *paths) things(things []thing) {
	for i := 0; i < len(things); {
		alike := look(things[i].pieces[0])
		fmt.Fprintf(p.file, "<g %s>\n", alike)
		for ; i < len(things) && look(things[i].pieces[0]) == alike; i++ {
			t := things[i]
			fmt.Fprintf(p.file, `<path id="%s" d="`, escaped(t.name.ID))
			p.grain, p.steps = fineGrain, steps{file: p.file}
			for _, s := range t.pieces {
				p.along(s)
			}
			fmt.Fprintf(p.file, "\"><title>%s</title></path>\n", escaped(t.name.Title))
		}
		p.file.WriteString("</g>\n")
	}
}
