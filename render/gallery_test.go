package render

import (
	"bytes"
	"os"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// The picture in the README is what the program draws today. Remade with
// ROUNDLAY_UPDATE=1.
func TestGallery(t *testing.T) {
	const path = "../testdata/gallery/hedgerow-tumblers-wrap.svg"
	w := demoWrap(t, DefaultOptions(0))
	var picture bytes.Buffer
	if err := w.SVG(&picture); err != nil {
		t.Fatal(err)
	}
	if os.Getenv("ROUNDLAY_UPDATE") != "" {
		if err := os.WriteFile(path, picture.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	kept, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(kept, picture.Bytes()) {
		t.Errorf("%s is not what is drawn now; look, and remake it with ROUNDLAY_UPDATE=1", path)
	}
}

// demoPlan lays out the built-in demo.
func demoPlan(t *testing.T) *pattern.Plan {
	t.Helper()
	j, err := job.Read(job.Demo())
	if err != nil {
		t.Fatal(err)
	}
	p, err := pattern.New(j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func demoWrap(t *testing.T, o Options) *Wrap {
	t.Helper()
	w, err := NewWrap(demoPlan(t), o)
	if err != nil {
		t.Fatal(err)
	}
	return w
}
