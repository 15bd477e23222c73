package screen

import (
	"fmt"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Profile is a glass cut through its middle, with the places where it was measured. Curves
// are of radius and height.
type Profile struct {
	Outside  [][2]Number `json:"outside"`
	Inside   [][2]Number `json:"inside"`
	Stations []Station   `json:"stations"`
	Band     [2]Number   `json:"band"`
	Floor    Number      `json:"floor"`
	Fill     *Number     `json:"fill"` // null where there is no line to fill to
}

// Station is one measured height, as the job's owner reads it.
type Station struct {
	Path        string `json:"path"` // as messages name it
	Height      Number `json:"height"`
	Radius      Number `json:"radius"`
	Wall        Number `json:"wall"`
	HeightWords string `json:"height_words"`
	AcrossWords string `json:"across_words"`
	WallWords   string `json:"wall_words"`
	Doubt       string `json:"doubt"` // why it may have been misread, filled in by who knows
}

// NewProfile returns the profile of a plan's glass.
func NewProfile(p *pattern.Plan) Profile {
	b, u := p.Blank, p.Job.Length
	out := Profile{
		Outside: outside(b), Inside: inside(b), Stations: []Station{}, Floor: Number(b.Floor),
		Band: [2]Number{Number(p.Band.Foot), Number(p.Band.Top)},
	}
	if b.Fill > 0 {
		fill := Number(b.Fill)
		out.Fill = &fill
	}
	of := BlankPath(p)
	for i, s := range b.Stations {
		out.Stations = append(out.Stations, Station{
			Path:   fmt.Sprintf("%s.%s", of, job.Item("station", i)),
			Height: Number(s.Height), Radius: Number(s.Radius), Wall: Number(s.Wall),
			HeightWords: u.FormatChosen(s.Height), AcrossWords: u.FormatChosen(2 * s.Radius), WallWords: u.FormatChosen(s.Wall),
		})
	}
	return out
}

// BlankPath names a plan's blank as messages do: blank, or blank[2] where there are several.
func BlankPath(p *pattern.Plan) string {
	if len(p.Job.Blanks) == 1 {
		return "blank"
	}
	for i, b := range p.Job.Blanks {
		if b == p.Blank {
			return job.Item("blank", i)
		}
	}
	return "blank"
}
