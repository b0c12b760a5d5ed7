package say

import (
	"fmt"
	"io"
	"strings"

	"archload/cases/answer"
	"archload/cases/bench/effect"
	"archload/cases/study"
)

// WriteEffect prints what measurements did to a design.
func WriteEffect(w io.Writer, r *effect.Report) error {
	b := &strings.Builder{}
	section(b, "What the readings did to the answers of "+r.Case)
	head, rows := EffectTable(r)
	fmt.Fprintf(b, "  %-34s", head[0])
	for _, h := range head[1:] {
		fmt.Fprintf(b, " %20s", h)
	}
	b.WriteByte('\n')
	for _, row := range rows {
		fmt.Fprintf(b, "  %s", padded(row[0], 34))
		for _, cell := range row[1:] {
			fmt.Fprintf(b, " %20s", cell)
		}
		b.WriteByte('\n')
	}
	b.WriteString(folded(EffectWords(r), 98) + "\n")
	for _, s := range r.LeftOut {
		line(b, "left out", "%s", s)
	}
	for _, s := range r.Cautions {
		line(b, "mind", "%s", s)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// EffectTable sets each answer with its range before the readings beside those after them, the one that got surer most first.
func EffectTable(r *effect.Report) (head []string, rows [][]string) {
	head = []string{"± what another plank makes of it", "by its card"}
	if r.Wood != "" {
		head = append(head, "by the bench")
	}
	if len(r.Gauges) > 0 {
		head = append(head, "with its gauges")
	}
	head = append(head, "times surer")
	add := func(name, unit string, digits int, surer answer.Num, list ...study.Ranged) {
		row := []string{name + ", " + unit}
		for _, v := range list {
			row = append(row, rangedText(v, digits))
		}
		text := "-"
		if surer.Known() {
			text = fmt.Sprintf("%.1f", float64(surer))
		}
		rows = append(rows, append(row, text))
	}
	for _, a := range r.Answers {
		list := []study.Ranged{a.Card}
		if r.Wood != "" {
			list = append(list, a.Bench)
		}
		if len(r.Gauges) > 0 {
			list = append(list, a.Gauges)
		}
		add(a.Name, a.Unit, a.Digits, a.Surer, list...)
	}
	return head, rows
}

// rangedText is a number with its range.
func rangedText(v study.Ranged, digits int) string {
	if !v.Value.Known() {
		return "-"
	}
	if !v.SD.Known() {
		return fmt.Sprintf("%.*f", digits, float64(v.Value))
	}
	return fmt.Sprintf("%.*f ± %.*f", digits, float64(v.Value), digits, float64(v.SD))
}

// EffectWords say what was read and what it helped, in one sentence or two.
func EffectWords(r *effect.Report) string {
	var s []string
	if r.Wood != "" {
		s = append(s, fmt.Sprintf("The top is of the piece %s, as the bench file measured it; before, it was of the card %s.", r.Wood, r.Like))
	}
	for _, g := range r.Gauges {
		if g.LeftOut {
			continue
		}
		s = append(s, fmt.Sprintf("The gauge \"%s\" read %.3f mm where %s was expected; with all gauges it is %s.", g.Name, float64(g.Measured), rangedText(g.Before, 3), rangedText(g.After, 3)))
	}
	const much = 1.2
	better := 0
	for _, a := range r.Answers {
		if a.Surer.Known() && float64(a.Surer) >= much {
			better++
		}
	}
	if better == 0 {
		return strings.Join(append(s, "No answer got surer by a fifth: these readings tell little of what this design goes by."), " ")
	}
	first := r.Answers[0]
	return strings.Join(append(s, fmt.Sprintf("%d of %d answers got surer by a fifth or more; most of all: %s, from ± %.*f to ± %.*f %s.", better, len(r.Answers), first.Name,
		first.Digits+1, float64(first.Card.SD), first.Digits+1, float64(first.Last().SD), first.Unit)), " ")
}
