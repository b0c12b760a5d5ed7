package say

import (
	"fmt"
	"io"
	"math"
	"strings"

	"archload/cases/answer"
	"archload/cases/study"
	"archload/cases/tree"
)

// WriteTrial prints a trial as tables, shape by shape.
func WriteTrial(w io.Writer, t *study.Trial) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: the foot relieved more and more, under %.0f N\n", t.Title, t.Downforce)
	for i, p := range t.Points {
		if i == 0 || t.Points[i-1].Shape != p.Shape {
			fmt.Fprintf(&b, "\n%s\n%s", p.Shape, trialHead(len(p.Feet) > 0))
		}
		writePoint(&b, &p)
	}
	if len(t.Points) > 0 && len(t.Points[0].Feet) > 0 {
		b.WriteString("\nbass, treble: each whole foot. inner: the heels (half a foot's length each) toward the bridge's\nmiddle, both together; it is they that touch and close.\n")
	}
	b.WriteString(trialTheory(t))
	if t.Crushing.Known() {
		fmt.Fprintf(&b, "\ncrush %%: greatest pressure over 8 mm of foot against %.1f MPa, the softer wood's strength across the grain.\n", float64(t.Crushing))
	} else {
		b.WriteString("\ncrush %: the strength across the grain of the wood under the foot is not known.\n")
	}
	fmt.Fprintf(&b, "arch rounder: how much higher (+) or lower (-, flatter) the load leaves the top under the foot's\n"+
		"middle, against the top under its ends. strength used: of the top, at its worst place; of 100 %%,\n"+
		"wood keeps about %.0f %% under decades of load (Madison curve); a blank: not worked out. -: never.\n", 100*answer.LongTerm())
	for _, part := range Instructions(t) {
		fmt.Fprintf(&b, "\n%s\n", part.Head)
		for _, l := range part.Lines {
			fmt.Fprintf(&b, "%s\n", folded(l, 96))
		}
	}
	if head, command := nextCommand(t); command != "" {
		fmt.Fprintf(&b, "\n%s\n  %s\n", head, command)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// trialTheory says on which shape the numbers are, and where the linear ones differ from them by more than
// a hundredth.
func trialTheory(t *study.Trial) string {
	if t.Linear == nil {
		return ""
	}
	out := "\nAll on the shape as it has moved (second order)"
	least, most := math.Inf(1), math.Inf(-1)
	for i := range t.Points {
		if is := t.Points[i].Sink; is != 0 {
			more := 1 - t.Linear.Points[i].Sink/is
			least, most = math.Min(least, more), math.Max(most, more)
		}
	}
	if math.Max(math.Abs(least), math.Abs(most)) > WorthTelling {
		out += fmt.Sprintf("; on the shape as carved (linear) the bridge sinks %.1f to %.1f %% less", 100*least, 100*most)
	}
	return out + ".\n"
}

// nextCommand is the command to go on with, with a depth in it: the sheet's, or as an
// exampleDepth the one in the middle of those tried.
func nextCommand(t *study.Trial) (head, command string) {
	switch {
	case t.Command == "" || len(t.Points) == 0:
		return "", ""
	case t.Sheet != nil:
		return "Next, to draw this as a bench sheet in true size", fmt.Sprintf("%s --depth %.4g -o bench", t.Command, t.Sheet.Depth)
	}
	return "Next, with this depth or the one that you choose: what to take off, how to check it, and what another plank makes of it",
		fmt.Sprintf("%s --depth %.4g", t.Command, exampleDepth(t))
}

// exampleDepth is the depth in the middle of those tried in the first shape.
func exampleDepth(t *study.Trial) float64 {
	n := 0
	for n < len(t.Points) && t.Points[n].Shape == t.Points[0].Shape {
		n++
	}
	return t.Points[n/2].Depth
}

func trialHead(twoFeet bool) string {
	if twoFeet {
		return "          of the two feet's force   % of full load                                       arch  strength\n" +
			"  depth    bass   inner  treble  touches  closes     gap  pressure  crush    sinks  rounder      used\n" +
			"     mm       %       %       %       at      at    left       MPa      %       mm       mm         %\n"
	}
	return "           of the foot's force      % of full load                                       arch  strength\n" +
		"  depth    bass  middle  treble  touches  closes     gap  pressure  crush    sinks  rounder      used\n" +
		"     mm       %       %       %       at      at    left       MPa      %       mm       mm         %\n"
}

func writePoint(b *strings.Builder, p *study.TrialPoint) {
	percent := func(v answer.Num, width int) string {
		if !v.Known() {
			return fmt.Sprintf("%*s", width, "-")
		}
		return fmt.Sprintf("%*.0f", width, 100*float64(v))
	}
	f := p.Bearing()
	strength := ""
	if p.StrengthUsed.Known() {
		strength = percent(p.StrengthUsed, 10)
	}
	row := fmt.Sprintf("%7.3f %7.1f %7.1f %7.1f %s %s %7.3f %9.3f %s %8.3f %8s%s", p.Depth,
		100*f.Ends[0], 100*f.Between, 100*f.Ends[1], percent(f.Touches, 8), percent(f.Closes, 7),
		p.GapLeft, float64(p.FootPressure), percent(p.FootUsed, 6), p.Sink, fmt.Sprintf("%+.3f", -p.TopBend), strength)
	b.WriteString(strings.TrimRight(row, " ") + "\n")
}

// folded breaks a text into lines of at most width letters behind two blanks.
func folded(text string, width int) string {
	var b strings.Builder
	at := 0
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' }) {
		n := len([]rune(w))
		switch {
		case at == 0:
			b.WriteString("  ")
			at = 2
		case at+1+n > width:
			b.WriteString("\n  ")
			at = 2
		default:
			b.WriteByte(' ')
			at++
		}
		b.WriteString(strings.ReplaceAll(w, "\u00a0", " "))
		at += n
	}
	return b.String()
}

// Instruction is a heading with what there is to do under it.
type Instruction struct {
	Head  string
	Lines []string
}

// Instructions say how to cut the relief of a trial's sheet and how to check it; nil
// without one.
func Instructions(t *study.Trial) []Instruction {
	p := t.Sheet
	if p == nil {
		return nil
	}
	most := mostOf(t, func(s study.BenchStation) float64 { return s.Remove }).Remove
	return []Instruction{
		{fmt.Sprintf("What to take off: %.2f mm (%.1f thousandths of an inch) at the deepest, %s", most, 1000*most/tree.Inch, p.Shape), []string{takeOffText(t)}},
		{"Check it with the strings slack", slackLines(t)},
		{"What should be left at full load", loadedLines(t)},
		{"How sure this is", sureLines(t)},
	}
}

// takeOffText lists the stations: x mm: hundredths of a millimetre, thousandths of
// an inch.
func takeOffText(t *study.Trial) string {
	parts := make([]string, len(t.Bench))
	for i, s := range t.Bench {
		parts[i] = fmt.Sprintf("at\u00a0%s:\u00a0%.0f\u00a0(%.1f)", signed(s.X), 100*s.Remove, 1000*s.Remove/tree.Inch)
	}
	return "Hundredths of a millimetre (thousandths of an inch) at millimetres from the bridge's middle, treble positive: " + strings.Join(parts, ", ") + "."
}

// mostOf is the station with the most of something, the nearest to the middle
// if there are several.
func mostOf(t *study.Trial, of func(study.BenchStation) float64) study.BenchStation {
	most := t.Bench[0]
	for _, s := range t.Bench {
		if d := of(s) - of(most); d > 1e-9 || d > -1e-9 && math.Abs(s.X) < math.Abs(most.X) {
			most = s
		}
	}
	return most
}

func slackLines(t *study.Trial) []string {
	most := mostOf(t, func(s study.BenchStation) float64 { return s.Gap })
	end := math.Max(t.Bench[0].Gap, t.Bench[len(t.Bench)-1].Gap)
	lines := []string{fmt.Sprintf("Stand the bridge on its place, strings slack, with no weight on it but its own. A feeler gauge of %.2f mm (%.1f thousandths of an inch) shall just go under %s, and one of %.2f mm not.",
		most.Gap, 1000*most.Gap/tree.Inch, whereWords(most.X), math.Round(100*most.Gap)/100+0.02)}
	if end < 0.005 {
		lines = append(lines, "Nothing shall go under the outer ends: they must touch over their whole width. Chalk on the top shows where they do.")
	}
	return append(lines, "Take the wood off the foot, never off the top, a little at a time; what is gone does not come back.")
}

func loadedLines(t *study.Trial) []string {
	p, f := t.Sheet, t.Sheet.Bearing()
	part := pickWords(len(p.Feet) > 0, "inner heels", "middle")
	verb := func(one, two string) string { return pickWords(len(p.Feet) > 0, two, one) }
	var lines []string
	switch {
	case f.Closes.Known():
		lines = append(lines, fmt.Sprintf("The %s first %s at %.0f %% and %s closed at %.0f %% of full load: tune up in steps and watch the gauge. At pitch no gauge shall go under the %s.",
			part, verb("touches", "touch"), 100*float64(f.Touches), verb("has", "have"), 100*float64(f.Closes), part))
		if f.Closes > 0 {
			lines = append(lines, TuningWords(float64(f.Closes)))
		}
		if p.GapLeft >= study.LeastGap {
			lines = append(lines, fmt.Sprintf("Elsewhere under the foot at most %.2f mm are left.", p.GapLeft))
		}
	case f.Touches.Known():
		lines = append(lines, fmt.Sprintf("The %s first %s at %.0f %% of full load and %s not close all along; left at most: %s.", part, verb("touches", "touch"), 100*float64(f.Touches), verb("does", "do"), study.GapWords(p.GapLeft)))
	default:
		lines = append(lines, fmt.Sprintf("The %s never %s: at pitch a gauge of %.2f mm still goes under %s.", part, verb("touches", "touch"), p.GapLeft, verb("it", "them")))
	}
	lines = append(lines, fmt.Sprintf("Then %s, the bridge has sunk %.2f mm, and the arch under the foot is %.2f mm %s.",
		carriedWords(p), p.Sink, math.Abs(p.TopBend), pickWords(p.TopBend > 0, "flatter", "rounder")))
	if p.FootUsed.Known() {
		lines = append(lines, fmt.Sprintf("The foot presses with at most %.2f MPa, averaged over 8 mm of it, %.0f %% of what crushes the softer wood in a short test.", float64(p.FootPressure), 100*float64(p.FootUsed)))
	}
	return lines
}

// carriedWords says what thirds or feet carry.
func carriedWords(p *study.TrialPoint) string {
	f := p.Bearing()
	if len(p.Feet) > 0 {
		return fmt.Sprintf("the bass foot carries %.0f %%, the treble foot %.0f %% of the force, the inner heels of both %.0f %%", 100*f.Ends[0], 100*f.Ends[1], 100*f.Between)
	}
	return fmt.Sprintf("the foot's thirds carry %.0f, %.0f and %.0f %% of its force (bass end, middle, treble end)", 100*f.Ends[0], 100*f.Between, 100*f.Ends[1])
}

// TuningWords say what strings have to be slackened to, to pull with a fraction p
// of full load, and how sure that is.
func TuningWords(p float64) string {
	return fmt.Sprintf("In tuning, %.0f %% of full load is about %.0f semitones below pitch, every string slackened alike (pull goes with the square of pitch: an octave below is 25 %%). Approximately: strings slackened unevenly shift it.",
		100*p, study.SemitonesBelow(p))
}

func whereWords(x float64) string {
	if math.Abs(x) < 0.5 {
		return "in the middle"
	}
	return fmt.Sprintf("at %s mm from the middle", signed(x))
}

// signed writes a place to the millimetre, with its sign unless it is 0.
func signed(x float64) string {
	if math.Abs(x) < 0.5 {
		return "0"
	}
	return fmt.Sprintf("%+.0f", x)
}

func sureLines(t *study.Trial) []string {
	s, h := &t.Wood.Softer, &t.Wood.Stiffer
	fs, fh, two := s.Bearing(), h.Bearing(), len(s.Feet) > 0
	return []string{
		fmt.Sprintf("Boards of one wood differ by about %.0f %% in stiffness; one in three by more. If all the wood is that much softer, or that much stiffer, than its card says: the %s %s at %s or %s of full load and %s %.0f or %.0f %%; the bridge sinks %.2f or %.2f mm.",
			100*t.Wood.Scatter, pickWords(two, "inner heels", "middle"), pickWords(two, "close", "closes"), orNever(fs.Closes), orNever(fh.Closes),
			pickWords(two, "carry", "carries"), 100*fs.Between, 100*fh.Between, s.Sink, h.Sink),
		"Not in these numbers: how well the foot fits, a foot that slips sideways, the top's own creep over the years (it closes the gap further), moisture, and strings retuned. The maker's own judgement comes first; where people may be hurt, ask someone qualified.",
	}
}

func orNever(v answer.Num) string {
	if !v.Known() {
		return "never"
	}
	return fmt.Sprintf("%.0f %%", 100*float64(v))
}
