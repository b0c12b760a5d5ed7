package fem

import (
	"archload/fem/element"
	"archload/fem/vec3"
)

// Result is the answer of a model under nodal loads. Displacements mm, forces N.
type Result struct {
	Plate     *System
	U         []float64 // displacement: six freedoms a node
	Load      []float64 // nodal loads, N and N·mm; with those of Swollen if the movements are small
	Swollen   *Swollen  // what the wood does by itself; nil: nothing
	Reactions []Reaction
	Energy    Energy
	Applied   [3]float64 // resultant of all loads, N
	Checks    Checks
	Large     bool // the movements are not small: strains, forces and energies are those of Movable, of an Eased system if Swollen

	pull []float64 // forces that hold Large movements, once recovered
}

// Reaction is what the ground gives to a held node or through a spring.
type Reaction struct {
	Node   int32      // -1 for a spring
	Spring int        // its number; -1 at a node
	At     [3]float64 // mm
	F      [6]float64 // N and N·mm
}

// MoveAt returns the displacement of a place on a shell, mm.
func (r *Result) MoveAt(at SurfacePoint) [3]float64 {
	if r.Swollen != nil {
		return r.MoveOf(at, r.Plate.Model.Place(at))
	}
	return r.Plate.MoveAt(r.U, at)
}

// MoveOf is MoveAt of a place that is known to lie at x in space, mm, which a facet
// tells only to the rise of its chords: what swollen wood does there asks for it.
func (r *Result) MoveOf(at SurfacePoint, x [3]float64) [3]float64 {
	u := r.Plate.MoveAt(r.U, at)
	if r.Swollen != nil {
		u = vec3.Add(u, r.Swollen.Beyond(at, x))
	}
	return u
}

// FaceMove is MoveOf with what stress in the plane does to the wood between the middle and
// the place: the movement of a face to the last hundredth of the thickness's own change.
func (r *Result) FaceMove(at SurfacePoint, x [3]float64) [3]float64 {
	f := r.ShellForces(int(at.Shell))
	return vec3.Add(r.MoveOf(at, x), r.Plate.Shells[at.Shell].Squash(&f, at.Zeta))
}

// ShellForces returns the resultants of triangle i in its facet frame.
func (r *Result) ShellForces(i int) element.Resultants {
	var u [18]float64
	Gather(u[:], r.U, r.Plate.Model.Shells[i].Nodes[:])
	if r.Large {
		return r.Plate.Shells[i].MovedResultants(&u)
	}
	if r.Swollen != nil {
		u = r.Swollen.shellMoves(i, r.U)
	}
	return r.Plate.Shells[i].Resultants(&u)
}

// ShellFrame returns the axes e1, e2 and the normal of triangle i's facet where it has moved to, in
// global x, y, z (rows, 1): those of the unmoved facet unless the movements are Large.
func (r *Result) ShellFrame(i int) [3][3]float64 {
	if !r.Large {
		return r.Plate.Shells[i].Frame()
	}
	var u [18]float64
	Gather(u[:], r.U, r.Plate.Model.Shells[i].Nodes[:])
	return r.Plate.Shells[i].MovedFrame(&u)
}

// ShellStress returns the stress of triangle i in its wood axes, MPa, in the
// order LL RR TT RT LT LR; zeta is -1 at the inner and +1 at the outer face.
func (r *Result) ShellStress(i int, zeta float64) [6]float64 {
	f := r.ShellForces(i)
	return r.Plate.Shells[i].StressOf(&f, zeta)
}

// ShellStresses is ShellStress at the outer face, the inner face and in the
// middle.
func (r *Result) ShellStresses(i int) (outer, inner, middle [6]float64) {
	el := &r.Plate.Shells[i]
	f := r.ShellForces(i)
	return el.StressOf(&f, 1), el.StressOf(&f, -1), el.StressOf(&f, 0)
}

// BeamForces returns the section forces of beam i.
func (r *Result) BeamForces(i int) element.BeamForces {
	u := r.beamEnds(i)
	if r.Large {
		return r.Plate.Beams[i].MovedForces(&u)
	}
	return r.Plate.Beams[i].Forces(&u)
}

// BeamEnergy returns the strain energy of beam i, N·mm.
func (r *Result) BeamEnergy(i int) float64 {
	u := r.beamEnds(i)
	if r.Large {
		return r.Plate.Beams[i].PullTo(new([12]float64), &u)
	}
	return r.Plate.Beams[i].Energy(&u)
}

// SectionForce is the force that the part of a brace beyond a section of beam i,
// toward its second node, exerts on the part before it, N, in global x, y, z.
func (r *Result) SectionForce(i int) [3]float64 {
	f, e := r.BeamForces(i), r.Plate.Beams[i].Axes()
	if r.Large {
		u := r.beamEnds(i)
		e = r.Plate.Beams[i].MovedAxes(&u)
	}
	return vec3.Add(vec3.Scale(e[0], f.N), vec3.Add(vec3.Scale(e[1], f.Vy), vec3.Scale(e[2], f.Vz)))
}

// beamEnds returns the movements of both ends of beam i: small ones beyond what it does by itself, Large ones whole.
func (r *Result) beamEnds(i int) [12]float64 {
	b := r.Plate.beams[i]
	if r.Large {
		return b.movedEnds(movesOf(b, r.U, nil))
	}
	if r.Swollen != nil {
		return r.Swollen.beamMoves(i, r.U)
	}
	return b.ends(movesOf(b, r.U, nil))
}

// Checks are the built-in checks of every run, each relative and near zero.
type Checks struct {
	Force  float64 // out-of-balance force over the applied force
	Moment float64 // out-of-balance moment over force times size
	Energy float64 // stored against work along the path

	Outside float64 // greatest force that a support gives over the applied force: no fault unless all loads should balance
}
