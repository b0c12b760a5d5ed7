package materials

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
)

// MOEToEL is the factor from the bending modulus of elasticity to EL, 1: a
// bending test on a span of 14 depths also bends in shear. Source: Wood
// Handbook, footnote of table 5-3.
const MOEToEL = 1.10

// number is one value as written.
type number struct {
	given  bool
	form   string // "value", "ratio", "moe" or "specific_gravity"
	value  float64
	source Source
}

// numbers holds the values of fields.
type numbers [fieldCount]number

// resolve turns ratios and other forms into values in the unit of the field;
// el and shear serve where the table itself has none, MPa.
func (n *numbers) resolve(el, shear float64) Faults {
	var fs Faults
	if n[atEL].given {
		if n[atEL].form == "moe" {
			n[atEL].value *= MOEToEL
		}
		el = n[atEL].value
	}
	if n[atShear].given {
		shear = n[atShear].value
	}
	if n[atDensity].form == "specific_gravity" {
		n[atDensity].value *= 1000 * 1.12 // Wood Handbook, chapter 4: density = 1000 G (1 + M/100)
	}
	for i, f := range fields() {
		if n[i].form != "ratio" {
			continue
		}
		whole, of := el, "EL"
		if i == atRolling {
			whole, of = shear, "shear_along"
		}
		if whole == 0 {
			fs = append(fs, Fault{Key: f.key, Msg: "is a ratio of " + of + ", which is missing"})
			n[i].given = false
		}
		n[i].value *= whole
	}
	return fs
}

// forms lists how field i may be written; the first one goes for a plain
// number.
func forms(i int) []string {
	switch {
	case i == atDensity:
		return []string{"value", "specific_gravity"}
	case i == atEL:
		return []string{"value", "moe"}
	case i >= firstRatio && i <= lastRatio, i == atRolling:
		return []string{"value", "ratio"}
	}
	return []string{"value"}
}

// readNumber reads a plain number or a table with its source; it returns what
// is wrong.
func readNumber(raw any, forms []string) (number, string) {
	if v, ok := finite(raw); ok {
		return number{given: true, form: "value", value: v, source: Source{Text: ownValue}}, ""
	}
	table, ok := raw.(map[string]any)
	if !ok {
		return number{}, "found " + show(raw) + `; want a finite number or { value = ..., source = "..." }`
	}
	q := number{source: Source{Text: ownValue}}
	for _, key := range slices.Sorted(maps.Keys(table)) {
		if msg := q.read(key, table[key], forms); msg != "" {
			return number{}, msg
		}
	}
	if !q.given {
		return number{}, "no number; want " + strings.Join(forms, " or ")
	}
	return q, ""
}

// read takes one key of the table of a number; it returns what is wrong.
func (q *number) read(key string, raw any, forms []string) string {
	text, isText := raw.(string)
	switch {
	case slices.Contains(forms, key):
		v, ok := finite(raw)
		if !ok {
			return key + ": found " + show(raw) + "; want a finite number"
		}
		if q.given {
			return fmt.Sprintf("both %s and %s; want one of them", q.form, key)
		}
		q.given, q.form, q.value = true, key, v
	case key == "source":
		if !isText || strings.TrimSpace(text) == "" || !printable(text) {
			return "source: found " + show(raw) + "; want one line of text"
		}
		q.source.Text = text
	case key == "mark":
		if !isText || !slices.Contains([]string{MarkRead, MarkMemory, MarkBorrowed}, text) {
			return fmt.Sprintf("mark: found %s; want %q or %q, or none", show(raw), MarkMemory, MarkBorrowed)
		}
		q.source.Mark = text
	default:
		return fmt.Sprintf("unknown key %s; want %s, source or mark", show(key), strings.Join(forms, ", "))
	}
	return ""
}

// finite returns a TOML integer or float as a float64.
func finite(raw any) (float64, bool) {
	switch v := raw.(type) {
	case int64:
		return float64(v), true
	case float64:
		return v, !math.IsNaN(v) && !math.IsInf(v, 0)
	}
	return 0, false
}

// show prints a decoded value for an error, on one line and not too long.
func show(raw any) string {
	text := fmt.Sprint(raw)
	if s, ok := raw.(string); ok || !printable(text) {
		text = fmt.Sprintf("%q", cmp.Or(s, text))
	}
	if runes := []rune(text); len(runes) > 60 {
		text = string(runes[:60]) + "..."
	}
	return text
}

// printable reports whether a text fits on one line of output.
func printable(text string) bool {
	return !strings.ContainsFunc(text, func(r rune) bool { return r < ' ' || r == 0x7f })
}
