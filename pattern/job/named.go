package job

import "slices"

// named reads what a motif is called, given the names of those before it, and returns
// these with it.
func (s section) named(taken []string) []string {
	field := s.optional("name")
	name, ok := field.text(maxName)
	if ok && slices.Contains(taken, name) {
		field.refuse("a name no other motif has", "")
	}
	return append(taken, name)
}

// kindless reports a motif of a name and without a kind, in a job that includes files: it
// was probably meant to change one of theirs.
func (s section) kindless(kinds []string) {
	if s.has("kind") || !s.has("name") || len(s.files) == 0 || s.strange || s.late(s.table.at) {
		return
	}
	name := s.table.says("name")
	var names []string
	for _, file := range s.files {
		for _, m := range file.doc.root.list("motif") {
			if called := m.table.says("name"); called != "" {
				names = append(names, called)
			}
		}
	}
	hint := "no included motif is called " + quoted(name)
	if near := meant(name, names); near != "" {
		hint += "; " + near
	}
	s.note(&mistake{at: s.table.at, key: s.name("kind"), read: "nothing", accepted: list(kinds), hint: hint})
}

// list returns the tables of a list, nil where there is none.
func (t *table) list(key string) []*value {
	if e := t.find(key); e != nil && e.value.isTables() {
		return e.value.items
	}
	return nil
}
