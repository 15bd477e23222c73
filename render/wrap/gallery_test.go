package wrap

import (
	"bytes"
	"os"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/job"
	"roundlay/pattern/search"
)

// The wraps of the gallery are what the program draws today: the demo's, and
// those of the jobs that lie there. Remade with ROUNDLAY_UPDATE=1.
func TestGallery(t *testing.T) {
	const folder = "../../testdata/gallery/"
	for _, name := range []string{
		"hedgerow-tumblers", "quilted-highball", "trellis-beaker", "fern-and-beam", "bracken-tumbler", "reeds-and-swallows", "olive-branch", "star-footed-tumbler",
	} {
		file, text := job.Demo()
		if name != "hedgerow-tumblers" {
			var err error
			file = folder + name + ".toml"
			if text, err = os.ReadFile(file); err != nil {
				t.Fatal(err)
			}
		}
		j, err := job.ReadWith(file, text, func(beside string) ([]byte, error) { return os.ReadFile(folder + beside) })
		if err != nil {
			t.Fatal(err)
		}
		plans, err := search.Lay(t.Context(), j, j.Blanks[0])
		if err != nil {
			t.Fatal(err)
		}
		if err := search.Cures(t.Context(), plans...); err != nil {
			t.Fatal(err)
		}
		p := plans[0]
		var picture bytes.Buffer
		if err := wrapOf(t, p, DefaultOptions(geometry.Inch)).SVG(&picture); err != nil {
			t.Fatal(err)
		}
		path := folder + name + "-wrap.svg"
		keptPicture(t, path, picture.Bytes())
		if p.Base != nil {
			o := DefaultOptions(geometry.Millimetre)
			o.Side = Base
			picture.Reset()
			if err := wrapOf(t, p, o).SVG(&picture); err != nil {
				t.Fatal(err)
			}
			keptPicture(t, folder+name+"-base.svg", picture.Bytes())
		}
		if !p.Clear() {
			t.Errorf("%s has findings: a gallery shows what can be cut", name)
		}
	}
}
