package viz

import (
	"fmt"

	"archload/cases/answer"
	"archload/cases/tone"
	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/figure"
)

// SandPictures shows each tone as sand would: the plate in plan, how far it swings up and down, and
// the lines that stay still, where sand gathers.
func SandPictures(s *tone.ToneShapes, r *tone.ToneReport) []Page {
	var out []Page
	for i := range r.Tones {
		out = append(out, Page{
			Name:  fmt.Sprintf("tone-%02d", i+1),
			Words: "How the top swings in one tone, in plan, from outside, neck up, bass left: parts of one colour swing together, the lines between them stay still, and sand gathers there.",
			draw:  func(bare bool) (*canvas.Picture, error) { return sandPicture(s, r, i, bare) },
		})
	}
	return out
}

// stateWords says in a few words what vibrates.
func stateWords(state string) string {
	switch state {
	case "free":
		return "the plate in the hand"
	case "bare":
		return "on its edge, no strings"
	}
	return "strung, strings muted"
}

func sandPicture(s *tone.ToneShapes, r *tone.ToneReport, i int, bare bool) (*canvas.Picture, error) {
	b, t := s.Moving.Built, &r.Tones[i]
	c := canvas.Caption{Title: r.Title, Bare: bare,
		Subtitle: fmt.Sprintf("tone %d, %.1f Hz: %s", i+1, t.Hz, t.Pattern),
		Facts:    []string{b.Case.Plate.Wood + ", " + b.Case.Plate.Made, stateWords(r.State)},
		Footer:   fmt.Sprintf("archload; %d nodes; no air, back and neck held still", r.Nodes)}
	if t.Bridge != nil {
		c.Facts = append(c.Facts, "the bridge "+t.Bridge.Words)
	}
	w := s.Normal[i]
	d := figure.Drawing{Grain: float64(b.Case.Plate.GrainAngle)}
	d.Outline, d.Holes = answer.OutlinesOf(b)
	for k := range b.Case.Braces {
		if br := &b.Case.Braces[k]; br.Fitted {
			d.Braces = append(d.Braces, figure.Strip{Line: br.Line, Half: []float64{br.Width.Max() / 2}})
		}
	}
	d.Sand = stillLines(b.Mesh, w)
	f := figure.Field{Name: "swing square to the plate", Nodal: w, Signed: true, Plain: true, Range: &[2]float64{-1, 1}}
	return figure.PlanView(figure.PlanInput{Caption: c, Plan: b.Mesh.Plan, Field: &f, Drawing: d})
}

// stillLines are the lines between nodes that swing in opposite senses, triangle by triangle and
// joined end to end. A held edge is none of them.
func stillLines(m *mesh.Mesh, w []float64) [][]mesh.Point {
	type edge [2]int32
	next := map[edge][]edge{}
	key := func(a, b int32) edge { return edge{min(a, b), max(a, b)} }
	var order []edge
	for _, t := range m.Tris {
		var cut []edge
		for k := range 3 {
			if a, b := t[k], t[(k+1)%3]; w[a]*w[b] < 0 {
				cut = append(cut, key(a, b))
			}
		}
		if len(cut) != 2 {
			continue
		}
		for k := range cut {
			if len(next[cut[k]]) == 0 {
				order = append(order, cut[k])
			}
			next[cut[k]] = append(next[cut[k]], cut[1-k])
		}
	}
	place := func(e edge) mesh.Point {
		p, q, u := m.Points[e[0]], m.Points[e[1]], w[e[0]]/(w[e[0]]-w[e[1]])
		return mesh.Point{p[0] + u*(q[0]-p[0]), p[1] + u*(q[1]-p[1])}
	}
	seen := map[edge]bool{}
	var lines [][]mesh.Point
	follow := func(e edge) {
		var l []mesh.Point
		for ok := true; ok; {
			seen[e] = true
			l = append(l, place(e))
			ok = false
			for _, n := range next[e] {
				if !seen[n] {
					e, ok = n, true
					break
				}
			}
			if !ok && len(next[e]) == 2 && len(l) > 2 { // closed
				l = append(l, l[0])
			}
		}
		lines = append(lines, l)
	}
	for _, ends := range []bool{true, false} { // open lines from their ends, then closed ones
		for _, e := range order {
			if !seen[e] && (len(next[e]) == 1) == ends {
				follow(e)
			}
		}
	}
	return lines
}
