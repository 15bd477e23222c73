package job

import (
	"slices"
	"strconv"
	"strings"

	"roundlay/motifs"
)

// add puts a new table into a list: what was given for it, and what it needs besides so
// that the job can still be read.
func (r *revising) add(e Revision) error {
	table, step := parent(e.Path)
	name, number := numbered(step)
	owner, ok := r.place(table)
	known, _ := tableOf(name)
	top, _ := tableOf(owner.name)
	if _, has := top.key(name); !ok || !has || !known.Many || number > 0 {
		return r.refuse(e.Path, "nothing can be added here: add to motif, wheel, blank or blank.station")
	}
	asked, err := r.askedFor(e, name)
	if err != nil {
		return err
	}
	count := len(owner.places(name))
	if e.At < 0 || e.At > count+1 {
		return r.refuse(e.Path, "there are %d, so a new one can be number 1 to %d and not %d", count, count+1, e.At)
	}
	switch name {
	case "blank":
		return r.addBlank(owner, asked)
	case "station":
		return r.addStation(owner, e.At, asked)
	}
	if err := r.makeMany(owner, name); err != nil {
		return err
	}
	owner.table = r.doc.root
	if name == "wheel" {
		return r.insert(owner, name, count, r.wheelFor(owner, asked))
	}
	return r.insert(owner, name, count, r.motifFor(owner, asked))
}

// askedFor returns the keys that were given for a new table, in the order of its keys.
func (r *revising) askedFor(e Revision, name string) ([]given, error) {
	values, ok := e.Value.(map[string]any)
	if !ok && e.Value != nil {
		return nil, r.refuse(e.Path, "a new %s has keys and values, and not %T", name, e.Value)
	}
	p := place{name: name, table: &table{}}
	kind := allKinds()[0].Name
	if named, ok := values["kind"].(string); ok {
		kind = named
	}
	if name == "motif" {
		p.table.put("kind", 0, &value{text: kind})
	}
	var asked []given
	for _, k := range p.keys() {
		typed, ok := values[k.Name]
		if !ok || k.Sort == OfTables {
			continue
		}
		written, err := k.toml(typed)
		if err != nil {
			return nil, r.refuse(e.Path, "%s", err)
		}
		asked = append(asked, given{k.Name, written})
	}
	if len(asked) < len(values) {
		for key := range values {
			if !slices.ContainsFunc(asked, func(g given) bool { return g.key == key }) {
				return nil, r.refuse(e.Path, "a new %s has no key %s", name, quoted(key))
			}
		}
	}
	return asked, nil
}

// filled returns the keys that were asked for, each of the others that is needed where
// it comes in the order of the table.
func filled(table string, asked []given, needed ...given) []given {
	order := keysOf(table)
	all := slices.Clone(asked)
	for _, g := range needed {
		if !slices.ContainsFunc(asked, func(a given) bool { return a.key == g.key }) {
			all = append(all, g)
		}
	}
	place := func(g given) int {
		if i := slices.Index(order, g.key); i >= 0 {
			return i
		}
		return len(order)
	}
	slices.SortStableFunc(all, func(a, b given) int { return place(a) - place(b) })
	return all
}

// motifFor returns the keys of a new motif: a leaf in the middle of the repeat where no
// more was asked for, cut as the last one is.
func (r *revising) motifFor(owner place, asked []given) []given {
	kind, wheel, depth := allKinds()[0].Name, "", `"1/64 in"`
	if wheels := (place{table: r.root}).places("wheel"); len(wheels) > 0 {
		wheel = wheels[0].says("name")
	}
	if all := owner.places("motif"); len(all) > 0 {
		last := all[len(all)-1]
		if e := last.find("depth"); e != nil {
			depth = r.raw(e)
		}
	}
	isAsked := func(key string) bool {
		return slices.ContainsFunc(asked, func(g given) bool { return g.key == key })
	}
	for _, g := range asked {
		if g.key == "kind" {
			kind = unquoted(g.value)
		}
	}
	needed := []given{{"kind", inTOML(kind)}, {"wheel", inTOML(wheel)}, {"depth", depth}, {"at", "[0, 0.5]"}}
	of, _ := motifs.Find(kind)
	if of.Aspect == 0 || isAsked("width") == isAsked("height") && isAsked("width") {
		needed = append(needed, given{"width", "0.5"}, given{"height", "0.5"})
	} else if !isAsked("width") && !isAsked("height") { // the width follows
		needed = append(needed, given{"height", "0.5"})
	}
	if begins, ok := beginning(of, isAsked); ok {
		needed = append(needed, begins)
	}
	return filled("motif", asked, needed...)
}

// wheelFor returns the keys of a new wheel: those that its edge needs, as in the starter
// job.
func (r *revising) wheelFor(owner place, asked []given) []given {
	known, _ := tableOf("wheel")
	edges, _ := known.key("edge")
	edge := edges.Words[0]
	for _, g := range asked {
		if g.key == "edge" && slices.Contains(edges.Words, unquoted(g.value)) {
			edge = unquoted(g.value)
		}
	}
	u := r.unit()
	needed := []given{{"name", inTOML(free(edge, r.titles("wheel")))}, {"edge", inTOML(edge)}}
	thick := 0.0
	for _, g := range asked {
		if g.key == "thick" {
			thick, _ = u.Parse(unquoted(g.value))
		}
	}
	for _, k := range known.Keys {
		switch {
		case k.Name == "across" || k.Name == "thick":
			needed = append(needed, given{k.Name, k.start(u)})
		case k.Needed && slices.Contains(k.For, edge):
			needed = append(needed, given{k.Name, k.startFor(u, thick)})
		}
	}
	return filled("wheel", asked, needed...)
}

// titles returns what the tables of a list are called, those of included files too.
func (r *revising) titles(list string) []string {
	var all []string
	for _, p := range (place{table: r.doc.root}).places(list) {
		all = append(all, p.title())
	}
	for _, v := range r.root.list(list) {
		all = append(all, v.table.says("name"))
	}
	return all
}

// free returns a name that none of some tables has: the one wanted, or with a number.
func free(wanted string, taken []string) string {
	name := wanted
	base := strings.TrimRight(wanted, "0123456789")
	if base == wanted || !strings.HasSuffix(base, " ") {
		base = wanted + " "
	}
	for n := 2; slices.Contains(taken, name); n++ {
		name = base + strconv.Itoa(n)
	}
	return name
}

// addBlank adds a blank with the measurements of the last one. Of several, each needs a
// name.
func (r *revising) addBlank(owner place, asked []given) error {
	all := owner.places("blank")
	if len(all) == 0 {
		return r.refuse("blank", "there is none to take the measurements from")
	}
	return r.copyNamed("blank", len(all)-1, asked)
}

// copyNamed puts a copy of a wheel or a blank after the last, with a name of its own and
// with other values that were asked for.
func (r *revising) copyNamed(name string, i int, asked []given) error {
	top := place{table: r.doc.root}
	if err := r.makeMany(top, name); err != nil {
		return err
	}
	top.table = r.doc.root
	original := top.places(name)[i]
	if original.find("name") == nil && name == "blank" {
		if err := r.set(original.path, "name", inTOML(original.title())); err != nil {
			return err
		}
		top.table = r.doc.root
	}
	called := free(original.title(), r.titles(name))
	if err := r.double(top, name, i); err != nil {
		return err
	}
	path := Item(name, r.doc.root.number(name, len(top.places(name)))-1)
	for _, g := range filled(name, asked, given{"name", inTOML(called)}) {
		if err := r.set(path, g.key, g.value); err != nil {
			return err
		}
	}
	return nil
}

// unquoted returns what a value says that was written by toml.
func unquoted(written string) string { return strings.Trim(written, `"'`) }
