package say

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"archload/cases/answer"
	"archload/cases/tone"
)

// WriteTones prints the tones of designs in a maker's words, and those of the later ones beside
// those of the first.
func WriteTones(w io.Writer, list []*tone.Report) error {
	b := &strings.Builder{}
	for i, r := range list {
		title := r.Title
		if len(list) > 1 {
			title = fmt.Sprintf("%d  %s", i+1, r.Title)
		}
		fmt.Fprintf(b, "%s\n\n", title)
		section(b, toneHeading(r))
		writeToneTable(b, r)
		if i > 0 {
			writeLikeness(b, i+1, r, list[0])
		}
		writeHeard(b, r)
		writeChanges(b, r)
		section(b, "How far to trust it")
		line(b, "none is missing", "%d tones and %d free motions lie below %.1f Hz, by a count of its own", r.Counted.Count-r.Counted.Free, r.Counted.Free, r.Counted.Below)
		line(b, "triangles carry", "tones up to about %.0f Hz", r.GoodTo)
		if i < len(list)-1 {
			fmt.Fprintln(b)
			continue
		}
		for _, c := range r.Cautions {
			line(b, "left out", "%s", c)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// writeLikeness sets the tones of design n beside those of the first one.
func writeLikeness(b *strings.Builder, n int, r, first *tone.Report) {
	section(b, fmt.Sprintf("Tones of %d that swing as those of 1 do", n))
	for _, l := range r.Like {
		if l.First == 0 {
			line(b, fmt.Sprintf("%d: %.1f Hz", l.Tone, r.Tones[l.Tone-1].Hz), "none of 1 swings so")
			continue
		}
		line(b, fmt.Sprintf("%d: %.1f Hz", l.Tone, r.Tones[l.Tone-1].Hz), "tone %d of 1, %.1f Hz: %+.1f %%  (%.0f %% alike)",
			l.First, first.Tones[l.First-1].Hz, 100*float64(l.Rise), 100*l.Alike)
	}
}

// changeColumns is how many tones have a column of what moves them.
const changeColumns = 8

// leastChange is what counts for nothing in that table, percent for a percent.
const leastChange = 0.005

// writeChanges prints which way wood, thickness and bars move the tones.
func writeChanges(b *strings.Builder, r *tone.Report) {
	if len(r.Changes) == 0 {
		return
	}
	n := min(len(r.Tones), changeColumns)
	section(b, "What moves the tones: percent for one percent more")
	fmt.Fprintf(b, "  %-34s", "tone")
	for i := range n {
		fmt.Fprintf(b, " %6d", i+1)
	}
	fmt.Fprintln(b)
	for _, c := range r.Changes {
		if !slices.ContainsFunc(c.PerPercent[:n], func(v answer.Num) bool { return math.Abs(float64(v)) >= leastChange }) {
			continue
		}
		fmt.Fprintf(b, "  %-34s", c.Words)
		for _, v := range c.PerPercent[:n] {
			fmt.Fprintf(b, " %+6.2f", float64(v))
		}
		fmt.Fprintln(b)
	}
	fmt.Fprintln(b, "  what moves none of them by 0.005 is left out; the shape of a tone changes no more than at second order")
}

// toneHeading says what vibrates.
func toneHeading(r *tone.Report) string {
	switch r.State {
	case "free":
		return "Tones of the plate in the hand: no edge, no sides, no strings"
	case "bare":
		if r.Counted.Free > 0 {
			return "Tones of the whole body hung in the air, without strings, bridge and neck"
		}
		return "Tones of the top on its edge, without strings and bridge"
	}
	return fmt.Sprintf("Tones of the strung top, strings muted: %d points of the foot stay in contact", r.Bearing)
}

func writeToneTable(b *strings.Builder, r *tone.Report) {
	head := "      Hz     by mesh  pattern                            moves  plate braces sides"
	if r.State == "strung" {
		head += " bridge  the bridge"
	}
	fmt.Fprintf(b, "  %s\n", head)
	for i := range r.Tones {
		t := &r.Tones[i]
		mesh := "      "
		if t.Error.Known() {
			mesh = fmt.Sprintf("%5.1f%%", 100*float64(t.Error))
		}
		fmt.Fprintf(b, "  %2d %7.1f  %s  %-32s %6.1f g %4.0f%% %5.0f%% %4.0f%%", i+1, t.Hz, mesh, t.Pattern, t.ModalMass,
			100*t.Share.Plate, 100*t.Share.Braces, 100*t.Share.Sides)
		if t.Bridge != nil {
			fmt.Fprintf(b, " %5.0f%%  %s", 100*t.Share.Bridge, t.Bridge.Words)
		}
		fmt.Fprintln(b)
	}
	fmt.Fprintln(b, "  moves: the mass that would swing alike at the place that moves most; shares: of the movement")
}

// writeHeard sets the heard tones beside the computed ones.
func writeHeard(b *strings.Builder, r *tone.Report) {
	if len(r.Heard) == 0 {
		return
	}
	section(b, "Heard and computed")
	for _, h := range r.Heard {
		name := fmt.Sprintf("%.1f Hz", h.Hz)
		if h.Pattern != "" {
			name += ", " + h.Pattern
		}
		if h.Tone == 0 {
			line(b, name, "no tone near it")
			continue
		}
		t := &r.Tones[h.Tone-1]
		line(b, name, "tone %d, %.1f Hz, %s: %+.1f %%, by %s", h.Tone, t.Hz, t.Pattern, 100*float64(h.Deviation), h.By)
	}
}
