package strokes

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"sync"
)

const (
	svgSpace   = "http://www.w3.org/2000/svg"
	xlinkSpace = "http://www.w3.org/1999/xlink"
)

// element is an element of the file. Those of other namespaces, which drawing
// programs keep their own matters in, are left out with all they hold.
type element struct {
	name     string
	line     int
	attrs    map[string]string
	parent   *element
	children []*element
	index    int    // among its parent's children
	text     string // of a style

	classes  []string
	declared map[string]string // what holds for it by attribute, rule and style; see cascade.go
}

// child returns a new last child.
func (e *element) child(c *element) *element {
	c.parent, c.index = e, len(e.children)
	e.children = append(e.children, c)
	return c
}

// treeReader reads a file's elements.
type treeReader struct {
	decoder *xml.Decoder
	root    *element
	open    *element // the element whose children come next
	skipped int      // how deep inside something that is left out
	depth   int
	count   int
	line    int
}

// readTree reads the elements of a file. encoding/xml opens nothing from outside,
// and expands no entity but those it is given.
func readTree(data []byte) (*element, *Error) {
	if len(data) > maxBytes {
		return nil, bounded(0, "bytes", maxBytes)
	}
	if bytes.HasPrefix(data, []byte("\x1f\x8b")) {
		return nil, &Error{Read: "a packed file (svgz)", Accepted: "plain SVG: save it again without packing"}
	}
	data = decoded(data)
	r := treeReader{decoder: xml.NewDecoder(bytes.NewReader(data))}
	r.decoder.CharsetReader = charset
	for {
		r.line, _ = r.decoder.InputPos()
		token, err := r.decoder.Token()
		if err == io.EOF && r.root != nil {
			return r.root, nil
		}
		if err != nil {
			return nil, r.broken(err)
		}
		if wrong := r.take(token, data); wrong != nil {
			return nil, wrong
		}
	}
}

// broken says what of the file isn't XML.
func (r *treeReader) broken(err error) *Error {
	const accepted = "a drawing saved as plain SVG"
	var syntax *xml.SyntaxError
	if errors.As(err, &syntax) {
		return &Error{Line: syntax.Line, Read: "what is not XML: " + oneLine(syntax.Msg), Accepted: accepted}
	}
	if err == io.EOF {
		return &Error{Read: "no element at all", Accepted: accepted}
	}
	return &Error{Line: r.line, Read: "what is not XML: " + oneLine(err.Error()), Accepted: accepted}
}

// oneLine shows a text without quotes, shortened, on one line.
func oneLine(text string) string { return strings.Trim(quoted(text), `"`) }

// take adds a token to the tree.
func (r *treeReader) take(token xml.Token, data []byte) *Error {
	switch t := token.(type) {
	case xml.Directive:
		if r.root == nil {
			return r.entities(string(t), data)
		}
	case xml.StartElement:
		return r.start(t)
	case xml.EndElement:
		r.depth--
		if r.skipped > 0 {
			r.skipped--
		} else {
			r.open = r.open.parent
		}
	case xml.CharData:
		if r.open != nil && r.skipped == 0 && r.open.name == "style" {
			r.open.text += string(t)
		}
	}
	return nil
}

// start takes the beginning of an element.
func (r *treeReader) start(t xml.StartElement) *Error {
	if r.depth++; r.depth > maxDepth {
		return bounded(r.line, "elements in one another", maxDepth)
	}
	if r.count++; r.count > maxElements {
		return bounded(r.line, "elements", maxElements)
	}
	if r.root != nil && r.open == nil {
		return &Error{Line: r.line, Read: fmt.Sprintf("<%s> behind the end of the drawing", oneLine(t.Name.Local)), Accepted: "one drawing"}
	}
	own := t.Name.Space == "" || t.Name.Space == svgSpace || t.Name.Space == "svg"
	if r.root == nil && !(own && t.Name.Local == "svg") {
		return &Error{Line: r.line, Read: fmt.Sprintf("<%s>", oneLine(t.Name.Local)), Accepted: "a drawing, which begins with <svg>"}
	}
	if r.skipped > 0 || !own {
		r.skipped++
		return nil
	}
	e := &element{name: t.Name.Local, line: r.line, attrs: attributes(t)}
	e.classes = strings.Fields(e.attrs["class"])
	if r.root == nil {
		r.root = e
	} else {
		r.open.child(e)
	}
	r.open = e
	return nil
}

// attributes returns SVG's own attributes. A picture's is left out: it may be long,
// and isn't looked at.
func attributes(t xml.StartElement) map[string]string {
	all := map[string]string{}
	for _, a := range t.Attr {
		switch {
		case t.Name.Local == "image":
		case a.Name.Space == "":
			all[a.Name.Local] = a.Value
		case (a.Name.Space == xlinkSpace || a.Name.Space == "xlink") && a.Name.Local == "href" && all["href"] == "":
			all["href"] = a.Value
		}
	}
	return all
}

// entityForms are the entities that are read: a name for a short text, which names
// no further one and no file. Drawing programs write their namespaces so.
var entityForms = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`<!ENTITY\s+([A-Za-z_][\w.-]*)\s+(?:"([^"&%<]*)"|'([^'&%<]*)')\s*>`)
})

// entities reads the entities a document type declares. Their text is never read for
// further ones, so that none can grow.
func (r *treeReader) entities(directive string, data []byte) *Error {
	if !strings.HasPrefix(directive, "DOCTYPE") {
		return nil
	}
	all, sum := map[string]string{}, 0
	for _, m := range entityForms().FindAllStringSubmatch(directive, 64) {
		value := m[2] + m[3]
		if _, twice := all[m[1]]; twice {
			continue
		}
		all[m[1]] = value
		sum += len(value) * bytes.Count(data, []byte("&"+m[1]+";"))
		if sum > maxEntities {
			return bounded(r.line, "bytes that its entities stand for", maxEntities)
		}
	}
	r.decoder.Entity = all
	return nil
}
