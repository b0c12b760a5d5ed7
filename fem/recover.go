package fem

import (
	"maps"
	"slices"

	"archload/fem/vec3"
)

// Recover finds the reactions and the strain energy of the movements.
func (r *Result) Recover() {
	r.Reactions, r.Energy = r.reactions(), Energy{}
	var buf []float64
	for i, e := range r.Plate.Elements {
		if r.Swollen != nil && !r.Large {
			if s, swells := r.Swollen.strain(i, r.U); swells {
				r.Energy.addStrain(e.Part(), s)
				continue
			}
		}
		buf = movesOf(e, r.U, buf)
		if r.Large {
			r.Energy.addStrain(e.Part(), e.(Movable).MovedEnergy(buf))
			continue
		}
		r.Energy.addStrain(e.Part(), e.Energy(buf))
	}
	for i, sp := range r.Plate.Model.Springs {
		v := r.springMove(i)
		r.Energy.Add(sp.Part, sp.K*v*v/2)
	}
}

// springMove is how far spring i's place moves along it, away from its far end, mm.
func (r *Result) springMove(i int) float64 {
	v := r.Plate.springMove(i, r.U)
	if r.Swollen != nil {
		v += r.Swollen.springs[i]
	}
	return v
}

// reactions sums the element forces at held nodes and takes the loads off.
func (r *Result) reactions() []Reaction {
	var out []Reaction
	s := r.Plate
	held := map[int32]*[6]float64{}
	for _, f := range s.Model.Fixed {
		held[f.Node] = new([6]float64)
	}
	if r.Large {
		r.pull = make([]float64, len(r.U))
		s.PullTo(r.pull, r.U, 1)
		for n, f := range held {
			copy(f[:], r.pull[6*n:])
		}
	} else {
		s.internal(r.U, held)
	}
	load := r.Load
	if len(s.Model.Bodies) > 0 {
		load = slices.Clone(load)
		s.Lead(load)
	}
	for _, n := range slices.Sorted(maps.Keys(held)) {
		f := *held[n]
		for k := range 6 {
			f[k] -= load[6*int(n)+k]
			if !s.fixed[6*int(n)+k] {
				f[k] = 0
			}
		}
		if f == ([6]float64{}) {
			continue // the idle freedoms of a lean node
		}
		out = append(out, Reaction{Node: n, Spring: -1, At: s.Model.Nodes[n].P, F: f})
	}
	for i, sp := range s.Model.Springs {
		if sp.Far == nil {
			f := r.SpringForce(i)
			out = append(out, Reaction{Node: -1, Spring: i, At: s.Model.Place(sp.At), F: [6]float64{f[0], f[1], f[2]}})
		}
	}
	return out
}

// SpringForce is what spring i does to its place, N.
func (r *Result) SpringForce(i int) [3]float64 {
	sp := &r.Plate.Model.Springs[i]
	return vec3.Scale(sp.Dir, -sp.K*r.springMove(i))
}

// internal adds the element forces at the wanted nodes.
func (s *System) internal(u []float64, want map[int32]*[6]float64) {
	var k, ue []float64
	for _, e := range s.Elements {
		nodes := e.Nodes()
		if !slices.ContainsFunc(nodes, func(n int32) bool { return want[n] != nil }) {
			continue
		}
		k, ue = stiffnessOf(e, k), movesOf(e, u, ue)
		scatterForce(want, nodes, k, ue)
	}
}

func scatterForce(want map[int32]*[6]float64, nodes []int32, k, u []float64) {
	n := len(u)
	for a, node := range nodes {
		f := want[node]
		if f == nil {
			continue
		}
		for i := range 6 {
			row := k[(6*a+i)*n : (6*a+i+1)*n]
			for j, v := range row {
				f[i] += v * u[j]
			}
		}
	}
}
