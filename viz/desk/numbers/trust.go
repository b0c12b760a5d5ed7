package numbers

import (
	"fmt"
	"strconv"
	"strings"

	"archload/cases/live"
	"archload/cases/quantity"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
	"archload/viz/stage"
	"archload/viz/tool"
)

// Warned are the warnings of a design at full load, as archload solve says them;
// nil as long as they are not worked out.
func Warned(a *stage.Answered) []string {
	if a == nil || a.Report == nil {
		return nil
	}
	var out []string
	for _, w := range a.Report.Warnings {
		out = append(out, plain(w))
	}
	return out
}

// plain is a warning about a key that was set here, or that stands in a bundled case, which nobody will
// open: without its file and line, the key in words.
func plain(warning string) string {
	where, rest, ok := strings.Cut(warning, ": ")
	from, _, numbered := strings.Cut(where, ":")
	if !ok || !numbered || from != live.From && !strings.HasPrefix(from, "bundled/") {
		return warning
	}
	if key, what, named := strings.Cut(rest, ": "); named {
		rest = tool.KeyWords(key) + ": " + what
	}
	if from == live.From {
		rest = from + ": " + rest
	}
	return rest
}

// Trust says in a line how far the numbers of a design can be trusted.
func Trust(a *stage.Answered, s *stage.Shown) string {
	if a == nil || a.Report == nil {
		return "the checks are being worked out"
	}
	r := a.Report
	words := theory(a, s) + fmt.Sprintf("; %d nodes", r.Mesh.Nodes)
	if r.Error.Discretisation.Known() {
		words += fmt.Sprintf(", error from the mesh about %.1f %%", 100*float64(r.Error.Discretisation))
	}
	if bad := r.Error.Failed(); len(bad) > 0 {
		return words + "; BUILT-IN CHECKS FAILED: " + strings.Join(bad, ", ")
	}
	words += "; built-in checks passed"
	if b := r.Bridge; b != nil && b.RoughReport != nil {
		words += fmt.Sprintf("; friction %.2f under the foot", float64(b.Friction))
	} else if b != nil && b.FrictionNeeded.Known() {
		words += fmt.Sprintf("; at full load the foot needs a friction of %.2f", float64(b.FrictionNeeded))
	}
	return words
}

// theory says which shape picture and numbers are those of.
func theory(a *stage.Answered, s *stage.Shown) string {
	c := a.Sure()
	switch {
	case s.Want.Load < least:
		return "Slack: nothing has moved"
	case c == nil && s.Second:
		return "Under the hand on the shape as carved (linear); at rest on the shape as it has moved (second order)"
	case c == nil || !s.Second:
		return "On the shape as carved (linear)"
	case c.GivesWay > 0:
		return fmt.Sprintf("On the shape as carved (linear): AS IT MOVES THE TOP GIVES WAY beyond %.2f of this load", c.GivesWay)
	case c.Fault != "":
		return "On the shape as carved (linear): the moved shape was not found, " + c.Fault
	case c.Moved != nil && c.Moved.Second.Share.Known():
		return fmt.Sprintf("On the shape as it has moved (second order, %.1f %% of the sink)", 100*float64(c.Moved.Second.Share))
	}
	return "On the shape as it has moved (second order)"
}

// Command is the command that gives the numbers of design i as they stand, and whether they are
// settled: as long as the hand moves they are linear ones.
func Command(s *stage.Shown, i int) (words string, settled bool) {
	a := s.Designs[i]
	name := Typed(a.Live.Name())
	if len(a.Live.Keys()) > 0 {
		name = "of the kept case"
	}
	words = "archload solve " + name
	if a.Sure() == nil || a.Sure().Moved == nil {
		words += " --linear"
	}
	if s.Want.Load < 1 {
		words += " --times " + strconv.FormatFloat(s.Want.Load, 'g', 6, 64)
	}
	return words, s.Confirmed()
}

// Typed is a name as it is typed in a terminal: in quotes where something in it would mean more than itself.
func Typed(name string) string {
	plain := func(r rune) bool {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r > 127 || strings.ContainsRune("._/-+:,@", r)
	}
	if name != "" && strings.IndexFunc(name, func(r rune) bool { return !plain(r) }) < 0 {
		return name
	}
	return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
}

// letter names design i among so many.
func letter(i, of int) string {
	if of < 2 {
		return ""
	}
	return string(rune('A'+i)) + ": "
}

// figures are the numbers of design i at the load that is shown, each with how sure it is, in a sentence.
func figures(s *stage.Shown, i int) string {
	a, words := s.Designs[i], []string{}
	for _, q := range quantity.Shown() {
		v := q.Get(Side{Shown: s}.report(a))
		if !v.Known() {
			continue
		}
		unit, _, _ := strings.Cut(q.Unit, " of ")
		words = append(words, q.Title()+" "+scale.Fixed(float64(v), q.Digits)+margin(a, a.Sure(), s.Want.Load, q, q.Key).text()+" "+unit)
	}
	if len(words) > 0 && (s.Want.Aired() || s.Want.Field == scene.Tone) { // of which the picture shows something else
		words[0] = "by string load alone: " + words[0]
	}
	if open := unsure(a, s.Want.Load); len(words) > 0 && open != "" {
		words = append(words, open)
	}
	return strings.Join(words, "; ")
}

// unsure says what of the ± behind the numbers of a design at a share of its load is not worked out yet; nothing once all of it is.
func unsure(a *stage.Answered, load float64) string {
	switch c := a.Sure(); {
	case c != nil && c.Spread != nil:
		return ""
	case a.EarlierAt(load) != nil:
		return "(±) is of the design before the last change"
	case c != nil:
		return "± is of the triangles alone, that of wood and edge was not yet worked out"
	}
	return "how sure each is (±) was not yet worked out"
}

// Foot is what stands under a saved picture of a width: every warning, so many lines
// of them, then the numbers, if they are wanted, and how far they can be trusted.
func Foot(at *panel.Atlas, s *stage.Shown, width float64, full bool) (lines []string, warnings int) {
	if s == nil {
		return nil, 0
	}
	n := len(s.Designs)
	for i, a := range s.Designs {
		for _, w := range Warned(a) {
			lines = append(lines, at.Wrap(panel.Small, letter(i, n)+w, width)...)
		}
	}
	warnings = len(lines)
	for i, a := range s.Designs {
		if words := figures(s, i); full && words != "" && s.Want.Load >= least {
			lines = append(lines, at.Wrap(panel.Small, letter(i, n)+words, width)...)
		}
		lines = append(lines, at.Wrap(panel.Small, letter(i, n)+Trust(a, s), width)...)
	}
	return lines, warnings
}

// Warnings lists what is said to be too much, and how far the numbers can be
// trusted.
func (s Side) Warnings(c *panel.Column) {
	l, n := s.Panel.List(), 0
	for i, a := range s.Shown.Designs {
		for _, w := range Warned(a) {
			n++
			words := letter(i, len(s.Shown.Designs)) + w
			row := c.Row(s.Atlas.ParagraphHeight(panel.Small, words, c.Width()-8) + 2)
			l.Upright(row.X, row.Y+1, row.Bottom()-2, 2, panel.Fault())
			l.Paragraph(panel.Rect{X: row.X + 8, Y: row.Y, W: row.W - 8, H: row.H}, panel.Small, panel.Fault(), words)
		}
		words := letter(i, len(s.Shown.Designs)) + Trust(a, s.Shown)
		s.Panel.Note(c.Row(s.Atlas.ParagraphHeight(panel.Small, words, c.Width())), words)
	}
	if n == 0 && s.Shown.Settled() {
		s.Panel.Note(c.Row(16), "No warning.")
	}
}
