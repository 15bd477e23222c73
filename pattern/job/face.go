package job

import (
	"fmt"
	"slices"

	"roundlay/geometry"
	"roundlay/pattern/glass"
)

// Face is a face of the glass that is cut.
type Face int

// The side is the outside from the foot up to the rim, the base the flat underside.
const (
	Side Face = iota
	Base
)

// Faces lists the words for Face in a job, in order.
func Faces() []string { return []string{"side", "base"} }

func (f Face) String() string { return Faces()[f] }

// Table is the number that changes give the layout of the face.
func (f Face) Table() int { return [...]int{Side: OfLayout, Base: OfBase}[f] }

// MinMiddle is how near to the middle of a base the design begins where the job gives no
// band, in millimetres: nearer, no repeat is wide enough to be cut. Common practice, no source.
const MinMiddle = geometry.MillimetresPerInch / 16

// LayoutOf returns the layout of a face. Ask for that of a base only where there is one.
func (j *Job) LayoutOf(face Face) Layout {
	if face == Base {
		return *j.Base
	}
	return j.Layout
}

// Cut lists the faces that a job cuts.
func (j *Job) Cut() []Face {
	if j.Base == nil {
		return []Face{Side}
	}
	return []Face{Side, Base}
}

// Has reports whether anything of a job stands on a face.
func (j *Job) Has(face Face) bool {
	return slices.ContainsFunc(j.Motifs, func(m Motif) bool { return m.Face == face })
}

// underside reads the [base] table, nil where there is none. A band has to lie on every base.
func (s section) underside(blanks []*glass.Blank) *Layout {
	table, ok := s.optional("base").single()
	if !ok {
		return nil
	}
	table.only(keysOf("base"))
	var l Layout
	l.Repeats, _ = table.required("repeats").whole(1, maxRepeats)
	least := maxAcross
	for _, b := range blanks {
		least = min(least, b.BaseRadius())
	}
	l.Band = table.baseBand(least)
	return &l
}

// baseBand reads the band of a base, which lies within a radius.
func (s section) baseBand(most float64) *Band {
	from, to, ok := s.optional("band").pair(`a list of two distances from the middle, such as ["1/4", "7/8"]`)
	if !ok {
		return nil
	}
	inner, innerRead := from.length(span{0.1, maxAcross, 6})
	outer, outerRead := to.length(span{0.1, maxAcross, 22})
	switch {
	case !innerRead || !outerRead:
	case outer < inner+minBand:
		to.refuse(fmt.Sprintf("a distance further out than the band's beginning, %s", to.unit().FormatUp(inner)), "a band runs from the middle outwards")
	case outer > most+1e-9:
		to.refuse(fmt.Sprintf("a distance within the base, at most %s", to.unit().FormatDown(most)),
			to.otherUnit(func(mm float64) bool { return mm > inner && mm <= most }))
	default:
		return &Band{inner, outer}
	}
	return nil
}

// face reads which face a motif stands on, and whether over its middle.
func (s section) face(m *Motif) {
	if i, ok := s.optional("face").word(Faces()); ok {
		m.Face = Face(i)
	}
	field := s.optional("middle")
	if middle, ok := field.truth(); !ok || !middle {
		return
	}
	if m.Face != Base {
		field.refuse("true only with face = "+quoted(Base.String()), "the side has no middle that a motif could stand over")
		return
	}
	m.Middle = true
	for _, key := range overMiddle() {
		if given := s.optional(key); given.value != nil {
			given.refuse(fmt.Sprintf("no %s in a motif that stands over the middle", key), "it stands there once, flat")
		}
	}
}

// faces refuses a base without motifs, and motifs without a base. A side may stay bare.
func (s section) faces(j *Job) {
	base := s.optional("base")
	tables := s.table.find("motif")
	if tables == nil || s.first != nil {
		return
	}
	switch {
	case j.Base != nil && !j.Has(Base):
		base.read = "a table [base], with no motif on the base"
		base.refuse("a motif with face = "+quoted(Base.String()), "add the line to the motif that is meant for the underside, or leave [base] out")
	case j.Base == nil && j.Has(Base):
		i := slices.IndexFunc(j.Motifs, func(m Motif) bool { return m.Face == Base })
		face := s.required("motif").list("", maxMotifs)[i].optional("face")
		face.refuse(quoted(Side.String())+", or a table [base] as well", "[base] says with repeats how many sectors the underside has")
	}
}
