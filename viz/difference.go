package viz

import (
	"math"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/say"
	"archload/cases/study"

	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/figure"
	"archload/viz/scale"
)

// oneScalePages draws the cases' fields with one legend for all, so that they
// can be laid beside each other; for two cases also what the second has more
// than the first.
func oneScalePages(sols []*design.Solution, c *study.Comparison) []Page {
	sink := oneScale{
		name:  "sink",
		words: "the sink in plan, from outside, mm; one scale for all designs.",
		less:  "What B sinks more (brown) or less (blue) than A, mm; outline, braces and bridge are those of A.",
	}
	for _, s := range sols {
		sink.fields = append(sink.fields, sinkField(s))
	}
	pages := sink.pages(sols, c)
	if len(sols) != 2 {
		return pages
	}
	used := oneScale{
		name:  "strength-used",
		words: "how much of the wood's short-term strength is used at the worse face, means over one thickness, %; one scale for all designs.",
		less:  "What B uses more (brown) or less (blue) of the wood's strength than A, % of the strength; outline, braces and bridge are those of A.",
	}
	for _, s := range sols {
		v, _ := answer.StrengthFields(s)
		used.fields = append(used.fields, figure.Field{Name: "strength used at the worse face, means over one thickness", Unit: "%", Nodal: figure.NodeMeans(s.Top.Built.Mesh.Plan, v)})
	}
	pages = append(pages, sink.difference(sols, c))
	return append(append(pages, used.pages(sols, c)...), used.difference(sols, c))
}

// oneScale is one field of several cases.
type oneScale struct {
	name   string
	words  string // what one of its pages shows
	less   string // what the page of the difference shows
	fields []figure.Field
}

// pages draws the field of each case over one range.
func (o oneScale) pages(sols []*design.Solution, c *study.Comparison) []Page {
	r := figure.SharedRange(o.fields...)
	var out []Page
	for i, f := range o.fields {
		f.Range = &r
		letter := say.Letter(i)
		out = append(out, Page{
			Name:  o.name + "-" + letter,
			Words: letter + ", " + c.Titles[i] + ": " + o.words,
			draw: func(bare bool) (*canvas.Picture, error) {
				u := subject{sols[i], c.Reports[i], bare}
				d := drawingOf(u.s, u.r)
				if f.Unit != "mm" {
					d.Gauges = nil // they read millimetres
				}
				return u.drawLoaded(d, f)
			},
		})
	}
	return out
}

// difference draws the second field less the first, on the first's plan.
func (o oneScale) difference(sols []*design.Solution, c *study.Comparison) Page {
	return Page{Name: o.name + "-difference", Words: o.less, draw: func(bare bool) (*canvas.Picture, error) {
		a, b, f := sols[0], sols[1], o.fields
		field := figure.Field{Name: f[0].Name + ", B less A", Unit: f[0].Unit, Kind: scale.Signed, Nodal: Difference(a, b, f[0].Nodal, f[1].Nodal)}
		words := subject{a, c.Reports[0], bare}.caption()
		words.Title = "What changes from A to B: " + f[0].Name
		words.Subtitle = "brown: more in B; blue: less in B; outline, braces and bridge are those of A"
		words.Facts = []string{"A: " + c.Reports[0].Title, "B: " + c.Reports[1].Title}
		d := drawingOf(a, c.Reports[0])
		d.Gauges = nil
		return figure.PlanView(figure.PlanInput{Caption: words, Plan: a.Top.Built.Mesh.Plan, Field: &field, Drawing: d})
	}}
}

// Difference is vb less va, nodal values, at the nodes of a's plan; NaN where b has no plate.
func Difference(a, b *design.Solution, va, vb []float64) []float64 {
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
