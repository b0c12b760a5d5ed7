package viz

import (
	"math"

	"archload/cases"
	"archload/mesh"
)

// oneScalePages draws the cases' fields with one legend for all, so that they
// can be laid beside each other; for two cases also what the second has more
// than the first.
func oneScalePages(sols []*cases.Solution, c *cases.Comparison, bare bool) []Page {
	sink := make([]Field, len(sols))
	for i, s := range sols {
		sink[i] = Field{Name: "sink of the outer surface", Unit: "mm", Nodal: s.SinkField(), Signed: true}
	}
	pages := sameScale("sink", subjects(sols, c, bare), sink)
	if len(sols) != 2 {
		return pages
	}
	pages = append(pages, differencePage("sink", subjects(sols, c, bare), sink))
	used := make([]Field, 2)
	for i, s := range sols {
		v, _ := s.StrengthFields()
		used[i] = Field{Name: "strength used at the worse face, means over one thickness", Unit: "%", Nodal: NodeMeans(s.Top.Built.Mesh.Plan, v)}
	}
	pages = append(pages, sameScale("strength-used", subjects(sols, c, bare), used)...)
	return append(pages, differencePage("strength-used", subjects(sols, c, bare), used))
}

// subjects are the designs of a comparison.
func subjects(sols []*cases.Solution, c *cases.Comparison, bare bool) []subject {
	out := make([]subject, len(sols))
	for i, s := range sols {
		out[i] = subject{s, c.Reports[i], bare}
	}
	return out
}

// sameScale draws one field of each case over one range.
func sameScale(name string, subjects []subject, f []Field) []Page {
	r := SharedRange(f...)
	var out []Page
	for i, u := range subjects {
		one := f[i]
		one.Range = &r
		d := drawingOf(u.s, u.r)
		if one.Unit != "mm" {
			d.Gauges = nil // they read millimetres
		}
		out = append(out, u.planPage(name+"-"+cases.Letter(i), d, one))
	}
	return out
}

// differencePage draws the second field less the first, on the first's plan.
func differencePage(name string, of []subject, f []Field) Page {
	return Page{Name: name + "-difference", picture: func() (*Picture, error) {
		a, b := of[0].s, of[1].s
		field := Field{Name: f[0].Name + ", B less A", Unit: f[0].Unit, Signed: true, Nodal: Difference(a, b, f[0].Nodal, f[1].Nodal)}
		words := of[0].caption()
		words.Title = "What changes from A to B: " + f[0].Name
		words.Subtitle = "brown: more in B; blue: less in B; outline, braces and bridge are those of A"
		words.Facts = []string{"A: " + of[0].r.Title, "B: " + of[1].r.Title}
		d := drawingOf(a, of[0].r)
		d.Gauges = nil
		return PlanView(PlanInput{Caption: words, Plan: a.Top.Built.Mesh.Plan, Field: &field, Drawing: d})
	}}
}

// Difference is vb less va, nodal values, at the nodes of a's plan; NaN where b has no plate.
func Difference(a, b *cases.Solution, va, vb []float64) []float64 {
	const edge = 1.0 // mm by which an outline of chords may miss another's
	loc := mesh.NewLocator(b.Top.Built.Mesh.Plan)
	out := make([]float64, len(va))
	for n, q := range a.Top.Built.Mesh.Points {
		tri, bary, _ := loc.Find(q)
		v := -va[n]
		var at mesh.Point
		for k, m := range b.Top.Built.Mesh.Tris[tri] {
			if bary[k] != 0 {
				v += bary[k] * vb[m]
			}
			at[0] += bary[k] * b.Top.Built.Mesh.Points[m][0]
			at[1] += bary[k] * b.Top.Built.Mesh.Points[m][1]
		}
		if math.Hypot(at[0]-q[0], at[1]-q[1]) > edge {
			v = math.NaN()
		}
		out[n] = v
	}
	return out
}
