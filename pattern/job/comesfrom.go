package job

import (
	"slices"
	"strings"
)

// Included says what a job has from a file that it includes.
type Included struct {
	File   string   // its name, beside the job
	Wheels []string // by name
	Motifs []int    // by their numbers in the job, from 1
	Keys   []string // of other tables, as messages write them: limits.land
	// Changed is what stands in the file and doesn't hold, because the job or a later file
	// says it too: keys, or wheels as wheel "mitre".
	Changed []string
}

// Included returns what the job has from each of the files that it includes, in their order.
func (j *Job) Included() []Included {
	var all []Included
	known := map[int]bool{} // motifs of the files before
	for _, file := range j.source.files {
		in := Included{File: file.name}
		for _, e := range file.doc.root.fields {
			switch e.key {
			case "length":
			case "wheel":
				j.source.wheelsFrom(file, &in)
			case "motif":
				j.source.motifsFrom(file, &in, known)
			default:
				j.source.keysFrom(e.value.table, e.key, &in, true)
			}
		}
		all = append(all, in)
	}
	return all
}

// wheelsFrom notes the wheels of a file.
func (s source) wheelsFrom(file *included, in *Included) {
	rack := s.root.list("wheel")
	for i, own := range file.doc.root.list("wheel") {
		name := own.table.says("name")
		if rack[file.doc.root.number("wheel", i)-1] == own {
			in.Wheels = append(in.Wheels, name)
		} else {
			in.Changed = append(in.Changed, "wheel "+quoted(name))
		}
	}
}

// motifsFrom notes the motifs of a file, and what it changes in those of the files before.
func (s source) motifsFrom(file *included, in *Included, known map[int]bool) {
	for i, own := range file.doc.root.list("motif") {
		number := file.doc.root.number("motif", i)
		if !known[number] {
			in.Motifs = append(in.Motifs, number)
		}
		s.keysFrom(own.table, Item("motif", number-1), in, known[number])
		known[number] = true
	}
}

// keysFrom notes the keys of a table, of which all is true where those that hold are listed
// too. The name of a motif is what it is known by, and no change.
func (s source) keysFrom(t *table, path string, in *Included, all bool) {
	for _, e := range t.fields {
		name := joined(path, written(e.key))
		v := s.find(joined(path, e.key))
		switch {
		case e.key == "name" && strings.HasPrefix(path, "motif["):
		case e.value.table != nil && v != nil && v.table != nil:
			s.keysFrom(e.value.table, name, in, all)
		case v != e.value:
			in.Changed = append(in.Changed, name)
		case all:
			in.Keys = append(in.Keys, name)
		}
	}
}

// Needs returns the names of the files that the job reads beside it, each once.
func (j *Job) Needs() []string { return slices.Clone(j.source.needs) }
