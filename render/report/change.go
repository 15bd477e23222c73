package report

import (
	"fmt"
	"strings"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// ChangeWords says what changes of a plan's job do, for a person who has controls before
// them and no file: those of a motif after its name, and what the job has now behind.
func ChangeWords(p *pattern.Plan, changes []job.Change) string {
	words := make([]string, len(changes))
	for i, c := range changes {
		words[i] = one(p, c, changes)
	}
	said := byMotif(func(c job.Change) string { return partName(p.Job, c) }, changes, words)
	return upper(strings.Join(said, "; "))
}

// motifName names a motif as the page's headings do: leaf (motif 1).
func motifName(j *job.Job, motif int) string {
	return fmt.Sprintf("%s (motif %d)", j.Motifs[motif].Called(), motif+1)
}

// partName names what a change is of: a motif or the part of it, leaf (motif 1), frond, or
// the base.
func partName(j *job.Job, c job.Change) string {
	if c.Motif == job.OfBase {
		return c.Name(j)
	}
	if c.Part == "" {
		return motifName(j, c.Motif)
	}
	return motifName(j, c.Motif) + ", " + c.Part
}

// one says what one change does; those made with it decide what a share comes to.
func one(p *pattern.Plan, c job.Change, with []job.Change) string {
	after := p.Job.With(with...)
	now := func(words func(*job.Job) string) string {
		to := words(after)
		if _, given := c.Has(p.Job); !given || words(p.Job) == to {
			return to
		}
		return to + nowIs(to, words(p.Job))
	}
	u := p.Job.Length
	if c.Motif < 0 {
		return ofJob(c, u, now)
	}
	motif := func(j *job.Job) job.Motif { return j.Motifs[c.Motif] }
	own := func(j *job.Job) *job.Motif { return &j.Motifs[c.Motif] }
	switch c.Key {
	case "depth":
		return "cut it " + now(func(j *job.Job) string { return u.FormatChosen(own(j).DepthOf(c.Part)) + " deep" })
	case "wheel":
		return "cut it with the wheel " + now(func(j *job.Job) string { return j.Rack[own(j).WheelOf(c.Part)].Name }) + looksDifferent(p.Job, c)
	case "rock":
		return "roll it " + now(func(j *job.Job) string { return rollWords(own(j).GestureOf(c.Part)) })
	case "swell":
		return "let its depth go " + now(func(j *job.Job) string { return shareWords(own(j).GestureOf(c.Part)) })
	case "on":
		return "let it stand in " + now(func(j *job.Job) string { return standsIn(motif(j)) })
	case "shape":
		return shapeWords(motif(after).Shape)
	case "width", "height":
		return sized(p, c, after, with) + nowIs(sizeWords(after, c), sizeWords(p.Job, c))
	case "at":
		return "move its middle to " + middle(u, motif(after)) + ", now " + middle(u, motif(p.Job))
	}
	return parameterWords(p.Job.Motifs[c.Motif].Kind, c.Key, now, func(j *job.Job) float64 { return motif(j).Values[c.Key] })
}

// ofJob says what a change of the layout or of the limits does.
func ofJob(c job.Change, u geometry.Unit, now func(func(*job.Job) string) string) string {
	switch c.Key {
	case "repeats":
		if c.Motif == job.OfBase {
			return "divide the base in " + now(func(j *job.Job) string { return count(j.Base.Repeats, "sector") })
		}
		return "let the design go round " + now(func(j *job.Job) string { return count(j.Layout.Repeats, "time") })
	case "band":
		return "keep the design between " + now(func(j *job.Job) string {
			b, from := j.Layout.Band, ""
			if c.Motif == job.OfBase {
				b, from = j.Base.Band, " from the middle of the base"
			}
			if b == nil {
				return ""
			}
			return between(u, *b) + from
		})
	}
	return "accept marks that come to " + now(func(j *job.Job) string { return fmt.Sprintf("%g of their depth", j.Limits.Reach) })
}

// between writes the ends of a band, the unit once where both have the same.
func between(u geometry.Unit, b job.Band) string {
	foot, unit := u.FormatChosen(b.Foot), " "+u.String()
	return strings.TrimSuffix(foot, unit) + " and " + u.FormatChosen(b.Top)
}

func standsIn(m job.Motif) string {
	switch {
	case m.Only != nil:
		return "some of the repeats"
	case m.On == job.Each:
		return "each repeat"
	}
	return fmt.Sprintf("the %s repeats", m.On)
}

func shapeWords(s job.Shape) string {
	if s == job.Taper {
		return "let it narrow where the glass does"
	}
	return "let it keep its own shape"
}

// sized says a width or a height, and what a share comes to on the glass.
func sized(p *pattern.Plan, c job.Change, after *job.Job, with []job.Change) string {
	m := after.Motifs[c.Motif]
	words := c.Key + " " + sizeWords(after, c)
	if !fraction(m, c.Key) || m.Inside > 0 {
		return words
	}
	for _, other := range with {
		if other.Motif == job.OfLayout || other.Motif == job.OfBase {
			return words // on another band or in other repeats a share is not what it is here
		}
	}
	box := p.Box(m)
	size := box.Width
	if c.Key == "height" {
		size = box.Height
	}
	return fmt.Sprintf("%s (about %s)", words, p.Job.Length.Format(size))
}

// nowIs says what there is now, without the words at its end that were just said; "" if it
// is the same.
func nowIs(to, now string) string {
	if to == now {
		return ""
	}
	said, words := strings.Fields(to), strings.Fields(now)
	for len(said) > 1 && len(words) > 1 && said[len(said)-1] == words[len(words)-1] {
		said, words = said[:len(said)-1], words[:len(words)-1]
	}
	return ", now " + strings.Join(words, " ")
}

func fraction(m job.Motif, key string) bool {
	if key == "width" {
		return m.Width.Fraction
	}
	return m.Height.Fraction
}

// sizeWords writes a width or a height as the job has it: 0.55 of the band.
func sizeWords(j *job.Job, c job.Change) string {
	m := j.Motifs[c.Motif]
	size, whole := m.Width, "the repeat"
	if c.Key == "height" {
		size, whole = m.Height, "the band"
	}
	if m.Inside > 0 {
		whole = "that of motif " + fmt.Sprint(m.Inside)
	}
	if size.Fraction {
		return fmt.Sprintf("%g of %s", size.Value, whole)
	}
	return j.Length.FormatChosen(size.Value)
}

// middle says where a motif stands: across from the middle, up from the foot of the band.
func middle(u geometry.Unit, m job.Motif) string {
	space := [2]string{"a repeat", "the band"}
	from := "the repeat's middle"
	if m.Inside > 0 {
		outer := fmt.Sprintf("motif %d", m.Inside)
		space, from = [2]string{outer + "'s width", outer + "'s height"}, outer+"'s middle"
	}
	part := func(x job.Measure, of string) string {
		if x.Fraction {
			return fmt.Sprintf("%g of %s", max(x.Value, -x.Value), of)
		}
		return u.FormatChosen(max(x.Value, -x.Value))
	}
	across := from
	switch {
	case m.X.Value > 0:
		across = part(m.X, space[0]) + " right of " + from
	case m.X.Value < 0:
		across = part(m.X, space[0]) + " left of " + from
	}
	return across + " and " + part(m.Y, space[1]) + " up"
}

// parameterWords says a parameter of a kind, with the beginning of what it is.
func parameterWords(k motifs.Kind, key string, now func(func(*job.Job) string) string, value func(*job.Job) float64) string {
	param, _ := k.Param(key)
	said := now(func(j *job.Job) string {
		if param.Sort == motifs.Switch {
			return map[bool]string{true: "yes", false: "no"}[value(j) != 0]
		}
		return fmt.Sprintf("%g", value(j))
	})
	about, _, _ := strings.Cut(param.About, ":")
	if first, _, ok := strings.Cut(about, ", as a share"); ok {
		about = first
	}
	return fmt.Sprintf("%s %s (%s)", key, said, about)
}
