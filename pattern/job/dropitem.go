package job

import (
	"slices"
	"strconv"
	"strings"
)

// drop takes one of several tables out of a job, unless the job can't do without it.
func (r *revising) drop(path string) error {
	if p, ok := r.place(path); ok && p.name == "part" && p.table != nil {
		holder, name := parent(path)
		of, _ := r.place(holder)
		return r.dropTable(path, of.table, of.find(name))
	}
	owner, name, i, all, err := r.item(path)
	if err != nil {
		return err
	}
	if len(all) == 1 && len(r.root.list(name)) <= 1 {
		return r.refuse(path, "it is the only %s, and a job needs one", name)
	}
	switch name {
	case "station":
		return r.dropStation(path, owner, i, all)
	case "wheel":
		return r.dropWheel(path, owner, i, all)
	case "motif":
		return r.dropMotif(owner, i)
	}
	return r.take(owner, name, i)
}

// dropStation takes out a station that is neither of the two a glass needs at least.
func (r *revising) dropStation(path string, owner place, i int, all []place) error {
	switch {
	case i == 0:
		return r.refuse(path, "it is the foot, from which every height is measured: change it instead")
	case i == len(all)-1:
		return r.refuse(path, "it is the rim, where the glass ends: change it instead")
	}
	return r.take(owner, "station", i)
}

// dropWheel takes out a wheel that no motif is cut with.
func (r *revising) dropWheel(path string, owner place, i int, all []place) error {
	name := all[i].says("name")
	if r.included("wheel", name) {
		return r.take(owner, "wheel", i) // they are cut with that one then
	}
	var users []string
	for n, m := range owner.places("motif") {
		if slices.ContainsFunc(m.cutters(), func(p place) bool { return p.says("wheel") == name }) {
			users = append(users, "motif "+strconv.Itoa(owner.table.number("motif", n))+" ("+m.title()+")")
		}
	}
	switch {
	case len(users) == 1:
		return r.refuse(path, "%s is cut with %s: give it another wheel first", users[0], quoted(name))
	case len(users) > 1:
		return r.refuse(path, "%s are cut with %s: give them another wheel first", and(users), quoted(name))
	}
	if err := r.take(owner, "wheel", i); err != nil {
		return err
	}
	if shop, ok := r.place("shop"); ok {
		if e := shop.find("order"); e != nil && len(e.value.items) == 1 && e.value.items[0].text == name {
			return r.unset("shop", "order") // it may not be empty
		}
	}
	return r.ordered(name, func(list []part, i int) []patch { return dropPart(r.text, list, i) })
}

// and joins words: a, b and c.
func and(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
}
