package fit

import (
	"fmt"
	"strconv"
	"strings"

	"archload/cases"
	"archload/cases/tree"
)

// number is one number of a card by its key.
type number struct {
	key   string
	value float64
}

// numbers are those of the fitted wood as a table [wood.NAME] has them: strengths first, where like is a card of the bench file.
func (r *Report) numbers() []number {
	list := append([]number(nil), r.inFile...)
	for _, k := range woodKeys() {
		list = append(list, number{k, rounded(r.Wood[r.Name][k].Value, 5)})
	}
	return list
}

// Table is the fitted wood as [wood.NAME] for a case, with how much it may still scatter; written as a card file
// without the heading.
func (r *Report) Table(heading bool) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s: by what was measured on it\n", oneLine(r.Title))
	if heading {
		fmt.Fprintf(&b, "[wood.%s]\n", keyText(r.Name))
	}
	if len(r.inFile) == 0 {
		fmt.Fprintf(&b, "like = %q\n", r.Like)
	}
	for _, n := range r.numbers() {
		fmt.Fprintf(&b, "%s = %s\n", n.key, plain(n.value))
	}
	var list []string
	for _, k := range woodKeys() {
		list = append(list, k+" = "+plain(rounded(r.Wood[r.Name][k].scatter, 3)))
	}
	fmt.Fprintf(&b, "scatter = { %s }\n", strings.Join(list, ", "))
	b.WriteString("together = [\n")
	for _, p := range r.scatters {
		fmt.Fprintf(&b, "    [%q, %q, %s],\n", p.Keys[0], p.Keys[1], strconv.FormatFloat(p.By, 'f', 4, 64))
	}
	b.WriteString("]\n")
	return b.String()
}

// Into are the keys that cut the plate of a case from this piece: those of Table, and plate.wood. Bars that are of the plate's
// wood keep it, because they are of another board.
func (r *Report) Into(c *cases.Case) []tree.KeyValue {
	card, scatter, together := map[string]any{}, map[string]any{}, []any{}
	if len(r.inFile) == 0 {
		card["like"] = r.Like
	}
	for _, n := range r.numbers() {
		card[n.key] = n.value
	}
	for _, k := range woodKeys() {
		scatter[k] = rounded(r.Wood[r.Name][k].scatter, 3)
	}
	for _, p := range r.scatters {
		together = append(together, []any{p.Keys[0], p.Keys[1], p.By})
	}
	card["scatter"], card["together"] = scatter, together
	set := []tree.KeyValue{{Key: "wood." + keyText(r.Name), Value: tree.ChangeValue{Text: "by the bench", Value: card}}, {Key: "plate.wood", Value: tree.Valued(r.Name)}}
	for i := range c.Braces {
		if c.Braces[i].Wood == "" {
			set = append(set, tree.KeyValue{Key: tree.EntryKey("brace", i+1) + ".wood", Value: tree.Valued(c.Plate.Wood)})
		}
	}
	return set
}

// rounded is a number to so many figures.
func rounded(v float64, n int) float64 {
	x, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', n, 64), 64) // as it was written
	return x
}

// plain writes a number without an exponent, which TOML would not read.
func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

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
