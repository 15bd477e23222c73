package motifs_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
)

// The kinds with a hand say what it does for every one of their parts, from even at 0 to
// the whole gesture at 1, and half of it in the middle.
func TestHand(t *testing.T) {
	found := map[string]bool{}
	for _, k := range motifs.All() {
		_, has := k.Param(motifs.HandParam)
		if has != (k.Hand != nil) {
			t.Errorf("%s: a parameter %t, gestures %t", k.Name, has, k.Hand != nil)
		}
		if !has {
			continue
		}
		found[k.Name] = true
		if k.Defaults()[motifs.HandParam] != 0 {
			t.Errorf("%s is by hand by itself", k.Name)
		}
		for _, part := range k.Parts {
			full, ok := k.Hand[part]
			if !ok || full.Even() {
				t.Errorf("%s: the %s is even at 1", k.Name, part)
			}
			deepest := 0.0
			for i, share := range full.Swell {
				deepest = max(deepest, share)
				if half := k.Gesture(motifs.Values{motifs.HandParam: 0.5}, part).Swell[i]; math.Abs(half-(1+share)/2) > exact {
					t.Errorf("%s: %s: a share of %g at 1 is %g at 0.5", k.Name, part, share, half)
				}
			}
			if deepest != 1 {
				t.Errorf("%s: the %s never comes to its depth", k.Name, part)
			}
			if half := k.Gesture(motifs.Values{motifs.HandParam: 0.5}, part).Rock; math.Abs(float64(half[1])-float64(full.Rock[1])/2) > exact {
				t.Errorf("%s: %s: rolled by %v at 0.5", k.Name, part, half)
			}
			if g := k.Gesture(k.Defaults(), part); len(g.Swell) > 0 || !g.Even() {
				t.Errorf("%s: the %s is %+v at 0", k.Name, part, g)
			}
		}
	}
	for _, name := range []string{"leaf", "sprig", "wheat", "fan", "olives"} {
		if !found[name] {
			t.Errorf("%s has no hand", name)
		}
	}
}

// A motif that is the same from left and right stays so when it is rocked: the mirror image
// of a cut has the mirror image of its gesture. A cut that is drawn from the other end has
// its left where the image has its right. Uprights in rows are alike instead.
func TestHandMirrored(t *testing.T) {
	roll := motifs.Gesture{Rock: [2]geometry.Angle{0.1, 0.3}}
	alike := map[string]bool{"star": true, "lattice": true, "flute": true} // all round, or row by row
	for _, k := range motifs.All() {
		if !k.Mirrored || alike[k.Name] {
			continue
		}
		for _, v := range trials(k) {
			cuts := k.Draw(v, 1)
			for i, c := range cuts {
				if !c.Path.Straight() && k.Name == "swag" {
					continue // level from end to end: it is its own image, drawn from the other end
				}
				image := c.Path
				for n := range image {
					image[n].X = -image[n].X
				}
				want := roll.On(c.Side).Mirrored()
				back := want.Mirrored()
				ok := false
				for _, o := range cuts {
					if o.Part != c.Part {
						continue
					}
					got := roll.On(o.Side)
					ok = ok || same(o.Path, image) && got.Rock == want.Rock || same(o.Path, reversed(image)) && got.Rock == back.Rock
				}
				if lone := math.Abs(c.Path[0].X)+math.Abs(c.Path[3].X) < exact && c.Side == motifs.RightHalf; !ok && !lone {
					t.Fatalf("%s %v: cut %d (%s) has no image that is rocked the other way", k.Name, v, i, c.Part)
				}
			}
		}
	}
}

// The cuts of the kinds with a hand run from root to tip: those of a leaf, a sprig and an
// ear out from the stem and up, and rays out of the hub.
func TestRootToTip(t *testing.T) {
	for _, name := range []string{"leaf", "sprig", "wheat", "fan"} {
		k, _ := motifs.Find(name)
		for _, v := range trials(k) {
			const aspect = 0.7
			cuts := k.Draw(v, aspect)
			for i, c := range cuts {
				root, tip := c.Path[0], c.Path[3]
				out := tip.Y - root.Y
				if name == "fan" {
					out = r2.Norm(tip) - r2.Norm(root)
				}
				if name == "sprig" && c.Part == "leaf" {
					// Its root is on the stem, where its tip isn't.
					out = nearest(cuts[0].Path, tip) - nearest(cuts[0].Path, root)
				}
				if out < -exact {
					t.Fatalf("%s %v: cut %d (%s) runs from %v to %v", name, v, i, c.Part, root, tip)
				}
			}
		}
	}
}

func nearest(c geometry.Bezier, p geometry.Point) float64 {
	least := math.Inf(1)
	for i := range 401 {
		least = min(least, r2.Norm(r2.Sub(p, c.At(float64(i)/400))))
	}
	return least
}
