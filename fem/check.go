package fem

import (
	"math"
	"slices"

	"archload/fem/vec3"
)

// Wrench is a force and its moment about the origin.
type Wrench struct {
	Force, Moment [3]float64 // N, N·mm
	Gross         float64    // N, sum of the sizes of all forces in it
}

// Add adds a force f at a place.
func (w *Wrench) Add(at, f [3]float64) {
	w.Force = vec3.Add(w.Force, f)
	w.Gross += vec3.Norm(f)
	w.AddMoment(vec3.Cross(at, f))
}

// AddMoment adds a moment.
func (w *Wrench) AddMoment(m [3]float64) { w.Moment = vec3.Add(w.Moment, m) }

// Resultant sums nodal loads, N and N·mm.
func (s *System) Resultant(f []float64) (w Wrench) {
	for i := range s.Model.Nodes {
		n := f[6*i : 6*i+6]
		w.Add(s.Model.Nodes[i].P, [3]float64{n[0], n[1], n[2]})
		w.AddMoment([3]float64{n[3], n[4], n[5]})
	}
	return w
}

// CheckAlone fills the checks of a model that nothing but its nodal loads acts on:
// they do half their final force times its movement.
func (r *Result) CheckAlone() {
	if !r.Large {
		work := 0.0
		for i, f := range r.Load {
			work += f * r.U[i] / 2
		}
		r.CheckEnergy(work, work)
	}
	w := r.Plate.Resultant(r.Load)
	r.Applied = w.Force
	r.CheckBalance(w)
}

// CheckEnergy compares the strain energy with what the work of the loads stores,
// relative to all of it, N·mm.
func (r *Result) CheckEnergy(stored, work float64) {
	r.Checks.Energy = relative(r.Energy.Total()-stored, work)
}

// CheckBalance compares what is applied with the reactions, relative to the
// resultant of what is applied; where rigid bodies are, on which forces may pull
// that balance each other, to the sum of their sizes. Outside is the greatest
// reaction over it. Of a result with large movements the forces are summed likewise;
// moments about one place would have to be taken where the loads have moved to, so
// that in their stead stands what is out of balance at each freedom.
// Wood that swells pulls at its neighbours without any load: these forces count for the scale.
func (r *Result) CheckBalance(w Wrench) {
	scale, size := vec3.Norm(w.Force), 0.0
	if len(r.Plate.Model.Bodies) > 0 {
		scale = w.Gross
	}
	if r.Swollen != nil {
		scale += r.Swollen.pull
	}
	for _, re := range r.Reactions {
		r.Checks.Outside = math.Max(r.Checks.Outside, relative(vec3.Norm([3]float64(re.F[:3])), scale))
	}
	for _, re := range r.Reactions {
		w.Add(re.At, [3]float64{re.F[0], re.F[1], re.F[2]})
		w.AddMoment([3]float64{re.F[3], re.F[4], re.F[5]})
		size = math.Max(size, vec3.Norm(re.At))
	}
	r.Checks.Force = relative(vec3.Norm(w.Force), scale)
	r.Checks.Moment = relative(vec3.Norm(w.Moment), scale*size)
	if r.Large {
		force, moment := r.outOfBalance()
		r.Checks.Force = max(r.Checks.Force, relative(force, scale))
		r.Checks.Moment = relative(moment, scale*size)
	}
}

// outOfBalance sums what is left of force, N, and moment, N·mm, at the freedoms that nothing holds.
func (r *Result) outOfBalance() (force, moment float64) {
	s := r.Plate
	load := slices.Clone(r.Load)
	s.Lead(load)
	for i, f := range s.fixed {
		switch v := math.Abs(r.pull[i] - load[i]); {
		case f:
		case i%6 < 3:
			force += v
		default:
			moment += v
		}
	}
	return force, moment
}

func relative(diff, scale float64) float64 {
	if scale == 0 {
		return math.Abs(diff)
	}
	return math.Abs(diff) / math.Abs(scale)
}
