// Package strokestest has drawings for the tests of whatever reads drawings.
package strokestest

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// Hostile returns drawings made to break a reader, or to keep it busy for ever, by name. Some
// of them name another file, the secret, by its address: a reader that opens it can be seen to.
func Hostile(secret string) map[string]string {
	const line = "<path stroke='red' d='M0 0H9'/>"
	deep := func(n int, open, inner, shut string) string {
		return "<svg>" + strings.Repeat(open, n) + inner + strings.Repeat(shut, n) + "</svg>"
	}
	laughs := func(levels int) string {
		var b strings.Builder
		b.WriteString("<!DOCTYPE svg [<!ENTITY a0 'ha'>")
		for i := 1; i < levels; i++ {
			fmt.Fprintf(&b, "<!ENTITY a%d '%s'>", i, strings.Repeat(fmt.Sprintf("&a%d;", i-1), 10))
		}
		return b.String() + fmt.Sprintf("]><svg><text>&a%d;</text>%s</svg>", levels-1, line)
	}
	uses := func(levels, each int) string { // each group uses the one before many times
		var b strings.Builder
		b.WriteString("<svg><g id='u0'>" + line + "</g>")
		for i := 1; i < levels; i++ {
			fmt.Fprintf(&b, "<g id='u%d'>%s</g>", i, strings.Repeat(fmt.Sprintf("<use href='#u%d'/>", i-1), each))
		}
		return b.String() + "</svg>"
	}
	return map[string]string{
		"deep groups":             deep(200_000, "<g>", line, "</g>"),
		"deep groups, open":       "<svg>" + strings.Repeat("<g>", 100_000),
		"deep groups, just right": deep(250, "<g>", line, "</g>"),
		"deep viewports":          deep(250, "<svg width='99%' viewBox='0 0 9 9'>", line, "</svg>"),
		"deep transforms":         deep(250, "<g transform='scale(10)'>", line, "</g>"),
		"deep and small":          deep(250, "<g transform='scale(.1)'>", line, "</g>"),
		"deep foreign":            deep(200_000, "<x:g xmlns:x='urn:x'>", line, "</x:g>"),
		"laughs":                  laughs(12), "few laughs": laughs(2),
		"a long entity":   "<!DOCTYPE svg [<!ENTITY a '" + strings.Repeat("x", 100_000) + "'>]><svg><text>" + strings.Repeat("&a;", 100_000) + "</text></svg>",
		"a file's entity": "<!DOCTYPE svg [<!ENTITY a SYSTEM '" + secret + "'>]><svg>&a;" + line + "</svg>",
		"a file's type":   "<!DOCTYPE svg SYSTEM '" + secret + "'><svg>" + line + "</svg>",
		"a parameter":     "<!DOCTYPE svg [<!ENTITY % a SYSTEM '" + secret + "'> %a;]><svg>" + line + "</svg>",
		"a file's use":    "<svg><use href='" + secret + "#a'/>" + line + "</svg>",
		"a file's style":  "<svg><style>@import '" + secret + "';</style>" + line + "</svg>",
		"a file's sheet":  "<?xml-stylesheet href='" + secret + "'?><svg>" + line + "</svg>",
		"an include":      "<svg xmlns:xi='http://www.w3.org/2001/XInclude'><xi:include href='" + secret + "'/>" + line + "</svg>",
		"a picture":       "<svg><image href='" + secret + "'/>" + line + "</svg>",
		"use bomb":        uses(20, 20), "use chain": uses(300, 1), "many uses": uses(3, 100),
		"use of its own":             "<svg><g id='a'><use href='#b'/></g><g id='b'><use href='#a'/></g>" + line + "</svg>",
		"use of the whole":           "<svg id='a'><use href='#a'/>" + line + "</svg>",
		"use of a use":               "<svg><use id='a' href='#a'/>" + line + "</svg>",
		"use of itself, as a symbol": "<svg><symbol id='a' viewBox='0 0 9 9'><use href='#a'/>" + line + "</symbol><use href='#a' width='9' height='9'/></svg>",
		"a huge path":                "<svg><path stroke='red' d='M0 0" + strings.Repeat("L1 2 3 4", 110_000) + "'/></svg>",
		"a long path":                "<svg><path stroke='red' d='M0 0" + strings.Repeat("l1 2 3-4", 20_000) + "'/></svg>",
		"many arcs":                  "<svg><path stroke='red' d='M0 0" + strings.Repeat("a1 1 0 1 1 .1.1", 100_000) + "'/></svg>",
		"many paths":                 "<svg>" + strings.Repeat(line, 10_000) + "</svg>",
		"many crossings":             "<svg stroke='red'>" + lattice(200) + "</svg>",
		"many points":                "<svg><polyline stroke='red' points='" + strings.Repeat("1,2 3.5,-4 ", 110_000) + "'/></svg>",
		"a long number":              "<svg><path stroke='red' d='M0 0L" + strings.Repeat("9", 1_000_000) + " 1'/></svg>",
		"long fractions":             "<svg><path stroke='red' d='M0 0L1." + strings.Repeat("9", 1_000_000) + " 1'/></svg>",
		"huge numbers":               "<svg><path stroke='red' d='M1e308 1e308L-1e308 -1e308'/></svg>",
		"huge and small":             "<svg viewBox='0 0 1e-9 1e-9'><path stroke='red' d='M-9e8 0L9e8 1e-9A1e-9 9e8 33 1 0 1e-8 0'/></svg>",
		"small numbers":              "<svg><path stroke='red' d='M0 0L1e-320 1e-320'/></svg>",
		"a small viewBox":            "<svg viewBox='0 0 1e-300 1e-300' width='9' height='9'><path stroke='red' d='M0 0L1e-300 1e-300'/></svg>",
		"a large viewBox":            "<svg viewBox='-1e9 -1e9 1e9 1e9' width='1e9in'>" + line + "</svg>",
		"no size":                    "<svg viewBox='0 0 NaN NaN'>" + line + "</svg>", "endless": "<svg viewBox='0 0 Infinity 9'>" + line + "</svg>",
		"no numbers": "<svg><circle r='NaN' stroke='red'/></svg>", "nothing twice": "<svg><g transform='matrix(NaN 0 0 NaN 0 0)'/></svg>",
		"no quotes": "<svg><path d=M0 0H9 stroke=red></svg>", "a missing quote": "<svg><path d='M0 0H9 stroke='red'/></svg>",
		"an open comment": "<svg><!-- " + line, "an open section": "<svg><style><![CDATA[ path {", "two roots": "<svg>" + line + "</svg><svg/>",
		"text behind": "<svg>" + line + "</svg>hello", "zeros": "<svg>\x00" + line + "</svg>", "bytes": "<svg>\xff\xfe\xfd" + line + "</svg>",
		"a wrong encoding": "<?xml version='1.0' encoding='martian'?><svg>" + line + "</svg>", "half utf-16": "\xff\xfe<\x00s\x00v",
		"wide encoding":     "<?xml version='1.0' encoding='utf-16'?><svg>" + line + "</svg>",
		"the same twice":    "<svg a='1' a='2' stroke='x' stroke='y'>" + line + "</svg>",
		"style, open":       "<svg><style>path { stroke: red" + "</style>" + line + "</svg>",
		"style, braces":     "<svg><style>" + strings.Repeat("{", 100_000) + "</style>" + line + "</svg>",
		"style, closed":     "<svg><style>" + strings.Repeat("}", 100_000) + "</style>" + line + "</svg>",
		"style, brackets":   "<svg><style>" + strings.Repeat("[(", 100_000) + "</style>" + line + "</svg>",
		"style, at":         "<svg><style>" + strings.Repeat("@media{", 50_000) + "</style>" + line + "</svg>",
		"style, at, shut":   "<svg><style>" + strings.Repeat("@a{}}", 50_000) + "</style>" + line + "</svg>",
		"style, rules":      "<svg><style>" + strings.Repeat("*{stroke:red}", 3_000) + "</style>" + strings.Repeat(line, 3_000) + "</svg>",
		"style, inside":     "<svg><style>" + strings.Repeat("* ", 2_000) + "{stroke:red}</style>" + strings.Repeat("<g>", 200) + line + strings.Repeat("</g>", 200) + "</svg>",
		"style, after":      "<svg><style>" + strings.Repeat("*~", 30) + "*{stroke:red}</style>" + strings.Repeat(line, 3_000) + "</svg>",
		"style, attribute":  "<svg><path d='M0 0H9' style='" + strings.Repeat("stroke:red;}", 50_000) + "'/></svg>",
		"style, escapes":    `<svg><style>\0\0\{} a\:b{} /* </style>` + line + "</svg>",
		"transforms":        "<svg><g transform='" + strings.Repeat("rotate(1)", 100_000) + "'>" + line + "</g></svg>",
		"transform, open":   "<svg><g transform='rotate(1" + strings.Repeat(" 1", 100_000) + "'>" + line + "</g></svg>",
		"a sharp skew":      "<svg><g transform='skewX(90)'>" + line + "</g></svg>",
		"unmeasured":        "<svg><g font-size='1e9em'><g font-size='1e9em'><g font-size='1e9em'><circle r='1e9em' stroke='red'/></g></g></g></svg>",
		"noise":             "<svg><polyline stroke='red' points='" + noise(8_000) + "'/></svg>",
		"many slivers":      "<svg>" + strings.Repeat("<path d='M0 0L50 1L100 0L50 -1z'/><path d='M0 0L50 1L99 0L50 -1z'/>", 1_100) + "</svg>",
		"kinks":             "<svg stroke='red' viewBox='0 0 9 9'>" + strings.Repeat("<path d='M0 0L9e5 9L18e5 1e5L3e6 9'/>", 5_000) + "</svg>",
		"bytes without end": "<svg><desc>" + strings.Repeat("x", 17<<20) + "</desc>" + line + "</svg>",
	}
}

// lattice is lines that all cross each other.
func lattice(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "<path d='M%d 0V%d'/><path d='M0 %dH%d'/>", 3*i, 3*n, 3*i, 3*n)
	}
	return b.String()
}

// noise is points all over a square.
func noise(n int) string {
	random := rand.New(rand.NewPCG(5, 5))
	var b strings.Builder
	for range n {
		fmt.Fprintf(&b, "%.3f,%.3f ", 100*random.Float64(), 100*random.Float64())
	}
	return b.String()
}
