package motifs_test

import (
	"encoding/binary"
	"math"
	"reflect"
	"testing"

	"roundlay/motifs"
)

// FuzzDraw draws any kind with any parameters that it accepts, in boxes from a thread to a
// ribbon: what is drawn keeps its bounds, its joins name other cuts that join it too, and a
// second drawing is the same.
func FuzzDraw(f *testing.F) {
	for i := range motifs.All() {
		f.Add(uint8(i), 1.0, []byte(nil))
		f.Add(uint8(i), 0.01, []byte{0, 0, 255, 255, 0, 0, 255, 255, 0, 0, 255, 255})
		f.Add(uint8(i), 100.0, []byte{255, 255, 0, 0, 255, 255, 0, 0, 255, 255, 0, 0})
		f.Add(uint8(i), 0.7, []byte{12, 200, 99, 3, 140, 77, 31, 250, 180, 8, 66, 129})
	}
	f.Fuzz(func(t *testing.T, which uint8, aspect float64, shares []byte) {
		if !(aspect >= 0.01 && aspect <= 100) {
			t.Skip("a box that no layout makes")
		}
		all := motifs.All()
		k := all[int(which)%len(all)]
		v := chosen(k, shares)
		checkBounds(t, k, v, aspect)
		checkMutual(t, k, v, aspect)
		if !reflect.DeepEqual(k.Draw(v, aspect), k.Draw(v, aspect)) {
			t.Errorf("%s %v, aspect %g: drawn twice, it differs", k.Name, v, aspect)
		}
	})
}

// chosen is the values of a kind that two bytes each choose from what a parameter accepts;
// those without bytes keep their defaults.
func chosen(k motifs.Kind, shares []byte) motifs.Values {
	v := k.Defaults()
	for _, p := range k.Params {
		if len(shares) < 2 {
			break
		}
		share := float64(binary.LittleEndian.Uint16(shares)) / math.MaxUint16
		shares = shares[2:]
		value := p.Min + share*(p.Max-p.Min)
		if !p.Accepts(value) {
			value = math.Round(value)
		}
		if p.Accepts(value) {
			v[p.Name] = value
		}
	}
	return v
}

// checkMutual holds each join to a cut that there is, that is another, and that says the same.
func checkMutual(t *testing.T, k motifs.Kind, v motifs.Values, aspect float64) {
	t.Helper()
	cuts := k.Draw(v, aspect)
	type pair struct{ from, to int }
	said := map[pair]bool{}
	for i, c := range cuts {
		for _, to := range c.Joins {
			if to < 0 || to >= len(cuts) || to == i {
				t.Fatalf("%s %v, aspect %g: cut %d of %d joins %d", k.Name, v, aspect, i, len(cuts), to)
			}
			said[pair{i, to}] = true
		}
	}
	for p := range said {
		if !said[pair{p.to, p.from}] {
			t.Fatalf("%s %v, aspect %g: cut %d joins %d, which does not join it", k.Name, v, aspect, p.from, p.to)
		}
	}
}
