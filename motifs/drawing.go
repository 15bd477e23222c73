package motifs

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"math"
	"slices"
	"strings"
	"unicode"

	"roundlay/geometry"
	"roundlay/motifs/strokes"
)

// DrawingName is the name of the kind that a job draws itself. The rest are its keys.
const (
	DrawingName = "drawing"
	FileKey     = "file"
	PathsKey    = "paths"
	CentreKey   = "centre"
)

// exampleDrawing is a blade with two fronds, as path data.
func exampleDrawing() []string {
	return []string{"M 20 60 C 19 40 22 22 20 0", "M 20 44 C 13 40 8 32 6 22", "M 20 34 C 27 30 32 22 34 12"}
}

// Drawings is the kind of motif whose lines a job gives, as it is listed. Its cuts are an
// example's.
func Drawings() Kind {
	// The text is our own: a test reads it.
	d, err := strokes.ReadPaths(exampleDrawing(), strokes.Options{})
	if err != nil {
		panic(err)
	}
	return Drawing(d)
}

// Drawing returns the kind made of a drawing: each stroke is a cut, and the drawing's box
// the motif's.
func Drawing(d *strokes.Drawing) Kind {
	cuts := drawnCuts(d)
	width, height := d.Box.Size()
	k := undrawn()
	k.Parts, k.Contents, k.Aspect = partsOf(cuts), fingerprint(cuts, width/height), width/height
	k.Draw = func(Values, float64) []Cut { return slices.Clone(cuts) }
	for _, n := range d.Notes {
		k.Notes = append(k.Notes, Note{n.String(), n.Share})
	}
	return k
}

// undrawn returns the kind without a drawing.
func undrawn() Kind {
	return Kind{
		Name:  DrawingName,
		About: "your own: the strokes of an SVG drawing, each one a cut with its root where its path begins",
		Keys: []ContentKey{
			{Name: FileKey, Sort: Text, Example: `"blade.svg"`,
				About: "an SVG file beside the job; its viewBox, or else the strokes' bounds, is the motif's box"},
			{Name: PathsKey, Sort: Texts, Example: `["` + strings.Join(exampleDrawing()[:2], `", "`) + `"]`, Begins: true,
				About: "in place of file, the lines themselves, in SVG path data"},
			{Name: CentreKey, Sort: Choice, Example: "true",
				About: "true: the outline of one stroke of a pen is cut along its middle"},
		},
	}
}

// partsOf returns the parts of cuts, each once, in their order.
func partsOf(cuts []Cut) []string {
	var parts []string
	for _, c := range cuts {
		if !slices.Contains(parts, c.Part) {
			parts = append(parts, c.Part)
		}
	}
	return parts
}

// drawnCuts returns a drawing's strokes as cuts in the unit repeat.
func drawnCuts(d *strokes.Drawing) []Cut {
	cuts := make([]Cut, len(d.Strokes))
	for i, s := range d.Strokes {
		curves := make([]geometry.Bezier, len(s.Curves))
		for k, c := range s.Curves {
			curves[k] = unit(c, d.Box)
		}
		cuts[i] = Cut{Part: partName(s.Part), Path: curves[0], More: curves[1:], Closed: s.Closed}
	}
	for _, j := range d.Joins {
		if j.A != j.B && !slices.Contains(cuts[j.A].Joins, j.B) {
			join(cuts, j.A, j.B)
		}
	}
	return cuts
}

// unit takes a curve from a box to the unit repeat.
func unit(c geometry.Bezier, box geometry.Box) geometry.Bezier {
	width, height := box.Size()
	for i := range c {
		c[i].X = (c[i].X-box.Min.X)/width - 0.5
		c[i].Y = (c[i].Y - box.Min.Y) / height
	}
	return c
}

// unnamed is the part of a stroke that its drawing gives no name.
const unnamed = "stroke"

// partName returns a name as it can stand in a line of a list.
func partName(id string) string {
	const most = 40 // letters
	name := strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return -1
		}
		return r
	}, id)
	if letters := []rune(name); len(letters) > most {
		name = string(letters[:most])
	}
	if name = strings.TrimSpace(name); name == "" {
		return unnamed
	}
	return name
}

// fingerprint returns what is the same for two lists of cuts, and the proportions of
// their boxes, only if these are.
func fingerprint(cuts []Cut, aspect float64) string {
	hash := sha256.New()
	var all []byte
	number := func(n int) { all = binary.LittleEndian.AppendUint64(all, uint64(n)) }
	decimal := func(x float64) { all = binary.LittleEndian.AppendUint64(all, math.Float64bits(x)) }
	decimal(aspect)
	for _, c := range cuts {
		number(len(c.Part))
		all = append(all, c.Part...)
		number(c.Curves())
		for i := range c.Curves() {
			for _, p := range c.Curve(i) {
				decimal(p.X)
				decimal(p.Y)
			}
		}
		if c.Closed {
			number(1)
		}
		number(len(c.Joins))
		for _, other := range c.Joins {
			number(other)
		}
		hash.Write(all)
		all = all[:0]
	}
	return hex.EncodeToString(hash.Sum(nil))
}
