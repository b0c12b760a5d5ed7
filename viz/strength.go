package viz

import (
	"fmt"

	"archload/cases/answer"
	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/figure"
	"archload/viz/scale"
)

// drawStress draws the stress at one face, along or across the grain; the gauges
// read it too.
func (u subject) drawStress(inner, across bool) (*canvas.Picture, error) {
	name, zeta := "outer", 1.0
	if inner {
		name, zeta = "inner", -1
	}
	v, other := answer.StressFields(u.s, zeta)
	way := "along"
	if across {
		way, v = "across", other
	}
	d := drawingOf(u.s, u.r)
	d.Gauges = nil
	for _, g := range u.r.Gauges {
		at := g.Outer
		if inner {
			at = g.Inner
		}
		m := figure.Mark{Name: g.Name, At: mesh.Point{g.X, g.Y}, Value: at.Along, Unit: "MPa"}
		if across {
			m.Value = at.Across
		}
		d.Gauges = append(d.Gauges, m)
	}
	return u.drawLoaded(d, figure.Field{Name: "stress " + way + " the grain, " + name + " face", Unit: "MPa", PerTriangle: v, Kind: scale.Signed})
}

// drawStrengthUsed draws the share of strength used, and marks the worst place.
func (u subject) drawStrengthUsed() (*canvas.Picture, error) {
	s, r := u.s, u.r
	used, _ := answer.StrengthFields(s)
	d := drawingOf(s, r)
	d.Gauges = []figure.Mark{{Name: fmt.Sprintf("the worst place itself, %s face", r.Strength.Surface), Worst: true,
		At: mesh.Point{float64(r.Strength.X), float64(r.Strength.Y)}, Value: 100 * float64(r.Strength.Used), Unit: "%"}}
	return u.drawLoaded(d, figure.Field{Name: "strength used at the worse face, means over one thickness", Unit: "%", PerTriangle: used})
}
