package desk

import (
	"math"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// stationDragged returns the changes that put a station at a radius and a height. They are
// rounded to what a caliper shows: a drawing is not measured more finely than glass.
func stationDragged(j *job.Job, text, path string, found []string, to [2]float64) ([]job.Revision, error) {
	i, ok := 0, found[1] == ""
	if !ok {
		i, ok = numberIn(found, 1, len(j.Blanks))
	}
	if !ok || len(j.Blanks) > 1 && found[1] == "" {
		return nil, badRequest("edits: there is no %q to drag", path)
	}
	stations := j.Blanks[i].Stations
	k, ok := numberIn(found, 2, len(stations))
	if !ok {
		return nil, badRequest("edits: there is no %q to drag", path)
	}
	height := stationHeight(j, stations, k, to[1])
	all, err := stationWidth(j, text, path, stations[k], to[0])
	if height != stations[k].Height {
		all = append(all, job.Revision{Op: "set", Path: path + ".height", Value: j.Length.Format(height)})
	}
	return all, err
}

// stationHeight returns the height a station is dragged to, above the one before it and
// below the one after. The first is the foot, and stays.
func stationHeight(j *job.Job, all []glass.Station, k int, z float64) float64 {
	if k == 0 || math.Abs(z-all[k].Height) < j.Length.Step()/2 {
		return all[k].Height
	}
	apart := max(1, 2*j.Length.Step()) // mm: two stations nearer to each other say little of the glass
	low, high := all[k-1].Height+apart, math.Inf(1)
	if k+1 < len(all) {
		high = all[k+1].Height - apart
	}
	if low > high {
		return all[k].Height
	}
	return j.Length.Setting(min(max(z, low), high)).Length
}

// stationWidth returns the changes that give a station a radius, in the way that it was
// measured: across, once or several times, or around, or both.
func stationWidth(j *job.Job, text, path string, s glass.Station, radius float64) ([]job.Revision, error) {
	u := j.Length
	by := max(radius, s.Wall+u.Step()) - s.Radius
	if math.Abs(2*by) < u.Step()/2 {
		return nil, nil
	}
	form, err := job.NewForm([]byte(text))
	if err != nil {
		return nil, err
	}
	var all []job.Revision
	for _, key := range []struct {
		name string
		by   float64
	}{{"across", 2 * by}, {"around", 2 * math.Pi * by}} {
		given, list := readings(form, path+"."+key.name)
		var now []any
		for _, reading := range given {
			mm, err := u.Parse(reading)
			if err != nil {
				return nil, err
			}
			now = append(now, u.Format(mm+key.by))
		}
		switch {
		case list:
			all = append(all, job.Revision{Op: "set", Path: path + "." + key.name, Value: now})
		case len(now) > 0:
			all = append(all, job.Revision{Op: "set", Path: path + "." + key.name, Value: now[0]})
		}
	}
	return all, nil
}

// readings returns what a form has for a length or a list of lengths, if it is given.
func readings(form *job.Form, path string) (all []string, list bool) {
	for _, t := range form.Tables {
		for _, f := range t.Fields {
			if f.Path == path && f.Given {
				if f.List != nil {
					return f.List, true
				}
				return []string{f.Text}, false
			}
		}
	}
	return nil, false
}
