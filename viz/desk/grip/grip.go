package grip

import (
	"math"

	"archload/cases/design"
	"archload/cases/tree"
	"archload/mesh"
	"archload/viz/panel"
	"archload/viz/scene"
	"archload/viz/stage"
	"archload/viz/tool"
)

// Look is how a view sees its design.
type Look struct {
	View    int
	Of      *stage.Answered
	Scene   *scene.Scene
	Project func(p [3]float64) (x, y float64, ok bool) // on the page, points
}

// Hand is what the pointer does with the grips of a design. The zero value is ready.
type Hand struct {
	look  Look
	spots []spot
	near  *spot // under the pointer
	held  *held
}

// spot is a grip where it is seen.
type spot struct {
	tool.Grip
	at   [3]float64   // mm, as drawn
	line [][3]float64 // of its bar, as drawn
	on   panel.Point  // on the page
}

// held is a grip that the hand has taken.
type held struct {
	spot
	view int
	off  panel.Point // of the pointer from it, points
	by   mesh.Point  // how far it is moved in plan, mm
}

// reach is how near to a grip the pointer takes it, points.
const reach = 9.0

// Hover finds the grips of a view, more of them beside those of its design, and the one under the pointer.
func (h *Hand) Hover(look Look, at panel.Point, more []tool.Grip) {
	h.look, h.near, h.spots = look, nil, h.spots[:0]
	top := look.Of.Now.Top
	best := reach
	for _, g := range append(tool.Grips(top.Built.Case, Apex(top)), more...) {
		s := spot{Grip: g}
		var ok bool
		if s.at, ok = look.place(g.At, !g.Outer); !ok {
			continue
		}
		for _, p := range g.Line {
			if q, ok := look.place(p, true); ok {
				s.line = append(s.line, q)
			}
		}
		if s.on.X, s.on.Y, ok = look.Project(s.at); !ok {
			continue
		}
		h.spots = append(h.spots, s)
		if r := math.Hypot(at.X-s.on.X, at.Y-s.on.Y); r <= best {
			best, h.near = r, &s
		}
	}
}

// place is where a place in plan lies in the scene, mm.
func (l *Look) place(p mesh.Point, inside bool) ([3]float64, bool) {
	return l.Of.Skeleton.Place(l.Scene, l.Of.Now, scene.Mark{At: p, Inside: inside})
}

// Leave forgets what is under the pointer.
func (h *Hand) Leave() { h.near, h.spots = nil, nil }

// Near tells whether the pointer is on a grip.
func (h *Hand) Near() bool { return h.near != nil }

// Holds tells whether the hand holds a grip, and of which view.
func (h *Hand) Holds() (view int, held bool) {
	if h.held == nil {
		return 0, false
	}
	return h.held.view, true
}

// Take takes the grip under the pointer.
func (h *Hand) Take(at panel.Point) {
	h.held = &held{spot: *h.near, view: h.look.View, off: panel.Point{X: at.X - h.near.on.X, Y: at.Y - h.near.on.Y}}
}

// Let lets go.
func (h *Hand) Let() { h.held = nil }

// To what a grip is moved, and a number that is lifted; how far the pointer goes up for a millimetre of that.
const (
	step  = 0.5  // mm
	fine  = 0.05 // mm
	perMM = 100  // points
)

// Drag moves the held grip to where the pointer is, along the plane through it; straight: along or
// across alone, whichever is more. It gives the keys that this sets, and whether that is anything new.
func (h *Hand) Drag(look Look, at panel.Point, straight bool) ([]tree.KeyValue, bool) {
	g := h.held
	goal := panel.Point{X: at.X - g.off.X, Y: at.Y - g.off.Y}
	if g.Lifts {
		by := mesh.Point{0, fine * math.Round((g.on.Y-goal.Y)/perMM/fine)}
		if by == g.by {
			return nil, false
		}
		g.by = by
		return g.Set(by), true
	}
	by := seek(look, g.at, g.by, goal)
	if straight {
		if math.Abs(by[0]) < math.Abs(by[1]) {
			by[0] = 0
		} else {
			by[1] = 0
		}
	}
	for k := range by {
		by[k] = step * math.Round(by[k]/step)
	}
	if by == g.by {
		return nil, false
	}
	g.by = by
	return g.Set(by), true
}

// seek finds how far in plan a place must move to lie at a point of the page, by Newton's method.
// Where the plan is seen from its edge, only along the page.
func seek(look Look, from [3]float64, by mesh.Point, goal panel.Point) mesh.Point {
	const flat = 0.15 // of the longer axis: a shorter one is seen from its edge
	at := func(q mesh.Point) (panel.Point, bool) {
		x, y, ok := look.Project([3]float64{from[0] + q[0], from[1] + q[1], from[2]})
		return panel.Point{X: x, Y: y}, ok
	}
	for range 6 {
		o, ok := at(by)
		a, ok1 := at(mesh.Point{by[0] + 1, by[1]})
		b, ok2 := at(mesh.Point{by[0], by[1] + 1})
		if !ok || !ok1 || !ok2 {
			return by
		}
		j := [2][2]float64{{a.X - o.X, b.X - o.X}, {a.Y - o.Y, b.Y - o.Y}} // points to a mm
		d := pseudo(j, [2]float64{goal.X - o.X, goal.Y - o.Y}, flat)
		by = mesh.Point{by[0] + d[0], by[1] + d[1]}
	}
	return by
}

// pseudo solves j d = r without the direction whose singular value is below a share of the greater:
// the eigenvectors of jᵀj are those of a symmetric matrix of two.
func pseudo(j [2][2]float64, r [2]float64, least float64) (d [2]float64) {
	a := j[0][0]*j[0][0] + j[1][0]*j[1][0]
	b := j[0][0]*j[0][1] + j[1][0]*j[1][1]
	c := j[0][1]*j[0][1] + j[1][1]*j[1][1]
	turn := 0.5 * math.Atan2(2*b, a-c)
	sin, cos := math.Sincos(turn)
	most := a*cos*cos + 2*b*sin*cos + c*sin*sin
	other := a*sin*sin - 2*b*sin*cos + c*cos*cos
	g := [2]float64{j[0][0]*r[0] + j[1][0]*r[1], j[0][1]*r[0] + j[1][1]*r[1]} // jᵀ r
	for _, e := range [2]struct{ value, x, y float64 }{{most, cos, sin}, {other, -sin, cos}} {
		if e.value > least*least*math.Max(most, other) && e.value > 0 {
			s := (e.x*g[0] + e.y*g[1]) / e.value
			d[0], d[1] = d[0]+s*e.x, d[1]+s*e.y
		}
	}
	return d
}

// Apex is the highest place of the outer surface, mm: from the highest node by Newton's method.
func Apex(top *design.Top) mesh.Point {
	var p mesh.Point
	high := math.Inf(-1)
	for _, n := range top.Built.Mesh.Nodes {
		if z := n.P[2] + n.H/2*n.N[2]; z > high {
			high, p = z, mesh.Point{n.P[0] + n.H/2*n.N[0], n.P[1] + n.H/2*n.N[1]}
		}
	}
	const far = 15.0 // mm: no node lies so far from it
	q := p
	for range 8 {
		j := top.Built.Plate.Outer.At(q)
		det := j.Zxx*j.Zyy - j.Zxy*j.Zxy
		if j.Zxx >= 0 || det <= 0 {
			return p // flat, or no summit
		}
		q[0] -= (j.Zyy*j.Zx - j.Zxy*j.Zy) / det
		q[1] -= (j.Zxx*j.Zy - j.Zxy*j.Zx) / det
		if math.Hypot(q[0]-p[0], q[1]-p[1]) > far {
			return p
		}
	}
	return q
}

// Place is where a grip is seen.
type Place struct {
	ID          string
	panel.Point // on the page
}

// Places are the grips of the view under the pointer.
func (h *Hand) Places() []Place {
	var out []Place
	for i := range h.spots {
		out = append(out, Place{h.spots[i].ID, h.spots[i].on})
	}
	return out
}
