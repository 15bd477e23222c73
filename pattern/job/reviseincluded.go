package job

import (
	"slices"
	"strconv"
	"strings"
)

// include finds out what the text includes, so that its wheels and motifs are counted as in
// the whole job. What can't be read is left out: Read says why.
func (r *revising) include() {
	r.root = r.doc.root
	e := r.doc.root.find("include")
	if e == nil || r.beside == nil {
		r.files, r.includes = nil, ""
		return
	}
	says := r.raw(e) + r.unit().String()
	if says != r.includes {
		read := &reading{beside: r.beside, unit: r.unit()}
		r.files, r.includes = nil, says
		if (section{reading: read, table: r.doc.root}).includes() {
			r.files = read.files
		}
	}
	if r.files != nil {
		r.root = merge(r.doc.root, r.files)
	}
}

// kept returns what reads files beside a job, each once.
func (b Beside) kept() Beside {
	if b == nil {
		return nil
	}
	read := map[string][]byte{}
	return func(name string) ([]byte, error) {
		if data, ok := read[name]; ok {
			return data, nil
		}
		data, err := b(name)
		if err == nil {
			read[name] = data
		}
		return data, err
	}
}

// elsewhere finds the included file in which a path's wheel or motif stands, where the job
// has none of that number itself, and what it is.
func (r *revising) elsewhere(path string) (*included, *table) {
	step, _, _ := strings.Cut(path, ".")
	name, number := numbered(step)
	all := r.root.list(name)
	if number < 1 || number > len(all) || r.doc.root.index(name, number) >= 0 {
		return nil, nil
	}
	t := all[number-1].table
	return includedAt(r.files, t.at), t
}

// override gives the job a table of its own for the wheel or the motif that a path names,
// where that one stands in an included file: then the job changes it, and not the file.
func (r *revising) override(path string) error {
	file, t := r.elsewhere(path)
	if file == nil {
		return nil
	}
	step, _, _ := strings.Cut(path, ".")
	name, number := numbered(step)
	called := t.says("name")
	switch {
	case name != "motif":
		return r.refuse(path, "%s %d (%s) stands in %s: change it there, or write a whole [[%s]] of that name into the job", name, number, called, file.name, name)
	case called == "":
		return r.refuse(path, "motif %d stands in %s and has no name: give it one there, such as name = %s, so that the job can change it", number, file.name, quoted(t.says("kind")))
	}
	owner := place{table: r.doc.root}
	if err := r.makeMany(owner, name); err != nil {
		return err
	}
	owner.table = r.doc.root
	return r.insert(owner, name, len(owner.places(name)), []given{{"name", inTOML(called)}})
}

// isElsewhere refuses what can be done only to a table that stands in the job itself.
func (r *revising) isElsewhere(path string) error {
	file, _ := r.elsewhere(path)
	if file == nil {
		return nil
	}
	step, _, _ := strings.Cut(path, ".")
	name, number := numbered(step)
	return r.refuse(path, "%s %s stands in %s: change it there", name, strconv.Itoa(number), file.name)
}

// changes reports whether one of the job's own motifs changes an included one, and is none
// by itself.
func (r *revising) changes(p place) bool { return r.included("motif", p.says("name")) }

// included reports whether an included file has a wheel or a motif of a name.
func (r *revising) included(list, name string) bool {
	return name != "" && slices.ContainsFunc(r.files, func(file *included) bool {
		return slices.ContainsFunc(file.doc.root.list(list), func(m *value) bool { return m.table.says("name") == name })
	})
}
