package pattern

import (
	"encoding/binary"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"roundlay/motifs"
)

// key is values as bytes, equal where all their exported fields are. Fields are read by
// reflection, so a field added later counts without a change here. Unexported fields
// depend on the exported ones.
type key []byte

// keyOf returns the key of some values.
func keyOf(values ...any) key {
	var k key
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
		return k.entries(v)
	case reflect.Struct:
		return k.fields(v)
	}
	panic(fmt.Sprintf("pattern: a %s can't be part of a key", v.Type()))
}

// entries adds the entries of a map in the order of their names.
func (k key) entries(v reflect.Value) key {
	names := v.MapKeys()
	slices.SortFunc(names, func(a, b reflect.Value) int { return strings.Compare(a.String(), b.String()) })
	k = k.bits(uint64(len(names)))
	for _, name := range names {
		k = k.text(name.String()).add(v.MapIndex(name))
	}
	return k
}

func (k key) fields(v reflect.Value) key {
	t := v.Type()
	for i := range t.NumField() {
		switch f := t.Field(i); {
		case !f.IsExported():
		case t == kindType && f.Type.Kind() == reflect.Func: // draws the same for the same name and values
		default:
			k = k.add(v.Field(i))
		}
	}
	return k
}

var kindType = reflect.TypeFor[motifs.Kind]()
