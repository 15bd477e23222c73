package pattern

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/peterstace/simplefeatures/rtree"

	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// BenchmarkCheck prints side by side what a check costs:
//
//	check   laid out and checked, as the command does: 5,000 cuts and half as
//	        many on one vase; as many that all differ, in a single repeat; one
//	        repeat, 6 and 48 times round the vase
//	lands   the lands of 5,000 cuts alone, on grooves that are there: this
//	        package's, with the clear shares of joints and without; the peer's,
//	        peterstace/simplefeatures v0.50.0, by its own index of the same
//	        footprints all round the glass; and, as the bound, a bare loop over all
//	        their places
func BenchmarkCheck(b *testing.B) {
	for _, c := range []struct {
		name string
		job  *job.Job
	}{
		{"cuts=5000", field(b, 80, 10, 5, 10)},
		{"cuts=2500", field(b, 80, 10, 5, 5)},
		{"differing=5000", field(b, 80, 1, 50, 10)},
		{"barrel=5000", barrelled(b, field(b, 80, 10, 5, 10))},
		{"N=6", field(b, 160, 6, 1, 10)},
		{"N=48", field(b, 160, 48, 1, 10)},
	} {
		b.Run("check/"+c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if p := planned(b, c.job); len(p.Findings) > 0 {
					b.Fatalf("found %+v", p.Findings[0])
				}
			}
		})
	}
	p := laid(b, field(b, 80, 10, 5, 10))
	cuts := p.All()
	if len(cuts) != 5000 {
		b.Fatalf("%d cuts", len(cuts))
	}
	b.Run("lands/roundlay", func(b *testing.B) {
		for b.Loop() {
			for range p.crowd() {
			}
		}
	})
	b.Run("lands/roundlay, without clear shares", func(b *testing.B) {
		for b.Loop() {
			lands(p)
		}
	})
	b.Run("lands/peer", func(b *testing.B) {
		shapes := make([]geom.Geometry, len(cuts))
		for i, c := range cuts {
			shapes[i] = polygons(*c.Groove)[0] // a mitre's one outline
		}
		for b.Loop() {
			peerLands(b, shapes, p.Job.Limits.Land)
		}
	})
	b.Run("lands/bound", func(b *testing.B) {
		sum := 0.0
		for b.Loop() {
			for _, c := range cuts {
				for _, s := range c.Samples {
					sum += s.Left + s.Right
				}
			}
		}
		if math.IsNaN(sum) {
			b.Fatal("a sample has no width")
		}
	})
}

// field returns a job on a straight vase: in each repeat a field of leaves, each
// with four pairs of fronds and a bar beside it in a place of 10 mm by 20 mm: ten
// cuts. A radius of 80 mm has room for fifty of them round it, one of 160 for a
// hundred.
func field(b *testing.B, radius float64, repeats, across, up int) *job.Job {
	b.Helper()
	vase := blank(b, glass.Station{Height: 0, Radius: radius, Wall: 8}, glass.Station{Height: 240, Radius: radius, Wall: 6})
	j := jobOn(vase, repeats)
	j.Layout.Band = &job.Band{Foot: 20, Top: 220}
	j.Limits.Clear, j.Limits.Reach = 0.2, 0
	for x := range across {
		for y := range up {
			middle, height := 10*(float64(x)-float64(across-1)/2), 20*float64(y)+10
			leaf := motif(b, "leaf", motifs.Values{"fronds": 4, "lean": 50, "arch": 0}, depth(0.1), with(fine))
			leaf.X, leaf.Y, leaf.Width, leaf.Height = mm(middle), mm(height), mm(8), mm(18)
			j.Motifs = append(j.Motifs, leaf, bar(b, middle+5, height, 15, depth(0.1), with(fine)))
		}
	}
	return j
}

// barrelled returns a job on a barrel in place of its vase, whose profile is a
// circle's arc of 190 mm, nowhere in the band narrower than the vase.
func barrelled(b *testing.B, j *job.Job) *job.Job {
	b.Helper()
	var stations []glass.Station
	for z := 0.0; z <= 240; z += 20 {
		radius := 92 - 190 + math.Sqrt(190*190-(z-120)*(z-120))
		stations = append(stations, glass.Station{Height: z, Radius: radius, Wall: 7})
	}
	j.Blanks = []*glass.Blank{blank(b, stations...)}
	j.Layout.Band = &job.Band{Foot: 60, Top: 180}
	for i := range j.Motifs {
		j.Motifs[i].Y.Value *= 0.6
		j.Motifs[i].Height.Value *= 0.6
	}
	return j
}

// peerLands counts the pairs nearer than a limit by the peer's index and distances.
func peerLands(b *testing.B, shapes []geom.Geometry, limit float64) int {
	b.Helper()
	items := make([]rtree.BulkItem, len(shapes))
	for i, s := range shapes {
		lo, hi, _ := s.Envelope().MinMaxXYs()
		items[i] = rtree.BulkItem{RecordID: i, Box: rtree.Box{MinX: lo.X, MinY: lo.Y, MaxX: hi.X, MaxY: hi.Y}}
	}
	tree := rtree.BulkLoad(items)
	near := 0
	for i, s := range shapes {
		box := items[i].Box
		box = rtree.Box{MinX: box.MinX - limit, MinY: box.MinY - limit, MaxX: box.MaxX + limit, MaxY: box.MaxY + limit}
		err := tree.RangeSearch(box, func(j int) error {
			if j > i {
				if d, _ := geom.Distance(s, shapes[j]); d < limit {
					near++
				}
			}
			return nil
		})
		if err != nil {
			b.Fatal(err)
		}
	}
	return near
}
