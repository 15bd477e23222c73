package job

import (
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/motifs"
)

// Part is what one part of a motif has for itself, where it differs from the motif: nil
// is the motif's.
type Part struct {
	Name        string // one of the kind's
	Wheel       *int   // the rack's
	Depth       *float64
	Land, Clear *float64
	Swell       []float64
	Rock        *[2]geometry.Angle
}

// Part returns what a part has for itself: nothing, where the job doesn't say.
func (m *Motif) Part(name string) Part {
	for _, p := range m.Parts {
		if p.Name == name {
			return p
		}
	}
	return Part{Name: name}
}

// PartPath returns the path under which a part of a motif has its keys, given the motif's
// number from 0.
func PartPath(motif int, part string) string {
	return joined(joined(Item("motif", motif), partsKey), written(part))
}

// WheelOf returns the wheel of the rack that cuts a part.
func (m *Motif) WheelOf(part string) int {
	if own := m.Part(part).Wheel; own != nil {
		return *own
	}
	return m.Wheel
}

// DepthOf returns how deep a part is cut.
func (m *Motif) DepthOf(part string) float64 {
	if own := m.Part(part).Depth; own != nil {
		return *own
	}
	return m.Depth
}

// LandOf and ClearOf return a part's own limits, or the motif's; nil where the job's hold.
func (m *Motif) LandOf(part string) *float64 {
	if own := m.Part(part).Land; own != nil {
		return own
	}
	return m.Land
}

func (m *Motif) ClearOf(part string) *float64 {
	if own := m.Part(part).Clear; own != nil {
		return own
	}
	return m.Clear
}

// Deepest and Shallowest return the greatest and the least depth of any of its parts.
func (m *Motif) Deepest() float64 { return slices.Max(m.depths()) }

func (m *Motif) Shallowest() float64 { return slices.Min(m.depths()) }

// depths returns the depths of all parts. The motif's counts only where a part has it.
func (m *Motif) depths() []float64 {
	if len(m.Parts) == 0 || len(m.Kind.Parts) == 0 {
		return []float64{m.Depth}
	}
	all := make([]float64, len(m.Kind.Parts))
	for i, part := range m.Kind.Parts {
		all[i] = m.DepthOf(part)
	}
	return all
}

// change returns the motif's parts with one of them changed.
func (m *Motif) change(part string, change func(*Part)) []Part {
	parts := slices.Clone(m.Parts)
	i := slices.IndexFunc(parts, func(p Part) bool { return p.Name == part })
	if i < 0 {
		parts, i = append(parts, Part{Name: part}), len(parts)
	}
	change(&parts[i])
	return parts
}

// parts reads what parts of a motif have for themselves.
func (s section) parts(kind motifs.Kind, wheels rack) []Part {
	field := s.optional("parts")
	if field.value == nil {
		return nil
	}
	accepted := "a table for each part, [motif.parts." + strings.Join(kind.Parts, "] or [motif.parts.") + "]"
	if field.value.table == nil {
		field.refuse(accepted, "")
		return nil
	}
	var all []Part
	holder := section{reading: s.reading, table: field.value.table, path: field.path}
	for _, e := range holder.table.fields {
		one := holder.optional(e.key)
		switch {
		case !slices.Contains(kind.Parts, e.key):
			one.read = "a part " + quoted(e.key)
			one.refuse(partsOf(kind), partHint(e, kind))
		case e.value.table == nil:
			one.refuse("a table [motif.parts."+written(e.key)+"] with the keys "+strings.Join(keysOf("part"), ", "), "")
		default:
			all = append(all, section{reading: s.reading, table: e.value.table, path: one.path}.part(e.key, wheels))
		}
	}
	return all
}

// partsOf names the parts of a kind.
func partsOf(kind motifs.Kind) string {
	words := "the parts of a " + kind.Name
	if len(kind.Parts) == 1 {
		words = "the one part of a " + kind.Name
	}
	return words + ", " + list(kind.Parts)
}

// partHint says which part was meant, or that a key of a part stands outside of one.
func partHint(e *entry, kind motifs.Kind) string {
	if slices.Contains(keysOf("part"), e.key) {
		return "say of which part: [motif.parts." + kind.Parts[0] + "]"
	}
	return meant(e.key, kind.Parts)
}

// part reads what one part has for itself.
func (s section) part(name string, wheels rack) Part {
	s.only(keysOf("part"))
	p := Part{Name: name}
	if s.has("wheel") {
		if i := s.motifWheel(wheels); i >= 0 {
			p.Wheel = &i
		}
	}
	if depth, ok := s.optional("depth").length(span{0.01, maxDepth, 0.4}); ok {
		p.Depth = &depth
	}
	if land, ok := s.optional("land").length(span{0, maxDepth, 0.8}); ok {
		p.Land = &land
	}
	if share, ok := s.optional("clear").within(span{0, 1, 0.4}); ok {
		p.Clear = &share
	}
	p.Swell, p.Rock = s.swell(), s.rock()
	return p
}
