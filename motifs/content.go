package motifs

// ContentKey is a key by which a job gives a motif what its cuts are made of, where they
// don't follow from numbers: a drawing's file, a text.
type ContentKey struct {
	Name, About string
	Sort        ContentSort
	Example     string // a value, as a job has it
	// Begins says that a motif of the kind can begin with the example.
	Begins bool
}

// ContentSort is what a content key takes.
type ContentSort int

// A content key takes a text, a list of texts, or true or false.
const (
	Text ContentSort = iota
	Texts
	Choice
)

// Made returns the kinds that are made anew for each motif, of what the job gives it. They
// draw an example.
func Made() []Kind { return []Kind{Drawings(), Lettered()} }

// Listed returns every kind that a job can have, in the order they are listed.
func Listed() []Kind { return append(All(), Made()...) }

// Readable returns every kind in the order of Listed, as a job's reader needs it: those of
// Made have their keys and parameters, but no parts, and nothing to draw yet.
func Readable() []Kind { return append(All(), undrawn(), unwritten()) }

// Key returns the content key of the given name.
func (k Kind) Key(name string) (ContentKey, bool) {
	for _, key := range k.Keys {
		if key.Name == name {
			return key, true
		}
	}
	return ContentKey{}, false
}
