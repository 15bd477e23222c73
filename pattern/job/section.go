package job

import (
	"fmt"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/motifs/strokes"
)

// section is one table of the job while it is read.
type section struct {
	*reading
	table *table
	path  string // of the table, "" at the top
	// strange says that it has a key that no job has. A key that is missing is
	// probably that one misspelt, so it isn't reported.
	strange bool
}

// reading is one reading of a job: what is known so far, and the first mistake.
type reading struct {
	file  string // the job's, as it was given
	unit  geometry.Unit
	first *mistake
	// cutBelow says that the job has a base: then it has to be known how thick the glass is
	// there.
	cutBelow bool
	beside   Beside
	files    []*included
	root     *table                         // of the job with what it includes
	needs    []string                       // the names of the files beside the job that were read, each once
	drawn    map[drawnFile]*strokes.Drawing // those read so far
}

// unitAt returns the unit of a bare number at a place.
func (r *reading) unitAt(at int) geometry.Unit {
	if file := includedAt(r.files, at); file != nil {
		return file.unit
	}
	return r.unit
}

// note keeps a mistake if it stands before those seen so far.
func (r *reading) note(m *mistake) {
	if r.first == nil || m.at < r.first.at {
		r.first = m
	}
}

// late reports whether a mistake at the given place comes after one already noted.
func (r *reading) late(at int) bool { return r.first != nil && r.first.at <= at }

// name returns a key of the section in full.
func (s section) name(key string) string {
	if s.path == "" {
		return written(key)
	}
	return s.path + "." + written(key)
}

// bare reports whether a key, if it isn't very long, is one that TOML takes
// without quotes.
func bare(key string) bool {
	const letters, others, long = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz", "0123456789_-", 40
	return key != "" && len(key) <= long && strings.Trim(key, letters+others) == ""
}

// written returns a key as it would be written in the file, shortened.
func written(key string) string {
	if bare(key) {
		return key
	}
	return quoted(key)
}

// missing reports a key the section lacks.
func (s section) missing(key, accepted string) {
	if !s.strange && !s.late(s.table.at) {
		s.note(&mistake{at: s.table.at, key: s.name(key), read: "nothing", accepted: accepted})
	}
}

// only refuses every key but the known ones, and says where it belongs or which
// is nearest.
func (s *section) only(known []string) {
	for _, e := range s.table.fields {
		if slices.Contains(known, e.key) {
			continue
		}
		s.strange = true
		if s.late(e.at) {
			return
		}
		hint := belongs(e.key)
		if hint == "" {
			hint = meant(e.key, known)
		}
		s.note(&mistake{
			at: e.at, key: s.name(e.key), read: "a key " + quoted(e.key),
			accepted: "the keys " + strings.Join(known, ", "), hint: hint,
		})
		return
	}
}

// has reports whether the section has a key.
func (s section) has(key string) bool { return s.table.find(key) != nil }

// optional returns the field of a key that may be missing.
func (s section) optional(key string) field {
	f := field{in: s, key: key, path: s.name(key)}
	if e := s.table.find(key); e != nil {
		f.value, f.at = e.value, e.at
	}
	return f
}

// required returns the field of a key that must be there.
func (s section) required(key string) field {
	f := s.optional(key)
	f.needed = true
	return f
}

// tables reads one table or several, as [key], [[key]] or in braces.
func (f field) tables(accepted string, most int) []section {
	if f.absent(accepted) {
		return nil
	}
	if f.value.table != nil {
		return []section{{reading: f.in.reading, table: f.value.table, path: f.path}}
	}
	return f.list(accepted, most)
}

// list reads several tables, as [[key]] or in brackets and braces.
func (f field) list(accepted string, most int) []section {
	switch {
	case f.absent(accepted):
		return nil
	case f.value.table != nil && f.value.table.made == headed:
		f.read = "one table [" + f.path + "]"
		f.refuse(accepted, "write [["+f.path+"]]")
		return nil
	case f.value.table != nil:
		f.refuse(accepted, "")
		return nil
	}
	if len(f.value.items) == 0 {
		f.refuse(accepted, "")
		return nil
	}
	if n := len(f.value.items); n > most {
		over := f.item(most)
		over.read = fmt.Sprint(n)
		over.refuse(fmt.Sprintf("at most %d of them", most), "")
		return nil
	}
	sections := make([]section, 0, len(f.value.items))
	for i, item := range f.value.items {
		if item.table == nil {
			f.item(i).refuse(accepted, "")
			return nil
		}
		sections = append(sections, section{reading: f.in.reading, table: item.table, path: f.item(i).path})
	}
	return sections
}
