package drawing

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"sort"
	"strings"

	"archload/cases/tree"
)

// svgElement is one element of a drawing.
type svgElement struct {
	tag    string
	attr   map[string]string
	label  string // a drawing program's name for it, of whatever namespace
	title  string
	line   int // of the file, 1-based
	parent *svgElement
	kids   []*svgElement
}

// Limits on a drawing.
const (
	svgMostElements = 200_000
	svgDeepest      = 500
)

// parseSVG reads the elements of a drawing.
func parseSVG(data []byte) (*svgElement, error) {
	r := svgReader{dec: xml.NewDecoder(bytes.NewReader(data)), starts: tree.LineStarts(data)}
	r.dec.CharsetReader = func(charset string, _ io.Reader) (io.Reader, error) {
		return nil, fmt.Errorf("want a drawing in UTF-8, found %s", charset)
	}
	for {
		at := r.dec.InputOffset()
		token, err := r.dec.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err == nil {
			err = r.take(token, r.lineOf(at))
		}
		if err != nil {
			return nil, r.explain(err)
		}
	}
	if r.root == nil {
		return nil, &Fault{Line: 1, Msg: "want an SVG drawing, found no element <svg>"}
	}
	return r.root, nil
}

// svgReader gathers elements.
type svgReader struct {
	dec    *xml.Decoder
	starts []int
	root   *svgElement
	open   *svgElement
	count  int
	deep   int
}

// lineOf returns the line of a byte offset.
func (r *svgReader) lineOf(offset int64) int { return sort.SearchInts(r.starts, int(offset)+1) }

// explain turns a parser's error into a fault with its line.
func (r *svgReader) explain(err error) error {
	var fault *Fault
	if errors.As(err, &fault) {
		return err
	}
	line, _ := r.dec.InputPos()
	var syntax *xml.SyntaxError
	if errors.As(err, &syntax) {
		return &Fault{Line: min(syntax.Line, len(r.starts)), Msg: "not valid XML: " + syntax.Msg}
	}
	return &Fault{Line: min(line, len(r.starts)), Msg: "not valid XML: " + strings.TrimPrefix(err.Error(), "xml: ")}
}

// take handles one token of the file.
func (r *svgReader) take(token xml.Token, line int) error {
	switch t := token.(type) {
	case xml.StartElement:
		return r.start(t, line)
	case xml.EndElement:
		r.open, r.deep = r.open.parent, r.deep-1
	case xml.CharData:
		if r.open != nil && r.open.tag == "title" && r.open.parent != nil {
			r.open.parent.title += strings.TrimSpace(string(t))
		}
	case xml.Directive:
		r.dec.Entity = entities(string(t))
	}
	return nil
}

// entities reads the plain entities that a document type declares; some
// drawing programs write the addresses of their namespaces so.
func entities(directive string) map[string]string {
	out := map[string]string{}
	for _, m := range regexp.MustCompile(`<!ENTITY\s+(\w+)\s+"([^"]*)"\s*>`).FindAllStringSubmatch(directive, -1) {
		out[m[1]] = m[2]
	}
	return out
}

// start opens an element.
func (r *svgReader) start(t xml.StartElement, line int) error {
	e := &svgElement{tag: t.Name.Local, attr: make(map[string]string, len(t.Attr)), line: line, parent: r.open}
	for _, a := range t.Attr {
		switch {
		case a.Name.Local == "label" || a.Name.Space == "" && a.Name.Local == "data-name":
			e.label = a.Value
		case a.Name.Space == "":
			e.attr[a.Name.Local] = a.Value
		}
	}
	if r.count, r.deep = r.count+1, r.deep+1; r.count > svgMostElements || r.deep > svgDeepest {
		return &Fault{Line: line, Msg: fmt.Sprintf("want at most %d elements, nested %d deep", svgMostElements, svgDeepest)}
	}
	switch {
	case r.open != nil:
		r.open.kids = append(r.open.kids, e)
	case r.root != nil:
		return &Fault{Line: line, Msg: "want one drawing, found a second element <" + e.tag + ">"}
	case e.tag != "svg":
		return &Fault{Line: line, Msg: "want an SVG drawing, found <" + e.tag + ">"}
	default:
		r.root = e
	}
	r.open = e
	return nil
}

// each calls f for the element and all below it, in the order of drawing.
func (e *svgElement) each(f func(*svgElement)) {
	f(e)
	for _, k := range e.kids {
		k.each(f)
	}
}

// styled returns a property from the style attribute.
func (e *svgElement) styled(property string) (value string, ok bool) {
	for _, part := range strings.Split(e.attr["style"], ";") {
		if k, v, ok := strings.Cut(part, ":"); ok && strings.TrimSpace(k) == property {
			return strings.TrimSpace(v), true
		}
	}
	return "", false
}

// style returns a property from the style attribute or the attribute of its
// name.
func (e *svgElement) style(property string) string {
	if v, ok := e.styled(property); ok {
		return v
	}
	return strings.TrimSpace(e.attr[property])
}

// hidden reports whether the element is not drawn.
func (e *svgElement) hidden() bool {
	return e.style("display") == "none" || e.style("visibility") == "hidden" || e.style("visibility") == "collapse"
}

// undrawn reports whether the element, or one around it, is hidden or holds
// what is only defined.
func (e *svgElement) undrawn() bool {
	for ; e != nil; e = e.parent {
		switch e.tag {
		case "defs", "symbol", "clipPath", "mask", "marker", "pattern":
			return true
		}
		if e.hidden() {
			return true
		}
	}
	return false
}
