package wrap

import (
	"context"
	"fmt"
	"maps"
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// The glass that swatches are cut on: straight, so that they lie flat as they
// are, and as wide as a tumbler.
const (
	swatchAcross = 2.625 * geometry.MillimetresPerInch
	swatchFoot   = 25.0 // where its band begins

	// What is shown of the glass round the room for the motif.
	swatchAir = 2.5
)

// The wheels that swatches are cut with.
const inch = geometry.MillimetresPerInch

var (
	swatchMitre = groove.Wheel{Name: "mitre", Edge: groove.Mitre, Radius: 3 * inch / 2, Thick: inch / 4, Angle: math.Pi / 2}
	swatchRound = groove.Wheel{Name: "round", Edge: groove.Round, Radius: 3 * inch / 2, Thick: inch / 4, Convex: inch / 8}
	swatchFlat  = groove.Wheel{Name: "flat", Edge: groove.Flat, Radius: 3 * inch / 2, Thick: 3 * inch / 8}
)

// swatchCut returns the wheel and the depth that suit a kind.
func swatchCut(kind motifs.Kind) (groove.Wheel, float64) {
	switch kind.Name {
	case motifs.Olives().Name:
		return swatchRound, inch / 32
	case motifs.Flute().Name:
		return swatchFlat, inch / 64 // more, and its panels lie on each other
	}
	return swatchMitre, inch / 32
}

// swatch is one motif as it is cut into a glass, and the words that go with it.
type swatch struct {
	kind    motifs.Kind
	values  motifs.Values
	repeats int     // how many of them go round the glass
	tall    float64 // the picture's height
	spans   bool    // whether it goes on into its neighbours, and so is shown
	name    string
	about   string
}

// newSwatch returns the swatch of a kind at its defaults.
func newSwatch(ctx context.Context, kind motifs.Kind, repeats int, tall float64) (swatch, error) {
	w := swatch{kind: kind, values: kind.Defaults(), repeats: repeats, tall: tall, spans: true}
	p, err := w.plan(ctx)
	if err == nil {
		w.spans = runsOn(p)
	}
	return w, err
}

// SwatchPlan lays a kind of motif out as its swatch shows it, at its defaults: a picture of
// its first repeat is what the motif looks like.
func SwatchPlan(ctx context.Context, kind motifs.Kind) (*pattern.Plan, error) {
	const repeats, tall = 7, 50
	w, err := newSwatch(ctx, kind, repeats, tall)
	if err != nil {
		return nil, err
	}
	return w.plan(ctx)
}

// plan lays the swatch's motif out on its glass. The chart shows how motifs
// look, so nothing is asked of the glass between and below the cuts.
func (w swatch) plan(ctx context.Context) (*pattern.Plan, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	const rim, wall = 25.0, 8.0
	band := job.Band{Foot: swatchFoot, Top: swatchFoot + w.tall - 2*swatchAir}
	blank, err := glass.NewBlank("swatch", 0, []glass.Station{
		{Height: 0, Radius: swatchAcross / 2, Wall: wall}, {Height: band.Top + rim, Radius: swatchAcross / 2, Wall: wall},
	})
	if err != nil {
		return nil, fmt.Errorf("motif %s: %w", w.kind.Name, err)
	}
	// A motif that does not continue into its neighbours is kept apart from them: a
	// star's ray would run on where it meets the next one's.
	width := job.Measure{Value: 1, Fraction: true}
	if !w.spans {
		width.Value = 0.97
	}
	wheel, depth := swatchCut(w.kind)
	p, err := pattern.New(ctx, &job.Job{
		Title: w.kind.Name, Length: geometry.Inch, Blanks: []*glass.Blank{blank}, Rack: []groove.Wheel{wheel},
		Layout: job.Layout{Repeats: w.repeats, Band: &band},
		Motifs: []job.Motif{{
			Kind: w.kind, Values: w.values, Depth: depth,
			Y: job.Measure{Value: 0.5, Fraction: true}, Width: width, Height: job.Measure{Value: 1, Fraction: true},
		}},
	}, blank)
	if err != nil {
		return nil, fmt.Errorf("motif %s: %w", w.kind.Name, err)
	}
	return p, nil
}

// runsOn reports whether most of a plan's cuts continue into the next repeat: they
// are still deep at the repeat's edge.
func runsOn(p *pattern.Plan) bool {
	const near, deep = 1e-6, 0.1
	n := 0
	for _, c := range p.Cuts {
		if slices.ContainsFunc(c.Samples, func(at groove.Sample) bool {
			return math.Abs(at.Theta) > p.PitchAngle()/2-near && at.Depth > deep
		}) {
			n++
		}
	}
	return 2*n >= len(p.Cuts)
}

// wide returns the width of the picture of a motif that is repeated n times round.
func wide(repeats int) float64 { return math.Pi*swatchAcross/float64(repeats) + 2*swatchAir }

// draw returns the swatch's picture, its lower left corner at the origin: the
// grooves as a wrap has them, in a frame.
func (w swatch) draw(ctx context.Context, letters *lettering.Letters) (drawing.Drawing, error) {
	var d drawing.Drawing
	p, err := w.plan(ctx)
	if err != nil {
		return d, err
	}
	// Paper without a thickness is true to the glass.
	s, err := newFacePaper(p, Options{Seam: Butt, SeamAt: 1}, letters)
	if err != nil {
		return d, fmt.Errorf("motif %s: %w", w.kind.Name, err)
	}
	half := p.PitchAngle() / 2
	if w.spans {
		half += 2 * swatchAir / swatchAcross // up to the frame
	}
	low, high := p.Band.Foot-swatchAir, p.Band.Top+swatchAir
	s.grooves(&d, s.frame(piece{
		from: -half, to: half, low: low, high: high, first: true, last: true, lowest: true, highest: true,
	}))
	corner := s.cone.Forward(0, low)
	d = d.EdgesFirst(drawing.Footprints).Moved(geometry.Motion{Cos: 1, X: wide(w.repeats)/2 - corner.X, Y: -corner.Y})
	frame := geometry.Box{Max: geometry.Point{X: wide(w.repeats), Y: w.tall}}
	d.Add(drawing.Marks, drawing.Stroke{Points: drawing.Rectangle(frame), Closed: true, Pen: drawing.Pen{Width: 0.15, Ink: 150}})
	return d, nil
}

// shades returns values of a parameter from low to high that show what it does,
// its default among them.
func shades(p motifs.Param) []float64 {
	if p.Shows > 0 {
		p.Min, p.Max = max(p.Min, -p.Shows), min(p.Max, p.Shows)
	}
	between := func(to, share float64) float64 { return rounded(p, p.Default+share*(to-p.Default)) }
	switch {
	case p.Sort == motifs.Switch:
		return []float64{0, 1}
	case p.Sort == motifs.Count:
		low := max(p.Min, math.Round(p.Default*0.6))
		high := min(p.Max, math.Round(p.Default*1.6)+1)
		if low == p.Default { // it is the least there is
			return []float64{p.Default, p.Default + math.Ceil((high-p.Default)/2), min(p.Max, high+1)}
		}
		return []float64{low, p.Default, high}
	case p.Default == p.Min:
		return []float64{p.Default, between(p.Max, 0.4), between(p.Max, 0.8)}
	case p.Default == p.Max:
		return []float64{between(p.Min, 0.8), between(p.Min, 0.4), p.Default}
	}
	return []float64{between(p.Min, 0.7), p.Default, between(p.Max, 0.7)}
}

// rounded returns a value as one would write it in a job.
func rounded(p motifs.Param, value float64) float64 {
	steps := 100.0 // to the unit
	switch width := p.Max - p.Min; {
	case width > 10:
		steps = 1
	case width > 0.6:
		steps = 20
	}
	return min(max(math.Round(value*steps)/steps, p.Min), p.Max)
}

// given is a parameter with a value.
type given struct {
	motifs.Param
	value float64
}

// varied returns swatches that differ from a plain one in one parameter. Where that
// has no effect at the other parameters' defaults, as the size of flat tops has none
// on pointed ones, another parameter is set so that it has.
func varied(plain swatch, p motifs.Param) []swatch {
	best := variedWith(plain, p)
	most := distinct(best)
	for _, other := range plain.kind.Params {
		if other.Name == p.Name || other.Sort == motifs.Number {
			continue
		}
		for _, value := range shades(other) {
			found := variedWith(plain, p, given{other, value})
			if n := distinct(found); n > most {
				best, most = found, n
			}
		}
	}
	return best
}

func variedWith(plain swatch, p motifs.Param, others ...given) []swatch {
	var all []swatch
	for _, value := range shades(p) {
		w := plain
		w.values = maps.Clone(plain.values)
		for _, g := range append([]given{{p, value}}, others...) {
			w.values[g.Name] = g.value
			if w.name != "" {
				w.name += ", "
			}
			w.name += written(g.Param, g.value)
		}
		if value == p.Default && len(others) == 0 {
			w.about = "the default"
		}
		all = append(all, w)
	}
	return all
}

// written is a parameter's value as it stands in a job.
func written(p motifs.Param, value float64) string {
	if p.Sort == motifs.Switch {
		return fmt.Sprintf("%s = %t", p.Name, value != 0)
	}
	return fmt.Sprintf("%s = %g", p.Name, value)
}

// distinct returns how many of the swatches have cuts, and other cuts than those
// before.
func distinct(all []swatch) int {
	seen := map[string]bool{}
	for _, w := range all {
		if cuts := w.kind.Draw(w.values, (wide(w.repeats)-2*swatchAir)/(w.tall-2*swatchAir)); len(cuts) > 0 {
			words := fmt.Sprint(cuts)
			for _, part := range w.kind.Parts {
				words += fmt.Sprint(w.kind.Gesture(w.values, part))
			}
			seen[words] = true
		}
	}
	return len(seen)
}
