package cases

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
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
func (w *drawing) find(name string) (*svgElement, error) {
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
	if like := nearest(name, known); like != "" {
		return nil, fmt.Errorf("no element of this name; did you mean %q?", like)
	}
	return nil, fmt.Errorf("no element of this name (a label or an id)")
}

// heightWords are what may stand before a height in a name.
func heightWords() []string {
	return []string{"arch", "contour", "height", "level", "spot", "apex", "thickness"}
}

// highest is the greatest height that a name may state, mm.
const highest = 200

// nameHeight reads the height in a name, mm; ok is false if there is none. A
// name that may be read in more than one way is an error. bare says that a
// number may stand without its unit, for mm.
func nameHeight(name string, bare bool) (z float64, ok bool, err error) {
	words, gap, rest := headOfName(name)
	digits := len(rest) - len(strings.TrimLeft(rest, "0123456789"))
	if digits == 0 || words == "" && gap != "" && gap != "-" || !allHeightWords(words) {
		return 0, false, nil
	}
	if strings.HasSuffix(gap, "-") && (words == "" || len(gap) > 1) {
		return 0, false, fmt.Errorf("want a height of 0 or more in the name %q", name)
	}
	number := regexp.MustCompile(`^\d+([.,]\d+)?`).FindString(rest)
	factor, written, rest := nameUnit(rest[len(number):])
	switch {
	case rest != "" && !startsSuffix(rest), !written && likeUnit(rest):
		return 0, false, fmt.Errorf("want one height in the name %q: a number, its unit, and perhaps a suffix that begins with a letter, as in \"contour 12.5 mm b\"", name)
	case !written && !bare:
		return 0, false, fmt.Errorf("want the height in the name %q with its unit, since the page is measured in inches", name)
	}
	v, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
	if v *= factor; err != nil || v > highest {
		return 0, false, fmt.Errorf("want a height of at most %d mm in the name %q", highest, name)
	}
	return v, true, nil
}

// headOfName parts a name into the letters and breaks before its first digit
// and the rest; gap is the break just before the digit.
func headOfName(name string) (words, gap, rest string) {
	i := strings.IndexFunc(name, func(r rune) bool {
		return !isNameBreak(r) && (r|0x20 < 'a' || r|0x20 > 'z')
	})
	if i < 0 {
		return name, "", ""
	}
	words = strings.TrimRightFunc(name[:i], isNameBreak)
	return words, name[len(words):i], name[i:]
}

// nameUnit reads a unit at the head of a text; without one the factor is 1.
func nameUnit(text string) (factor float64, written bool, rest string) {
	m := regexp.MustCompile(`^[ _]?([A-Za-z]+)`).FindStringSubmatch(text)
	if m == nil {
		return 1, false, text
	}
	dim, _ := dimensionOf(Length(0))
	if f, ok := dim.factor(strings.ToLower(m[1])); ok {
		return f, true, text[len(m[0]):]
	}
	return 1, false, text
}

// allHeightWords reports whether a text is made of known words.
func allHeightWords(text string) bool {
	for _, word := range strings.FieldsFunc(text, isNameBreak) {
		if !slices.Contains(heightWords(), strings.ToLower(word)) {
			return false
		}
	}
	return true
}

func isNameBreak(r rune) bool { return r == ' ' || r == '_' || r == '-' }

// startsSuffix reports whether a text begins with a break and then a letter.
func startsSuffix(text string) bool {
	return len(text) > 1 && isNameBreak(rune(text[0])) && text[1]|0x20 >= 'a' && text[1]|0x20 <= 'z'
}

// likeUnit reports whether a suffix without a unit before it may be meant as
// one: "contour 12 millimetres".
func likeUnit(suffix string) bool {
	word := strings.ToLower(strings.TrimLeftFunc(suffix, isNameBreak))
	return slices.ContainsFunc([]string{"inch", "ins", "milli", "mils", "thou", "centi", "foot", "feet"}, func(u string) bool {
		return strings.HasPrefix(word, u)
	})
}

// height reads the height of an element's names, mm. The first name that has
// one counts; another that says otherwise is an error.
func (e *svgElement) height(bare bool) (z float64, ok bool, err error) {
	for _, name := range e.names() {
		v, has, fault := nameHeight(name, bare)
		switch {
		case ok && has && v != z:
			return 0, false, e.faultf("is called %q and %q; want one height", e.names()[0], name)
		case !ok && fault != nil && err == nil:
			err = e.faultf("%v", fault)
		case !ok && has:
			z, ok, err = v, true, nil
		}
	}
	return z, ok, err
}

// heightWithin reads the height of an element, or of the nearest group around
// it, up to the one selected, mm.
func (e *svgElement) heightWithin(selected *svgElement, bare bool) (float64, error) {
	for a := e; a != nil; a = a.parent {
		z, ok, err := a.height(bare)
		if err != nil || ok {
			return z, err
		}
		if a == selected {
			break
		}
	}
	return 0, e.faultf("no height in its name or a group's around it; want a name like \"arch 12 mm\" or \"contour_12\"")
}
