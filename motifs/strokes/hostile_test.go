package strokes_test

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"roundlay/motifs/strokes"
	"roundlay/motifs/strokes/strokestest"
)

// broken returns a good file with some of it cut out, doubled or overwritten.
func broken(random *rand.Rand) string {
	file := []byte(randomDrawing(random))
	for range 1 + random.IntN(4) {
		i, j := random.IntN(len(file)), random.IntN(len(file))
		i, j = min(i, j), min(max(i, j), min(i, j)+30)
		switch random.IntN(8) {
		case 0:
			file = append(file[:i:i], file[j:]...)
		case 1:
			file = append(file[:j:j], file[i:]...)
		case 2:
			const odd = "<>&'\"/=%#;{}-\x00\xffe9"
			file[i] = odd[random.IntN(len(odd))]
		case 3:
			more := []string{"NaN", "1e999", "&x;", "<g>", "</svg>", "url(#a)", "-", "]]>"}[random.IntN(8)]
			file = slices.Concat(file[:i], []byte(more), file[i:])
		default: // a digit
			if k := bytes.IndexAny(file[i:], "0123456789"); k >= 0 {
				const other = "0189.-e, %m"
				file[i+k] = other[random.IntN(len(other))]
			}
		}
	}
	return string(file)
}

// refusal returns the error of a file that isn't read: one line of printable text.
func refusal(t *testing.T, name string, err error) {
	t.Helper()
	var e *strokes.Error
	text := err.Error()
	if !errors.As(err, &e) || strings.ContainsAny(text, "\n\r") || len(text) > 600 || e.Accepted == "" || e.Read == "" {
		t.Errorf("%s: %q", name, text)
	}
	for _, r := range text {
		if r < ' ' || r == '\uFFFD' {
			t.Errorf("%s: %q", name, text)
			break
		}
	}
}

// TestHostileFiles reads files that are made to break a reader, and good ones broken at
// random: each gives a sound drawing or one line, in bounded time and memory. None of
// what they name is opened: the file is there, and nothing of it appears.
func TestHostileFiles(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "secret.svg"), []byte("<svg><g id='secret'><path id='a' stroke='red' d='M0 0H77'/></g></svg>"), 0o600); err != nil {
		t.Fatal(err)
	}
	files := strokestest.Hostile("file://" + filepath.ToSlash(filepath.Join(folder, "secret.svg")))
	random := rand.New(rand.NewPCG(13, 4))
	for i := range 150 {
		files[fmt.Sprintf("broken %d", i)] = broken(random)
	}
	drawings, refused := 0, 0
	for name, file := range files {
		asked := []bool{false, true}
		if len(file) > 100_000 && name != "many slivers" {
			asked = asked[:1]
		}
		for _, centre := range asked {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			start := time.Now()
			d, err := strokes.Read([]byte(file), strokes.Options{Centre: centre})
			took := time.Since(start)
			runtime.ReadMemStats(&after)
			if took > 30*time.Second {
				t.Errorf("%s took %v", name, took)
			}
			if used := after.TotalAlloc - before.TotalAlloc; used > 1<<29 { // all of it, freed or not
				t.Errorf("%s took %d MB", name, used>>20)
			}
			if took > 2*time.Second {
				t.Logf("%s: %v", name, took.Round(time.Millisecond))
			}
			if err != nil {
				refusal(t, name, err)
				refused++
				continue
			}
			drawings++
			sound(t, d)
			for _, s := range d.Strokes {
				if s.Part == "secret" || s.Length() == 77 {
					t.Errorf("%s: a file that it names was opened", name)
				}
			}
		}
	}
	if len(files) < 200 || drawings < 80 || refused < 80 {
		t.Errorf("%d files, %d drawings, %d refused", len(files), drawings, refused)
	}
	t.Logf("%d files, the short ones twice: %d drawings, %d refused", len(files), drawings, refused)
}
