package fem

import "archload/fem/sparse"

// Movable is an element whose strain energy is known at movements u of any size: displacements,
// mm, and rotation vectors, rad, of the freedoms of Nodes. Where u is small it is an Element. Every
// element of a System is one.
//
// Rigid bodies, and arms from a plate's middle to the glue on its face, turn by any angle (turned.go).
// Springs to ground keep their direction in space, those between two places follow the line between them.
type Movable interface {
	Element
	// PullTo sets f to the derivative of the energy by u, N and N·mm, and returns the energy.
	PullTo(f, u []float64) float64
	// TangentTo sets k to the second derivative, row-major and symmetric.
	TangentTo(k, u []float64)
	// StressedTo sets k to the stiffness that the stresses of small movements u lend.
	StressedTo(k, u []float64)
	// MovedEnergy is Energy at movements of any size.
	MovedEnergy(u []float64) Strain
}

func (e *tiedShell) PullTo(f, u []float64) float64 {
	return e.shell.PullTo((*[18]float64)(f), (*[18]float64)(u))
}
func (e *tiedShell) TangentTo(k, u []float64) {
	e.shell.TangentTo((*[324]float64)(k), (*[18]float64)(u))
}
func (e *tiedShell) StressedTo(k, u []float64) {
	e.shell.StressedTo((*[324]float64)(k), (*[18]float64)(u))
}
func (e *tiedShell) MovedEnergy(u []float64) Strain {
	m, b, q := e.shell.MovedEnergy((*[18]float64)(u))
	return Strain{Membrane: m, Bending: b, Shear: q}
}

func (e *tiedBeam) PullTo(f, u []float64) float64 {
	return e.beam.PullTo((*[12]float64)(f), (*[12]float64)(u))
}
func (e *tiedBeam) TangentTo(k, u []float64) {
	e.beam.TangentTo((*[144]float64)(k), (*[12]float64)(u))
}
func (e *tiedBeam) movedEnds(u []float64) [12]float64 { return [12]float64(u) }
func (e *tiedBeam) StressedTo(k, u []float64) {
	e.beam.StressedTo((*[144]float64)(k), (*[12]float64)(u))
}
func (e *tiedBeam) MovedEnergy(u []float64) Strain { return movedStrain(e, u) }

func (e *gluedBeam) StressedTo(k, u []float64) {
	var kb [144]float64
	ub := e.ends(u)
	e.beam.StressedTo(&kb, &ub)
	congruentTo(k, kb[:], e.rows)
}

func (e *gluedBeam) MovedEnergy(u []float64) Strain { return movedStrain(e, u) }

// movedStrain is the energy of an element that tells no kinds.
func movedStrain(e Movable, u []float64) Strain {
	return Strain{Other: e.PullTo(make([]float64, len(u)), u)}
}

// PullTo sets f to the forces that hold the system at movements u of any size, N and N·mm over
// all freedoms, those of held nodes as well, and returns the strain energy, N·mm. workers
// goroutines share the elements; the sum runs in their order.
func (s *System) PullTo(f, u []float64, workers int) (energy float64) {
	clear(f)
	batch := min(batchFor(workers), len(s.Elements))
	pulls, energies := make([][]float64, batch), make([]float64, batch)
	s.inBatches(workers, func(i int, e Element) {
		ue := movesOf(e, u, nil)
		if cap(pulls[i]) < len(ue) {
			pulls[i] = make([]float64, len(ue))
		}
		pulls[i] = pulls[i][:len(ue)]
		energies[i] = e.(Movable).PullTo(pulls[i], ue)
	}, func(part []Element) {
		for i, e := range part {
			energy += energies[i]
			for k, n := range e.Nodes() {
				for d := range 6 {
					f[6*int(n)+d] += pulls[i][6*k+d]
				}
			}
		}
	})
	for i := range s.Model.Springs {
		if s.Model.Springs[i].Far != nil {
			energy += s.pullBetween(f, u, i)
			continue
		}
		nodes, push := s.SpringPush(i, u)
		for j, v := range push {
			f[6*int(nodes[j/6])+j%6] -= v
		}
		v := s.springMove(i, u) + s.springBeyond(i)
		energy += s.Model.Springs[i].K * v * v / 2
	}
	return energy
}

// AddTangent adds the stiffness against further movements at u, fixed freedoms and all, as
// AddStiffness does where nothing has moved.
func (s *System) AddTangent(k *sparse.Matrix, u []float64, workers int) {
	s.addMatrices(k, workers, movedMatrix(u, Movable.TangentTo))
	s.addSprings(k)
}

// AddStressed adds the stiffness that the stresses of small movements u lend.
func (s *System) AddStressed(k *sparse.Matrix, u []float64, workers int) {
	s.addMatrices(k, workers, movedMatrix(u, Movable.StressedTo))
}

// movedMatrix is a matrix of a movable element, which of sets, at movements u of all nodes, for addMatrices.
func movedMatrix(u []float64, of func(e Movable, k, u []float64)) func(e Element, buf []float64) []float64 {
	return func(e Element, buf []float64) []float64 {
		own := movesOf(e, u, nil)
		n := len(own) * len(own)
		if cap(buf) < n {
			buf = make([]float64, n)
		}
		of(e.(Movable), buf[:n], own)
		return buf[:n]
	}
}

// WithTangent returns the system with its stiffness at movements u of any size in place of that of the
// unmoved model, as a system to be factorised: K alone is another.
func (s *System) WithTangent(u []float64, workers int) *System {
	q := *s
	q.K = s.K.Like()
	q.AddTangent(q.K, u, workers)
	q.K.Fix(q.fix())
	return &q
}
