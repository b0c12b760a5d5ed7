package say

import (
	"fmt"
	"io"
	"strings"

	"archload/cases/aging"
	"archload/cases/answer"
)

// WriteYears prints what the strings do to a design over the years in a maker's words.
func WriteYears(w io.Writer, r *aging.YearsReport) error {
	b := &strings.Builder{}
	if r.Title != "" {
		fmt.Fprintf(b, "%s\n\n", r.Title)
	}
	section(b, "Years under the load"+r.OrderAside()+", each number with its range by how much wood creeps")
	fmt.Fprintf(b, "  %-8s %-24s %-24s %-24s %-22s\n", "age", "sinks mm", "action lower mm", "middle of foot %", "strength used %")
	for _, a := range append([]aging.AgeReport{r.Strung}, r.Years...) {
		fmt.Fprintf(b, "  %-8s %-24s %-24s %-24s %-22s\n", a.At, RangeText(a.Sink, 1, "%.3f"), RangeText(a.Action, 1, "%.3f"),
			RangeText(a.Middle, 100, "%.0f"), RangeText(a.Strength.Used, 100, "%.0f"))
	}
	fmt.Fprintln(b, "  strength used: of what a load of such duration leaves")
	if f := r.Foot; f != nil {
		line(b, "the middle of the foot", "%s", FootYears(f))
	}
	besideLinear(b, r)
	meetings(b, r)
	section(b, "How far to trust it")
	line(b, "range", "with %.2g to %.2g times the creep of the wood cards", r.Range[0], r.Range[1])
	for _, c := range r.Cautions {
		line(b, "caution", "%s", c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// besideLinear says what linear theory has beside numbers on the moved shape.
func besideLinear(b *strings.Builder, r *aging.YearsReport) {
	for _, a := range append([]aging.AgeReport{r.Strung}, r.Years...) {
		if l := a.Linear; l != nil {
			line(b, a.At+", linear", "sinks %s mm, strings lower by %s mm, strength used %s", Number(l.Sink, "%.3f"), Number(l.Action, "%.3f"), percent(l.Used))
		}
	}
}

// meetings sets each age beside each season, and names the worst ones.
func meetings(b *strings.Builder, r *aging.YearsReport) {
	if len(r.Together) == 0 {
		return
	}
	section(b, "Each age in each season, from the day that it was strung")
	fmt.Fprintf(b, "  %-8s %-14s %8s %9s %8s %8s %8s %8s\n", "age", "season", "arch mm", "lower mm", "middle %", "gap mm", "across %", "used %")
	for _, m := range r.Together {
		fmt.Fprintf(b, "  %-8s %-14s %8s %9s %8s %8s %8s %8s\n", m.At, m.Season, plainZeros(fmt.Sprintf("%+.2f", m.ArchRise)), Number(m.Action, "%+.2f"), Number(100*m.Middle, "%.0f"),
			Number(m.GapLeft, "%.3f"), Number(100*m.Across, "%.0f"), Number(100*m.Used, "%.0f"))
	}
	fmt.Fprintln(b, "  across and used: of the strength that a load of such duration leaves, if the season came at once")
	for _, l := range worstLines(r.Worst) {
		line(b, l[0], "%s", l[1])
	}
}

// WorstMeetings says in sentences which season at which age asks most; none without seasons.
func WorstMeetings(r *aging.YearsReport) (out []string) {
	for _, l := range worstLines(r.Worst) {
		out = append(out, upperFirst(l[0])+": "+l[1]+".")
	}
	return out
}

// worstLines are what is worst, and when.
func worstLines(w *aging.WorstMeetings) (out [][2]string) {
	if w == nil {
		return nil
	}
	worst := func(label, what, form string, times float64, m *aging.Worst) {
		if m != nil {
			out = append(out, [2]string{label, plainZeros(fmt.Sprintf("%s "+form, m.Season+" at "+ageWord(m.At)+": "+what, times*float64(m.Value)))})
		}
	}
	worst("strings lowest", "lower by", "%.2f mm", 1, w.Lowest)
	if h := w.Highest; h != nil && h.Value > 0 {
		worst("strings highest", "still lower by", "%.2f mm", 1, h)
	} else {
		worst("strings highest", "higher by", "%.2f mm", -1, h)
	}
	worst("greatest gap", "the foot stands off by", "%.3f mm", 1, w.Gap)
	worst("most strength used", "the plate uses", "%.0f %%", 100, w.Used)
	worst("most pull across", "the grain uses", "%.0f %%", 100, w.Across)
	return out
}

// ageWord names an age in a sentence.
func ageWord(at string) string {
	if at == "strung" {
		return "the new strings"
	}
	return at
}

// RangeText is a number with its range, each times a factor.
func RangeText(r aging.Range, times float64, form string) string {
	if !r.Mid.Known() {
		return "-"
	}
	one := func(n answer.Num) string { return plainZeros(fmt.Sprintf(form, times*float64(n))) }
	if mid := one(r.Mid); mid == one(r.Low) && mid == one(r.High) {
		return mid
	}
	return fmt.Sprintf("%s (%s to %s)", one(r.Mid), one(r.Low), one(r.High))
}

// FootYears says when the middle of the foot comes to bear.
func FootYears(f *aging.FootYears) string {
	switch {
	case !f.MiddleTouches.Known():
		return "does not come to bear in this time"
	case f.MiddleCloses == 0:
		return "bears all along from the first day"
	case !f.MiddleCloses.Known():
		return "touches " + afterYears(f.MiddleTouches) + ", and does not close in this time"
	}
	return "touches " + afterYears(f.MiddleTouches) + ", and has closed " + afterYears(f.MiddleCloses)
}

// afterYears says a time.
func afterYears(years answer.Num) string {
	switch y := float64(years); {
	case y == 0:
		return "from the first day"
	case y < 2.0/365:
		return fmt.Sprintf("after %.1f hours", y*365.25*24)
	case y < 1:
		return fmt.Sprintf("after %.0f days", y*365.25)
	default:
		return fmt.Sprintf("after %.1f years", y)
	}
}
