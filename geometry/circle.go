package geometry

// Circle is a level circle about the axis of a surface of revolution. In the
// half-plane of radius and height it is one point.
type Circle struct{ Radius, Height float64 }
