package body

import (
	"math"

	"archload/cases/design"
	"archload/mesh"

	"gonum.org/v1/gonum/mat"
)

// Plane is how the plane of the rim moves up at a place in plan: c0 + c1 x + c2 y,
// mm.
type Plane [3]float64

// At is its rise at a place, mm.
func (p Plane) At(q mesh.Point) float64 { return p[0] + p[1]*q[0] + p[2]*q[1] }

// RimPlane is the plane of the rim of a solution with a body: what a straightedge
// laid over the edge of the top rests on. Zero without a body.
func RimPlane(s *design.Solution) Plane {
	if s.Top.Built.Back == nil {
		return Plane{}
	}
	return rimPlane(s)
}

// rimPlane fits the rise of the rim's middle surface by least squares along the
// outline.
func rimPlane(s *design.Solution) Plane {
	m := s.Top.Built.Mesh
	a, rhs := mat.NewSymDense(3, nil), mat.NewVecDense(3, nil)
	for k, n := range m.Rim {
		p := m.Points[n]
		before, after := m.Points[m.Rim[(k+len(m.Rim)-1)%len(m.Rim)]], m.Points[m.Rim[(k+1)%len(m.Rim)]]
		w := (math.Hypot(p[0]-before[0], p[1]-before[1]) + math.Hypot(p[0]-after[0], p[1]-after[1])) / 2
		row := [3]float64{1, p[0], p[1]}
		for i := range 3 {
			for j := i; j < 3; j++ {
				a.SetSym(i, j, a.At(i, j)+w*row[i]*row[j])
			}
			rhs.SetVec(i, rhs.AtVec(i)+w*row[i]*s.Result.U[6*n+2])
		}
	}
	var c mat.VecDense
	if c.SolveVec(a, rhs) != nil {
		return Plane{} // an outline that is a line has no area to be a plate
	}
	return Plane{c.AtVec(0), c.AtVec(1), c.AtVec(2)}
}

// Spot is a value and the place in plan where it is found, mm.
type Spot struct {
	Value float64 `json:"value"`
	X     float64 `json:"x"`
	Y     float64 `json:"y"`
}

// Sinks is how far places of the top come down from the plane of its own rim, mm:
// what a dial gauge on a straightedge over the rim reads.
type Sinks struct {
	Bridge *float64 `json:"bridge"` // the bridge's base at its middle; null without a bridge
	Apex   float64  `json:"apex"`
	Most   Spot     `json:"most"`
}

// sinks reads the top against the plane of its rim.
func sinks(s *design.Solution, plane Plane) Sinks {
	b := s.Top.Built
	var out Sinks
	highest := math.Inf(-1)
	for i, p := range b.Mesh.Points {
		w := plane.At(p) - s.Result.U[6*i+2]
		if i == 0 || w > out.Most.Value {
			out.Most = Spot{w, p[0], p[1]}
		}
		if z := b.Mesh.Nodes[i].P[2]; z > highest {
			highest, out.Apex = z, w
		}
	}
	return out
}

// Lift is how the back moves, outward (down) positive, mm.
type Lift struct {
	Centre float64 `json:"centre"` // where the back is highest
	Most   Spot    `json:"most"`   // of the greatest size
}

// lift reads the back.
func lift(s *design.Solution) Lift {
	back := s.Top.Built.Back
	var out Lift
	highest := math.Inf(-1)
	for i, p := range back.Mesh.Points {
		w := -s.Result.U[6*(i+int(back.First))+2]
		if math.Abs(w) > math.Abs(out.Most.Value) {
			out.Most = Spot{w, p[0], p[1]}
		}
		if z := back.Mesh.Nodes[i].P[2]; z > highest {
			highest, out.Centre = z, w
		}
	}
	return out
}
