package viz

import (
	"fmt"
	"slices"

	"archload/cases/answer"
	"archload/cases/tone"
	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/figure"
	"archload/viz/scale"
)

// SandPictures shows each tone as sand would: the plate in plan, how far it swings up and down, and
// the lines that stay still, where sand gathers.
func SandPictures(s *tone.Shapes, r *tone.Report) []Page {
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

func sandPicture(s *tone.Shapes, r *tone.Report, i int, bare bool) (*canvas.Picture, error) {
	b, t := s.Moving.Built, &r.Tones[i]
	c := canvas.Caption{Title: r.Title, Bare: bare,
		Subtitle: fmt.Sprintf("tone %d, %.1f Hz: %s", i+1, t.Hz, t.Pattern),
		Facts:    []string{b.Case.Plate.Wood + ", " + b.Case.Plate.Made, stateWords(r.State)},
		Footer:   fmt.Sprintf("archload; %d nodes; %s", r.Nodes, r.LeftOut)}
	if t.Bridge != nil {
		c.Facts = append(c.Facts, "the bridge "+t.Bridge.Words)
	}
	w := s.Normal[i]
	d := figure.Drawing{Grain: float64(b.Case.Plate.GrainAngle)}
	d.Outline, d.Holes = answer.OutlinesOf(b)
	d.Braces = strips(b.Case.Braces, false)
	d.Sand = stillLines(b.Mesh, w)
	f := figure.Field{Name: "swing square to the plate", Nodal: w, Kind: scale.Signed, Plain: true, Range: &[2]float64{-1, 1}}
	return figure.PlanView(figure.PlanInput{Caption: c, Plan: b.Mesh.Plan, Field: &f, Drawing: d})
}

// stillLines are the lines between nodes that swing in opposite senses, triangle by triangle and
// joined end to end. A held edge is none of them.
func stillLines(m *mesh.Mesh, w []float64) [][]mesh.Point {
	s := still{next: map[crossed][]crossed{}, seen: map[crossed]bool{}}
	for _, t := range m.Tris {
		s.cut(t, w)
	}
	var lines [][]mesh.Point
	for _, ends := range []bool{true, false} { // open lines from their ends, then closed ones
		for _, e := range s.order {
			if s.seen[e] || (len(s.next[e]) == 1) != ends {
				continue
			}
			var l []mesh.Point
			for _, e := range s.follow(e) {
				p, q, u := m.Points[e[0]], m.Points[e[1]], w[e[0]]/(w[e[0]]-w[e[1]])
				l = append(l, mesh.Point{p[0] + u*(q[0]-p[0]), p[1] + u*(q[1]-p[1])})
			}
			lines = append(lines, l)
		}
	}
	return lines
}

// crossed is an edge between two nodes, the lower first, that a still line crosses.
type crossed [2]int32

// still joins the edges that lines cross: two that lie in one triangle follow each other.
type still struct {
	next  map[crossed][]crossed
	seen  map[crossed]bool
	order []crossed // as they were found
}

// cut joins the two edges of a triangle that a line crosses, if there are two.
func (s *still) cut(t [3]int32, w []float64) {
	var cut []crossed
	for k := range 3 {
		if a, b := t[k], t[(k+1)%3]; w[a]*w[b] < 0 {
			cut = append(cut, crossed{min(a, b), max(a, b)})
		}
	}
	if len(cut) != 2 {
		return
	}
	for k := range cut {
		if len(s.next[cut[k]]) == 0 {
			s.order = append(s.order, cut[k])
		}
		s.next[cut[k]] = append(s.next[cut[k]], cut[1-k])
	}
}

// follow lists the edges of one line from e on; a closed line ends where it begins.
func (s *still) follow(e crossed) []crossed {
	var l []crossed
	for {
		s.seen[e] = true
		l = append(l, e)
		i := slices.IndexFunc(s.next[e], func(n crossed) bool { return !s.seen[n] })
		if i >= 0 {
			e = s.next[e][i]
			continue
		}
		if len(s.next[e]) == 2 && len(l) > 2 {
			l = append(l, l[0])
		}
		return l
	}
}
