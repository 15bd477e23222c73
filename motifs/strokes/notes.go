package strokes

import (
	"fmt"
	"slices"
	"strings"
	"sync"
)

// Note is something about the drawing that is good to know: what was left out, or
// what was changed and by how much.
type Note struct {
	Line int // the first line in the file it is about; 0 where there is none
	Text string
	// Share is the length that the text tells, as a share of the longer side of the drawing's
	// box; 0 where it tells none.
	Share float64
}

// String returns the note as one line.
func (n Note) String() string {
	if n.Line == 0 {
		return n.Text
	}
	return fmt.Sprintf("line %d: %s", n.Line, n.Text)
}

// tally counts what is left out, by kind.
type tally struct {
	count map[string]int
	first map[string]int
	order []string
}

// add counts one of a kind, found on a line.
func (t *tally) add(kind string, line int) {
	if t.count == nil {
		t.count, t.first = map[string]int{}, map[string]int{}
	}
	if t.count[kind] == 0 {
		t.order = append(t.order, kind)
		t.first[kind] = line
	}
	t.count[kind]++
}

// The kinds of what is left out, as notes name them, each with why.
const (
	fillKind    = "fill"
	hiddenKind  = "hidden shape"
	flatKind    = "shape# pressed flat by its transform"
	shortKind   = "mark# without length"
	outsideKind = "stroke# outside the page or its viewport"
	twinKind    = "stroke# that lies on another"
	foreignKind = "use# of another file"
	unfoundKind = "use# of what is not there"
	cycleKind   = "use# of itself"
	dashedKind  = "dashed stroke"
	uncutKind   = "stroke# that its viewport crops"
)

// reasons says what a kind's note adds to its count.
var reasons = sync.OnceValue(func() map[string]string {
	return map[string]string{
		fillKind:    "left out: only strokes are cut",
		hiddenKind:  "left out: not shown",
		flatKind:    "left out",
		shortKind:   "left out",
		outsideKind: "left out: it would not be seen",
		twinKind:    "left out",
		foreignKind: "left out: no other file is opened",
		unfoundKind: "left out",
		cycleKind:   "left out",
		dashedKind:  "cut without gaps",
		uncutKind:   "cut whole",
	}
})

// leftOut names the elements that hold no strokes, or only some that aren't drawn.
var leftOut = sync.OnceValue(func() map[string]string {
	return map[string]string{
		"text": "text", "image": "image", "foreignObject": "foreign object",
		"linearGradient": "gradient", "radialGradient": "gradient", "meshgradient": "gradient",
		"pattern": "pattern", "clipPath": "clip path", "mask": "mask", "filter": "filter", "marker": "marker",
		"script": "script", "animate": "animation", "animateTransform": "animation", "animateMotion": "animation",
		"set": "animation", "video": "video", "audio": "sound", "canvas": "canvas", "iframe": "frame",
	}
})

// notes returns a note for each kind, in the order they were found.
func (t *tally) notes() []Note {
	all := make([]Note, 0, len(t.order))
	for _, kind := range t.order {
		reason := reasons()[kind]
		if reason == "" {
			reason = "left out: only strokes are cut"
		}
		all = append(all, Note{Line: t.first[kind], Text: counted(t.count[kind], kind) + " " + reason})
	}
	return all
}

// named returns texts as a short list, each once.
func named(texts []string) string {
	const most = 5
	var all []string
	for _, text := range texts {
		if text = quoted(text); !slices.Contains(all, text) {
			all = append(all, text)
		}
	}
	if more := len(all) - most; more > 0 {
		return strings.Join(all[:most], ", ") + fmt.Sprintf(" and %d more", more)
	}
	return strings.Join(all, ", ")
}
