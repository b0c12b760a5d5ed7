package viz

import (
	"slices"

	"archload/viz/canvas"
	"archload/viz/figure"
)

// graduated says whether the plate has more than one thickness.
func (u subject) graduated() bool {
	h := u.thickness()
	return slices.Max(h)-slices.Min(h) > 0.1
}

// thickness is that of the plate at its nodes, mm.
func (u subject) thickness() []float64 {
	h := make([]float64, len(u.s.Top.Built.Mesh.Nodes))
	for i, n := range u.s.Top.Built.Mesh.Nodes {
		h[i] = n.H
	}
	return h
}

// drawHeight draws the arch.
func (u subject) drawHeight() (*canvas.Picture, error) {
	z := make([]float64, len(u.s.Top.Built.Mesh.Nodes))
	for i, n := range u.s.Top.Built.Mesh.Nodes {
		z[i] = n.P[2] + n.N[2]*n.H/2
	}
	return u.drawDesign(figure.Field{Name: "height of the outer surface", Unit: "mm", Nodal: z})
}

func (u subject) drawThickness() (*canvas.Picture, error) {
	return u.drawDesign(figure.Field{Name: "thickness", Unit: "mm", Nodal: u.thickness()})
}

func (u subject) drawDesign(f figure.Field) (*canvas.Picture, error) {
	d := drawingOf(u.s, u.r)
	d.Gauges = nil
	return u.drawPlan(d, f, f.Name)
}
