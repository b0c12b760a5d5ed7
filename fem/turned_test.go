package fem

import (
	"math"
	"testing"

	"archload/fem/element"
	"archload/fem/vec3"
	"archload/mesh"
)

// barredStrip is a blocked strip with a bar glued under its middle, the last stretch of which hangs on
// the block.
func barredStrip(t *testing.T) *System {
	t.Helper()
	m, _ := blockedStrip()
	m.Fixed = nil
	at := func(shell int32, l [3]float64) SurfacePoint { return SurfacePoint{Shell: shell, L: l, Zeta: -1} }
	places := []SurfacePoint{at(2, [3]float64{0.5, 0, 0.5}), at(4, [3]float64{0.5, 0, 0.5}), at(6, [3]float64{0.5, 0, 0.5})}
	section := element.Rectangle{Width: 3, Height: 4, E: 12000, Gxy: 700, Gxz: 600}
	var lean [3]int32
	for i := range lean {
		lean[i] = m.AddLean(mesh.Node{P: m.Place(places[i])})
	}
	for i := range 2 {
		m.Beams = append(m.Beams, BeamElem{Glued: true, Glue: [2]SurfacePoint{places[i], places[i+1]}, Lean: [2]int32{lean[i], lean[i+1]},
			Across: [3]float64{0, 1, 0}, Offset: [2][3]float64{{0, 0, -2}, {0, 0, -2}}, Up: [3]float64{0, 0, 1}, Section: section})
	}
	s, err := Assemble(m, 1)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// turned moves the strip rigidly by a rotation vector, and every freedom a little more.
func turned(s *System, theta [3]float64, more float64) []float64 {
	u := make([]float64, 6*len(s.Model.Nodes))
	lean := map[int32]bool{}
	for i := range s.Model.Beams {
		lean[s.Model.Beams[i].Lean[0]], lean[s.Model.Beams[i].Lean[1]] = true, true
	}
	for n := range s.Model.Nodes {
		a := element.NewArm(theta, s.Model.Nodes[n].P)
		d := a.Shift()
		copy(u[6*n:], d[:])
		copy(u[6*n+3:], theta[:])
		if lean[int32(n)] {
			clear(u[6*n : 6*n+6])
			u[6*n+leanDof] = theta[1]
		}
		for k := range 6 {
			u[6*n+k] += more * math.Sin(float64(7*n+3*k))
		}
	}
	return u
}

// TestTurnedTies: a rigid turn of any size leaves bars on the face of a plate and rigid bodies without stress;
// their forces are the derivative of the energy, their tangent that of the forces.
func TestTurnedTies(t *testing.T) {
	s := barredStrip(t)
	f := make([]float64, 6*len(s.Model.Nodes))
	theta := [3]float64{0.5, -0.9, 0.7}
	strained := s.PullTo(f, turned(s, theta, 1e-3), 1)
	if e := s.PullTo(f, turned(s, theta, 0), 1); e > 1e-24*strained {
		t.Errorf("a rigid turn stores %.3g N·mm, a strained strip %.3g", e, strained)
	}
	led := 0
	for i, e := range s.Elements {
		if _, is := e.(*tiedShell); is || len(e.Nodes()) == 1 {
			continue // a shell by itself, or one that lies on the block
		}
		led++
		u := movesOf(e, turned(s, theta, 1e-2), nil)
		checkDerivatives(t, i, e.(Movable), u)
	}
	if led < 4 {
		t.Errorf("%d elements hang on ties, want bars and what hangs on the block", led)
	}
}

func checkDerivatives(t *testing.T, i int, e Movable, u []float64) {
	t.Helper()
	n := len(u)
	f, k := make([]float64, n), make([]float64, n*n)
	e.PullTo(f, u)
	e.TangentTo(k, u)
	most, force := 0.0, 0.0
	for j := range n {
		force = max(force, math.Abs(f[j]))
		for l := range n {
			most = max(most, math.Abs(k[j*n+l]))
		}
	}
	const h = 1e-6
	p, q := make([]float64, n), make([]float64, n)
	for j := range n {
		was := u[j]
		u[j] = was + h
		up := e.PullTo(p, u)
		u[j] = was - h
		down := e.PullTo(q, u)
		u[j] = was
		if got := (up - down) / (2 * h); math.Abs(got-f[j]) > 1e-7*max(force, most*h) {
			t.Errorf("element %d: force %d is %.9g, by differences %.9g", i, j, f[j], got)
		}
		for l := range n {
			if got := (p[l] - q[l]) / (2 * h); math.Abs(got-k[l*n+j]) > 1e-7*most {
				t.Errorf("element %d: tangent %d %d is %.9g, by differences %.9g", i, l, j, k[l*n+j], got)
			}
		}
	}
}

// TestTurnedLoads: loads on a face and on a block do the work that their places' movements say.
func TestTurnedLoads(t *testing.T) {
	s := barredStrip(t)
	u := turned(s, [3]float64{0.3, 0.2, -0.4}, 1e-2)
	s.FollowTurned(u)
	force := [3]float64{3, -4, 12}
	for _, p := range []PointForce{{At: SurfacePoint{Shell: 1, L: [3]float64{0.2, 0.3, 0.5}, Zeta: 1}, F: force}, {Body: 1, Place: [3]float64{28, 3, 9}, F: force}} {
		where := func(u []float64) [3]float64 {
			if p.Body > 0 {
				return s.BodyPlace(u, p.Body, p.Place)
			}
			return s.TurnedMoveAt(u, p.At)
		}
		f := make([]float64, len(u))
		s.AddLoad(f, p)
		s.AddTurned(f, u, p)
		if p.Body > 0 {
			g := make([]float64, len(u))
			s.AddMovedForce(g, u, p.Body, where(u), p.F)
			for i := range f {
				if math.Abs(f[i]-g[i]) > 1e-11*100 {
					t.Errorf("force %d on the block is %.12g, by its place %.12g", i, f[i], g[i])
				}
			}
		}
		const h = 1e-6
		for i := range u {
			was := u[i]
			u[i] = was + h
			up := where(u)
			u[i] = was - h
			down := where(u)
			u[i] = was
			if got := vec3.Dot(p.F, vec3.Sub(up, down)) / (2 * h); math.Abs(got-f[i]) > 1e-7*100 {
				t.Errorf("force %d is %.9g, by differences of its work %.9g", i, f[i], got)
			}
		}
	}
}
