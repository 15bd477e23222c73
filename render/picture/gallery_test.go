package picture

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

const gallery = "../../testdata/gallery"

// gallerySize is the most bytes of a picture that people are to open from a page.
const gallerySize = 300_000

// The pictures in the gallery are what view draws today, without a flag. Remade
// with ROUNDLAY_UPDATE=1.
func TestGallery(t *testing.T) {
	name, data := job.Demo()
	compare(t, "hedgerow-tumblers", planOf(t, name, data))
	for _, title := range []string{
		"quilted-highball", "trellis-beaker", "fern-and-beam", "bracken-tumbler", "reeds-and-swallows", "olive-branch", "star-footed-tumbler",
	} {
		path := filepath.Join(gallery, title+".toml")
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		p := planOf(t, path, data)
		if !p.Clear() {
			t.Errorf("%s has findings: %s is no example", path, p.Job.Title)
		}
		compare(t, title, p)
		if p.Base != nil {
			compareAs(t, title+"-base-view", p, Options{Base: true})
		}
	}
}

func compare(t *testing.T, title string, p *pattern.Plan) {
	t.Helper()
	compareAs(t, title+"-view", p, Options{Tilt: DefaultTilt})
}

func compareAs(t *testing.T, name string, p *pattern.Plan, o Options) {
	t.Helper()
	path := filepath.Join(gallery, name+".svg")
	v, err := New(context.Background(), p, o)
	if err != nil {
		t.Fatal(err)
	}
	kept(t, path, write(t, v.SVG), gallerySize)
}

// kept compares a picture with the one in the gallery, which may have so many bytes.
func kept(t *testing.T, path string, drawn []byte, most int) {
	t.Helper()
	if len(drawn) > most {
		t.Errorf("%s has %d bytes", path, len(drawn))
	}
	if os.Getenv("ROUNDLAY_UPDATE") != "" {
		if err := os.WriteFile(path, drawn, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	was, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(was, drawn) {
		t.Errorf("%s is not what is drawn now; look, and remake it with ROUNDLAY_UPDATE=1", path)
	}
}

// How long a picture of the demo takes, its plan given.
func BenchmarkPicture(b *testing.B) {
	p := demo(b)
	for b.Loop() {
		v, err := New(context.Background(), p, Options{Tilt: DefaultTilt})
		if err != nil {
			b.Fatal(err)
		}
		if err := v.SVG(io.Discard); err != nil {
			b.Fatal(err)
		}
	}
}
