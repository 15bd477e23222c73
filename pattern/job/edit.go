package job

import "fmt"

// Edit is a new value for a key of a job file, in place of the one it has or as a
// new line.
type Edit struct {
	Motif int    // the number of its motif from 0, or one of the tables below
	Part  string // of the motif, where it is a key of that part's own
	Key   string // of the motif or of the table
	Value string // as it is written in TOML
	Note  string // a comment to put above the line
	// Over is how an older note begins. If one stands above the line, the new note
	// replaces it.
	Over string
}

// The tables other than motifs.
const (
	OfLayout = -1 - iota
	OfShop
	OfLimits
	OfBase
)

// path returns the path of the table that an edit changes.
func (e Edit) path() string {
	switch {
	case e.Motif >= 0 && e.Part != "":
		return Item("motif", e.Motif) + ".parts." + e.Part
	case e.Motif >= 0:
		return Item("motif", e.Motif)
	}
	return [...]string{"layout", "shop", "limits", "base"}[OfLayout-e.Motif]
}

// Rewrite returns a job file with other values. All else stays as its owner wrote
// it: comments, order and spaces. The file is one that Read reads.
func Rewrite(data []byte, edits []Edit) ([]byte, error) { return rewritten(data, nil, edits) }

// Rewrite returns the job's text with other values. What stands in an included file is
// changed in the job's own text, by a table that wins over it. The text is the one that the
// job was read from.
func (j *Job) Rewrite(data []byte, edits []Edit) ([]byte, error) {
	return rewritten(data, j.source.beside, edits)
}

func rewritten(data []byte, beside Beside, edits []Edit) ([]byte, error) {
	r, err := newRevising(data, beside)
	if err != nil {
		return nil, err
	}
	for _, e := range edits {
		if err := r.override(e.path()); err != nil {
			return nil, err
		}
		if !r.write(e.path(), e.Key, e.Value, note{e.Note, e.Over}) {
			return nil, fmt.Errorf("%s can't be written into this file: its place was not found", e.Key)
		}
	}
	return r.bytes(), nil
}
