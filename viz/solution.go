package viz

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"

	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/figure"
)

func loadWords(r *answer.Report) string {
	if r.Strings == nil {
		return fmt.Sprintf("under %.0f N on the plate", math.Abs(r.Reactions.Applied[2]))
	}
	return fmt.Sprintf("strings pressing with %.0f N", r.Strings.Downforce)
}

func captionOf(s *design.Solution, r *answer.Report) canvas.Caption {
	c := s.Top.Built.Case
	facts := []string{c.Plate.Wood + ", " + c.Plate.Made, edgeWords(c.Rim.Support)}
	if c.Bridge != nil && r.Bridge != nil {
		facts = append(facts, "bridge of "+c.Bridge.Wood+", "+holdWords(c.Bridge.Hold, c.Bridge.Friction))
	}
	foot := fmt.Sprintf("archload; %d nodes", r.Mesh.Nodes)
	if r.Error.Discretisation.Known() {
		foot += fmt.Sprintf(", mesh error about %.1f %%", 100*float64(r.Error.Discretisation))
	}
	if bad := r.Error.Failed(); len(bad) > 0 {
		foot += "; BUILT-IN CHECKS FAILED"
	} else {
		foot += "; built-in checks passed"
	}
	return canvas.Caption{Title: r.Title, Facts: facts, Warnings: r.Warnings, Footer: foot}
}

// edgeWords says in a few words how the edge is held.
func edgeWords(support string) string {
	switch support {
	case "hinged":
		return "edge held, free to turn"
	case "clamped":
		return "edge held, not free to turn"
	case "free":
		return "edge free"
	case "body":
		return "whole body"
	}
	return "edge on elastic sides"
}

// strips are the braces that are glued in, in plan, with their names if they are to be written.
func strips(braces []cases.Brace, named bool) []figure.Strip {
	var out []figure.Strip
	for i := range braces {
		b := &braces[i]
		if !b.Fitted {
			continue
		}
		s := figure.Strip{Line: b.Line, Half: []float64{b.Width.Max() / 2}}
		if named {
			s.Name = b.Name
		}
		out = append(out, s)
	}
	return out
}

func drawingOf(s *design.Solution, r *answer.Report) figure.Drawing {
	d := figure.Drawing{Grain: float64(s.Top.Built.Case.Plate.GrainAngle)}
	d.Outline, d.Holes = answer.Outlines(s)
	d.Braces = strips(s.Top.Built.Case.Braces, true)
	for _, g := range r.Gauges {
		m := figure.Mark{Name: g.Name, At: mesh.Point{g.X, g.Y}, Value: g.Sink, Unit: "mm"}
		if g.Measured.Known() {
			v := float64(g.Measured)
			m.Measured = &v
		}
		d.Gauges = append(d.Gauges, m)
	}
	if b := s.Top.Built.Case.Bridge; b != nil && r.Bridge != nil {
		for i := range b.Feet {
			lo, hi := b.FootRect(i)
			d.Feet = append(d.Feet, []mesh.Point{lo, {hi[0], lo[1]}, hi, {lo[0], hi[1]}})
		}
	}
	return d
}

func sectionOf(s *design.Solution, name string) figure.Section {
	y := 0.0
	if s.Top.Built.Case.Bridge != nil {
		y = s.Top.Built.Case.Bridge.At[1]
	}
	c := s.CutAcross(y)
	out := figure.Section{Name: name, Outer: c.Outer, Inner: c.Inner, Sink: c.Sink, Across: c.Drift}
	for _, q := range c.At {
		out.X = append(out.X, q[0])
	}
	return out
}

func footName(i, n int) string {
	if n == 1 {
		return "foot"
	}
	return [2]string{"bass foot", "treble foot"}[min(i, 1)]
}

// holdWords say what holds the foot sideways.
func holdWords(hold string, coefficient float64) string {
	if hold == "friction" {
		return fmt.Sprintf("friction %.2f", coefficient)
	}
	return hold
}
