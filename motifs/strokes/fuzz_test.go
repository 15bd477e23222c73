package strokes_test

import (
	"maps"
	"math/rand/v2"
	"slices"
	"testing"

	"roundlay/motifs/strokes"
)

// FuzzRead reads any file: it is sound, or refused in one line.
func FuzzRead(f *testing.F) {
	for _, all := range []map[string]string{shapes(), pictures()} {
		for _, name := range slices.Sorted(maps.Keys(all)) {
			f.Add([]byte(all[name]), true)
		}
	}
	random := rand.New(rand.NewPCG(13, 5))
	for range 10 {
		f.Add([]byte(randomDrawing(random)), false)
		f.Add([]byte(broken(random)), true)
	}
	f.Fuzz(func(t *testing.T, file []byte, centre bool) {
		d, err := strokes.Read(file, strokes.Options{Centre: centre})
		if err != nil {
			refusal(t, "file", err)
			return
		}
		sound(t, d)
	})
}

// FuzzPaths reads any path data.
func FuzzPaths(f *testing.F) {
	random := rand.New(rand.NewPCG(13, 6))
	for range 20 {
		f.Add(randomPath(random))
	}
	for _, data := range []string{"M0 0", "m1-1z", "M0 0A1 1 0 1150 5", "M.5.5.5.5", "M1e9 1e9L-1e9-1e9", "M0 0C0 0 0 0 0 0z", "M0 0a9 1e-9 45 1 1 1e-9 0", "M0 0H1e-300"} {
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data string) {
		d, err := strokes.ReadPaths([]string{data}, strokes.Options{})
		if err != nil {
			refusal(t, data, err)
			return
		}
		sound(t, d)
	})
}
