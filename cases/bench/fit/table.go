package fit

import (
	"fmt"
	"strconv"
	"strings"
)

// Table is the fitted wood as [wood.NAME] for a case, with how much it may still scatter; written as a card file
// without the heading.
func (r *Report) Table(heading bool) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s: by what was measured on it\n", oneLine(r.Title))
	if heading {
		fmt.Fprintf(&b, "[wood.%s]\n", keyText(r.Name))
	}
	wood := r.Wood[r.Name]
	if r.inFile == "" {
		fmt.Fprintf(&b, "like = %q\n", r.Like)
	} else {
		fmt.Fprintf(&b, "%s", r.inFile)
	}
	for _, k := range woodKeys() {
		fmt.Fprintf(&b, "%s = %s\n", k, digits(wood[k].Value, 5))
	}
	var list []string
	for _, k := range woodKeys() {
		list = append(list, k+" = "+digits(wood[k].scatter, 3))
	}
	fmt.Fprintf(&b, "scatter = { %s }\n", strings.Join(list, ", "))
	b.WriteString("together = [\n")
	for _, p := range r.scatters {
		fmt.Fprintf(&b, "    [%q, %q, %s],\n", p.Keys[0], p.Keys[1], strconv.FormatFloat(p.By, 'f', 4, 64))
	}
	b.WriteString("]\n")
	return b.String()
}

// digits writes a number with so many figures, without an exponent that TOML would not read.
func digits(v float64, n int) string {
	x, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', n, 64), 64)
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// keyText writes a name as a TOML key.
func keyText(name string) string {
	plain := name != "" && strings.IndexFunc(name, func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_')
	}) < 0
	if plain {
		return name
	}
	return strconv.Quote(name)
}

// oneLine keeps a comment on its line.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
