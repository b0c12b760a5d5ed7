package main

import (
	"context"
	"fmt"
	"maps"
	"math"
	"strings"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/tree"
	"archload/materials"
)

// exactly is what rounding may do to two solves of one problem whose unknowns
// stand in another order, relative.
const exactly = 1e-9

// closely is what increments that end elsewhere may do to two solves of a foot that friction
// holds: the load at which a place closes is found to some millionths, movements a
// thousand times better.
const closely = 1e-5

// answers are the quantities of an answer by their keys, without what is about
// the mesh.
type answers map[string]float64

// solve answers a case at a mesh density.
func solve(ctx context.Context, c *cases.Case, refine float64) (answers, error) {
	s, err := design.Solve(ctx, c, design.Options{Workers: 1, Refine: refine, NoError: true, NoFlow: !answer.EdgeByFlow(c)})
	if err != nil {
		return nil, err
	}
	r := answer.Summarize(s)
	if bad := r.Error.Failed(); len(bad) > 0 {
		return nil, fmt.Errorf("built-in checks failed: %v", bad)
	}
	out := answers{}
	for _, q := range quantity.All() {
		if q.Compare != quantity.UnderMesh {
			out[q.Key] = float64(q.Get(r))
		}
	}
	for i, g := range r.Gauges {
		out[fmt.Sprintf("gauge %d sinks", i+1)] = g.Sink
	}
	return out, nil
}

// swapped are the quantities that a mirror image gives to each other.
func swapped() map[string]string {
	out := map[string]string{}
	for _, pair := range [][2]string{{"bass_end_sink", "treble_end_sink"}, {"bass_share", "treble_share"}, {"edge_bass", "edge_treble"},
		{"bass_foot_share", "treble_foot_share"}, {"bass_inner_share", "treble_inner_share"}} {
		out[pair[0]], out[pair[1]] = pair[1], pair[0]
	}
	return out
}

// mirrored are the answers that the mirror image of a design has to give.
func (a answers) mirrored() answers {
	m, other := answers{}, swapped()
	for k, v := range a {
		if o, ok := other[k]; ok {
			k = o
		}
		if k == "lean_sideways" {
			v = -v
		}
		m[k] = v
	}
	return m
}

// onEdge is what the sink of the apex may be off, relative: an apex on the centre
// line of a symmetric mesh lies on an edge between two triangles, and the outer
// face is read off either, whose normals differ.
const onEdge = 1e-4

// off is the greatest difference between two answers, of the number itself or of
// one unit in which it is shown in full (a thousandth of a millimetre, a percent),
// whichever is more, and where; infinite where only one has a number.
func (a answers) off(b answers) (worst float64, where string) {
	for _, q := range quantity.All() {
		x, known := a[q.Key]
		if !known {
			continue
		}
		d := apart(x, b[q.Key], math.Pow10(-q.Digits))
		if q.Key == "apex_sink" {
			d *= exactly / onEdge
		}
		if d > worst {
			worst, where = d, fmt.Sprintf("%s %.12g and %.12g", q.Key, x, b[q.Key])
		}
	}
	for k, x := range a {
		if !strings.HasPrefix(k, "gauge ") {
			continue
		}
		if d := apart(x, b[k], 1e-3); d > worst {
			worst, where = d, fmt.Sprintf("%s %.12g and %.12g", k, x, b[k])
		}
	}
	return worst, where
}

func apart(x, y, least float64) float64 {
	switch {
	case math.IsNaN(x) && math.IsNaN(y):
		return 0
	case math.IsNaN(x) || math.IsNaN(y):
		return math.Inf(1)
	}
	return math.Abs(x-y) / max(math.Abs(x), math.Abs(y), least)
}

// tauter is the case with every tension and every force so many times as great.
func tauter(c *cases.Case, times float64) *cases.Case {
	m := *c
	if c.Strings != nil {
		s := *c.Strings
		s.TensionScale *= times
		m.Strings = &s
	}
	m.Loads = append([]cases.TopLoad(nil), c.Loads...)
	for i := range m.Loads {
		for k := range m.Loads[i].Force {
			m.Loads[i].Force[k] *= tree.Force(times)
		}
	}
	return &m
}

// stiffer is the case in woods, posts and screws whose moduli are so many times as
// great; only narrows that to what a key names, such as "plate.wood".
func stiffer(c *cases.Case, times float64, only string) *cases.Case {
	m := *c
	m.Cards = maps.Clone(c.Cards)
	for key, card := range m.Cards {
		if only == "" || key == only {
			for _, e := range moduli(&card.Wood) {
				*e *= times
			}
			m.Cards[key] = card
		}
	}
	if only != "" {
		return &m
	}
	m.Posts = append([]cases.Post(nil), c.Posts...)
	for i := range m.Posts {
		m.Posts[i].Stiffness *= tree.Stiffness(times)
	}
	if c.Bridge != nil {
		b := *c.Bridge
		b.Posts.Modulus *= tree.Stress(times)
		m.Bridge = &b
	}
	return &m
}

func moduli(w *materials.Orthotropic) []*float64 {
	return []*float64{&w.EL, &w.ER, &w.ET, &w.GLR, &w.GLT, &w.GRT}
}

// thicker is the case with a plate so many times as thick.
func thicker(c *cases.Case, times float64) *cases.Case {
	m := *c
	m.Plate.ThicknessScale *= times
	return &m
}
