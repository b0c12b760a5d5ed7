package say

import (
	"fmt"
	"io"
	"strings"

	"archload/cases/stability"
)

// WriteGiving prints at how many times its load a design would lose its stability.
func WriteGiving(w io.Writer, r *stability.GivingReport) error {
	b := &strings.Builder{}
	if r.Title != "" {
		fmt.Fprintf(b, "%s\n\n", r.Title)
	}
	section(b, "At how many times its load it would give way (linear theory)")
	if r.Times != 1 {
		line(b, "load", "%.3g times that of the case", r.Times)
	}
	if r.Stability.Bearing > 0 {
		line(b, "foot", "%d points stay in contact", r.Stability.Bearing)
	}
	if len(r.Stability.Factors) == 0 {
		line(b, "gives way", "not at any load in this direction up to %.0f times", float64(r.Stability.NoneBelow))
	}
	for _, m := range r.Stability.Modes {
		line(b, "gives way at", "%.2f times the load: %s most at (%.0f, %.0f)%s", m.Factor, inOut(m), m.X, m.Y, besides(m))
	}
	if d := r.Stability.OverDecades; d[0].Known() {
		line(b, "over decades", "%.2f to %.2f times: wood under lasting load becomes softer", float64(d[0]), float64(d[1]))
	}
	if len(r.Stability.Factors) > 0 && r.Stability.NoneBelow.Known() {
		line(b, "none is missing", "below %.2f times, by a count of its own", float64(r.Stability.NoneBelow))
	}
	givingPath(b, r)
	section(b, "\nHow far to trust it")
	for _, c := range r.Cautions {
		line(b, "caution", "%s", c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// inOut says which way the place that moves most goes.
func inOut(m stability.GivingWay) string {
	if m.Inward {
		return "the top goes in"
	}
	return "the top goes out"
}

// besides says what moves the other way.
func besides(m stability.GivingWay) string {
	switch {
	case m.Elsewhere < 0.1:
		return ", one dent"
	case m.Elsewhere > 0.9:
		return ", and as far out as in elsewhere"
	}
	return fmt.Sprintf(", elsewhere %.0f %% as far the other way", 100*m.Elsewhere)
}

// givingPath says where the load on the moved shape ends.
func givingPath(b *strings.Builder, r *stability.GivingReport) {
	p := r.Stability.Path
	if p == nil {
		return
	}
	section(b, "\nOn its moved shape")
	for _, q := range p.Points {
		line(b, fmt.Sprintf("%.2f times the load", q.Factor), "sinks %.3f mm", q.Sink)
	}
	switch {
	case !p.Limit.Known():
		line(b, "gives way", "not up to there")
	case p.KnockDown.Known():
		decades := ""
		if d := r.Stability.OverDecades[0]; d.Known() {
			decades = fmt.Sprintf("; over decades from %.2f times on", float64(p.Limit*d)/r.Stability.Factors[0])
		}
		line(b, "gives way at", "%.2f times the load: %.0f %% of the linear factor%s", float64(p.Limit), 100*float64(p.KnockDown), decades)
	default:
		line(b, "gives way at", "%.2f times the load", float64(p.Limit))
	}
}

// GivesWay says in a sentence at how many times its load a design would lose its stability.
func GivesWay(r *stability.GivingReport) string {
	load := "its load"
	if r.Times != 1 {
		load = fmt.Sprintf("this load (%.3g times its own)", r.Times)
	}
	if len(r.Stability.Modes) == 0 {
		if !r.Stability.NoneBelow.Known() {
			return "By linear theory it would not give way under any load in this direction: an indication."
		}
		return fmt.Sprintf("By linear theory it would not give way up to %.0f times %s: an indication.", float64(r.Stability.NoneBelow), load)
	}
	m := r.Stability.Modes[0]
	from := ""
	if d := r.Stability.OverDecades[0]; d.Known() {
		from = fmt.Sprintf(", from %.1f times on", float64(d))
	}
	return fmt.Sprintf("By linear theory it would give way at %.1f times %s (%s most at (%.0f, %.0f)%s): an indication. A top that bends on its way gives way before, and wood under lasting load earlier still%s.",
		m.Factor, load, inOut(m), m.X, m.Y, besides(m), from)
}
