package say

import (
	"fmt"
	"io"
	"strings"

	"archload/cases/tone"
)

// WriteTones prints the tones of a design in a maker's words.
func WriteTones(w io.Writer, r *tone.Report) error {
	b := &strings.Builder{}
	if r.Title != "" {
		fmt.Fprintf(b, "%s\n\n", r.Title)
	}
	section(b, toneHeading(r))
	writeToneTable(b, r)
	writeHeard(b, r)
	section(b, "How far to trust it")
	line(b, "none is missing", "%d tones and %d free motions lie below %.1f Hz, by a count of its own", r.Counted.Count-r.Counted.Free, r.Counted.Free, r.Counted.Below)
	line(b, "triangles carry", "tones up to about %.0f Hz", r.GoodTo)
	for _, c := range r.Cautions {
		line(b, "left out", "%s", c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// toneHeading says what vibrates.
func toneHeading(r *tone.Report) string {
	switch r.State {
	case "free":
		return "Tones of the plate in the hand: no edge, no sides, no strings"
	case "bare":
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
			line(b, name, "no tone within a fifth of it")
			continue
		}
		t := &r.Tones[h.Tone-1]
		line(b, name, "tone %d, %.1f Hz, %s: %+.1f %%", h.Tone, t.Hz, t.Pattern, 100*float64(h.Deviation))
	}
}
