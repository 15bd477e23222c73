package picture

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
)

// patch is a part of a groove's wall that is drawn in one tone, on the glass.
type patch struct {
	tone   tone
	places []place // anticlockwise as seen from outside
	panel  panel
}

// place is a place on the glass.
type place struct{ theta, z, radius float64 }

// The steps between the tones that walls are drawn in: on the near side a little more
// than the eye can distinguish, on the far side less, since its tones differ so
// little.
const (
	nearStep = 1.0 / 18
	farStep  = 1.0 / 34
)

// walls is what is seen of one period of a plan's cuts, from in front, through
// the glass, and as a whole.
type walls struct{ near, far, whole []patch }

func newWalls(p *pattern.Plan, fine detail) walls {
	var w walls
	profile := p.Blank.Profile()
	lay := func(t tone, outline polygon, on panel) patch {
		places := make([]place, len(outline))
		for i, q := range outline {
			theta, z := p.Surface.Reverse(q)
			places[i] = place{theta, z, profile.Radius(z)}
		}
		return patch{t, places, on}
	}
	for _, f := range visible(p, fine) {
		w.whole = append(w.whole, lay(0, f.outline, f.panel))
		bands(f.outline, nearStep, f.bright.on, func(t tone, part polygon) { w.near = append(w.near, lay(t, part, f.panel)) })
		bands(f.outline, farStep, f.faint.on, func(t tone, part polygon) { w.far = append(w.far, lay(t, part, f.panel)) })
	}
	return w
}

// bands divides a small polygon into the parts in which a tone is nearest to one
// multiple of a step, and calls draw for each. The tone is asked for at corners,
// and changes evenly between them.
func bands(whole polygon, step float64, at func(geometry.Point) float64, draw func(tone, polygon)) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, q := range whole {
		level := math.Round(at(q) / step)
		low, high = min(low, level), max(high, level)
	}
	for ; low < high; low++ {
		edge := (low + 0.5) * step
		above, below := whole.split(func(q geometry.Point) float64 { return at(q) - edge })
		if below.area() > minArea {
			draw(tone(low*step), below)
		}
		if whole = above; whole == nil {
			return
		}
	}
	if whole.area() > minArea {
		draw(tone(high*step), whole)
	}
}
