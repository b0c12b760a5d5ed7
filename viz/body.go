package viz

import (
	"math"

	"archload/cases/answer"
	"archload/cases/body"
	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/figure"
	"archload/viz/scale"
)

func (u subject) bodied() bool { return u.s.Top.Built.Back != nil }

func (u subject) goesOn() bool { return u.r.Body != nil && u.r.Body.Onward != nil }

// backStrong says whether the strength of the back's wood is known.
func (u subject) backStrong() bool {
	if !u.bodied() {
		return false
	}
	card, err := u.s.Top.Built.Case.Wood("body.back.wood")
	return err == nil && !math.IsNaN(answer.HoffmanUsed([6]float64{1}, 1, 5, card.Strength))
}

// backDrawing is the back in plan, seen through the top: its outline, holes and bars.
func (u subject) backDrawing() figure.Drawing {
	b := u.s.Top.Built
	d := figure.Drawing{Grain: float64(b.Case.Body.Back.GrainAngle)}
	d.Outline, _ = answer.Outlines(u.s)
	const chord = 0.1
	for _, h := range b.Geometry.Back.Holes {
		d.Holes = append(d.Holes, h.Polyline(chord))
	}
	d.Braces = strips(b.Case.Body.Back.Braces, true)
	return d
}

// drawBack draws a field of the loaded back.
func (u subject) drawBack(d figure.Drawing, f figure.Field) (*canvas.Picture, error) {
	c := u.caption()
	c.Subtitle = f.Name + ", seen through the top, " + loadWords(u.r)
	c.Facts[0] = "back of " + u.s.Top.Built.Case.Body.Back.Wood + ", " + u.s.Top.Built.Case.Body.Back.Made
	return figure.PlanView(figure.PlanInput{Caption: c, Plan: u.s.Top.Built.Back.Mesh.Plan, Field: &f, Drawing: d})
}

func (u subject) drawBackSink() (*canvas.Picture, error) {
	return u.drawBack(u.backDrawing(), figure.Field{Name: "movement of the back, out of the body positive", Unit: "mm", Nodal: answer.BackSinkField(u.s), Kind: scale.Signed})
}

func (u subject) drawBackStrength() (*canvas.Picture, error) {
	used, worst := answer.BackStrengthField(u.s)
	d := u.backDrawing()
	d.Gauges = []figure.Mark{{Name: "the worst place", Worst: true, At: mesh.Point{worst.X, worst.Y}, Value: worst.Value, Unit: "%"}}
	return u.drawBack(d, figure.Field{Name: "strength of the back used at the worse face, means over one thickness", Unit: "%", PerTriangle: used})
}

// drawSides draws what both sides, unrolled from the neck block to the tail block, take, give and carry.
func (u subject) drawSides() (*canvas.Picture, error) {
	o := u.r.Body.Onward
	c := u.caption()
	c.Subtitle = "where the load goes on through the sides, " + loadWords(u.r)
	in := figure.ChartInput{Caption: c, Across: "from neck block to tail block, % of the way", Names: []string{"bass side", "treble side"}}
	n := len(o.Bass.Stations)
	for i := range n {
		in.X = append(in.X, 100*(float64(i)+0.5)/float64(n))
	}
	read := func(name, unit string, get func(body.SideStation) float64) {
		p := figure.ChartPanel{Name: name, Unit: unit}
		for _, side := range []*body.SideFlow{&o.Bass, &o.Treble} {
			var l []float64
			for _, st := range side.Stations {
				l = append(l, get(st))
			}
			p.Lines = append(p.Lines, l)
		}
		in.Panels = append(in.Panels, p)
	}
	read("carried toward the tail", "N", func(s body.SideStation) float64 {
		return s.Carried - (s.Top-s.Back)*(s.To-s.From)/2
	})
	read("taken from the top", "N/mm", func(s body.SideStation) float64 { return s.Top })
	read("given to the back", "N/mm", func(s body.SideStation) float64 { return s.Back })
	return figure.Chart(in)
}
