package desk

import (
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/report"
	"roundlay/render/screen"
)

// finding is a group of findings as a person reads it: one trouble.
type finding struct {
	Letter string         `json:"letter"`
	Kind   string         `json:"kind"`
	Means  string         `json:"means"` // what the kind is
	Words  string         `json:"words"`
	Where  string         `json:"where"`
	Face   string         `json:"face"`
	Motifs []int          `json:"motifs"` // from 1
	Cuts   []int          `json:"cuts"`   // of the worst
	Theta  *screen.Number `json:"theta"`  // of the worst; null where it is of the glass as a whole, or on the base
	Height *screen.Number `json:"height"`
	X      *screen.Number `json:"x"` // on the wrap of its face
	Y      *screen.Number `json:"y"`
}

// mostFindings is how many findings an answer lists: nobody mends more at a time.
const mostFindings = 200

// findings returns a plan's findings, with their places on the flat map of its side, and those on
// its base.
func findings(p *pattern.Plan, flat screen.Flat) []finding {
	all := []finding{}
	for _, face := range p.Faces() {
		if face.Face == job.Base {
			flat = flatOf(face, false)
		}
		all = append(all, findingsOn(face, flat)...)
	}
	return all[:min(len(all), mostFindings)]
}

// findingsOn returns the findings on one face, with their places on its flat map.
func findingsOn(p *pattern.Plan, flat screen.Flat) []finding {
	var all []finding
	for _, g := range p.Groups() {
		if len(all) == mostFindings {
			break
		}
		worst := g.Worst()
		one := finding{
			Letter: g.Letter, Kind: g.Kind.String(), Means: report.Means(g.Kind), Words: report.Trouble(p, g), Where: report.Place(p, g),
			Face: p.Face.String(), Motifs: []int{}, Cuts: append([]int{}, worst.Cuts...),
		}
		for _, m := range g.Motifs {
			one.Motifs = append(one.Motifs, m+1)
		}
		if screen.Placed(worst) {
			at := flat.Found(worst)
			one.X, one.Y = of(at.X), of(at.Y)
			if p.Face == job.Side {
				one.Theta, one.Height = of(geometry.Angle(worst.Theta).Degrees()), of(worst.Height)
			}
		}
		all = append(all, one)
	}
	return all
}

func of(x float64) *screen.Number {
	n := screen.Number(x)
	return &n
}

// profile returns a plan's profile, with what is doubted of its stations.
func profile(p *pattern.Plan) screen.Profile {
	out := screen.NewProfile(p)
	words := report.Doubts(p)
	for i, d := range p.Doubts() {
		for k, s := range out.Stations {
			if strings.HasPrefix(pattern.Doubted(p.Job, d)+".", numbered(p, s.Path)+".") {
				out.Stations[k].Doubt = words[i]
			}
		}
	}
	return out
}

// numbered returns the path of a station as Plan.Doubted has it, with the blank's number
// even where there is one blank.
func numbered(p *pattern.Plan, path string) string {
	if len(p.Job.Blanks) == 1 {
		return strings.Replace(path, "blank.", "blank[1].", 1)
	}
	return path
}
