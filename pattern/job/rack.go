package job

import (
	"fmt"
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// rack is the wheels of a job. It is whole if every name in it could be read: only
// then is a wheel that is not in it one that the shop does not have.
type rack struct {
	wheels []groove.Wheel
	names  []string
	whole  bool
}

// rack reads every [[wheel]].
func (s section) rack() rack {
	var all rack
	tables := s.required("wheel").list("a table [[wheel]] for each wheel of the rack", maxWheels)
	for _, table := range tables {
		table.only(keysOf("wheel"))
		field := table.required("name")
		name, ok := field.text(maxName)
		if ok && slices.Contains(all.names, name) {
			field.refuse("a name no other wheel has", "")
		}
		if ok {
			all.names = append(all.names, name)
		}
		wheel := table.wheel()
		wheel.Name = name
		wheel.Rate, _ = table.optional("rate").length(span{MinRate, MaxRate, 40})
		wheel.Wear = table.wears(2 * wheel.Radius)
		all.wheels = append(all.wheels, wheel)
	}
	all.whole = len(tables) > 0 && len(all.names) == len(tables)
	return all
}

// wheel reads all of a wheel except its name.
func (s section) wheel() groove.Wheel {
	var w groove.Wheel
	across, hasAcross := s.required("across").length(span{minWheel, maxAcross, 100})
	w.Radius = across / 2
	field := s.required("thick")
	thick, hasThick := field.length(span{0.1, maxThick, 6})
	w.Thick = thick
	if hasAcross && hasThick && thick >= across {
		field.refuse(fmt.Sprintf("a thickness below what the wheel is across, %s", field.unit().FormatDown(across)),
			field.otherUnit(func(mm float64) bool { return mm < across }))
		hasThick = false
	}
	edge, ok := s.required("edge").word(groove.Edges())
	if !ok {
		return w
	}
	w.Edge = groove.Edge(edge)
	s.edgeKeys(w.Edge)
	switch w.Edge {
	case groove.Round:
		w.Convex, _ = s.required("radius").length(span{0.1, maxAcross, 6})
	case groove.Gang:
		fits := s.gang(&w, hasThick)
		outer := (w.Thick - float64(w.Mitres-1)*w.Spacing) / 2
		s.angle(&w, halfV(w), hasAcross && fits)
		s.tip(&w, min(outer, w.Spacing/2), fits)
	case groove.Mitre:
		s.angle(&w, halfV(w), hasAcross && hasThick)
		s.tip(&w, w.Thick/2, hasThick)
	}
	return w
}

// angle reads the included angle of a V of the given half width. The V must not
// reach the axle. sized says that the half width and the wheel's radius are known.
func (s section) angle(w *groove.Wheel, half float64, sized bool) {
	field := s.required("angle")
	angle, ok := field.degrees(span{20, 170, 90})
	w.Angle = angle.Radians()
	if least := minAngle(half, w.Radius); ok && sized && angle <= least {
		field.refuse(fmt.Sprintf("an angle above %.0f degrees, at which the V of this wheel ends at its axle",
			math.Ceil(least.Degrees())), "")
	}
}

// minAngle returns the angle at which a V of a half width ends at the axle.
func minAngle(half, radius float64) geometry.Angle {
	return geometry.Angle(2 * math.Atan(half/radius))
}

// halfV returns half the width of a wheel's widest V.
func halfV(w groove.Wheel) float64 {
	if w.Edge == groove.Gang {
		return max((w.Thick-float64(w.Mitres-1)*w.Spacing)/2, w.Spacing/2)
	}
	return w.Thick / 2
}

// WheelRadii returns the radii that a job's wheel may have.
func WheelRadii() groove.Range { return groove.Range{Low: minWheel / 2, High: maxAcross / 2} }

// TakesWheel reports whether a job accepts a wheel that is one of its own with
// another diameter.
func TakesWheel(w groove.Wheel) bool {
	v, radii := w.Edge == groove.Mitre || w.Edge == groove.Gang, WheelRadii()
	return w.Radius >= radii.Low && w.Radius <= radii.High && w.Thick < 2*w.Radius &&
		!(v && geometry.Angle(w.Angle) <= minAngle(halfV(w), w.Radius))
}

// tip reads how the point of a V of the given half width is dressed. sized says that
// the half width is known.
func (s section) tip(w *groove.Wheel, half float64, sized bool) {
	flat, round := s.optional("tip"), s.optional("tip_radius")
	hasFlat, hasRound := s.has("tip"), s.has("tip_radius")
	if hasFlat && hasRound {
		round.refuse("either tip, the width of a flat, or tip_radius", "")
		return
	}
	w.Tip, _ = flat.length(span{0, maxAcross, 0.4})
	w.TipRadius, _ = round.length(span{0, maxAcross, 0.4})
	if reach := max(w.Tip/2, w.TipRadius*math.Cos(w.Angle/2)); sized && reach >= half {
		field := flat
		if hasRound {
			field = round
		}
		field.refuse("a tip narrower than the V it is dressed on", "")
	}
}

// gang reads the mitres of a gang wheel, and reports whether they are known to
// fit between its faces.
func (s section) gang(w *groove.Wheel, sized bool) bool {
	mitres, counted := s.required("mitres").whole(2, 64)
	field := s.required("spacing")
	spacing, ok := field.length(span{0.05, maxAcross, 1.5})
	w.Mitres, w.Spacing = mitres, spacing
	if !counted || !ok || !sized {
		return false
	}
	most := w.Thick / float64(mitres-1)
	if spacing >= most {
		field.refuse(fmt.Sprintf("a spacing below %.4g %s, so that %d mitres fit a wheel %s thick",
			most/field.unit().Millimetres(), field.unit(), mitres, field.unit().Format(w.Thick)), "")
	}
	return spacing < most
}

// edgeKeys refuses the keys that belong to other edges.
func (s section) edgeKeys(edge groove.Edge) {
	for _, own := range []struct {
		key   string
		edges []groove.Edge
	}{
		{"angle", []groove.Edge{groove.Mitre, groove.Gang}},
		{"tip", []groove.Edge{groove.Mitre, groove.Gang}},
		{"tip_radius", []groove.Edge{groove.Mitre, groove.Gang}},
		{"radius", []groove.Edge{groove.Round}},
		{"mitres", []groove.Edge{groove.Gang}},
		{"spacing", []groove.Edge{groove.Gang}},
	} {
		if !s.has(own.key) || slices.Contains(own.edges, edge) {
			continue
		}
		var names []string
		for _, e := range own.edges {
			names = append(names, e.String())
		}
		field := s.optional(own.key)
		field.read = quoted(own.key) + " on a wheel whose edge is " + quoted(edge.String())
		field.refuse("this key where the edge is "+list(names), "")
	}
}
