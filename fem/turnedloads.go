package fem

import (
	"archload/fem/element"
	"archload/fem/vec3"
)

// AddTurned adds to the nodal loads f what AddLoad leaves out at movements u of any size: a force that
// keeps its direction goes along with its place, on an arm that has turned.
func (s *System) AddTurned(f, u []float64, p PointForce) {
	if p.Body > 0 {
		ref := s.Model.Bodies[p.Body-1].Ref
		s.addArm(f, u, ref, vec3.Sub(p.Place, s.Model.Nodes[ref].P), p.F)
		return
	}
	el, nodes := &s.Shells[p.At.Shell], s.Model.Shells[p.At.Shell].Nodes
	var own [18]float64
	Gather(own[:], u, nodes[:])
	g, rows := el.TurnedForce(p.At.L, p.At.Zeta, p.F, &own), el.RowsAt(p.At.L, p.At.Zeta)
	for c, n := range nodes {
		var was, is [6]float64
		for k := range 6 {
			q := 6*c + k
			was[k], is[k] = rows[0][q]*p.F[0]+rows[1][q]*p.F[1]+rows[2][q]*p.F[2], g[q]
		}
		ref, follows := s.lead[n]
		if !follows {
			ref = n
		}
		for k := range 6 {
			f[6*int(ref)+k] += is[k] - was[k]
		}
		if follows {
			arm := vec3.Sub(s.Model.Nodes[n].P, s.Model.Nodes[ref].P)
			a := element.NewArm([3]float64(u[6*ref+3:6*ref+6]), arm)
			for k, v := range vec3.Sub(a.Moment([3]float64(is[:3])), vec3.Cross(arm, [3]float64(was[:3]))) {
				f[6*int(ref)+3+k] += v
			}
		}
	}
}

// addArm adds what a force has on a turned arm of a node more than on the arm as it was.
func (s *System) addArm(f, u []float64, n int32, arm, force [3]float64) {
	at := 6*int(n) + 3
	a := element.NewArm([3]float64(u[at:at+3]), arm)
	for k, v := range vec3.Sub(a.Moment(force), vec3.Cross(arm, force)) {
		f[at+k] += v
	}
}

// AddMovedForce adds to the nodal loads f a force on a rigid body at a place in space, after movements u.
func (s *System) AddMovedForce(f, u []float64, body int32, at, force [3]float64) {
	ref := int(s.Model.Bodies[body-1].Ref)
	root := vec3.Add(s.Model.Nodes[ref].P, [3]float64(u[6*ref:6*ref+3]))
	moment := element.Twisting([3]float64(u[6*ref+3:6*ref+6]), vec3.Cross(vec3.Sub(at, root), force))
	for k := range 3 {
		f[6*ref+k] += force[k]
		f[6*ref+3+k] += moment[k]
	}
}

// BodyPlace is where a place of a rigid body lies after movements u, mm.
func (s *System) BodyPlace(u []float64, body int32, place [3]float64) [3]float64 {
	ref := int(s.Model.Bodies[body-1].Ref)
	a := element.NewArm([3]float64(u[6*ref+3:6*ref+6]), vec3.Sub(place, s.Model.Nodes[ref].P))
	return vec3.Add(place, vec3.Add([3]float64(u[6*ref:6*ref+3]), a.Shift()))
}

// TurnedMoveAt is MoveAt at movements u of any size.
func (s *System) TurnedMoveAt(u []float64, at SurfacePoint) [3]float64 {
	var own [18]float64
	Gather(own[:], u, s.Model.Shells[at.Shell].Nodes[:])
	return s.Shells[at.Shell].TurnedAt(at.L, at.Zeta, &own)
}

// pullBetween adds the forces that hold a spring between two places, along the line from one to the other, and
// returns its energy. It is shorter or longer than it was; its direction as given serves small movements.
func (s *System) pullBetween(f, u []float64, i int) float64 {
	sp := &s.Model.Springs[i]
	was := vec3.Sub(s.Model.Place(sp.At), s.Model.Place(*sp.Far))
	is := vec3.Add(was, vec3.Sub(s.TurnedMoveAt(u, sp.At), s.TurnedMoveAt(u, *sp.Far)))
	longer := vec3.Norm(is) - vec3.Norm(was) + s.springBeyond(i)
	pull := vec3.Scale(is, sp.K*longer/vec3.Norm(is))
	for _, p := range []PointForce{{At: sp.At, F: pull}, {At: *sp.Far, F: vec3.Scale(pull, -1)}} {
		load := make([]float64, len(f))
		s.AddLoad(load, p)
		s.AddTurned(load, u, p)
		s.Lead(load)
		for k, v := range load {
			f[k] += v
		}
	}
	return sp.K * longer * longer / 2
}
