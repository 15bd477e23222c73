package job

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/motifs/strokes"
)

// Beside reads a file that stands beside a job. The name is a plain one, without a folder.
// The error says in words why it can't be read; it has at most MaxBeside bytes.
type Beside func(name string) ([]byte, error)

// MaxBeside is the size of the largest file beside a job that is read.
const MaxBeside = 16 << 20

// drawnFile is a drawing's file and how it is read.
type drawnFile struct {
	name    string
	options strokes.Options
}

// content reads what a motif is made of, where its kind asks for that, and makes the kind.
func (s section) content(m *Motif) {
	switch m.Kind.Name {
	case motifs.DrawingName:
		s.drawing(m)
	case motifs.InitialsName:
		s.initials(m)
	}
}

// initials reads the text that a motif is made of. The arc it is set along is known.
func (s section) initials(m *Motif) {
	field := s.required(motifs.TextKey)
	text, ok := field.text(maxTitle)
	if !ok {
		return
	}
	widest, err := motifs.WidestArc(text)
	if err != nil {
		read, accepted, _ := strings.Cut(strings.TrimPrefix(err.Error(), "read "), "; accepted: ")
		field.read = read
		field.refuse(accepted, "")
		return
	}
	arc := m.Values[motifs.ArcKey]
	if most := math.Floor(widest.Degrees()); math.Abs(arc) > most {
		s.optional(motifs.ArcKey).refuse(fmt.Sprintf("degrees from %g to %g for this text", -most, most),
			"on a tighter arc its letters would no longer read as a line")
		return
	}
	// The text is read already.
	m.Kind, _ = motifs.Initials(text, geometry.Degrees(arc))
}

// proportions leaves a size that isn't given to follow from the other, where the motif has
// proportions of its own.
func (s section) proportions(m *Motif) {
	if m.Kind.Aspect == 0 {
		return
	}
	if !s.has("width") {
		m.Width = Measure{}
	} else if !s.has("height") {
		m.Height = Measure{}
	}
}

// drawing reads the drawing that a motif is made of.
func (s section) drawing(m *Motif) {
	file, paths := s.optional(motifs.FileKey), s.optional(motifs.PathsKey)
	var options strokes.Options
	options.Centre, _ = s.optional(motifs.CentreKey).truth()
	var d *strokes.Drawing
	switch {
	case file.value != nil && paths.value != nil:
		second := file
		if paths.at > file.at {
			second = paths
		}
		second.refuse("file or paths, one of the two", "")
	case file.value != nil:
		d = file.drawing(options)
	case paths.value != nil:
		d = paths.paths(options)
	default:
		s.missing(motifs.FileKey, `file = "blade.svg", an SVG file beside the job, or paths = ["M 0 0 L 10 30"], the lines in SVG path data`)
	}
	if d == nil {
		return
	}
	m.Kind = motifs.Drawing(d)
	if file.value == nil {
		return
	}
	for i, note := range m.Kind.Notes {
		apart := ": "
		if strings.HasPrefix(note.Text, "line ") {
			apart = ", "
		}
		m.Kind.Notes[i].Text = file.value.text + apart + note.Text
	}
}

// drawing reads a drawing from a file beside the job; nil where it can't be used.
func (f field) drawing(options strokes.Options) *strokes.Drawing {
	data, ok := f.besides("an SVG file", "blade.svg", "write its lines as "+motifs.PathsKey)
	if !ok {
		return nil
	}
	known := drawnFile{f.value.text, options}
	if d := f.in.drawn[known]; d != nil {
		return d
	}
	d, err := strokes.Read(data, options)
	if err == nil {
		if f.in.drawn == nil {
			f.in.reading.drawn = map[drawnFile]*strokes.Drawing{}
		}
		f.in.drawn[known] = d
		return d
	}
	var wrong *strokes.Error
	if !errors.As(err, &wrong) {
		f.refuse("an SVG file", oneLine(err.Error(), 200))
		return nil
	}
	f.read = wrong.Read + " in " + quoted(f.value.text)
	if place := wrong.Place(); place != "" {
		f.read += ", " + place
	}
	f.refuse(wrong.Accepted, "")
	return nil
}

// besides reads a file beside the job. what and such say what file it is, and other what
// can be done without one.
func (f field) besides(what, such, other string) ([]byte, bool) {
	accepted := fmt.Sprintf("the name of %s in the job's own folder, such as %s", what, quoted(such))
	if f.value.kind != unstable.String {
		f.refuse(accepted, "")
		return nil, false
	}
	if !isPlain(f.value.text) {
		f.refuse(accepted, "a plain name: no folder, no drive, no address")
		return nil, false
	}
	if f.in.beside == nil {
		f.refuse(accepted, "here the files beside a job can't be read: "+other)
		return nil, false
	}
	data, err := f.in.beside(f.value.text)
	if !slices.Contains(f.in.needs, f.value.text) {
		f.in.reading.needs = append(f.in.needs, f.value.text)
	}
	if err == nil && len(data) > MaxBeside {
		err = fmt.Errorf("it has more than the %d MiB that are read", MaxBeside>>20)
	}
	if err != nil {
		f.refuse(accepted, oneLine(err.Error(), 200))
		return nil, false
	}
	return data, true
}

// isPlain reports whether a text is the name of a file, and no way to one.
func isPlain(name string) bool {
	return name != "" && name != "." && name != ".." && utf8.RuneCountInString(name) <= maxTitle &&
		strings.TrimSpace(name) == name && !strings.ContainsAny(name, `/\:`) &&
		!strings.ContainsFunc(name, func(r rune) bool { return !unicode.IsPrint(r) })
}

// paths reads a drawing from path data in the job itself; nil where it can't be used.
func (f field) paths(options strokes.Options) *strokes.Drawing {
	const accepted = `a list of lines in SVG path data, such as ["M 0 0 L 10 30"]`
	if f.value.kind != unstable.Array || len(f.value.items) == 0 {
		hint := ""
		if f.value.kind == unstable.String {
			hint = "write it in brackets"
		}
		f.refuse(accepted, hint)
		return nil
	}
	texts := make([]string, len(f.value.items))
	for i, item := range f.value.items {
		if item.kind != unstable.String {
			f.item(i).refuse(accepted, "")
			return nil
		}
		texts[i] = item.text
	}
	d, err := strokes.ReadPaths(texts, options)
	if err == nil {
		return d
	}
	at := f
	var wrong *strokes.Error
	if !errors.As(err, &wrong) {
		f.refuse(accepted, oneLine(err.Error(), 200))
		return nil
	}
	if wrong.Path > 0 {
		at = f.item(wrong.Path - 1)
	}
	at.read = wrong.Read
	if wrong.Character > 0 {
		at.read += fmt.Sprintf(" at character %d", wrong.Character)
	}
	at.refuse(wrong.Accepted, "")
	return nil
}
