package scene

import (
	"image/color"
	"math"

	"archload/cases/answer"
	"archload/cases/design"
)

func backColor() color.NRGBA      { return color.NRGBA{206, 142, 78, 74} }
func solidBackColor() color.NRGBA { return color.NRGBA{224, 176, 118, 255} }

// BackValues is a field of a body's back at the nodes of its mesh, in the field's unit; nil
// without a body and for fields that are of the top alone. Down is out of the body; the
// outer face is the one seen from behind.
func BackValues(s *design.Solution, f Field, face Face) []float64 {
	k := s.Top.Built.Back
	if k == nil {
		return nil
	}
	back := plateFields{k.Mesh.Plan, answer.BackSinkField, answer.BackStressFields,
		func(s *design.Solution) []float64 { used, _ := answer.BackStrengthField(s); return used }}
	return back.values(s, f, face)
}

// back adds the back of a body, faint, with the lines of its bars.
func (b *build) back() {
	k := b.s.Top.Built.Back
	if k == nil {
		return
	}
	pts := make([]vec, len(k.Mesh.Nodes))
	for i := range pts {
		pts[i] = b.moved(k.First + int32(i))
	}
	tris := make([][3]int32, len(k.Mesh.Tris))
	for i, t := range k.Mesh.Tris {
		tris[i] = [3]int32{t[0], t[2], t[1]}
	}
	o := &Solid{Name: "back", Points: pts, Normals: normals(pts, tris), Tris: tris, Along: vec{0, 1, 0}, Paint: backColor()}
	for _, p := range k.Mesh.Points { // two halves joined in the middle
		o.Across = append(o.Across, p[0])
	}
	if b.in.Behind {
		o.Paint = solidBackColor()
		if b.in.Field != Wood && !b.in.Field.OnFoot() && !b.in.Difference {
			o.Values = BackValues(b.s, b.in.Field, b.in.Face)
		}
	}
	b.solid(o)
	edge := make([]vec, 0, len(k.Mesh.Rim)+1)
	for _, n := range k.Mesh.Rim {
		edge = append(edge, pts[n])
	}
	b.line(&Line{Points: append(edge, edge[0]), Width: 1, Paint: softColor()})
	for _, bar := range k.Bars {
		var l []vec
		for i := range bar.Count {
			e := &b.s.Top.Built.Model.Beams[bar.First+i]
			if i == 0 {
				l = append(l, b.moved(e.Nodes[0]))
			}
			l = append(l, b.moved(e.Nodes[1]))
		}
		b.line(&Line{Points: l, Width: 3, Paint: softColor()})
	}
}

// moved is a node of the model as drawn.
func (b *build) moved(n int32) vec {
	u := b.s.Result.U[6*n : 6*n+3]
	return plus(b.s.Top.Built.Model.Nodes[n].P, b.e, vec{u[0], u[1], u[2]})
}

// onBack is where a post that stands at a place in plan meets the back as drawn;
// ok is false without one.
func (b *build) onBack(x, y float64) (foot vec, ok bool) {
	k := b.s.Top.Built.Back
	if k == nil {
		return foot, false
	}
	best, near := int32(0), math.Inf(1)
	for i, p := range k.Mesh.Points {
		if d := math.Hypot(p[0]-x, p[1]-y); d < near {
			best, near = int32(i), d
		}
	}
	at := b.moved(k.First + best)
	return vec{x, y, at[2]}, true
}
