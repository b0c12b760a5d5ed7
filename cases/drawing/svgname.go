package drawing

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"archload/cases/tree"
)

// names returns what an element is called: label, title, id.
func (e *svgElement) names() []string {
	var out []string
	for _, n := range []string{e.label, e.title, e.attr["id"]} {
		if n = unescaped(n); n != "" && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}

// shown is the element's name for messages.
func (e *svgElement) shown() string {
	if names := e.names(); len(names) > 0 {
		return names[0]
	}
	return "<" + e.tag + ">"
}

// unescaped writes out what some drawing programs escape in an id: "_x20_" is
// a blank.
func unescaped(name string) string {
	if !strings.Contains(name, "_x") {
		return strings.TrimSpace(name)
	}
	return strings.TrimSpace(regexp.MustCompile(`_x([0-9A-Fa-f]{2,4})_`).ReplaceAllStringFunc(name, func(m string) string {
		r, err := strconv.ParseUint(strings.Trim(m, "_x"), 16, 32)
		if err != nil || r < ' ' {
			return m
		}
		return string(rune(r))
	}))
}

// find returns the one element of a name: by id, or else by label or title.
// The error does not name it.
func (w *svgSheet) find(name string) (*svgElement, error) {
	var byID, byName []*svgElement
	var known []string
	w.root.each(func(e *svgElement) {
		if e == w.root {
			return
		}
		known = append(known, e.names()...)
		if id := e.attr["id"]; id == name || unescaped(id) == name {
			byID = append(byID, e)
		} else if slices.Contains(e.names(), name) {
			byName = append(byName, e)
		}
	})
	found := byID
	if len(found) == 0 {
		found = byName
	}
	switch {
	case len(found) > 1:
		return nil, fmt.Errorf("%d elements of this name (lines %d and %d); want it once", len(found), found[0].line, found[1].line)
	case len(found) == 1 && found[0].undrawn():
		return nil, fmt.Errorf("the element on line %d is hidden or only defined, not drawn", found[0].line)
	case len(found) == 1:
		return found[0], nil
	}
	if like := tree.Nearest(name, known); like != "" {
		return nil, fmt.Errorf("no element of this name; did you mean %q?", like)
	}
	return nil, fmt.Errorf("no element of this name (a label or an id)")
}

// faultf is a fault at an element.
func (e *svgElement) faultf(format string, args ...any) error {
	return &Fault{Line: e.line, Name: e.shown(), Msg: fmt.Sprintf(format, args...)}
}
