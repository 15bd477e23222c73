package picture

import (
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/printing"
)

// The gallery's picture of what the hand does: four glasses, even above and by hand below, as
// they are drawn today. Both are jobs that can be cut. Remade with ROUNDLAY_UPDATE=1.
func TestHandGallery(t *testing.T) {
	const (
		wide, high, gap = 46, 60, 3 // mm, of one picture
		caption, size   = 6, 9      // mm, points
	)
	names := []string{"hand-leaf", "hand-fan", "hand-wheat", "hand-olives"}
	page := printing.Page{Width: 4*wide + 3*gap, Height: 2 * (high + caption)}
	for column, name := range names {
		path := filepath.Join(gallery, name+".toml")
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		j, err := job.Read(path, data)
		if err != nil {
			t.Fatal(err)
		}
		for row, hand := range []float64{0, 1} {
			p := laidOut(t, j.With(job.Change{Key: motifs.HandParam, Value: hand}))
			if len(p.Findings) > 0 {
				t.Errorf("%s with hand = %g has findings", path, hand)
			}
			left, top := float64(column*(wide+gap)), page.Height-float64(row*(high+caption))
			page.Drawing.Append(front(p, geometry.Box{Min: geometry.Point{X: left, Y: top - high}, Max: geometry.Point{X: left + wide, Y: top}}))
			words := strings.TrimPrefix(name, "hand-") + []string{", even", ", by hand"}[row]
			page.Drawing.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: left + 2, Y: top - high - 0.65*caption}, Words: words, Size: size})
		}
	}
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	drawn := write(t, func(to io.Writer) error { return printing.SVG(to, "Even and by hand", page, letters) })
	kept(t, filepath.Join(gallery, "hand.svg"), drawn, 400_000) // eight views
}

// front draws the middle of the glass as it faces the eye, in a box, in few points.
func front(p *pattern.Plan, in geometry.Box) drawing.Drawing {
	const stray = 0.07 // mm
	wide, high := in.Size()
	d, box := Small(p, 1.3*high, 1.3*high)
	middle := r2.Scale(0.5, r2.Add(box.Min, box.Max))
	middle.Y -= high / 24 // the rim is seen from above
	half := geometry.Point{X: wide / 2, Y: high / 2}
	to := r2.Sub(r2.Add(in.Min, half), middle)
	seen := geometry.Box{Min: r2.Sub(middle, half), Max: r2.Add(middle, half)}
	return d.Clipped(drawing.BoxWindow(seen)).Simplified(stray).Moved(geometry.Motion{Cos: 1, X: to.X, Y: to.Y})
}
