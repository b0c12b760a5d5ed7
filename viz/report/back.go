package report

import (
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/quantity"
	"archload/cases/say"
	"archload/cases/stability"
)

// back is what stands last: what the numbers mean, how the ranges were got and what is left out, once
// for all designs, and the cases.
func (in Input) back() []reportSection {
	leaves := reportSection{Title: "What is left out, and cautions", Words: []string{
		"Differences between two designs in the same wood are more certain than any single number. Weigh your billet, measure its stiffness, put a weight on the bare plate and compare the gauges before you lean on a number. The maker's own judgement comes first, and where people may be hurt, advice from someone qualified.",
	}}
	for i, s := range in.Solutions {
		for _, l := range left(s.Top.Built.Case, in.stands(i)) {
			if !slices.Contains(leaves.List, l) {
				leaves.List = append(leaves.List, l)
			}
		}
	}
	out := []reportSection{in.meanings(), ranges(), leaves}
	seen := map[string]string{}
	for i, s := range in.Solutions {
		title := "Appendix: the case"
		if len(in.Solutions) > 1 {
			title = "Appendix: the case of " + say.Letter(i)
		}
		out = append(out, written(title, s.Top.Built.Case, seen))
	}
	return out
}

// meanings says what each number that the report prints with its ranges tells a
// maker.
func (in Input) meanings() reportSection {
	t := reportTable{Head: []string{"", ""}, Words: true}
	for _, q := range quantity.Reported() {
		known := func(r *answer.Report) bool { return q.Get(r).Known() }
		if slices.ContainsFunc(in.Reports, known) {
			t.Rows = append(t.Rows, []string{q.Name, q.Means})
		}
	}
	return reportSection{Title: "What the numbers mean", Tables: []reportTable{t}}
}

// written shows a case as it is written and as it was computed; a file that was
// shown before is named only.
func written(title string, c *cases.Case, seen map[string]string) reportSection {
	sec := reportSection{Title: title, Words: []string{"As written, with what it is based on; then every key as it was computed (grey: a default)."}}
	for i, f := range say.Texts(c) {
		text := string(f.Data)
		if seen[f.Name] == text {
			sec.Words = append(sec.Words, f.Name+": as shown above.")
			continue
		}
		seen[f.Name] = text
		if i > 0 {
			text = withoutHeadline(text)
		}
		sec.Codes = append(sec.Codes, reportCode{f.Name, text})
	}
	for _, k := range cases.Resolved(c) {
		sec.Keys = append(sec.Keys, reportKey{k.Key, k.Value, !k.Set})
	}
	return sec
}

// withoutHeadline leaves the comment with a case's own numbers out of a file
// that another case is based on: they are not those of this report.
func withoutHeadline(text string) string {
	var b strings.Builder
	inside := false
	for line := range strings.Lines(text) {
		bare := strings.TrimSpace(line)
		switch {
		case strings.HasPrefix(bare, "# Headline"):
			inside = true
		case bare == "#" || !strings.HasPrefix(bare, "#"):
			inside = false
		}
		if !inside {
			b.WriteString(line)
		}
	}
	return b.String()
}

// left is what the model leaves out of a case that stands as is told; nil: not asked.
func left(c *cases.Case, on *stability.Stands) []string {
	var out []string
	if on == nil {
		out = append(out, "Collapse: whether the arch snaps through or buckles is not checked (archload stability does). Be careful with thin, flat or wide arches under high load.")
	} else {
		out = append(out, "Collapse: at how many times its load the top would give way is linear theory about the shape as carved, without misfit, ripple or a crack. Be careful with thin, flat or wide arches under high load.")
	}
	if on == nil || on.Moved == nil {
		out = append(out, "Large movement: these numbers take the forces on the shape as carved. On the shape as it has moved such plates sink 2 to 7 % further under their strings.")
	}
	out = append(out,
		"Time and weather: creep and moisture are not in these numbers (archload years and archload seasons tell of them); what stands above on decades is an indication.",
		"Glue: every joint is whole and stiff.",
		"The rest of the instrument: the back does not move; there is no neck, tailpiece, finish or binding. The strings' tension stays as tuned (its change is about 1 %).",
		"This piece of wood: the numbers are means of clear, straight-grained wood. Runout, knots and wild grain are not in it.",
		"Sound: the load is at rest. Nothing here says how the instrument sounds.",
	)
	if c.Rim.Squeeze == 0 {
		out = append([]string{"The strings' lengthwise squeeze of the body (squeeze in [rim] is 0 N): with high strings over a shallow body it can rival the arch's own thrust and push the apex up."}, out...)
	}
	if b := c.Bridge; b != nil && b.Hold == "grip" {
		out = append(out, "A limit to friction: a place of the foot that bears stays where it is, however hard it is pushed sideways (hold = \"grip\"). Solve with hold = \"slip\" as well; the truth lies between.")
	}
	return out
}
