package pattern

import (
	"context"
	"math"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// Short names for what the jobs of these tests are made of.
const (
	mitre = jobtest.Mitre
	fine  = jobtest.Fine
	lines = jobtest.Lines
	olive = jobtest.Olive
	panel = jobtest.Panel
)

var (
	blankOf   = jobtest.BlankOf
	blank     = jobtest.Blank
	straight  = jobtest.Straight
	jobOn     = jobtest.On
	of        = jobtest.Of
	mm        = jobtest.MM
	motif     = jobtest.Motif
	bar       = jobtest.Bar
	depth     = jobtest.Depth
	turn      = jobtest.Turn
	at        = jobtest.At
	size      = jobtest.Size
	with      = jobtest.Wheel
	on        = jobtest.Repeats
	land      = jobtest.Land
	mirrored  = jobtest.Mirrored
	trueShape = jobtest.TrueShape
	scattered = jobtest.Scattered
	named     = jobtest.Named
	three     = jobtest.Three
)

// planned lays a job out on its first blank and checks it.
func planned(t testing.TB, j *job.Job) *Plan {
	t.Helper()
	p, err := New(context.Background(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// lay lays a job's motifs on the side of a blank and cuts their grooves.
func lay(ctx context.Context, j *job.Job, blank *glass.Blank) (*Plan, error) {
	p, _, err := new(Editor).lay(ctx, j, faceOf{blank, job.Side}, 0)
	return p, err
}

// laid only lays it out.
func laid(t testing.TB, j *job.Job) *Plan {
	t.Helper()
	p, err := lay(context.Background(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// checked lays it out and checks it, without looking for cures.
func checked(t testing.TB, j *job.Job) *Plan {
	t.Helper()
	p := laid(t, j)
	p.Findings = p.findings()
	return p
}

// involves reports whether a whole check finds something that has to do with a motif.
func involves(t testing.TB, j *job.Job, i int) bool {
	t.Helper()
	p := checked(t, j)
	return slices.ContainsFunc(p.Findings, func(f Finding) bool {
		about, _ := p.About(f)
		return slices.Contains(about, i)
	})
}

// near compares lengths and angles. Beside each use stands why the two may differ.
func near(a, b, tolerance float64) bool { return math.Abs(a-b) <= tolerance }

// polygons returns a groove's footprint for the reference library.
func polygons(g groove.Groove) []geom.Geometry {
	all := make([]geom.Geometry, len(g.Outlines))
	for i, o := range g.Outlines {
		var ring []float64
		for _, p := range append(o.Points[:len(o.Points):len(o.Points)], o.Points[0]) {
			ring = append(ring, p.X, p.Y)
		}
		line := geom.NewLineString(geom.NewSequence(ring, geom.DimXY))
		all[i] = geom.NewPolygon([]geom.LineString{line}).AsGeometry()
	}
	return all
}
