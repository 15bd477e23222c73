package strokes

import (
	"slices"
	"strings"
)

// cascade says what is declared for an element: by its attributes, then by the
// rules that hold for it, the more specific and the later ones winning, then by its
// style attribute, and last by what is marked important.
type cascade struct {
	sheet
	matcher
}

// of returns the values that hold for an element, by property.
func (c *cascade) of(e *element) (map[string]string, *Error) {
	if e.declared != nil {
		return e.declared, nil
	}
	all := map[string]string{}
	for name, value := range e.attrs {
		all[name] = value
	}
	rules := c.matching(e)
	if c.tried > maxMatches {
		return nil, bounded(e.line, "comparisons of style rules with elements", maxMatches)
	}
	own := readStyle(e.attrs["style"])
	for _, important := range []bool{false, true} {
		for _, r := range rules {
			declare(all, r.declarations, important)
		}
		declare(all, own, important)
	}
	e.declared = all
	return all, nil
}

// declare sets the values that are, or aren't, marked important.
func declare(all map[string]string, by []declaration, important bool) {
	for _, d := range by {
		if d.important == important {
			all[d.property] = d.value
		}
	}
}

// matching returns the rules that hold for an element, the weaker first.
func (c *cascade) matching(e *element) []*rule {
	var all []*rule
	keys := []string{"*", e.name, "#" + e.attrs["id"]}
	for i, class := range e.classes {
		if !slices.Contains(e.classes[:i], class) {
			keys = append(keys, "."+class)
		}
	}
	for _, key := range keys {
		rules := c.rules[key]
		for i := range rules {
			if r := &rules[i]; c.matches(&r.selector, len(r.parts), e) {
				all = append(all, r)
			}
		}
	}
	slices.SortFunc(all, func(a, b *rule) int {
		if a.weight() != b.weight() {
			return a.weight() - b.weight()
		}
		return a.order - b.order
	})
	return all
}

// style is what an element's children inherit, as far as it decides what is a stroke.
type style struct {
	stroke, fill bool // painted with anything
	wide, opaque bool // the stroke has a width, and is not clear
	dashed       bool
	visible      bool
	gone         bool    // an element round it is clear as glass
	font         float64 // size of type, in user units
}

// initial is the style at the root (SVG 2, 13.2 and 13.5).
func initial() style {
	const mediumType = 16
	return style{fill: true, wide: true, opaque: true, visible: true, font: mediumType}
}

// under returns the style of an element with the given declarations, inside one that
// has the style s.
func (s style) under(declared map[string]string, r ruler) style {
	start := initial()
	for property, set := range map[string]func(value string, from style){
		"stroke":           func(v string, from style) { s.stroke = painted(v, from.stroke) },
		"fill":             func(v string, from style) { s.fill = painted(v, from.fill) },
		"stroke-width":     func(v string, from style) { s.wide = above(v, from.wide) },
		"stroke-opacity":   func(v string, from style) { s.opaque = above(v, from.opaque) },
		"stroke-dasharray": func(v string, from style) { s.dashed = isDashed(v, from.dashed) },
		"visibility":       func(v string, from style) { s.visible = isVisible(v, from.visible) },
		"font-size":        func(v string, from style) { s.font = fontSize(v, from.font, r) },
	} {
		switch value := strings.TrimSpace(declared[property]); value {
		case "", "inherit", "unset":
		case "initial":
			set("", start)
		default:
			set(value, s)
		}
	}
	return s
}

// painted reports whether a paint leaves anything to see. An empty value keeps what is.
func painted(paint string, was bool) bool {
	key := strings.ToLower(strings.Join(strings.Fields(paint), ""))
	switch {
	case key == "":
		return was
	case key == "none", key == "transparent":
		return false
	case strings.HasPrefix(key, "rgba(") || strings.HasPrefix(key, "hsla("):
		return !strings.HasSuffix(key, ",0)") && !strings.HasSuffix(key, ",0.0)")
	case strings.HasPrefix(key, "#") && len(key) == 5: // #rgba
		return key[4:] != "0"
	case strings.HasPrefix(key, "#") && len(key) == 9: // #rrggbbaa
		return key[7:] != "00"
	}
	return true
}

// above reports whether a number, a length or a share is above zero. One that can't
// be read keeps what was.
func above(value string, was bool) bool {
	s := scanner{text: value}
	x, err := s.number()
	if err != nil {
		return was
	}
	return x > 0
}

func isDashed(value string, was bool) bool {
	if value == "" {
		return was
	}
	s := scanner{text: value}
	for !s.done() {
		if x, err := s.number(); err == nil && x > 0 {
			return true
		} else if err != nil {
			s.at++
		}
	}
	return false
}

func isVisible(value string, was bool) bool {
	if value == "" {
		return was
	}
	return value == "visible"
}

// fontSize returns a size of type. Words such as "large" keep what was: they only
// matter to lengths in em.
func fontSize(value string, was float64, r ruler) float64 {
	r.font, r.width, r.height = was, 0, 0
	if share, ok := strings.CutSuffix(value, "%"); ok {
		value = share + "em"
		r.font /= 100
	}
	size, err := r.read(value, across)
	if err != nil || size < 0 {
		return was
	}
	return size
}
