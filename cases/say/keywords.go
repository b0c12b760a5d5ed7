package say

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"archload/cases/keylist"
)

// textWidth is the widest line of a text, columns.
const textWidth = 100

// WriteKeys prints the tables of a case file with a line or two for each key.
func WriteKeys(w io.Writer, tables []keylist.Table) error {
	var b strings.Builder
	for _, t := range tables {
		writeKeyTable(&b, t)
	}
	b.WriteString("Bare numbers are in the unit named; a number in quotes may carry another: \"0.2 in\", \"25 lb\".\n" +
		"Lengths in plan run from a point on the centre line, x to the treble side, y to the neck.\n" +
		"archload keys WORD explains the keys of that name, with an example.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

func writeKeyTable(b *strings.Builder, t keylist.Table) {
	head := t.Head
	if head == "" {
		head = "Keys"
	}
	hanging(b, head+"  ", "    ", t.What)
	for _, k := range t.Keys {
		lead := fmt.Sprintf("  %-18s %-5s ", k.Name, k.Unit)
		hanging(b, lead, strings.Repeat(" ", len(lead)), strings.Join(append([]string{k.What}, keyStanding(k)...), "; "))
	}
	b.WriteByte('\n')
}

// keyStanding says whether a key is needed, or what stands for it.
func keyStanding(k keylist.Entry) []string {
	switch {
	case k.Needed:
		return []string{"needed"}
	case k.Default != "":
		return []string{"default: " + k.Default}
	}
	return nil
}

// WriteKeyEntries explains keys one by one.
func WriteKeyEntries(w io.Writer, tables []keylist.Table) error {
	var b strings.Builder
	for _, t := range tables {
		for i, k := range t.Keys {
			if b.Len() > 0 || i > 0 {
				b.WriteByte('\n')
			}
			b.WriteString(k.Path + "\n")
			hanging(&b, "  ", "  ", k.What)
			if facts := keyFacts(k); len(facts) > 0 {
				hanging(&b, "  ", "  ", strings.Join(facts, "; "))
			}
			in := ""
			if t.Head != "" {
				in = "    in " + t.Head
			}
			b.WriteString("  example: " + k.Example + in + "\n")
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// keyFacts are a key's unit, range and default.
func keyFacts(k keylist.Entry) []string {
	var out []string
	if k.Unit != "" {
		out = append(out, "in "+k.Unit)
	}
	if k.Admits != "" {
		out = append(out, k.Admits)
	}
	return append(out, keyStanding(k)...)
}

// WriteKeyPage writes the list of keys as a page of Markdown.
func WriteKeyPage(w io.Writer, tables []keylist.Table) error {
	var b strings.Builder
	b.WriteString("# Every key of a case file\n\n" +
		"`archload keys` prints this list, `archload keys WORD` what it says of one word. Both are made from the program's own\n" +
		"table of keys, as this page is.\n\n" +
		"A bare number is in the unit named; a number in quotes may carry another, as in `\"0.2 in\"` or `\"25 lb\"`. Places in plan\n" +
		"run from a point on the centre line, seen from outside: `x` to the treble side, `y` to the neck. Heights of the arch are\n" +
		"above the rim's gluing surface. A table in double brackets may stand more than once.\n")
	for _, t := range tables {
		head := "Above all tables"
		if t.Head != "" {
			head = "`" + t.Head + "`"
		}
		fmt.Fprintf(&b, "\n## %s\n\n", head)
		if t.Head != "" {
			fmt.Fprintf(&b, "%s.\n\n", upperFirst(t.What))
		}
		b.WriteString("| key | meaning | unit | admitted | if left out | example |\n|---|---|---|---|---|---|\n")
		for _, k := range t.Keys {
			left := k.Default
			if k.Needed {
				left = "needed"
			}
			fmt.Fprintf(&b, "| `%s` | %s | %s | %s | %s | `%s` |\n", k.Name, cell(k.What), k.Unit, cell(k.Admits), cell(left), k.Example)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// cell keeps Markdown from reading a text's own bars and signs.
func cell(text string) string {
	return strings.NewReplacer("|", `\|`, "<", "&lt;", ">", "&gt;", "[", `\[`).Replace(text)
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	r, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[size:]
}

// hanging writes a paragraph: its first line behind lead, the others behind
// indent.
func hanging(b *strings.Builder, lead, indent, text string) {
	line := lead
	bare := true
	for _, word := range strings.Fields(text) {
		if !bare && len([]rune(line))+1+len([]rune(word)) > textWidth {
			b.WriteString(strings.TrimRight(line, " ") + "\n")
			line, bare = indent, true
		}
		if !bare {
			line += " "
		}
		line += word
		bare = false
	}
	b.WriteString(strings.TrimRight(line, " ") + "\n")
}
