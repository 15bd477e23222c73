package pattern

import (
	"encoding/binary"
	"fmt"
	"math"
	"reflect"
	"slices"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// key is values as bytes, equal where all their exported fields are. Fields are read by
// reflection, so a field added later counts without a change here. Unexported fields
// depend on the exported ones. A kind of motif counts by its name.
type key []byte

// Fingerprint returns what is the same for two jobs only if all their values are: whatever
// follows from one follows from the other. How their files are written doesn't count.
func Fingerprint(j *job.Job) string {
	bare := *j
	bare.Title, bare.Motifs = "", slices.Clone(j.Motifs)
	for i := range bare.Motifs {
		bare.Motifs[i].Line = 0
	}
	return string(keyOf(bare))
}

// keyOf returns the key of some values.
func keyOf(values ...any) key { return key(nil).and(values...) }

// and returns a key with values added.
func (k key) and(values ...any) key {
	const room = 512 // for most of what is added
	k = append(make(key, 0, len(k)+room), k...)
	for _, v := range values {
		k = k.add(reflect.ValueOf(v))
	}
	return k
}

func (k key) bits(x uint64) key { return binary.NativeEndian.AppendUint64(k, x) }

func (k key) text(s string) key { return append(k.bits(uint64(len(s))), s...) }

func (k key) add(v reflect.Value) key {
	switch v.Kind() {
	case reflect.Bool:
		if v.Bool() {
			return append(k, 1)
		}
		return append(k, 0)
	case reflect.Int:
		return k.bits(uint64(v.Int()))
	case reflect.Float64:
		return k.bits(math.Float64bits(v.Float()))
	case reflect.String:
		return k.text(v.String())
	case reflect.Pointer:
		if v.IsNil() {
			return append(k, 0)
		}
		return append(k, 1).add(v.Elem())
	case reflect.Slice, reflect.Array:
		k = k.bits(uint64(v.Len()))
		for i := range v.Len() {
			k = k.add(v.Index(i))
		}
		return k
	case reflect.Map:
		if m, ok := v.Interface().(motifs.Values); ok {
			return k.values(m)
		}
	case reflect.Struct:
		return k.fields(v)
	}
	panic(fmt.Sprintf("pattern: a %s can't be part of a key", v.Type()))
}

// values adds a motif's values in the order of their names.
func (k key) values(of motifs.Values) key {
	var few [16]string // more than any kind has
	names := few[:0]
	for name := range of {
		names = append(names, name)
	}
	slices.Sort(names)
	k = k.bits(uint64(len(names)))
	for _, name := range names {
		k = k.text(name).bits(math.Float64bits(of[name]))
	}
	return k
}

func (k key) fields(v reflect.Value) key {
	if v.Type() == kindType {
		return k.text(v.FieldByName("Name").String())
	}
	for i := range v.NumField() {
		if f := v.Field(i); f.CanInterface() { // it is exported
			k = k.add(f)
		}
	}
	return k
}

var kindType = reflect.TypeFor[motifs.Kind]()
