package motifs

import (
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/motifs/alphabet"
)

// InitialsName is the name of the kind that is letters, TextKey its key, and ArcKey its
// parameter.
const (
	InitialsName = "initials"
	TextKey      = "text"
	ArcKey       = "arc"
)

// exampleInitials is what the kind is listed with.
const exampleInitials = "E & R"

// Lettered is the kind of motif that is letters, as it is listed: with an example's.
func Lettered() Kind {
	// The text is our own: a test reads it.
	k, err := Initials(exampleInitials, 0)
	if err != nil {
		panic(err)
	}
	k.Parts = []string{alphabet.Letter, alphabet.Accent} // other texts have accents
	return k
}

// Initials returns the kind made of a text, set in a line along the level, or along an arc
// that spans an angle: see alphabet.Line. The kind's proportions are those with this arc.
// On the level its box is as wide as the line, and as high as the letters, accents included
// where there are any. On an arc it is the box round all strokes. The error says what was
// read and what is accepted.
func Initials(text string, arc geometry.Angle) (Kind, error) {
	line, err := alphabet.Write(text)
	if err != nil {
		return Kind{}, err
	}
	level := letterCuts(line, lineBox(line))
	k := unwritten()
	k.Params[0].Shows = math.Floor(geometry.Angle(line.WidestArc()).Degrees())
	k.Parts = partsOf(level)
	k.Draw = func(v Values, aspect float64) []Cut {
		arc := v.Radians(ArcKey)
		if arc == 0 {
			return slices.Clone(level)
		}
		return letterCuts(onArc(line, arc, aspect))
	}
	width, height := lineBox(line).Size()
	if arc != 0 {
		_, box := onArc(line, arc.Radians(), 0)
		width, height = box.Size()
	}
	k.Aspect = width / height
	k.Contents = fingerprint(k.Draw(Values{ArcKey: arc.Degrees()}, k.Aspect), k.Aspect)
	return k, nil
}

// unwritten returns the kind without a text.
func unwritten() Kind {
	most := math.Round(geometry.Angle(alphabet.MaxArc).Degrees())
	return Kind{
		Name:  InitialsName,
		About: "letters and figures in single strokes",
		Keys: []ContentKey{{Name: TextKey, Sort: Text, Example: `"` + exampleInitials + `"`, Begins: true,
			About: "what they are: " + alphabet.Accepted}},
		Params: []Param{{Name: ArcKey, Min: -most, Max: most,
			About: "degrees of the circle along which the line goes: above 0 its middle is high, below 0 low, 0 is level"}},
	}
}

// WidestArc returns the widest arc that a text can be set along, either way. The error is
// that of Initials.
func WidestArc(text string) (geometry.Angle, error) {
	line, err := alphabet.Write(text)
	return geometry.Angle(line.WidestArc()), err
}

// letterCuts returns a line's strokes as cuts in the unit repeat.
func letterCuts(line alphabet.Line, box geometry.Box) []Cut {
	cuts := make([]Cut, len(line.Strokes))
	for i, s := range line.Strokes {
		cuts[i] = Cut{Part: s.Part, Path: unit(s.Path, box), Joins: s.Joins}
	}
	return cuts
}

// onArc sets a line along an arc. It returns the box round it, made wider or higher to have
// an aspect, if one is given: letters that lean would be pulled out of shape in any other
// box than one of their own proportions, so the line is as large as fits.
func onArc(line alphabet.Line, arc, aspect float64) (alphabet.Line, geometry.Box) {
	bowed := line.Along(arc)
	box := bowed.Box().Grow(hair)
	width, height := box.Size()
	if wider := height*aspect - width; wider > 0 {
		box.Min.X, box.Max.X = box.Min.X-wider/2, box.Max.X+wider/2
	} else if aspect > 0 {
		higher := width/aspect - height
		box.Min.Y, box.Max.Y = box.Min.Y-higher/2, box.Max.Y+higher/2
	}
	return bowed, box
}

// hair is how much the box round a line's strokes is widened, since it goes by places on
// them.
const hair = 0.005 // cap heights

// lineBox returns the box of a line of letters. It goes from the level to the height of the
// capitals, and as far beyond as any round letter does, or where there are accents as any
// accent does: texts of one height have letters of one height.
func lineBox(line alphabet.Line) geometry.Box {
	drawn := line.Box().Grow(hair)
	box := geometry.Box{
		Min: geometry.Point{X: min(0, drawn.Min.X), Y: -alphabet.Overshoot - hair},
		Max: geometry.Point{X: max(line.Advance, drawn.Max.X), Y: 1 + alphabet.Overshoot + hair},
	}
	if drawn.Min.Y < box.Min.Y {
		box.Min.Y = -alphabet.Descent - hair
	}
	if drawn.Max.Y > box.Max.Y {
		box.Max.Y = alphabet.Ascent + hair
	}
	return box
}
