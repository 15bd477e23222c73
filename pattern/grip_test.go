package pattern

import (
	"math"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// What a grip says of a place undoes where the motif puts it: a motif moved to its own middle,
// sized and turned by no way at all is as the job has it.
func TestGripUndoes(t *testing.T) {
	for _, radii := range [][]float64{{40, 40}, {30, 45}, {32, 43, 33}} {
		for _, shape := range []job.Shape{job.Taper, job.True} {
			outer := jobtest.Motif(t, "leaf", nil, jobtest.Size(0.5, 0.5), jobtest.At(0.2, 0.4), jobtest.Turn(-40), jobtest.Repeats(job.Even),
				func(m *job.Motif) { m.Shape, m.Mirror = shape, true })
			inner := jobtest.Motif(t, "fan", nil, jobtest.Size(0.3, 0.4), jobtest.At(-0.1, 0.7), jobtest.Turn(70), jobtest.Repeats(job.Even),
				func(m *job.Motif) { m.Shape, m.Inside = shape, 1 })
			b := jobtest.BlankOf(t, radii...)
			p, err := Bare(jobtest.On(b, 4, outer, inner), b)
			if err != nil {
				t.Fatal(err)
			}
			for i, m := range p.Job.Motifs {
				g := p.Grip(i)
				x, y := g.MovedTo(g.Middle())
				corner := g.At(0.5, 0)
				w, h := g.Sized(corner, corner)
				turn := g.Turned(corner, corner)
				for what, off := range map[string]float64{
					"x": x.Value - m.X.Value, "y": y.Value - m.Y.Value, "width": w.Value - m.Width.Value,
					"height": h.Value - m.Height.Value, "turn": turn.Degrees() - m.Turn.Degrees(),
				} {
					if math.Abs(off) > 1e-7 {
						t.Errorf("%v, shape %v, motif %d: its %s comes back %g off", radii, shape, i+1, what, off)
					}
				}
				for _, at := range []geometry.Point{{X: -0.5, Y: 1}, {X: 0.3, Y: 0.1}, {X: 0, Y: 0.5}} {
					if q := g.In(g.At(at.X, at.Y)); math.Abs(q.X-at.X) > 1e-7 || math.Abs(q.Y-at.Y) > 1e-7 {
						t.Errorf("%v, shape %v, motif %d: %v of its box comes back as %v", radii, shape, i+1, at, q)
					}
				}
				if q := g.inBox(corner); math.Abs(q.X-g.width/2) > 1e-7 || math.Abs(q.Y+g.height/2) > 1e-7 {
					t.Errorf("%v, shape %v, motif %d: its corner is at %v of a box %g by %g", radii, shape, i+1, q, g.width, g.height)
				}
			}
		}
	}
}

// A grip is of the first copy that is cut, however the job says where the copies stand.
func TestGripOfFirstCopy(t *testing.T) {
	b := jobtest.BlankOf(t, 40, 40)
	for name, place := range map[string]func(*job.Job){
		"on each":           func(*job.Job) {},
		"on even":           func(j *job.Job) { j.Motifs[0].On = job.Even },
		"on 2 and 3":        func(j *job.Job) { j.Motifs[0].Only = []int{2, 3} },
		"on 3":              func(j *job.Job) { j.Motifs[0].Only = []int{3} },
		"with 1 bare":       func(j *job.Job) { j.Layout.Bare = []int{1} },
		"odd, 1 bare":       func(j *job.Job) { j.Motifs[0].On, j.Layout.Bare = job.Odd, []int{1} },
		"on 1, though bare": func(j *job.Job) { j.Motifs[0].Only, j.Layout.Bare = []int{1}, []int{1} },
	} {
		j := jobtest.On(b, 4, jobtest.Motif(t, "diamond", nil, jobtest.Size(0.5, 0.5), jobtest.At(0.1, 0.5)))
		place(j)
		p, err := New(t.Context(), j, b)
		if err != nil {
			t.Fatal(err)
		}
		first := geometry.EmptyBox()
		for _, c := range p.Cuts {
			if c.Repeat == p.Cuts[0].Repeat {
				first = first.Union(geometry.BoxOf(c.Ends()[0], c.Ends()[1]))
			}
		}
		g := p.Grip(0)
		for _, x := range []float64{-0.5, 0.5} {
			at := g.At(x, 0.5)
			q := p.Surface.ForwardAlong(at.Theta, at.Along)
			if !first.Grow(1e-6).Contains(q) {
				t.Errorf("%s: %v is not on the first copy, %v", name, q, first)
			}
		}
	}
}

func TestApart(t *testing.T) {
	for _, radii := range [][]float64{{40, 40}, {30, 45}, {32, 43, 33}} {
		b := jobtest.BlankOf(t, radii...)
		p := uncut(jobtest.On(b, 4), b, job.Band{Foot: 20, Top: 80})
		for _, by := range []geometry.Point{{X: 3, Y: 8}, {X: -20, Y: -6}, {}} {
			theta, along := p.Surface.ReverseAlong(p.Surface.Near(0.3, 50, by))
			if got := p.Surface.Apart(0.3, 50, geometry.Spot{Theta: theta, Along: along}); math.Abs(got.X-by.X) > 1e-7 || math.Abs(got.Y-by.Y) > 1e-7 {
				t.Errorf("%v: %v comes back as %v", radii, by, got)
			}
		}
	}
}

// A fingerprint is that of a job's values: comments and a title don't change it, any value
// does.
func TestFingerprint(t *testing.T) {
	_, demo := job.Demo()
	of := func(text string) string {
		j, err := job.Read("trial", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		return Fingerprint(j)
	}
	text := string(demo)
	for from, to := range map[string]string{"[limits]": "# a comment\n\n[limits]", `"Hedgerow tumblers"`: `"Other"`} {
		if of(strings.Replace(text, from, to, 1)) != of(text) {
			t.Errorf("%q for %q changes it", to, from)
		}
	}
	for from, to := range map[string]string{
		"fronds = 7": "fronds = 8", `land = "1/32"`: `land = "1/31.9"`, "turn = 180": "turn = 181", "repeats = 5": "repeats = 6",
		`wall = "5/64"`: `wall = "6/64"`, "angle = 90": "angle = 91", "rays = 5": `rays = "most"`,
	} {
		to = strings.ReplaceAll(to, "1/31.9", "0.0313")
		if of(strings.Replace(text, from, to, 1)) == of(text) {
			t.Errorf("%q for %q doesn't change it", to, from)
		}
	}
}
