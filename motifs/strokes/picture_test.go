package strokes_test

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"roundlay/motifs/strokes"
)

// plain writes a drawing's strokes as paths without anything else.
func plain(d *strokes.Drawing, width, height int) string {
	var b strings.Builder
	w, h := d.Box.Size()
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%d" height="%d" viewBox="%g %g %g %g" fill="none" stroke="black">`,
		width, height, d.Box.Min.X, -d.Box.Max.Y, w, h)
	for _, s := range d.Strokes {
		fmt.Fprintf(&b, `<path d="M%g %g`, s.Curves[0][0].X, -s.Curves[0][0].Y)
		for _, c := range s.Curves {
			fmt.Fprintf(&b, "C%g %g %g %g %g %g", c[1].X, -c[1].Y, c[2].X, -c[2].Y, c[3].X, -c[3].Y)
		}
		if s.Closed {
			b.WriteString("Z")
		}
		b.WriteString(`"/>`)
	}
	b.WriteString("</svg>")
	return b.String()
}

// shown has librsvg show a file five times as large.
func shown(t *testing.T, svg string) image.Image {
	t.Helper()
	file := filepath.Join(t.TempDir(), "shown.svg")
	if err := os.WriteFile(file, []byte(svg), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(program(t, "rsvg-convert"), "-z", "5", "-b", "white", file).Output()
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// ink is a picture's dark dots.
type ink struct {
	width, height int
	sums          []int // of the dark dots above and left of each place, its own row and column left out
}

func inkOf(p image.Image) ink {
	b := p.Bounds()
	k := ink{b.Dx(), b.Dy(), make([]int, (b.Dx()+1)*(b.Dy()+1))}
	for y := range k.height {
		row := 0
		for x := range k.width {
			if r, _, _, _ := p.At(b.Min.X+x, b.Min.Y+y).RGBA(); r < 0x9000 {
				row++
			}
			k.sums[(y+1)*(k.width+1)+x+1] = k.sums[y*(k.width+1)+x+1] + row
		}
	}
	return k
}

// within returns how many dark dots there are up to a reach from a place.
func (k *ink) within(x, y, reach int) int {
	x0, x1 := max(0, x-reach), min(k.width, x+reach+1)
	y0, y1 := max(0, y-reach), min(k.height, y+reach+1)
	at := func(x, y int) int { return k.sums[y*(k.width+1)+x] }
	return at(x1, y1) - at(x0, y1) - at(x1, y0) + at(x0, y0)
}

// missing counts the dots that are dark in one picture and have nothing dark within
// reach in the other.
func missing(p, q ink, reach int) (count int) {
	for y := range p.height {
		for x := range p.width {
			if p.within(x, y, 0) > 0 && q.within(x, y, reach) == 0 {
				count++
			}
		}
	}
	return count
}

// TestTheSameIsSeen has librsvg show drawings with uses, symbols, viewports and rules,
// and the strokes read from them: no line may be where the other has none. A reach of
// 4 dots of 1000 is less than a hundredth of the box; strokes that a transform makes
// broader than a unit get what that adds.
func TestTheSameIsSeen(t *testing.T) {
	for name, svg := range pictures() {
		d, err := strokes.Read([]byte(svg), asDrawn())
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		theirs := inkOf(shown(t, svg))
		mine := inkOf(shown(t, plain(d, theirs.width/5, theirs.height/5)))
		reach := 4
		if name == "symbols" { // strokes up to 5 units broad: 12 dots from their middle
			reach = 14
		}
		if n := missing(mine, theirs, 2); n > 0 {
			t.Errorf("%s: %d dots of the strokes that librsvg doesn't have", name, n)
		}
		if n := missing(theirs, mine, reach); n > 0 {
			t.Errorf("%s: %d dots that the strokes don't have", name, n)
		}
	}
}
