package say

import (
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"archload/cases/answer"
	"archload/cases/quantity"
	"archload/cases/study"
)

// WriteComparison prints a comparison as text, at most 100 columns wide but for
// long values of the input.
func WriteComparison(w io.Writer, c *study.Comparison) error {
	var b strings.Builder
	for i, n := range c.Cases {
		fmt.Fprintf(&b, "%s  %s: %s\n", Letter(i), n, c.Titles[i])
	}
	b.WriteString("\nIn short\n")
	for _, v := range Verdict(c) {
		b.WriteString(folded(v, 98) + "\n")
	}
	b.WriteString("\nWhat differs in the input\n")
	for _, d := range c.Differs {
		fmt.Fprintf(&b, "  %s\n", d.Key)
		for i, v := range d.Values {
			fmt.Fprintf(&b, "      %s  %s\n", Letter(i), v)
		}
	}
	if len(c.Differs) == 0 {
		b.WriteString("  nothing\n")
	}
	writeRows(&b, c)
	writeWoods(&b, c)
	writeNotes(&b, c)
	if c.Wood != nil && c.Wood.Sample != nil {
		writeSample(&b, c)
	}
	b.WriteString("The maker's judgement comes first.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// Heads are the headings of the parts of a comparison's table.
func Heads(c *study.Comparison) [study.OfMesh + 1]string {
	out := [study.OfMesh + 1]string{
		"What decides; the greatest change in percent first",
		"Where the load goes, and the rest",
		"Within the wood's scatter (~): in other planks such differences may vanish or turn round",
		"No difference",
		"Of the mesh",
	}
	if ranged(c) {
		out[study.Decides] = "What decides; first what the design changes most against what another plank would"
	}
	return out
}

func writeRows(b *strings.Builder, c *study.Comparison) {
	part := study.Part(-1)
	for i := range c.Rows {
		r := &c.Rows[i]
		if p := r.Part(); p != part {
			part = p
			fmt.Fprintf(b, "\n%s\n", Heads(c)[p])
			if p != study.OfMesh {
				b.WriteString(rowColumns(c))
			}
		}
		fmt.Fprintf(b, "  %s, %s\n", r.Name, r.Unit)
		for k := range c.Cases {
			b.WriteString(strings.TrimRight(rowLine(c, r, k), " ") + "\n")
		}
	}
}

func rowColumns(c *study.Comparison) string {
	if ranged(c) {
		return fmt.Sprintf("%-34s%9s%9s%9s%11s%9s%9s%9s\n", "", "", "± wood", "± mesh", "less A", "in %", "± wood", "± mesh")
	}
	return fmt.Sprintf("%-34s%9s%11s%9s\n", "", "", "less A", "in %")
}

// rowLine is one design's part of a row.
func rowLine(c *study.Comparison, r *study.Row, k int) string {
	s := designLabel(c, k)
	widths := [7]int{9, 9, 9, 11, 9, 9, 9}
	for i, cell := range Cells(r, k) {
		if ranged(c) || i == 0 || i == 3 || i == 4 {
			s += strings.Repeat(" ", max(1, widths[i]-utf8.RuneCountInString(cell))) + cell
		}
	}
	return s
}

// Cells writes what design k has of a row: its number, the wood's and the
// mesh's range of it, what it has more than the first design (behind a ~ if
// that is within the wood's scatter), the same in percent, and the two ranges
// of the difference. What there is not is empty.
func Cells(r *study.Row, k int) [7]string {
	q := r.Quantity()
	out := [7]string{numberText(q, r.Values[k])}
	ranged := len(r.Ranges) > 0 && !r.Bare()
	if ranged && r.Values[k].Known() {
		out[1], out[2] = widthText(q, r.Ranges[k].Wood), widthText(q, r.Ranges[k].Mesh)
	}
	if k == 0 || r.Bare() {
		return out
	}
	d := r.Differences[k-1]
	out[3], out[4] = differenceText(q, d.Value), percentOf(d.Percent, q.Nought(d.Value))
	if d.Within && !q.Nought(d.Value) {
		out[3] = "~" + out[3]
	}
	if ranged && d.Value.Known() {
		out[5], out[6] = widthText(q, d.Wood), widthText(q, d.Mesh)
	}
	return out
}

// designLabel is the first column of a design's line.
func designLabel(c *study.Comparison, k int) string {
	return padded(fmt.Sprintf("    %s  %s", Letter(k), c.Cases[k]), 34)
}

// writeNotes says what the ranges are.
func writeNotes(b *strings.Builder, c *study.Comparison) {
	b.WriteString("\nDifferences are taken before rounding; = means less than is shown.\n")
	if !ranged(c) {
		b.WriteString("No ranges were asked for: a difference smaller than the scatter of wood (stiffness 22 % from\n" +
			"board to board) shows only between tops of the same billet. ")
		return
	}
	b.WriteString("\nHow sure this is\n")
	b.WriteString("  ± wood, of a number: no two planks are alike. In about two planks of three it lies within this\n" +
		"  range (one standard deviation; stiffness scatters by 22 %, Wood Handbook, table 5-6; each constant\n" +
		"  of each plank by itself). Of a difference: both designs cut from the same plank, wherever role and\n" +
		"  wood are the same; most of the scatter then falls out. ~ marks a difference smaller than that.\n" +
		"  ± mesh: what the triangles may cost the number, or the difference.\n")
	writeEdge(b, c)
	edge := "the edge"
	if edgeKnown(c) {
		edge = "an edge of another kind"
	}
	fmt.Fprintf(b, "  Not in the ranges: a foot that slips, %s, and all that the model leaves out.\n", edge)
	for i, r := range c.Rows {
		if r.Key == "bridge_sink" || r.Key == "most_sunk" && c.Reports[0].Bridge == nil {
			writeBehind(b, &c.Rows[i])
		}
	}
	for _, f := range c.Wood.Faults {
		fmt.Fprintf(b, "  ?: %s\n", f)
	}
	b.WriteString("  ")
}

// writeBehind says which constants make up the scatter of a row's first number.
func writeBehind(b *strings.Builder, r *study.Row) {
	const most = 3
	var words []string
	for _, k := range r.Ranges[0].Behind {
		if len(words) < most {
			words = append(words, fmt.Sprintf("to %.0f %% from %s of the %s", 100*k.Share, k.Constant, k.Plank))
		}
	}
	if len(words) > 0 {
		fmt.Fprintf(b, "  What to measure first: the scatter of %q in A (its square) comes\n  %s.\n", r.Name, strings.Join(words, ",\n  "))
	}
}

// sampleAgrees is how far, relative to it, a range of first order may miss that
// of a sample, 1.
const sampleAgrees = 0.1

// writeSample sets first-order ranges beside sampled ones.
func writeSample(b *strings.Builder, c *study.Comparison) {
	h := c.Wood.Sample
	fmt.Fprintf(b, "\n\nThe wood's ranges again, by solving %d sets of planks drawn at random (seed %d)\n", h.Planks, h.Seed)
	fmt.Fprintf(b, "%-34s%9s%9s%9s%11s%9s%9s\n", "", "± wood", "drawn", "off by", "less A ±", "drawn", "off by")
	for i := range c.Rows {
		r := &c.Rows[i]
		if r.Bare() {
			continue
		}
		fmt.Fprintf(b, "  %s, %s\n", r.Name, r.Unit)
		for k := range c.Cases {
			s := designLabel(c, k) + besideText(r.Quantity(), r.Ranges[k].Wood, r.Ranges[k].Drawn, 9)
			if k > 0 {
				s += besideText(r.Quantity(), r.Differences[k-1].Wood, r.Differences[k-1].Drawn, 11)
			}
			b.WriteString(strings.TrimRight(s, " ") + "\n")
		}
	}
	b.WriteString("  Off by more than a tenth (!): the number bends or jumps with the wood, or of a difference little is\n" +
		"  left once the scatter that both designs share has fallen out. Believe what was drawn.\n")
	if h.Failed > 0 {
		fmt.Fprintf(b, "  %d of the sets gave no answer and are left out.\n", h.Failed)
	}
	b.WriteString("  ")
}

// besideText writes a range of first order, the drawn one, and how far they are
// apart.
func besideText(q quantity.Quantity, first answer.Num, d *study.Drawn, width int) string {
	off := ""
	if v := float64(first)/float64(d.Deviation) - 1; !q.Nought(d.Deviation) && !math.IsNaN(v) {
		off = fmt.Sprintf("%+.0f %%", 100*v)
		if math.Abs(v) > sampleAgrees {
			off = "! " + off
		}
	}
	return fmt.Sprintf("%*s%9s%9s", width, widthText(q, first), widthText(q, d.Deviation), off)
}

// writeWoods says which constants decide between two woods, and how sure they are.
func writeWoods(b *strings.Builder, c *study.Comparison) {
	if c.Wood == nil || len(c.Wood.Changes) == 0 {
		return
	}
	b.WriteString("\nWhich constants decide between the woods, to first order\n")
	for _, w := range c.Wood.Changes {
		q := quantity.Of(w.Key)
		fmt.Fprintf(b, "  %s, %s of %s instead of %s: %s\n", w.Case, w.Role, w.To, w.From, q.Name)
		for _, d := range w.Constants {
			fmt.Fprintf(b, "    %-10s %+.*f %s  as it is %.4g instead of %.4g; boards scatter by %.0f %%\n", d.Constant, q.Digits, d.Adds, q.Unit, d.To, d.From, 100*d.Scatter)
			b.WriteString(indented(folded(d.Source, 80), 13) + "\n")
		}
	}
	b.WriteString("  A constant that decides and is marked is worth measuring on your own board before you choose by it.\n")
}

// indented moves a text's lines to the right.
func indented(text string, by int) string {
	return strings.Repeat(" ", by) + strings.ReplaceAll(text, "\n", "\n"+strings.Repeat(" ", by))
}
