package pattern

import (
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// workHands is what the hand may do, each of which takes another time to measure.
var workHands = []struct {
	name string
	does []func(*job.Motif)
}{
	{"even", nil},
	{"swell", []func(*job.Motif){swelled(0.4, 1, 0.7)}},
	{"rock", []func(*job.Motif){rocked(5, 12)}},
	{"both", []func(*job.Motif){swelled(0.4, 1, 0.7), rocked(5, 12)}},
}

// BenchmarkWork prints what a place of a groove takes to measure, for each edge
// straight and bent, even and by hand, on straight glass and on curved, and how much that is for each
// unit of work: it should be about a microsecond, so that a limit on work is a limit on time.
func BenchmarkWork(b *testing.B) {
	barrel := blank(b, glass.Station{Height: 0, Radius: 35, Wall: 7}, glass.Station{Height: 30, Radius: 42, Wall: 5},
		glass.Station{Height: 60, Radius: 44, Wall: 4}, glass.Station{Height: 100, Radius: 38, Wall: 4})
	for _, on := range []struct {
		name  string
		blank *glass.Blank
	}{{"straight", straight(b)}, {"curved", barrel}} {
		for _, wheel := range []groove.Wheel{
			{Edge: groove.Mitre, Radius: 40, Thick: 6, Angle: 1.57}, {Edge: groove.Round, Radius: 40, Thick: 8, Convex: 4},
			{Edge: groove.Flat, Radius: 40, Thick: 5}, {Edge: groove.Gang, Radius: 40, Thick: 12, Angle: 1.57, Mitres: 5, Spacing: 2},
		} {
			for _, kind := range []string{"fan", "swag"} {
				for _, by := range workHands {
					b.Run(on.name+"/"+wheel.Edge.String()+"/"+kind+"/"+by.name, func(b *testing.B) {
						values := map[string]motifs.Values{"swag": {"ease": 1}}
						m := motif(b, kind, values[kind], by.does...)
						j := jobOn(on.blank, 4, m)
						j.Rack = []groove.Wheel{wheel}
						places, work := 0, 0.0
						for b.Loop() {
							p := laid(b, j)
							for _, c := range p.Cuts {
								places += len(c.Samples)
								work += float64(len(c.Samples)) * p.work(wheel, kind == "swag", *c.Hand)
							}
						}
						ns := float64(b.Elapsed().Nanoseconds())
						b.ReportMetric(ns/float64(places)/1000, "µs/place")
						b.ReportMetric(ns/work/1000, "µs/work")
					})
				}
			}
		}
	}
}
