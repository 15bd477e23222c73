package groove

import "roundlay/geometry"

// Relief is a groove as hollows of the glass, one for each of the wheel's blades that bites.
type Relief []Hollow

// Hollow is what one blade takes: its cross-sections in order along the cut.
type Hollow []Cross

// Cross is one cross-section of a hollow, on the chart from its left edge to its right.
type Cross struct {
	Left, Right      geometry.Point
	left, right      float64 // the edges, to the left of the ridge
	deep, lean, bend float64 // of the ridge: see stroke.sunk
	blade            blade
	floor            []float64 // of a cut by hand: see stroke.floor; it counts instead
}

// Depth returns how deep the section is at a share of the way from its left edge to its
// right one.
func (c *Cross) Depth(share float64) float64 {
	if c.floor != nil {
		n := len(c.floor)
		at := (1-share)*float64(n) - 0.5 // it is beyond the middle of the outermost parts near an edge
		i := min(max(int(at), 0), n-2)
		return max(c.floor[i]+(at-float64(i))*(c.floor[i+1]-c.floor[i]), 0)
	}
	left := c.left + share*(c.right-c.left)
	return max(c.deep-c.lean*left-c.bend*left*left/2-c.blade.drop(left), 0)
}

// Relief returns the relief of a groove that was cut on this glass with a wheel, without
// polish.
func (l *Cutter) Relief(g *Groove, wheel Wheel) Relief {
	l.poses = l.poses[:0]
	k, _ := l.set(l.laid(g.Line), wheel, g.Asked)
	k.bridge()
	k.measure()
	var all Relief
	for i := range wheel.blades() {
		b := wheel.blade(i)
		f := k.footprint(&b, k.stations)
		if len(f) < 2 {
			continue
		}
		hollow := make(Hollow, 0, len(f))
		for n := range f {
			x := &f[n]
			c := Cross{left: x.left - x.line, right: x.right - x.line, blade: b}
			c.Left, c.Right = x.charted()
			switch {
			case x.empty():
			case k.byHand():
				floor := k.floor(&b, x)
				c.floor = floor[:]
			default:
				c.deep, c.lean, c.bend = k.sunk(x)
			}
			hollow = append(hollow, c)
		}
		all = append(all, hollow)
	}
	return all
}
