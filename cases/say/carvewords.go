package say

import (
	"fmt"
	"io"
	"strings"

	"archload/cases/bench/carve"
)

// mostPlaces is how many places of the caliper a terminal is told of.
const mostPlaces = 12

// WriteCarving prints where wood is to come off a plate that is being carved.
func WriteCarving(w io.Writer, r *carve.Report) error {
	b := &strings.Builder{}
	section(b, "While carving, beside the graduation of "+r.Target)
	line(b, "too thick", "at %d of %d places of the caliper", r.TooThick, len(r.Places))
	if r.Most != nil {
		line(b, "take off most", "%.1f mm at (%.0f, %.0f): %.1f now, %.1f wanted", r.Most.TakeOff, r.Most.X, r.Most.Y, r.Most.Now, r.Most.Target)
	}
	if r.Thin != nil {
		line(b, "too thin already", "at %d places, by %.1f mm at (%.0f, %.0f): %.1f now, %.1f wanted", r.TooThin, -r.Thin.TakeOff, r.Thin.X, r.Thin.Y, r.Thin.Now, r.Thin.Target)
	}
	line(b, "thinnest reading", "%.1f mm", r.Thinnest)
	line(b, "weight of the plate", "%.0f g now, %.0f g at the target: %.0f g to lose", r.Weight.Now, r.Weight.Target, r.Weight.Now-r.Weight.Target)
	if r.Sink.Now.Known() && r.Sink.Target.Known() {
		line(b, "under the target's strings", "the bridge would sink %.2f mm as it is, %.2f mm at the target", r.Sink.Now, r.Sink.Target)
		line(b, "strength used", "%.0f %% as it is, %.0f %% at the target", 100*r.Used.Now, 100*r.Used.Target)
	}
	fmt.Fprintf(b, "  %-28s %9s %9s\n", "tones in the hand, Hz", "now", "target")
	for i, t := range r.Tones {
		fmt.Fprintf(b, "  %-28d %9.1f %9.1f  %s\n", i+1, t.Now, t.Target, both(t.Pattern, t.TargetPattern))
	}
	writePlaces(b, r)
	for _, c := range r.Cautions {
		line(b, "mind", "%s", c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// both says two patterns, or the one that both are.
func both(now, target string) string {
	if now == target {
		return now
	}
	return now + "; at the target " + target
}

// writePlaces lists the places that matter most.
func writePlaces(b *strings.Builder, r *carve.Report) {
	fmt.Fprintf(b, "  where it matters most, mm %17s %9s %9s\n", "now", "wanted", "tenths")
	for _, p := range r.Foremost(mostPlaces) {
		word := ""
		switch {
		case p.TakeOff >= r.Tolerance:
			word = "take off"
		case p.TakeOff <= -r.Tolerance:
			word = "too thin already"
		}
		fmt.Fprintf(b, "  (%6.0f, %6.0f) %26.1f %9.1f %9s  %s\n", p.X, p.Y, p.Now, p.Target, plainZeros(fmt.Sprintf("%+.0f", 10*p.TakeOff)), word)
	}
}
