package strokes

import (
	"math"

	"roundlay/geometry"
)

// matrix is an affine map in SVG's order: x′ = ax + cy + e, y′ = bx + dy + f.
type matrix struct{ a, b, c, d, e, f float64 }

func identity() matrix { return matrix{a: 1, d: 1} }

func shift(x, y float64) matrix { return matrix{a: 1, d: 1, e: x, f: y} }

func scaling(x, y float64) matrix { return matrix{a: x, d: y} }

// turned returns the turn by an angle in degrees, from x to y.
func turned(degrees float64) matrix {
	sin, cos := math.Sincos(geometry.Degrees(math.Mod(degrees, 360)).Radians())
	return matrix{a: cos, b: sin, c: -sin, d: cos}
}

// skewed returns the map that slants by angles in degrees, along x and along y.
func skewed(x, y float64) matrix {
	return matrix{
		a: 1, b: math.Tan(geometry.Degrees(math.Mod(y, 360)).Radians()),
		c: math.Tan(geometry.Degrees(math.Mod(x, 360)).Radians()), d: 1,
	}
}

// times returns the map that does n first and then m.
func (m matrix) times(n matrix) matrix {
	return matrix{
		a: m.a*n.a + m.c*n.b, b: m.b*n.a + m.d*n.b,
		c: m.a*n.c + m.c*n.d, d: m.b*n.c + m.d*n.d,
		e: m.a*n.e + m.c*n.f + m.e, f: m.b*n.e + m.d*n.f + m.f,
	}
}

func (m matrix) apply(p geometry.Point) geometry.Point {
	return geometry.Point{X: m.a*p.X + m.c*p.Y + m.e, Y: m.b*p.X + m.d*p.Y + m.f}
}

// flat reports whether the map presses the plane onto a line or a point: what it
// maps isn't drawn.
func (m matrix) flat() bool {
	area := math.Abs(m.a*m.d - m.b*m.c)
	return !(area > 1e-12*(m.a*m.a+m.b*m.b+m.c*m.c+m.d*m.d))
}

// wild reports whether the map is not finite, or takes the reader's numbers too far
// to be known exactly.
func (m matrix) wild() bool {
	for _, x := range []float64{m.a, m.b, m.c, m.d, m.e, m.f} {
		if !(math.Abs(x) <= largestNumber) {
			return true
		}
	}
	return false
}

// inverse returns the map back. The map is not flat.
func (m matrix) inverse() matrix {
	area := m.a*m.d - m.b*m.c
	n := matrix{a: m.d / area, b: -m.b / area, c: -m.c / area, d: m.a / area}
	n.e, n.f = -(n.a*m.e + n.c*m.f), -(n.b*m.e + n.d*m.f)
	return n
}

// trail returns a trail as the map takes it.
func (m matrix) trail(t trail) trail {
	all := make([]geometry.Bezier, len(t.curves))
	for i, c := range t.curves {
		for j, p := range c {
			all[i][j] = m.apply(p)
		}
	}
	return trail{all, t.closed}
}
