package motifs_test

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
)

// exact is what rounding may leave of a length of the order of the unit box.
const exact = 1e-9

var aspects = []float64{0.2, 2.0 / 3, 1, 2, 5}

func TestKinds(t *testing.T) {
	var names []string
	for _, k := range motifs.All() {
		names = append(names, k.Name)
		if got, ok := motifs.Find(k.Name); !ok || got.Name != k.Name {
			t.Errorf("%s can't be found by its name", k.Name)
		}
		checkLine(t, k.Name, k.About)
		var params []string
		for _, p := range k.Params {
			params = append(params, p.Name)
			where := k.Name + "." + p.Name
			checkLine(t, where, p.About)
			if p.Min >= p.Max {
				t.Errorf("%s: range %g to %g", where, p.Min, p.Max)
			}
			for _, v := range []float64{p.Default, p.Min, p.Max} {
				if !p.Accepts(v) {
					t.Errorf("%s doesn't accept %g of its own", where, v)
				}
			}
			if p.Sort == motifs.Switch && (p.Min != 0 || p.Max != 1) {
				t.Errorf("%s is a switch from %g to %g", where, p.Min, p.Max)
			}
		}
		checkUnique(t, k.Name, params)
		checkUnique(t, k.Name, k.Parts)
		if !reflect.DeepEqual(drawnParts(k), sorted(k.Parts)) {
			t.Errorf("%s says it has the parts %q, and draws %q", k.Name, k.Parts, drawnParts(k))
		}
	}
	checkUnique(t, "kinds", names)
	if _, ok := motifs.Find("no such kind"); ok {
		t.Error("found a kind that doesn't exist")
	}
}

// drawnParts returns the parts of all that a kind draws, at the ends of its ranges and
// at its defaults, in the order of their names.
func drawnParts(k motifs.Kind) []string {
	found := map[string]bool{}
	draw := func(v motifs.Values) {
		for _, c := range k.Draw(v, 1) {
			found[c.Part] = true
		}
	}
	draw(k.Defaults())
	for _, p := range k.Params {
		for _, x := range []float64{p.Min, p.Max} {
			v := k.Defaults()
			v[p.Name] = x
			draw(v)
		}
	}
	return slices.Sorted(maps.Keys(found))
}

func sorted(names []string) []string { return slices.Sorted(slices.Values(names)) }

func checkLine(t *testing.T, where, about string) {
	t.Helper()
	if about == "" || strings.Contains(about, "\n") || strings.HasSuffix(about, ".") {
		t.Errorf("%s: about is %q, want one line without a full stop", where, about)
	}
}

func checkUnique(t *testing.T, where string, names []string) {
	t.Helper()
	seen := map[string]bool{}
	for _, n := range names {
		if seen[n] {
			t.Errorf("%s: %q twice", where, n)
		}
		seen[n] = true
	}
}

// TestDraw holds every kind to what Kind and Cut promise, over its whole range.
func TestDraw(t *testing.T) {
	for _, k := range motifs.All() {
		for _, v := range trials(k) {
			for _, aspect := range aspects {
				t.Run(fmt.Sprint(k.Name, v, aspect), func(t *testing.T) {
					cuts := k.Draw(v, aspect)
					if again := k.Draw(v, aspect); !reflect.DeepEqual(cuts, again) {
						t.Error("drawn twice it differs")
					}
					if len(cuts) == 0 {
						t.Error("no cuts")
					}
					for i, c := range cuts {
						checkPath(t, i, c)
						checkJoins(t, i, cuts)
					}
					if k.Mirrored {
						checkMirror(t, cuts)
					}
				})
			}
		}
	}
}

// trials returns the defaults; each parameter at either end, the others at
// their defaults; and some values drawn from the whole range and its ends. Of
// the counts these take the lower part, for many of everything is past looking at.
func trials(k motifs.Kind) []motifs.Values {
	all := []motifs.Values{k.Defaults()}
	for _, p := range k.Params {
		for _, end := range []float64{p.Min, p.Max} {
			v := k.Defaults()
			v[p.Name] = end
			all = append(all, v)
		}
	}
	random := rand.New(rand.NewPCG(7, 11))
	for range 40 {
		v := motifs.Values{}
		for _, p := range k.Params {
			most := p.Max
			if p.Sort == motifs.Count {
				most = min(most, p.Min+8)
			}
			at := p.Min + random.Float64()*(most-p.Min)
			if p.Sort != motifs.Number {
				at = math.Round(at)
			}
			v[p.Name] = []float64{at, at, p.Min, most}[random.IntN(4)]
		}
		all = append(all, v)
	}
	return all
}

func checkPath(t *testing.T, i int, c motifs.Cut) {
	t.Helper()
	if c.Part == "" {
		t.Errorf("cut %d has no part", i)
	}
	length := 0.0
	for s := range 101 {
		p := c.Path.At(float64(s) / 100)
		// Written so that NaN fails.
		if !(math.Abs(p.X) <= 0.5+exact && p.Y >= -exact && p.Y <= 1+exact) {
			t.Fatalf("cut %d (%s) leaves the box at %v", i, c.Part, p)
		}
		if s > 0 {
			length += r2.Norm(r2.Sub(p, c.Path.At(float64(s-1)/100)))
		}
	}
	// The shortest there is: a frond at the foot of a leaf of 40 pairs.
	if length < 1e-3 {
		t.Errorf("cut %d (%s) is %g long", i, c.Part, length)
	}
}

// checkJoins looks for a join wherever two cuts meet, and the other way. Rays are
// left out: they join on a hub that has room between them. So are the fronds of
// one side, which an odd choice of values may make cross, but never by design.
func checkJoins(t *testing.T, i int, cuts []motifs.Cut) {
	t.Helper()
	seen := map[int]bool{}
	for _, j := range cuts[i].Joins {
		switch {
		case j < 0 || j >= len(cuts):
			t.Fatalf("cut %d joins cut %d of %d", i, j, len(cuts))
		case j == i:
			t.Errorf("cut %d joins itself", i)
		case seen[j]:
			t.Errorf("cut %d joins cut %d twice", i, j)
		case !slices.Contains(cuts[j].Joins, i):
			t.Errorf("cut %d joins cut %d, but not the other way", i, j)
		}
		seen[j] = true
	}
	for j := range i {
		if cuts[i].Part == "ray" || oneSide(cuts[i], cuts[j]) && !seen[j] {
			continue
		}
		within := exact
		if seen[j] && !(cuts[i].Path.Straight() && cuts[j].Path.Straight()) {
			within = sagitta
		}
		if meet := reach(cuts[i].Path, cuts[j].Path, within); meet != seen[j] {
			t.Errorf("cuts %d and %d: meet is %v, joined is %v", i, j, meet, seen[j])
		}
	}
}

func oneSide(a, b motifs.Cut) bool {
	return a.Part == "frond" && b.Part == "frond" && a.Path[3].X*b.Path[3].X > 0
}

// checkMirror pairs every cut with its image, drawn either way, and looks for
// the same joins among the images.
func checkMirror(t *testing.T, cuts []motifs.Cut) {
	t.Helper()
	mate := make([]int, len(cuts))
	for i, c := range cuts {
		image := c.Path
		for n := range image {
			image[n].X = -image[n].X
		}
		mate[i] = slices.IndexFunc(cuts, func(o motifs.Cut) bool {
			return o.Part == c.Part && (same(o.Path, image) || same(o.Path, reversed(image)))
		})
		if mate[i] < 0 {
			t.Fatalf("cut %d (%s) %v has no mirror image with the part %q", i, c.Part, c.Path, c.Part)
		}
	}
	for i, c := range cuts {
		for _, j := range c.Joins {
			if !slices.Contains(cuts[mate[i]].Joins, mate[j]) {
				t.Errorf("cuts %d and %d join, their mirror images don't", i, j)
			}
		}
	}
}

func same(a, b geometry.Bezier) bool {
	for i := range a {
		if !near(a[i], b[i]) {
			return false
		}
	}
	return true
}

func reversed(c geometry.Bezier) geometry.Bezier {
	return geometry.Bezier{c[3], c[2], c[1], c[0]}
}

func near(a, b geometry.Point) bool { return r2.Norm(r2.Sub(a, b)) < exact }

// reach reports whether two curves come within a distance.
func reach(a, b geometry.Bezier, within float64) bool {
	// A curve lies between the lowest and the highest of its control points.
	for _, of := range []func(geometry.Point) float64{
		func(p geometry.Point) float64 { return p.X }, func(p geometry.Point) float64 { return p.Y },
	} {
		if apart(a, b, of) > within || apart(b, a, of) > within {
			return false
		}
	}
	return gap(a, b) < within
}

// apart returns how far the whole of b lies above a in one coordinate.
func apart(a, b geometry.Bezier, of func(geometry.Point) float64) float64 {
	return min(of(b[0]), of(b[1]), of(b[2]), of(b[3])) - max(of(a[0]), of(a[1]), of(a[2]), of(a[3]))
}

// sagitta is how far a curve can deviate from its chords: a radius of 5 times the
// box's side that turns through 5° between two of them.
const sagitta = 5e-3

// gap returns the least distance between two curves, each taken as chords.
func gap(a, b geometry.Bezier) float64 {
	least := math.Inf(1)
	p, q := chords(a), chords(b)
	for i := 1; i < len(p); i++ {
		for j := 1; j < len(q); j++ {
			least = min(least, between(p[i-1], p[i], q[j-1], q[j]))
		}
	}
	return least
}

func chords(c geometry.Bezier) []geometry.Point {
	if c.Straight() {
		return []geometry.Point{c[0], c[3]}
	}
	points := make([]geometry.Point, 17)
	for i := range points {
		points[i] = c.At(float64(i) / 16)
	}
	return points
}

// between returns the distance between segments ab and cd.
func between(a, b, c, d geometry.Point) float64 {
	side := func(p, q, r geometry.Point) float64 { return r2.Cross(r2.Sub(q, p), r2.Sub(r, p)) }
	if side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0 {
		return 0
	}
	return min(fromSegment(a, c, d), fromSegment(b, c, d), fromSegment(c, a, b), fromSegment(d, a, b))
}

func fromSegment(p, a, b geometry.Point) float64 {
	along := r2.Sub(b, a)
	t := r2.Dot(r2.Sub(p, a), along) / r2.Norm2(along)
	return r2.Norm(r2.Sub(p, r2.Add(a, r2.Scale(min(max(t, 0), 1), along))))
}

// draw draws a kind with some values in place of its defaults.
func draw(k motifs.Kind, given motifs.Values, aspect float64) []motifs.Cut {
	v := k.Defaults()
	for name, value := range given {
		if _, ok := v[name]; !ok {
			panic("no parameter " + name)
		}
		v[name] = value
	}
	return k.Draw(v, aspect)
}

// TestLonger takes each number that is said to make marks longer a twentieth of the way
// from its default to the end of its range: in some box the shortest line is longer.
// In a very narrow one it need not be.
func TestLonger(t *testing.T) {
	some := 0
	for _, k := range motifs.All() {
		for _, p := range k.Params {
			end := p.Max
			if p.Longer < 0 {
				end = p.Min
			}
			if p.Longer == 0 || p.Default == end {
				continue
			}
			some++
			won := 0.0
			for _, aspect := range aspects {
				v := k.Defaults()
				before := shortest(k, v, aspect)
				v[p.Name] = p.Default + (end-p.Default)/20
				now := shortest(k, v, aspect)
				won = max(won, now-before)
			}
			if won <= exact {
				t.Errorf("%s.%s makes no line longer", k.Name, p.Name)
			}
		}
	}
	if some < 6 {
		t.Errorf("only %d numbers", some)
	}
}

// shortest returns the length of a motif's shortest line, in heights of its box.
func shortest(k motifs.Kind, v motifs.Values, aspect float64) float64 {
	least := math.Inf(1)
	for _, c := range k.Draw(v, aspect) {
		length, last := 0.0, c.Path.At(0)
		for n := 1.0; n <= 100; n++ {
			next, from := c.Path.At(n/100), last
			from.X, last = from.X-next.X, next
			length += math.Hypot(from.X*aspect, from.Y-next.Y)
		}
		least = min(least, length)
	}
	return least
}
