package job

import "slices"

// keyOf finds a key by its path. The key is one that a job can have.
func (r *revising) keyOf(path string) (place, Key, error) {
	table, name := parent(path)
	p, ok := r.place(table)
	if !ok {
		return p, Key{}, r.refuse(path, "the job has no %s", table)
	}
	k, ok := p.key(name)
	switch {
	case !ok && p.name == "":
		return p, k, r.refuse(path, "a job has no such key")
	case !ok:
		return p, k, r.refuse(path, "%s has no such key", p.path)
	case k.Sort == OfTables:
		return p, k, r.refuse(path, "it has keys of its own: name one of them")
	}
	return p, k, nil
}

// setAsked sets a key, and changes what follows from it.
func (r *revising) setAsked(path string, value any) error {
	if err := r.override(path); err != nil {
		return err
	}
	p, k, err := r.keyOf(path)
	if err != nil {
		return err
	}
	written, err := k.toml(value)
	if err != nil {
		return r.refuse(path, "%s", err)
	}
	if r.says(p, k, value, written) {
		return nil
	}
	was := p.says(k.Name)
	if err := r.mayRename(p, k, written); err != nil {
		return err
	}
	if err := r.set(p.path, k.Name, written); err != nil {
		return err
	}
	return r.follow(p.path, k.Name, was)
}

// says reports whether a key says already what was typed, in whatever way that is
// written.
func (r *revising) says(p place, k Key, typed any, written string) bool {
	e := p.find(k.Name)
	if e == nil {
		return false
	}
	// A length is the same with and without quotes.
	length := k.Sort == OfLength || k.Sort == OfLengths
	if was, is := manner(r.raw(e)), manner(written); was != is && !(length && was != '[' && is != '[') {
		return false
	}
	has := r.field(p, &k)
	switch v := typed.(type) {
	case string:
		return v == has.Text
	case []string:
		return slices.Equal(v, has.List)
	case []any:
		return slices.EqualFunc(v, has.List, func(a any, b string) bool { return a == b })
	}
	return false
}

// manner tells texts, lists and other values from one another.
func manner(written string) byte {
	switch {
	case written == "":
		return 0
	case written[0] == '\'':
		return '"'
	case written[0] == '"' || written[0] == '[' || written[0] == '{':
		return written[0]
	}
	return '0'
}

// raw returns the value of an entry as it is written.
func (r *revising) raw(e *entry) string {
	from, to, ok := extent(r.text, e.at)
	if !ok {
		return ""
	}
	return r.text[from:to]
}

// set gives a key a value as TOML has it.
func (r *revising) set(table, key, written string) error {
	if p, ok := r.place(table); ok {
		if e := p.find(key); e != nil && r.raw(e) == written {
			return nil
		}
	}
	if !r.write(table, key, written, note{}) {
		return r.strange(joined(table, key))
	}
	return nil
}

// write writes a key's value, with a note above it, and reports whether it stands there
// then. In a file of a strange shape it might come to stand in another table: the file is
// then left as it was.
func (r *revising) write(table, key, written string, above note) bool {
	p, ok := r.place(table)
	if !ok {
		return false
	}
	was := *r
	if patches, ok := r.put(p, key, written, above); ok && r.splice(patches...) {
		if p, ok := r.place(table); ok {
			if e := p.find(key); e != nil && r.raw(e) == written {
				return true
			}
		}
	}
	*r = was
	return false
}

// removeAsked removes a key.
func (r *revising) removeAsked(path string) error {
	if err := r.isElsewhere(path); err != nil {
		return err
	}
	p, k, err := r.keyOf(path)
	if err != nil {
		return err
	}
	return r.unset(p.path, k.Name)
}

// unset takes a key from a table, which may not have it.
func (r *revising) unset(table, key string) error {
	p, ok := r.place(table)
	if !ok {
		return r.strange(joined(table, key))
	}
	e := p.find(key)
	if e == nil {
		return nil
	}
	patches, ok := r.remove(p.table, e)
	if !ok || !r.splice(patches...) {
		return r.strange(joined(table, key))
	}
	return nil
}
