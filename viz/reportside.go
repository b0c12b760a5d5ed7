package viz

import (
	"fmt"
	"math"

	"archload/cases"
)

// sideBySide sets several designs side by side.
func sideBySide(in ReportInput, all [][]cases.Answer) ([]reportSection, error) {
	c := in.Comparison
	first := reportSection{Title: "What differs, and what comes of it"}
	letters := []string{""}
	for i := range in.Reports {
		letters = append(letters, string(rune('A'+i)))
	}
	differs := reportTable{Caption: "What differs in the input", Head: letters, Words: true}
	for _, k := range c.Differs {
		differs.Rows = append(differs.Rows, append([]string{k.Key}, k.Values...))
	}
	first.Tables = []reportTable{answersSide(letters, all), differs}
	first.Words = []string{
		"Each number of A stands in the first column; beside it the other designs, each with its difference from A. A sign = means no difference. In brackets: the range of that difference if both tops are cut from the same plank, softer or stiffer by 22 % (Wood Handbook, table 5-6). A difference far smaller than the wood's range of the numbers themselves shows only between tops of one plank.",
	}
	rows := reportSection{Title: "All numbers side by side"}
	t := reportTable{Head: append(letters, "unit")}
	for _, r := range c.Rows {
		row := []string{r.Name}
		for _, v := range r.Values {
			if !v.Known() {
				row = append(row, "never")
				continue
			}
			row = append(row, reading(float64(v)))
		}
		t.Rows = append(t.Rows, append(row, r.Unit))
	}
	rows.Tables = []reportTable{t}
	for _, p := range ComparePictures(in.Solutions, c) {
		f, err := figure(p, "The designs side by side: "+p.Name+"; what is drawn and its unit stand in the picture.")
		if err != nil {
			return nil, err
		}
		rows.Figures = append(rows.Figures, f)
	}
	return []reportSection{first, rows}, nil
}

// answersSide is the table of what decides, each design against the first.
func answersSide(letters []string, all [][]cases.Answer) reportTable {
	t := reportTable{Caption: "What decides", Head: append(letters, "unit")}
	for _, a := range all[0] {
		row := []string{a.Name, decNum(a.Value, a.Digits, "never")}
		for _, other := range all[1:] {
			row = append(row, against(a, other))
		}
		t.Rows = append(t.Rows, append(row, a.Unit))
	}
	return t
}

// against writes another design's answer and how it differs from a.
func against(a cases.Answer, other []cases.Answer) string {
	for _, b := range other {
		if b.Key != a.Key {
			continue
		}
		d := [3]float64{float64(b.Value - a.Value), float64(b.Ends[0] - a.Ends[0]), float64(b.Ends[1] - a.Ends[1])}
		text := decNum(b.Value, b.Digits, "never")
		if math.IsNaN(d[0]) {
			return text
		}
		change, low, high := plus(d[0], a.Digits), plus(min(d[1], d[2]), a.Digits), plus(max(d[1], d[2]), a.Digits)
		switch none := dec(0, a.Digits); {
		case math.IsNaN(d[1] + d[2]):
			return text + ": " + change
		case change == none && low == none && high == none:
			return text + " ="
		}
		return text + fmt.Sprintf(": %s (%s to %s)", change, low, high)
	}
	return "–"
}

// plus writes a difference with its sign.
func plus(v float64, digits int) string {
	s := dec(v, digits)
	if v > 0 && s != dec(0, digits) {
		return "+" + s
	}
	return s
}
