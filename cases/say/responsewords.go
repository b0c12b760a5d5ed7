package say

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"archload/cases/tone"
)

// WriteResponse prints how readily designs answer, side by side by thirds of octaves; of one design
// also how long the strings' notes last.
func WriteResponse(w io.Writer, list []*tone.ResponseReport) error {
	b := &strings.Builder{}
	for i, r := range list {
		if len(list) > 1 {
			fmt.Fprintf(b, "%d  ", i+1)
		}
		own := ""
		if len(r.Losses) > 0 {
			own = ", each wood's own where it is known"
		}
		fmt.Fprintf(b, "%s (%s, loss %g%s)\n", r.Title, r.State, r.Loss, own)
	}
	fmt.Fprintln(b)
	for k, p := range list[0].Response.Paths {
		if p.Drive == p.At || p.At == tone.AirShifted {
			writeLevels(b, list, k)
		}
	}
	if len(list) == 1 {
		writeDecays(b, list[0])
	}
	section(b, "How far to trust it")
	line(b, "made of", "%d tones up to %.0f Hz, and the movements at rest for what lies beyond", list[0].Tones, list[0].Reaches)
	line(b, "triangles carry", "waves up to about %.0f Hz", list[0].GoodTo)
	for _, c := range list[0].Cautions {
		line(b, "caution", "%s", c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// writeLevels prints one path of all designs by bands.
func writeLevels(b *strings.Builder, list []*tone.ResponseReport, k int) {
	p := list[0].Response.Paths[k]
	what := "moves when driven there"
	if p.At == tone.AirShifted {
		what = "air shifted"
	}
	section(b, fmt.Sprintf("Driven at %s: %s, level in dB by thirds of octaves", p.Drive, what))
	if p.Drive == p.At && strings.Contains(p.Drive, "along the strings") {
		fmt.Fprintln(b, "  (a plucked string pulls this way at twice its note, because its tension rises twice in a swing)")
	}
	fmt.Fprintf(b, "  %8s", "Hz")
	for i := range list {
		fmt.Fprintf(b, " %8d", i+1)
		if i > 0 {
			fmt.Fprintf(b, " %7s", fmt.Sprintf("%d - 1", i+1))
		}
	}
	fmt.Fprintln(b)
	for j, band := range list[0].Bands {
		fmt.Fprintf(b, "  %8g", band.Nominal)
		for i, r := range list {
			fmt.Fprintf(b, " %8.1f", float64(r.Bands[j].Levels[k]))
			if i > 0 {
				fmt.Fprintf(b, " %+7.1f", float64(r.Bands[j].Levels[k]-band.Levels[k]))
			}
		}
		fmt.Fprintln(b)
	}
}

// writeDecays prints how long the notes last.
func writeDecays(b *strings.Builder, r *tone.ResponseReport) {
	if len(r.Strings) == 0 {
		return
	}
	section(b, "How long notes last, s to lose 60 dB by the bridge alone, from the open string up by semitones")
	for _, s := range r.Strings {
		fmt.Fprintf(b, "  %-8s", s.Name)
		for _, n := range s.Notes {
			mark := " "
			if n.Strong {
				mark = "!"
			}
			cell := "  -"
			if n.Decay.Known() {
				cell = seconds(float64(n.Decay))
			}
			fmt.Fprintf(b, " %4s%s", cell, mark)
		}
		fmt.Fprintln(b)
	}
	fmt.Fprintln(b, "  !: a strong note: string and top swing as one there, and the figure does not hold")
	if slices.ContainsFunc(r.Strings, func(d tone.Decay) bool { return d.Guessed }) {
		fmt.Fprintln(b, "  what a string weighs or what its core is was not given everywhere; it was taken from its tension and note")
	}
}

// seconds is a time in few figures.
func seconds(t float64) string {
	if t >= 100 || math.IsInf(t, 0) {
		return ">100"
	}
	if t >= 10 {
		return fmt.Sprintf("%.0f", t)
	}
	return fmt.Sprintf("%.1f", t)
}
