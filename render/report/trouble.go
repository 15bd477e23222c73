package report

import (
	"fmt"
	"slices"
	"strings"

	"roundlay/pattern"
)

// trouble is the findings of one kind that concern the same parts, on all the
// blanks of a set that have them.
type trouble struct {
	on     []int           // which of the plans
	faces  []*pattern.Plan // of each, the one of the face that it is on
	groups []pattern.Group
}

// troublesOf puts the findings of a set's plans together, those of the first
// blank first.
func troublesOf(plans []*pattern.Plan) []trouble {
	var all []trouble
	at := map[string]int{}
	add := func(i int, p *pattern.Plan) {
		for _, g := range p.Groups() {
			// What Groups keeps apart.
			first := g.Findings[0]
			key := fmt.Sprint(p.Face, g.Kind, g.Motifs, g.Parts, first.Share, len(first.Cuts))
			k, known := at[key]
			if !known {
				k = len(all)
				at[key] = k
				all = append(all, trouble{})
			}
			t := &all[k]
			t.on, t.faces, t.groups = append(t.on, i), append(t.faces, p), append(t.groups, g)
		}
	}
	for i, p := range plans {
		for _, face := range p.Faces() {
			add(i, face)
		}
	}
	return all
}

// words writes a trouble: what its blanks share once, and the rest with the names
// of the blanks it belongs to.
func (t trouble) words(b *strings.Builder, plans []*pattern.Plan) {
	letters := t.apart(func(i int) string { return t.groups[i].Letter })
	heads := make([]string, len(letters))
	for i, l := range letters {
		heads[i] = l.words
	}
	worst := t.worst()
	p := t.faces[worst]
	fmt.Fprintf(b, "\n%s  %s\n", strings.Join(heads, "/"), heading(p, t.groups[worst]))
	if len(letters) > 1 {
		for i, l := range letters {
			heads[i] = l.words + " on " + onBlanks(plans, l.on)
		}
		indented(b, strings.Join(heads, "; "))
	}
	where := fmt.Sprintf("on %s, worst on %q", onBlanks(plans, t.on), p.Blank.Name)
	if len(t.on) == 1 {
		where = fmt.Sprintf("only on %q", p.Blank.Name)
	}
	indented(b, where+": "+Measured(p, t.groups[worst].Worst()))
	placed(b, p, t.groups[worst])
	t.cures(b, plans)
	t.cuts(b, plans)
}

// cures writes what would cure a trouble: once what would on all its blanks.
func (t trouble) cures(b *strings.Builder, plans []*pattern.Plan) {
	words := t.cureWords()
	cures := t.apart(func(i int) string { return words[i] })
	for _, c := range cures {
		switch {
		case c.words == "": // none was sought
		case len(cures) == 1:
			indented(b, "cure: "+c.words)
		default:
			indented(b, fmt.Sprintf("cure on %s: %s", onBlanks(plans, c.on), c.words))
		}
	}
}

// cureWords says of each of a trouble's blanks what would cure it. Of cures that are
// the same but for how large a wheel may be, all say the smallest: it does on each.
func (t trouble) cureWords() []string {
	same := make([]string, len(t.groups))
	least := map[string]float64{}
	for i, g := range t.groups {
		worst := g.Worst()
		same[i] = Cure(t.faces[i], withWheel(worst, 0))
		wheel := widestWheel(worst)
		if known, ok := least[same[i]]; ok {
			wheel = min(wheel, known)
		}
		least[same[i]] = wheel
	}
	words := make([]string, len(t.groups))
	for i, g := range t.groups {
		words[i] = Cure(t.faces[i], withWheel(g.Worst(), least[same[i]]))
	}
	return words
}

// ofWheel reports whether an alternative is a smaller wheel.
func ofWheel(a pattern.Alternative) bool { return len(a.Changes) == 0 }

// widestWheel returns how large a wheel a finding's cure allows, 0 where that is
// none of its ways.
func widestWheel(f pattern.Finding) float64 {
	if f.Cure == nil {
		return 0
	}
	if i := slices.IndexFunc(f.Cure.Or, ofWheel); i >= 0 {
		return f.Cure.Or[i].Diameter
	}
	return 0
}

// withWheel returns a finding whose cure allows a wheel of another size, where it
// allows one at all.
func withWheel(f pattern.Finding, across float64) pattern.Finding {
	if widestWheel(f) == 0 {
		return f
	}
	cure := *f.Cure
	cure.Or = slices.Clone(cure.Or)
	cure.Or[slices.IndexFunc(cure.Or, ofWheel)].Diameter = across
	f.Cure = &cure
	return f
}

// worst returns the blank on which a trouble misses what is wanted by most.
func (t trouble) worst() int {
	var of pattern.Group
	for _, g := range t.groups {
		of.Findings = append(of.Findings, g.Worst())
	}
	most := of.Worst()
	return slices.IndexFunc(of.Findings, func(f pattern.Finding) bool {
		return f.Measured == most.Measured && f.Wanted == most.Wanted
	})
}

// cuts writes the cuts or pairs of cuts that all its blanks share, and then those
// that only some have.
func (t trouble) cuts(b *strings.Builder, plans []*pattern.Plan) {
	on := map[string][]int{} // by cut or pair, which groups have it
	var order []string
	for i, g := range t.groups {
		for _, item := range cutItems(g) {
			if on[item] == nil {
				order = append(order, item)
			}
			on[item] = append(on[item], i)
		}
	}
	own := make([][]string, len(t.groups))
	var shared []string
	for _, item := range order {
		if len(on[item]) == len(t.groups) {
			shared = append(shared, item)
			continue
		}
		for _, i := range on[item] {
			own[i] = append(own[i], item)
		}
	}
	what := cutsAre(t.groups[0])
	if len(shared) > 0 {
		indented(b, what+": "+listed(shared))
		what = "and"
	}
	for _, l := range t.apart(func(i int) string { return listed(own[i]) }) {
		if l.words != "" {
			indented(b, fmt.Sprintf("%s on %s: %s", what, onBlanks(plans, l.on), l.words))
		}
	}
}

// alike is blanks of which the same is said.
type alike struct {
	words string
	on    []int // which of the plans
}

// apart returns what of says of each of a trouble's blanks, with blanks of which it
// says the same put together.
func (t trouble) apart(of func(i int) string) []alike {
	var all []alike
	for i, plan := range t.on {
		words := of(i)
		k := slices.IndexFunc(all, func(a alike) bool { return a.words == words })
		if k < 0 {
			k = len(all)
			all = append(all, alike{words: words})
		}
		all[k].on = append(all[k].on, plan)
	}
	return all
}

// indented writes words below a finding's head.
func indented(b *strings.Builder, words string) {
	fmt.Fprintf(b, "   %s\n", wrap(words, 76, "   "))
}
