package job

import (
	"strconv"

	"roundlay/geometry"
)

// copy puts a copy of a motif, a wheel or a blank after the last one.
func (r *revising) copy(path string) error {
	owner, name, i, _, err := r.item(path)
	switch {
	case err != nil:
		return err
	case name == "blank" || name == "wheel":
		return r.copyNamed(name, i, nil)
	case name != "motif":
		return r.refuse(path, "a station is added and not copied: no two have the same height")
	}
	p := owner.places(name)[i]
	if r.changes(p) {
		return r.refuse(path, "it changes the motif of that name in an included file, and can't be copied by itself")
	}
	if err := r.double(owner, name, i); err != nil {
		return err
	}
	owner.table = r.doc.root
	all := owner.places(name)
	if err := r.unset(all[len(all)-1].path, "name"); err != nil { // no two have the same
		return err
	}
	owner.table = r.doc.root
	all = owner.places(name)
	return r.shift(all[len(all)-1])
}

// shift moves a motif a little round the glass, so that it can be told from the one it is a copy of.
func (r *revising) shift(p place) error {
	if p.says("middle") == "true" {
		return nil // there is no other place
	}
	k, _ := p.key("at")
	at := r.field(p, &k).List
	if len(at) != 2 {
		return nil
	}
	items := []string{shifted(r.unit(), at[0]), at[1]}
	written, err := k.toml(items)
	if err != nil {
		return r.refuse(p.path, "%s", err)
	}
	return r.set(p.path, "at", written)
}

// shifted moves a measure across a little on, or back where it would be more than a share
// can be.
func shifted(u geometry.Unit, text string) string {
	const on, most = 0.05, 0.5
	step := 3.0 // mm
	if u == geometry.Inch {
		step = geometry.MillimetresPerInch / 8
	}
	if !plainNumber().MatchString(text) {
		mm, err := u.Parse(text)
		if err != nil {
			return text
		}
		return lengthText(u, mm+step)
	}
	x, _ := strconv.ParseFloat(text, 64)
	moved := x + on
	if moved > most {
		moved = x - on
	}
	return share(moved)
}
