package drawing

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"archload/cases/tree"
)

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
	dim, _ := tree.DimensionOf(tree.Length(0))
	if f, ok := dim.Factor(strings.ToLower(m[1])); ok {
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

// height reads the height of a label's names, mm. The first name that has one
// counts; another that says otherwise is an error.
func (l *Label) height(bare bool) (z float64, ok bool, err error) {
	for _, name := range l.Names {
		v, has, fault := nameHeight(name, bare)
		switch {
		case ok && has && v != z:
			return 0, false, l.Fault("is called %q and %q; want one height", l.Names[0], name)
		case !ok && fault != nil && err == nil:
			err = l.Fault("%v", fault)
		case !ok && has:
			z, ok, err = v, true, nil
		}
	}
	return z, ok, err
}

// height reads the height of a ring, mm: of its own names, or of the nearest
// group around it.
func (r *Ring) height(bare bool) (float64, error) {
	for i := range r.Labels {
		z, ok, err := r.Labels[i].height(bare)
		if err != nil || ok {
			return z, err
		}
	}
	return 0, r.Fault("no height in its name or a group's around it; want a name like \"arch 12 mm\" or \"contour_12\"")
}
