package render

import (
	"bytes"
	"os"
	"testing"

	"roundlay/geometry"
)

// The picture in the README is what the program draws today. Remade with
// ROUNDLAY_UPDATE=1.
func TestGallery(t *testing.T) {
	const path = "../testdata/gallery/hedgerow-tumblers-wrap.svg"
	w := wrapOf(t, demoPlan(t), DefaultOptions(geometry.Inch))
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
