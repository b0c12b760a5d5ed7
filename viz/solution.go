package viz

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/figure"
)

func loadWords(r *cases.Report) string {
	if r.Strings == nil {
		return fmt.Sprintf("under %.0f N on the plate", math.Abs(r.Reactions.Applied[2]))
	}
	return fmt.Sprintf("strings pressing with %.0f N", r.Strings.Downforce)
}

func captionOf(s *cases.Solution, r *cases.Report) canvas.Caption {
	c := s.Top.Built.Case
	facts := []string{c.Plate.Wood + ", " + c.Plate.Made, edgeWords(c.Rim.Support)}
	if c.Bridge != nil && r.Bridge != nil {
		facts = append(facts, "bridge of "+c.Bridge.Wood+", "+c.Bridge.Hold)
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
	return canvas.Caption{Title: r.Title, Facts: facts, Footer: foot}
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
	}
	return "edge on elastic sides"
}

func drawingOf(s *cases.Solution, r *cases.Report) figure.Drawing {
	d := figure.Drawing{Grain: float64(s.Top.Built.Case.Plate.GrainAngle)}
	d.Outline, d.Holes = s.Outlines()
	for i := range s.Top.Built.Case.Braces {
		if b := &s.Top.Built.Case.Braces[i]; b.Fitted {
			d.Braces = append(d.Braces, figure.Strip{Name: b.Name, Line: b.Line, Half: []float64{b.Width.Max() / 2}})
		}
	}
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

func sectionOf(s *cases.Solution, name string) figure.Section {
	y := 0.0
	if s.Top.Built.Case.Bridge != nil {
		y = s.Top.Built.Case.Bridge.At[1]
	}
	c := s.CrossCut(y)
	return figure.Section{Name: name, X: c.X, Outer: c.Outer, Inner: c.Inner, Sink: c.Sink, Across: c.Across}
}

func (u subject) crossArch() figure.CrossArchInput {
	s, r := u.s, u.r
	in := figure.CrossArchInput{Caption: u.caption(), Section: sectionOf(s, r.Title)}
	in.Caption.Subtitle = "cross-arch at the bridge, seen from the tail, " + loadWords(r)
	for _, c := range s.FootColumns() {
		if c.Foot == len(in.Feet) {
			in.Feet = append(in.Feet, figure.FootSection{Name: footName(c.Foot, len(s.Top.Built.Case.Bridge.Feet))})
		}
		f := &in.Feet[c.Foot]
		f.X, f.Relief = append(f.X, c.X), append(f.Relief, c.Relief)
		f.Gap, f.Force = append(f.Gap, c.Gap), append(f.Force, c.Force)
	}
	if b := r.Bridge; b != nil && len(in.Feet) == 1 {
		x := in.Feet[0].X
		lo, hi := x[0], x[len(x)-1]
		for k, p := range []struct {
			name  string
			share float64
		}{{"bass end", b.Share.BassEnd}, {"middle", b.Share.Middle}, {"treble end", b.Share.TrebleEnd}} {
			t := (hi - lo) / 3
			in.Shares = append(in.Shares, figure.Share{Name: p.name, From: lo + float64(k)*t, To: lo + float64(k+1)*t,
				Force: p.share * r.Bridge.Pressed()})
		}
	}
	return in
}

func footName(i, n int) string {
	if n == 1 {
		return "foot"
	}
	return [2]string{"bass foot", "treble foot"}[min(i, 1)]
}

func (u subject) footForce() figure.FootForceInput {
	r := u.r
	in := figure.FootForceInput{Caption: u.caption()}
	in.Caption.Subtitle = "what each third of the foot carries while the strings are brought up to pitch"
	for _, l := range r.Bridge.ByLoad {
		in.Load = append(in.Load, l.Load)
		in.BassEnd = append(in.BassEnd, l.Thirds[0])
		in.Middle = append(in.Middle, l.Thirds[1])
		in.TrebEnd = append(in.TrebEnd, l.Thirds[2])
	}
	for _, e := range []struct {
		at    cases.Num
		words string
	}{{r.Bridge.MiddleTouchesAt, "the middle first touches"}, {r.Bridge.MiddleClosesAt, "the middle has closed"}} {
		if e.at.Known() && e.at > 0 {
			in.Events = append(in.Events, figure.Event{At: float64(e.at), Words: e.words})
		}
	}
	return in
}
