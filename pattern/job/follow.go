package job

import (
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"roundlay/geometry"
	"roundlay/motifs"
)

// follow changes what follows from a key that was set: what was its text before.
func (r *revising) follow(table, key, was string) error {
	p, ok := r.place(table)
	if !ok {
		return r.strange(table)
	}
	switch name := p.name + "." + key; name {
	case "wheel.name":
		return r.renameWheel(was, p.says("name"))
	case "wheel.edge":
		return r.newEdge(p)
	case "wheel.tip":
		return r.unset(table, "tip_radius")
	case "wheel.tip_radius":
		return r.unset(table, "tip")
	case "motif.kind":
		return r.newKind(p, was)
	case "motif.inside":
		return r.unsetAll(table, fromOuter())
	case "motif.middle":
		if p.says("middle") == "true" {
			return r.unsetAll(table, overMiddle())
		}
	case "motif.face":
		if p.says("face") != Base.String() {
			return r.unset(table, "middle")
		}
	}
	return nil
}

// unsetAll takes several keys away from a table.
func (r *revising) unsetAll(table string, keys []string) error {
	for _, key := range keys {
		if err := r.unset(table, key); err != nil {
			return err
		}
	}
	return nil
}

// mayRename refuses a wheel's name that another wheel has: it would no longer be known
// which of the two a motif is cut with.
func (r *revising) mayRename(p place, k Key, written string) error {
	if p.name != "wheel" || k.Name != "name" {
		return nil
	}
	for _, other := range (place{table: r.root}).places("wheel") {
		if other.path != p.path && other.find("name") != nil && inTOML(other.says("name")) == written {
			return r.refuse(joined(p.path, k.Name), "another wheel is called %s", quoted(other.says("name")))
		}
	}
	return nil
}

// renameWheel gives a wheel's new name to all that use it, where no other wheel has the
// old one.
func (r *revising) renameWheel(was, name string) error {
	top := place{table: r.doc.root}
	if was == "" || slices.ContainsFunc(place{table: r.root}.places("wheel"), func(w place) bool { return w.says("name") == was }) {
		return nil
	}
	for _, m := range top.places("motif") {
		for _, p := range m.cutters() {
			if p.says("wheel") != was {
				continue
			}
			if err := r.set(p.path, "wheel", inTOML(name)); err != nil {
				return err
			}
		}
	}
	return r.ordered(was, func(list []part, i int) []patch {
		return []patch{{list[i].from, list[i].to, inTOML(name)}}
	})
}

// ordered changes or drops a wheel in shop.order, if it is there.
func (r *revising) ordered(wheel string, change func(list []part, i int) []patch) error {
	shop, ok := r.place("shop")
	if !ok || shop.find("order") == nil {
		return nil
	}
	e := shop.find("order")
	i := slices.IndexFunc(e.value.items, func(v *value) bool { return v.text == wheel })
	from, _, ok := extent(r.text, e.at)
	if i < 0 || !ok {
		return nil
	}
	if !r.splice(change(parts(r.text, from), i)...) {
		return r.strange("shop.order")
	}
	return nil
}

// newEdge gives a wheel what its new edge needs, and takes away what only another takes.
func (r *revising) newEdge(p place) error {
	known, _ := tableOf("wheel")
	edge := p.says("edge")
	u := r.unit()
	thick := 0.0
	if e := p.find("thick"); e != nil {
		thick, _ = u.Parse(e.value.text)
	}
	for _, k := range known.Keys {
		var err error
		switch given := p.find(k.Name) != nil; {
		case given && !k.suits(edge):
			err = r.unset(p.path, k.Name)
		case !given && k.Needed && slices.Contains(k.For, edge):
			err = r.set(p.path, k.Name, k.startFor(u, thick))
		}
		if err != nil {
			return err
		}
		p, _ = r.place(p.path)
	}
	return nil
}

// startFor is what a key of a wheel begins with where its thickness is known, so that it
// fits the wheel.
func (k Key) startFor(u geometry.Unit, thick float64) string {
	starts := map[string][]float64{"spacing": {3, 2, 1.5, 1, 0.5, 0.2, 0.1, 0.05}, "radius": {6}}
	if u == geometry.Inch {
		const inch = geometry.MillimetresPerInch
		starts = map[string][]float64{"spacing": {inch / 8, inch / 16, inch / 32, inch / 64, 0.1, 0.05}, "radius": {inch / 4}}
	}
	for _, mm := range starts[k.Name] {
		switch {
		case k.Name == "radius" && mm < thick/2:
			return lengthTOML(u, thick/2)
		case k.Name == "radius" || mm < thick/2: // three mitres, the outer ones within the faces
			return lengthTOML(u, mm)
		}
	}
	return k.start(u)
}

// lengthTOML writes a length as a job in the unit does: no unit where it is the job's.
func lengthTOML(u geometry.Unit, mm float64) string {
	text := strings.TrimSuffix(lengthText(u, mm), " "+u.String())
	return Key{Sort: OfLength}.scalar(text)
}

// newKind takes from a motif the parameters that its new kind doesn't have or take, and
// the parts it doesn't have.
func (r *revising) newKind(p place, was string) error {
	kind, known := motifs.Find(p.says("kind"))
	if !known {
		return nil
	}
	for _, old := range ofKinds()[was] {
		e := p.find(old.Name)
		if e == nil {
			continue
		}
		if same, has := kind.Param(old.Name); has && takes(same, e.value) {
			continue
		}
		if _, has := kind.Key(old.Name); has {
			continue
		}
		if err := r.unset(p.path, old.Name); err != nil {
			return err
		}
		p, _ = r.place(p.path)
	}
	if err := r.dropParts(p.path, func(part string) bool { return slices.Contains(kind.Parts, part) }); err != nil {
		return err
	}
	p, _ = r.place(p.path)
	return r.beginning(p, kind)
}

// beginning gives a motif of a kind that is made of something an example to begin with.
func (r *revising) beginning(p place, kind motifs.Kind) error {
	begins, ok := beginning(kind, func(key string) bool { return p.find(key) != nil })
	if !ok {
		return nil
	}
	return r.set(p.path, begins.key, begins.value)
}

// beginning returns the example with which a kind begins, where none of its contents are
// given.
func beginning(kind motifs.Kind, isGiven func(key string) bool) (given, bool) {
	begins, ok := given{}, false
	for _, c := range kind.Keys {
		if c.Sort != motifs.Choice && isGiven(c.Name) {
			return given{}, false
		}
		if c.Begins {
			begins, ok = given{c.Name, c.Example}, true
		}
	}
	return begins, ok
}

// takes reports whether a value is one for a parameter.
func takes(p motifs.Param, v *value) bool {
	switch {
	case p.Sort == motifs.Switch:
		return v.kind == unstable.Bool
	case v.kind == unstable.String:
		return p.Sort == motifs.Count && isMost(v.text)
	case v.isNumber():
		x, err := v.number()
		return err == nil && p.Accepts(x)
	}
	return false
}
