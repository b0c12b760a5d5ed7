package fem

import (
	"slices"

	"archload/fem/element"
	"archload/fem/vec3"
)

// movable is the element itself; every kind that a model has is one.
func (e *ledElement) movable() Movable { return e.Element.(Movable) }

// movedOwn is own at movements of any size: a node that follows is carried by the turned arm, and turns
// as the node that leads it.
func (e *ledElement) movedOwn(u []float64) []float64 {
	out := make([]float64, 6*len(e.place))
	for k, at := range e.place {
		copy(out[6*k:6*k+6], u[6*at:6*at+6])
		if arm := e.arms[k]; arm != ([3]float64{}) {
			a := element.NewArm([3]float64(u[6*at+3:6*at+6]), arm)
			for i, v := range a.Shift() {
				out[6*k+i] += v
			}
		}
	}
	for i, g := range e.grown {
		out[i] += g
	}
	return out
}

// turnedRows is T at movements u: its derivative at the leading nodes' movements.
func (e *ledElement) turnedRows(u []float64) []float64 {
	t, cols := slices.Clone(e.t), len(u)
	for k, at := range e.place {
		if e.arms[k] == ([3]float64{}) {
			continue
		}
		a := element.NewArm([3]float64(u[6*at+3:6*at+6]), e.arms[k])
		for i, row := range a.Rows() {
			copy(t[(6*k+i)*cols+6*at+3:], row[:])
		}
	}
	return t
}

func (e *ledElement) PullTo(f, u []float64) float64 {
	own := e.movedOwn(u)
	g := make([]float64, len(own))
	energy := e.movable().PullTo(g, own)
	clear(f)
	for k, at := range e.place {
		for i := range 6 {
			f[6*at+i] += g[6*k+i]
		}
		if e.arms[k] != ([3]float64{}) {
			a := element.NewArm([3]float64(u[6*at+3:6*at+6]), e.arms[k])
			for i, v := range a.Moment([3]float64(g[6*k : 6*k+3])) {
				f[6*at+3+i] += v
			}
		}
	}
	return energy
}

func (e *ledElement) TangentTo(k, u []float64) {
	own := e.movedOwn(u)
	a, g := make([]float64, len(own)*len(own)), make([]float64, len(own))
	e.movable().TangentTo(a, own)
	e.movable().PullTo(g, own)
	now := *e
	now.t = e.turnedRows(u)
	now.turnTo(k, a)
	for n, at := range e.place {
		if e.arms[n] != ([3]float64{}) {
			arm := element.NewArm([3]float64(u[6*at+3:6*at+6]), e.arms[n])
			addBlock(k, len(u), 6*at+3, 6*at+3, 1, arm.Bend([3]float64(g[6*n:6*n+3])))
		}
	}
}

// addBlock adds c times a block to a square matrix, row-major, of some width.
func addBlock(k []float64, width, row, col int, c float64, block [3][3]float64) {
	for i := range 3 {
		for j := range 3 {
			k[(row+i)*width+col+j] += c * block[i][j]
		}
	}
}

// StressedTo keeps rigid bodies at their places: what acts on them and what they hold balance.
func (e *ledElement) StressedTo(k, u []float64) {
	own := e.own(u)
	a := make([]float64, len(own)*len(own))
	e.movable().StressedTo(a, own)
	e.turnTo(k, a)
}

func (e *ledElement) MovedEnergy(u []float64) Strain { return e.movable().MovedEnergy(e.movedOwn(u)) }

// FollowTurned completes movements u of any size: nodes that follow a rigid body are carried by their turned
// arms, and by the body's own stretch.
func (s *System) FollowTurned(u []float64) {
	for i := range s.Model.Bodies {
		b := &s.Model.Bodies[i]
		at := 6 * int(b.Ref)
		for _, n := range b.Nodes {
			a := element.NewArm([3]float64(u[at+3:at+6]), vec3.Sub(s.Model.Nodes[n].P, s.Model.Nodes[b.Ref].P))
			copy(u[6*n:6*n+6], u[at:at+6])
			for k, v := range a.Shift() {
				u[6*int(n)+k] += v
			}
		}
	}
	if s.eased != nil {
		s.eased.AddGrowth(u)
	}
}
