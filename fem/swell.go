package fem

import (
	"math"
	"slices"

	"archload/fem/element"
	"archload/fem/vec3"
)

// Swell says how much the wood of a model takes up of what makes it stretch by itself,
// in the unit of Section.Swell: percentage points of moisture, say.
type Swell struct {
	Outer, Inner float64 // of shells, at both faces, linear in between
	Beams        float64
	Bodies       float64 // of rigid bodies
}

// Swollen is a system whose wood has stretched by itself. With v the movements in which
// an element bears no force (element.Free), it pulls at its nodes by
//
//	Kₑ (u − v),   and its energy is ½ (u − v)ᵀ Kₑ (u − v),
//
// so that the system answers as if Σ Kₑ v acted on it (Load), and forces, stress and
// energy are those of u − v. Elements that are neither shells nor beams keep their size, and so do
// springs; the places on which springs and beams hang move with the faces of the wood.
//
// A rigid body stretches about its own node x by its strain E, and takes with it what
// follows it: each node moves by
//
//	g = (E (x_n − x), n × E n)
//
// more than the body does, n being the surface's normal there, so that the fibre along it
// turns as wood does (element.Free). To what hangs on it the body's stretch is a movement like any
// other: of the free movements v − g is left to be forced. Wood of a plate that swells
// as the block behind it does so is not stressed by it.
type Swollen struct {
	Load []float64 // nodal loads that stand for the free strains, N and N·mm; in balance but for springs

	sys     *System
	shells  []element.Free
	beams   [][12]float64
	springs []float64 // mm, how much more than the shell's movement each spring's place moves along it
	grown   []float64 // g of every node, mm and rad; nil: no body stretches
	scale   float64   // energy that the wood would hold if no node moved, N·mm
	pull    float64   // sum of the sizes of its triangles' forces if no node moved, N
}

// Swell lets the wood of a system stretch by itself.
func (s *System) Swell(f Swell) *Swollen {
	m := s.Model
	w := &Swollen{sys: s, Load: make([]float64, 6*len(m.Nodes)), shells: make([]element.Free, len(m.Shells)),
		beams: make([][12]float64, len(m.Beams)), springs: make([]float64, len(m.Springs))}
	w.grow(f.Bodies)
	for i := range m.Shells {
		own := m.Sections[m.Shells[i].Section].Swell
		w.shells[i] = s.Shells[i].Free(element.FreeStrain{
			Mean: vec3.Scale(own, (f.Outer+f.Inner)/2), Half: vec3.Scale(own, (f.Outer-f.Inner)/2)})
		w.loadShell(i)
	}
	for i := range m.Beams {
		w.loadBeam(i, vec3.Scale(m.Beams[i].Swell, f.Beams))
	}
	for i := range m.Springs {
		sp := &m.Springs[i]
		beyond := w.beyondLed(sp.At)
		if sp.Far != nil {
			beyond = vec3.Sub(beyond, w.beyondLed(*sp.Far))
		}
		w.springs[i] = vec3.Dot(sp.Dir, beyond)
		nodes, row := s.springRow(i)
		for j, r := range row {
			w.Load[6*int(nodes[j/6])+j%6] -= sp.K * w.springs[i] * r
		}
	}
	return w
}

// Times returns what a share of the stretch does.
func (w *Swollen) Times(share float64) *Swollen {
	scaled := func(v []float64) []float64 {
		v = slices.Clone(v)
		for i := range v {
			v[i] *= share
		}
		return v
	}
	q := &Swollen{Load: scaled(w.Load), sys: w.sys, shells: make([]element.Free, len(w.shells)), beams: slices.Clone(w.beams),
		springs: scaled(w.springs), grown: scaled(w.grown), scale: w.scale * share * share, pull: w.pull * math.Abs(share)}
	for i := range w.shells {
		q.shells[i] = w.shells[i].Times(share)
	}
	for i := range q.beams {
		for k := range q.beams[i] {
			q.beams[i][k] *= share
		}
	}
	return q
}

// loadShell adds Kₑ v of a triangle.
func (w *Swollen) loadShell(i int) {
	v := w.forced(i)
	nodes, f := &w.sys.Model.Shells[i].Nodes, w.shellPull(i, &v)
	for a := range f {
		w.Load[6*int(nodes[a/6])+a%6] += f[a]
		w.scale += v[a] * f[a] / 2
	}
	for a := 0; a < 18; a += 6 {
		w.pull += vec3.Norm([3]float64(f[a:a+3])) + vec3.Norm([3]float64(f[a+3:a+6]))/w.sys.Shells[i].Thickness()
	}
}

// loadBeam finds the free movement of a beam's ends and adds Kₑ v on the nodes that
// it is tied to.
func (w *Swollen) loadBeam(i int, strain [3]float64) {
	b := &w.sys.Model.Beams[i]
	var from [2][3]float64
	if b.Glued {
		for e := range 2 {
			from[e] = w.beyond(b.Glue[e])
		}
	}
	w.beams[i] = w.sys.Beams[i].Free(strain, from)
	forced := w.forcedBeam(i)
	f := w.beamPull(i, &forced)
	for a := range f {
		w.scale += forced[a] * f[a] / 2
	}
	tie := w.sys.beams[i]
	nodes := tie.Nodes()
	for j, v := range tie.onNodes(&f) {
		w.Load[6*int(nodes[j/6])+j%6] += v
	}
}

// grow finds what the rigid bodies' own stretch adds to the movements of their nodes.
func (w *Swollen) grow(by float64) {
	m := w.sys.Model
	for i := range m.Bodies {
		b := &m.Bodies[i]
		if b.Swell == ([3]float64{}) || by == 0 {
			continue
		}
		if w.grown == nil {
			w.grown = make([]float64, 6*len(m.Nodes))
		}
		for _, n := range b.Nodes {
			at, normal := vec3.Sub(m.Nodes[n].P, m.Nodes[b.Ref].P), m.Nodes[n].N
			var move, lean [3]float64
			for k, e := range b.Swell {
				move[k], lean[k] = by*e*at[k], by*e*normal[k]
			}
			turn := vec3.Cross(normal, lean)
			copy(w.grown[6*n:], move[:])
			copy(w.grown[6*n+3:], turn[:])
		}
	}
}

// AddGrowth adds to the movements u of all nodes, those that follow rigid bodies moving as
// these do, what the bodies' own stretch adds.
func (w *Swollen) AddGrowth(u []float64) {
	for i, g := range w.grown {
		u[i] += g
	}
}

// forced is what is left to be forced of a triangle's free movements when bodies that hold its
// corners stretch as well.
func (w *Swollen) forced(i int) [18]float64 {
	v := w.shells[i].Moves
	if w.grown != nil {
		for k, n := range w.sys.Model.Shells[i].Nodes {
			for d := range 6 {
				v[6*k+d] -= w.grown[6*int(n)+d]
			}
		}
	}
	return v
}

// forcedBeam is forced for the ends of a beam.
func (w *Swollen) forcedBeam(i int) [12]float64 {
	v := w.beams[i]
	if w.grown != nil {
		b := w.sys.beams[i]
		for k, g := range b.ends(movesOf(b, w.grown, nil)) {
			v[k] -= g
		}
	}
	return v
}

// beyondLed is beyond, with what a body's own stretch adds to corners that follow it.
func (w *Swollen) beyondLed(at SurfacePoint) [3]float64 {
	if w.grown == nil {
		return w.beyond(at)
	}
	return vec3.Add(w.beyond(at), w.sys.MoveAt(w.grown, at))
}

// beyond is how much more a place of the model moves than its shell's corners tell,
// mm, when all is free.
func (w *Swollen) beyond(at SurfacePoint) [3]float64 { return w.Beyond(at, w.sys.Model.Place(at)) }

// Beyond returns by how much a place on a shell that lies at x moves more than
// System.MoveAt tells of the nodes' movement, mm.
func (w *Swollen) Beyond(at SurfacePoint, x [3]float64) [3]float64 {
	return w.sys.Shells[at.Shell].Beyond(&w.shells[at.Shell], x, at.L, at.Zeta)
}

// BeyondAlong returns by how much more the points move along dir in the mean than
// System.Column tells, mm.
func (w *Swollen) BeyondAlong(points []SurfacePoint, dir [3]float64) float64 {
	sum := 0.0
	for _, p := range points {
		sum += vec3.Dot(dir, w.beyondLed(p))
	}
	return sum / float64(len(points))
}

// strain is the energy of element i of System.Elements under the movements u of all nodes.
func (w *Swollen) strain(i int, u []float64) (Strain, bool) {
	if n := len(w.shells); i < n {
		v := w.shellMoves(i, u)
		m, b, q := w.sys.Shells[i].Energy(&v)
		return Strain{Membrane: m, Bending: b, Shear: q}, true
	} else if i < n+len(w.beams) {
		v := w.beamMoves(i-n, u)
		return Strain{Other: w.sys.Beams[i-n].Energy(&v)}, true
	}
	return Strain{}, false
}

// shellPull is Kₑ v of a triangle.
func (w *Swollen) shellPull(i int, v *[18]float64) (f [18]float64) {
	var k [324]float64
	w.sys.Shells[i].StiffnessTo(&k)
	addProduct(f[:], k[:], v[:])
	return f
}

// beamPull is Kₑ v of a beam's ends.
func (w *Swollen) beamPull(i int, v *[12]float64) (f [12]float64) {
	var k [144]float64
	w.sys.Beams[i].StiffnessTo(&k)
	addProduct(f[:], k[:], v[:])
	return f
}

// addProduct adds k v to f; k is square, row-major.
func addProduct(f, k, v []float64) {
	for a := range f {
		for b, c := range v {
			f[a] += k[len(v)*a+b] * c
		}
	}
}

// pullOwn are the forces by which element i of System.Elements pulls at its own nodes under the
// movements u of all nodes.
func (w *Swollen) pullOwn(i int, u []float64) ([]float64, bool) {
	if n := len(w.shells); i < n {
		v := w.shellMoves(i, u)
		f := w.shellPull(i, &v)
		return f[:], true
	} else if i < n+len(w.beams) {
		v := w.beamMoves(i-n, u)
		f := w.beamPull(i-n, &v)
		return w.sys.beams[i-n].onNodes(&f), true
	}
	return nil, false
}

// shellMoves are the corners' movements beyond the free ones.
func (w *Swollen) shellMoves(i int, u []float64) (v [18]float64) {
	Gather(v[:], u, w.sys.Model.Shells[i].Nodes[:])
	for k, f := range w.shells[i].Moves {
		v[k] -= f
	}
	return v
}

// beamMoves are the movements of a beam's ends beyond the free ones.
func (w *Swollen) beamMoves(i int, u []float64) [12]float64 {
	b := w.sys.beams[i]
	v := b.ends(movesOf(b, u, nil))
	for k, f := range w.beams[i] {
		v[k] -= f
	}
	return v
}

// CheckSwollen compares the energy of a swollen result, that of bodies on it left out,
// with the work that it must equal: by its own balance the forces p of each element have
//
//	Σ (u − v)·p = F·u − Σ (v − g)·p,
//
// F being the loads without those that stand for the free strains and u here without g. The difference is
// told relative to the energy that the wood would hold if it could not move at all, and that of the loads.
func (r *Result) CheckSwollen() {
	w, work, scale := r.Swollen, 0.0, r.Swollen.scale
	for i, f := range r.Load {
		u := r.U[i]
		if w.grown != nil {
			u -= w.grown[i]
		}
		work += (f - w.Load[i]) * u / 2
	}
	scale += work
	for i := range w.shells {
		v := w.shellMoves(i, r.U)
		f := w.shellPull(i, &v)
		for a, c := range w.forced(i) {
			work -= c * f[a] / 2
		}
	}
	for i := range w.beams {
		v := w.beamMoves(i, r.U)
		f := w.beamPull(i, &v)
		for a, c := range w.forcedBeam(i) {
			work -= c * f[a] / 2
		}
	}
	for i, d := range w.springs { // its force acts on the place, which moves by d more
		work += w.sys.Model.Springs[i].K * d * (w.sys.springMove(i, r.U) + d) / 2
	}
	r.Checks.Energy = relative(r.Energy.Total()-work, scale)
}
