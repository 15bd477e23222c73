package job

import (
	"slices"

	"github.com/pelletier/go-toml/v2/unstable"
)

// merge returns the top of a job with that of the files it includes: their tables in order,
// then the job's own. What comes later wins, key by key; a wheel of the same name wins as a
// whole. It changes neither the job's tree nor theirs, except that each top knows then which
// numbers its wheels and motifs have in the whole.
func merge(own *table, files []*included) *table {
	all := &table{at: own.at}
	for _, file := range files {
		all.take(file.doc.root, false)
	}
	all.take(own, true)
	return all
}

// take adds the tables of a file to those of the files before it.
func (t *table) take(file *table, isJob bool) {
	file.numbers = map[string][]int{"wheel": {}, "motif": {}}
	for _, e := range file.fields {
		found := t.find(e.key)
		switch {
		case e.key == "length" && !isJob: // it holds in its own file
		case e.key == "wheel" || e.key == "motif":
			t.takeList(file, e)
		case found == nil:
			t.put(e.key, e.at, e.value)
		case found.value.table == nil: // which the reader refuses
		case e.value.table == nil:
			found.at, found.value = e.at, e.value
		default:
			found.at, found.value = e.at, overlaid(found.value, e.value)
		}
	}
}

// takeList adds a list of tables. One that has the name of one that is there is not added
// to it: a wheel comes in its place, and a motif changes it.
func (t *table) takeList(file *table, e *entry) {
	found := t.find(e.key)
	switch {
	case found != nil && !found.value.isTables(): // which the reader refuses
		return
	case found == nil && !e.value.isTables():
		t.put(e.key, e.at, e.value)
		return
	case !e.value.isTables():
		found.at, found.value = e.at, e.value
		return
	case found == nil:
		t.put(e.key, e.at, &value{kind: unstable.Array})
		found = t.find(e.key)
	}
	all := found.value
	found.at, all.at, all.open = e.at, e.value.at, e.value.open
	before, known := map[string]int{}, map[string]bool{}
	for n, item := range all.items {
		before[item.table.says("name")] = n
	}
	numbers := make([]int, len(e.value.items))
	for i, item := range e.value.items {
		name := item.table.says("name")
		n, is := before[name]
		is = is && name != "" && !known[name] // twice in one file, it is refused by the reader
		known[name] = true
		switch {
		case !is:
			n = len(all.items)
			all.items = append(all.items, item)
		case e.key == "motif":
			all.items[n] = overlaid(all.items[n], item)
		default:
			all.items[n] = item
		}
		numbers[i] = n + 1
	}
	file.numbers[e.key] = numbers
}

// isTables reports whether a value is a list of one table or more.
func (v *value) isTables() bool {
	return v.kind == unstable.Array && len(v.items) > 0 &&
		!slices.ContainsFunc(v.items, func(item *value) bool { return item.table == nil })
}

// says returns the text that a key has, "" where it has none.
func (t *table) says(key string) string {
	if e := t.find(key); e != nil && e.value.kind == unstable.String {
		return e.value.text
	}
	return ""
}

// overlaid returns a table with another over it, key by key, and so with the tables in it.
func overlaid(under, over *value) *value {
	t := &table{at: over.table.at, made: over.table.made}
	for _, e := range under.table.fields {
		t.put(e.key, e.at, e.value)
	}
	for _, e := range over.table.fields {
		found := t.find(e.key)
		switch {
		case found == nil:
			t.put(e.key, e.at, e.value)
		case found.value.table != nil && e.value.table != nil:
			found.at, found.value = e.at, overlaid(found.value, e.value)
		default:
			found.at, found.value = e.at, e.value
		}
	}
	return &value{at: over.at, kind: unstable.InlineTable, table: t}
}

// number returns the number that one of several tables has in the whole job, given its
// place in the list of its own file, from 0.
func (t *table) number(list string, i int) int {
	if numbers := t.numbers[list]; i < len(numbers) {
		return numbers[i]
	}
	return i + 1
}

// index returns the place in the list of its own file, from 0, of the table that has a
// number in the whole job; -1 where that one stands in another file.
func (t *table) index(list string, number int) int {
	if numbers, counted := t.numbers[list]; counted {
		return slices.Index(numbers, number)
	}
	return number - 1
}
