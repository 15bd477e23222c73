package job

import (
	"cmp"
	"slices"
)

// Form is the text of a job as fields to fill in.
type Form struct {
	Tables []FormTable `json:"tables"`
}

// FormTable is one table of the job. Those of the file come in its order; of those it
// lacks, the ones that a job has once come last, with line 0.
type FormTable struct {
	Table  string      `json:"table"` // its name in Tables
	Path   string      `json:"path"`  // as messages write it
	Title  string      `json:"title"` // what its owner calls it
	Line   int         `json:"line"`
	Fields []FormField `json:"fields"` // every key that applies, in the order of Tables
}

// FormField is one key with its value, or with its default where it isn't given.
type FormField struct {
	Key  string   `json:"key"`
	Path string   `json:"path"`
	Text string   `json:"text"`           // as a person would type it
	List []string `json:"list,omitempty"` // the items of a list; Text has them joined
	// Given says that it stands in the file.
	Given bool `json:"given"`
	// From names the included file whose value it is, where the job itself doesn't give one.
	From string `json:"from,omitempty"`
	// Understood is what a length comes to in the other unit, "" where that adds nothing.
	Understood string `json:"understood"`
	Line       int    `json:"line"` // 0 where it isn't given
}

// NewForm reads the text of a job as fields. It goes by the syntax alone, so that it
// also shows what Read refuses. The error is an *Error, for TOML that is broken. Keys
// that no job has are left out.
func NewForm(data []byte) (*Form, error) { return NewFormWith(data, nil) }

// NewFormWith is NewForm for a job that may include files beside it. Its own wheels and
// motifs are counted as in the whole job.
func NewFormWith(data []byte, beside Beside) (*Form, error) {
	r, err := newRevising(data, beside)
	if err != nil {
		return nil, err
	}
	f := &Form{}
	top := place{table: r.doc.root}
	f.add(r, top)
	slices.SortStableFunc(f.Tables, func(a, b FormTable) int {
		return cmp.Compare(f.order(a), f.order(b))
	})
	return f, nil
}

// order is where a table comes in the form: those that aren't in the file come last.
func (f *Form) order(t FormTable) int {
	if t.Line == 0 && t.Path != "" {
		return len(f.Tables) + 1<<30
	}
	return t.Line
}

// add adds a table and those in it.
func (f *Form) add(r *revising, p place) {
	whole := r.whole(p)
	t := FormTable{Table: p.name, Path: p.path, Title: whole.title()}
	if p.table != nil && p.path != "" {
		t.Line = r.doc.line(p.table.at)
	}
	u := r.unit()
	keys := whole.keys()
	t.Fields = make([]FormField, 0, len(keys))
	for _, k := range keys {
		if k.Sort == OfTables {
			continue
		}
		field := r.field(p, k)
		if !field.Given {
			r.fromIncluded(whole.find(k.Name), *k, &field)
		}
		field.Understood = k.understood(u, field)
		t.Fields = append(t.Fields, field)
	}
	f.Tables = append(f.Tables, t)
	known, _ := tableOf(p.name)
	for _, k := range known.Keys {
		if k.Sort != OfTables {
			continue
		}
		inner := p.places(k.Name)
		if k.Name == partsKey {
			inner = p.parts()
		}
		if once, ok := p.once(k.Name); ok && inner == nil {
			inner = []place{once}
		}
		for _, next := range inner {
			f.add(r, next)
		}
	}
}

// once returns the place of a table that a job has once, where the file lacks it.
func (p place) once(name string) (place, bool) {
	if name == partsKey || p.table == nil || p.find(name) != nil {
		return place{}, false
	}
	return p.step(name, 0)
}

// title is what the owner of a job calls a table.
func (p place) title() string {
	own := map[string]string{"": "title", "blank": "name", "station": "height", "wheel": "name", "motif": "kind"}
	if key, ok := own[p.name]; ok {
		if text := p.says(key); text != "" {
			return text
		}
		known, _ := tableOf(p.name)
		k, _ := known.key(key)
		return k.Default
	}
	if p.name == "part" {
		steps := stepsOf(p.path)
		return steps[len(steps)-1]
	}
	return p.name
}

// field returns a key of a table as a field.
func (r *revising) field(p place, k *Key) FormField {
	f := FormField{Key: k.Name, Path: joined(p.path, k.Name), Text: k.Default}
	if takes, may := k.listed(); takes && !may {
		f.List = itemsOf(k.Default)
	}
	e := p.find(k.Name)
	if e == nil {
		return f
	}
	f.Given, f.Line, f.List = true, r.doc.line(e.at), nil
	if from, to, ok := extent(r.text, e.at); ok && !e.value.open {
		f.Text, f.List = r.typed(*k, e.value, from, to)
	}
	return f
}
