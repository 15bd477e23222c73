package motifs

import (
	"slices"

	"roundlay/geometry"
	"roundlay/motifs/alphabet"
)

// InitialsName is the name of the kind that is letters, and TextKey its key.
const (
	InitialsName = "initials"
	TextKey      = "text"
)

// exampleInitials is what the kind is listed with.
const exampleInitials = "E & R"

// Lettered is the kind of motif that is letters, as it is listed: with an example's.
func Lettered() Kind {
	// The text is our own: a test reads it.
	k, err := Initials(exampleInitials)
	if err != nil {
		panic(err)
	}
	return k
}

// Initials returns the kind made of a text, set in a line along the level. Its box is as
// wide as the line, and as high as the letters, accents included where there are any. The
// error says what was read and what is accepted.
func Initials(text string) (Kind, error) {
	line, err := alphabet.Write(text)
	if err != nil {
		return Kind{}, err
	}
	box := lineBox(line)
	cuts := make([]Cut, len(line.Strokes))
	for i, s := range line.Strokes {
		cuts[i] = Cut{Part: s.Part, Path: unit(s.Path, box), Joins: s.Joins}
	}
	width, height := box.Size()
	return Kind{
		Name:  InitialsName,
		About: "letters and figures in single strokes",
		Keys: []ContentKey{{Name: TextKey, Sort: Text, Example: `"` + exampleInitials + `"`, Begins: true,
			About: "what they are: " + alphabet.Accepted}},
		Contents: fingerprint(cuts, width/height),
		Aspect:   width / height,
		Draw:     func(Values, float64) []Cut { return slices.Clone(cuts) },
	}, nil
}

// lineBox returns the box of a line of letters. It goes from the level to the height of the
// capitals, and as far beyond as any round letter does, or where there are accents as any
// accent does: texts of one height have letters of one height.
func lineBox(line alphabet.Line) geometry.Box {
	const hair = 0.005 // the box round the strokes goes by places on them
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
