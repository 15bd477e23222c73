package job

import (
	"fmt"
	"math"
	"strconv"
)

// Price is how a change is weighed against others.
type Price int

// A value that is changed costs the share of it that is lost or won, and a band the
// share of its height; what moves a motif costs the share of the repeat and the band
// it moves; a number costs the share of its range; another wheel costs the same
// whichever it is, and so does another word, such as even for odd.
const (
	ByShare Price = iota
	ByHeight
	ByMove
	ByRange
	ByWheel
	ByWord
)

// key is a value of a job that may be changed: how it is read, made another and
// written, what it may be, and what changing it costs.
type key struct {
	name   string
	part   bool                          // whether a part of a motif may have it for itself
	table  int                           // OfLayout, OfBase or OfLimits; 0 where it is a motif's
	get    func(j *Job, c *Change) bool  // fills in the value; false where the job has none
	set    func(j *Job, c Change)        // makes the change
	format func(j *Job, c Change) string // in the words of a job file
	may    func(j *Job, c Change) bool   // whether a job may have it
	price  Price
}

// keys returns all of them but the parameters of a motif's kind.
func keys() []key {
	return []key{
		repeatsKey(OfLayout, Side, func(j *Job) *Layout { return &j.Layout }),
		bandKey(OfLayout, func(j *Job) *Layout { return &j.Layout }),
		repeatsKey(OfBase, Base, func(j *Job) *Layout { return j.Base }),
		bandKey(OfBase, func(j *Job) *Layout { return j.Base }),
		{
			name:   "depth",
			part:   true,
			get:    func(j *Job, c *Change) bool { c.Value = j.Motifs[c.Motif].DepthOf(c.Part); return true },
			set:    setDepth,
			format: func(j *Job, c Change) string { return quote(j, c.Value) },
			may:    func(_ *Job, c Change) bool { return c.Value > 0 },
		},
		{
			name: "wheel", price: ByWheel, part: true,
			get:    func(j *Job, c *Change) bool { c.Value = float64(j.Motifs[c.Motif].WheelOf(c.Part)); return true },
			set:    setWheel,
			format: func(j *Job, c Change) string { return strconv.Quote(j.Rack[int(c.Value)].Name) },
			may:    func(j *Job, c Change) bool { return c.Value >= 0 && int(c.Value) < len(j.Rack) },
		},
		{
			// Where the job says nothing of it it has the default, which is no less a value.
			name: "reach", table: OfLimits,
			get:    func(j *Job, c *Change) bool { c.Value = j.Limits.Reach; return true },
			set:    func(j *Job, c Change) { j.Limits.Reach = c.Value },
			format: func(_ *Job, c Change) string { return fmt.Sprintf("%g", c.Value) },
			may:    func(_ *Job, c Change) bool { return c.Value >= 0 && c.Value <= 1 },
		},
		swellKey(),
		rockKey(),
		onKey(),
		wordKey("shape", Shapes(), func(m *Motif) int { return int(m.Shape) }, func(m *Motif, n int) { m.Shape = Shape(n) },
			func(*Job, int) bool { return true }),
		sizeKey("width", func(m *Motif) *Measure { return &m.Width }),
		sizeKey("height", func(m *Motif) *Measure { return &m.Height }),
		{
			name: "at", price: ByMove,
			get: func(j *Job, c *Change) bool {
				c.At = [2]Measure{j.Motifs[c.Motif].X, j.Motifs[c.Motif].Y}
				return true
			},
			set:    func(j *Job, c Change) { j.Motifs[c.Motif].X, j.Motifs[c.Motif].Y = c.At[0], c.At[1] },
			format: func(j *Job, c Change) string { return pair(measured(j, c.At[0]), measured(j, c.At[1])) },
			may: func(j *Job, c Change) bool {
				across, up := c.At[0], c.At[1]
				return !j.Motifs[c.Motif].Middle && (!across.Fraction || math.Abs(across.Value) <= 0.5) && up.Value >= 0 && (!up.Fraction || up.Value <= 1)
			},
		},
	}
}

// setDepth and setWheel set a motif's value, or that of one of its parts alone.
func setDepth(j *Job, c Change) {
	m := &j.Motifs[c.Motif]
	if c.Part == "" {
		m.Depth = c.Value
		return
	}
	m.Parts = m.change(c.Part, func(p *Part) { p.Depth = &c.Value })
}

func setWheel(j *Job, c Change) {
	m, wheel := &j.Motifs[c.Motif], int(c.Value)
	if c.Part == "" {
		m.Wheel = wheel
		return
	}
	m.Parts = m.change(c.Part, func(p *Part) { p.Wheel = &wheel })
}

// sizeKey is the key of a motif's width or height: as small as calipers show, or a
// thousandth of the repeat or the band.
func sizeKey(name string, of func(*Motif) *Measure) key {
	return key{
		name: name,
		get: func(j *Job, c *Change) bool {
			m := of(&j.Motifs[c.Motif])
			c.Value, c.Fraction = m.Value, m.Fraction
			return !m.follows()
		},
		set:    func(j *Job, c Change) { *of(&j.Motifs[c.Motif]) = Measure{c.Value, c.Fraction} },
		format: func(j *Job, c Change) string { return measured(j, Measure{c.Value, c.Fraction}) },
		may:    func(j *Job, c Change) bool { return c.Value > MinShare && (c.Fraction || c.Value >= j.Length.Step()) },
	}
}

// wordKey is the key of a motif's value that is one of some words. What is inside the
// motif follows it, and has no such value of its own.
func wordKey(name string, words []string, get func(m *Motif) int, set func(m *Motif, n int), may func(j *Job, n int) bool) key {
	return key{
		name: name, price: ByWord,
		get: func(j *Job, c *Change) bool { c.Value = float64(get(&j.Motifs[c.Motif])); return true },
		set: func(j *Job, c Change) {
			changed := make([]bool, len(j.Motifs))
			for i := c.Motif; i < len(j.Motifs); i++ { // what is inside a motif comes after it
				m := &j.Motifs[i]
				if i == c.Motif || m.Inside > 0 && changed[m.Inside-1] {
					set(m, int(c.Value))
					changed[i] = true
				}
			}
		},
		format: func(_ *Job, c Change) string { return strconv.Quote(words[int(c.Value)]) },
		may: func(j *Job, c Change) bool {
			return j.Motifs[c.Motif].Inside == 0 && !j.Motifs[c.Motif].Middle && c.Value >= 0 && int(c.Value) < len(words) && may(j, int(c.Value))
		},
	}
}

// onKey is the key of the repeats a motif stands on, where that is a word. A list of
// repeats is no value that may be changed.
func onKey() key {
	k := wordKey("on", Ons(), func(m *Motif) int { return int(m.On) }, func(m *Motif, n int) { m.On, m.Only = On(n), nil },
		func(*Job, int) bool { return true })
	of := k.get
	k.get = func(j *Job, c *Change) bool { return j.Motifs[c.Motif].Only == nil && of(j, c) }
	may := k.may
	k.may = func(j *Job, c Change) bool {
		m := &j.Motifs[c.Motif]
		layout := j.LayoutOf(m.Face)
		return may(j, c) && !m.Middle && (On(c.Value) == Each || layout.Repeats%2 == 0) && len(layout.Copies(Motif{On: On(c.Value)})) > 0
	}
	return k
}

// parameter is the key of a parameter of a motif's kind.
func parameter(name string) key {
	return key{
		name:   name,
		get:    func(j *Job, c *Change) bool { c.Value = j.Motifs[c.Motif].Values[name]; return true },
		set:    func(j *Job, c Change) { j.Motifs[c.Motif].Values[name] = c.Value },
		format: func(_ *Job, c Change) string { return fmt.Sprintf("%g", c.Value) },
		may: func(j *Job, c Change) bool {
			param, known := j.Motifs[c.Motif].Kind.Param(name)
			return known && param.Accepts(c.Value)
		},
	}
}

// key returns the change's key: a parameter's where the table has none of its name.
func (c Change) key() key {
	for _, k := range keyTable {
		if k.name == c.Key && k.table == min(c.Motif, 0) {
			return k
		}
	}
	return parameter(c.Key)
}

var keyTable = keys() // never changed

// changeable returns a change, without its value, for all in a job that may be changed.
func (j *Job) changeable() []Change {
	var all []Change
	for _, k := range keyTable {
		if k.table < 0 && (k.table != OfBase || j.Base != nil) {
			all = append(all, Change{Motif: k.table, Key: k.name})
		}
	}
	for i, m := range j.Motifs {
		for _, k := range keyTable {
			if k.table == 0 {
				all = append(all, Change{Motif: i, Key: k.name})
			}
		}
		for _, p := range m.Kind.Params {
			all = append(all, Change{Motif: i, Key: p.Name})
		}
		for _, part := range m.Kind.Parts {
			for _, k := range keyTable {
				if k.part {
					all = append(all, Change{Motif: i, Part: part, Key: k.name})
				}
			}
		}
	}
	return all
}

func pair(a, b string) string { return "[" + a + ", " + b + "]" }

func measured(j *Job, m Measure) string {
	if m.Fraction {
		return fmt.Sprintf("%g", m.Value)
	}
	return quote(j, m.Value)
}

func quote(j *Job, mm float64) string { return strconv.Quote(lengthText(j.Length, mm)) }
