package job

import (
	"strconv"
	"strings"
)

// drop takes one of several tables out of a job, unless the job can't do without it.
func (r *revising) drop(path string) error {
	owner, name, i, all, err := r.item(path)
	if err != nil {
		return err
	}
	called := map[string]string{"blank": "blank", "wheel": "wheel", "motif": "motif", "station": "station"}[name]
	if len(all) == 1 {
		return r.refuse(path, "it is the only %s, and a job needs one", called)
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
	var users []string
	for n, m := range owner.places("motif") {
		if m.says("wheel") == name {
			users = append(users, "motif "+strconv.Itoa(n+1)+" ("+m.title()+")")
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
	return r.eachOrdered(func(wheel string) (string, bool) { return wheel, wheel != name })
}

// and joins words: a, b and c.
func and(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

// dropMotif takes out a motif. Those inside it stand on their own from then on, and the
// numbers in later ones follow.
func (r *revising) dropMotif(owner place, i int) error {
	if err := r.take(owner, "motif", i); err != nil {
		return err
	}
	owner.table = r.doc.root
	for _, m := range owner.places("motif") {
		outer, err := strconv.Atoi(m.says("inside"))
		switch {
		case err != nil || outer < i+1:
			continue
		case outer == i+1:
			err = r.unset(m.path, "inside")
		default:
			err = r.set(m.path, "inside", strconv.Itoa(outer-1))
		}
		if err != nil {
			return err
		}
	}
	return nil
}
