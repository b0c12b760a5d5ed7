package fem

// sources fills what loads, braces, rim and supports give to the plate's nodes
// or take from them, all from the parts around the plate and not from its own
// element forces: that both agree is the check of the balance.
func (f *Flow) sources(r *Result) {
	s := r.Plate.System
	n := len(s.Model.Nodes)
	f.Load, f.Brace = make([]float64, n), make([]float64, n)
	f.Rim, f.Support = make([]float64, n), make([]float64, n)
	hold := make([]float64, n)
	for i := range n {
		f.Load[i] = -r.load[6*i+2]
	}
	for _, re := range r.Reactions {
		if re.Node >= 0 {
			hold[re.Node] += re.F[2]
		}
	}
	f.parts(r, hold)
	for i := range s.Model.Springs {
		nodes, row := s.springRow(i)
		push := -s.Model.Springs[i].K * s.springMove(i, r.U)
		for c, node := range nodes {
			hold[node] += push * row[6*c+2]
		}
	}
	for i, v := range hold {
		switch at := f.plan.local[i]; {
		case at < 0:
			f.Load[i], f.Brace[i] = 0, 0
		case f.plan.open(at):
			f.Rim[i] = v
		default:
			f.Support[i] = v
		}
	}
}

// parts adds what beams and shells beside the plate take from its nodes.
func (f *Flow) parts(r *Result, hold []float64) {
	s := r.Plate.System
	var ks [324]float64
	var us [18]float64
	for i := range s.Shells {
		el := &s.Model.Shells[i]
		if s.Model.Sections[el.Section].Part == PartPlate || !f.touches(el.Nodes[:]) {
			continue
		}
		s.Shells[i].StiffnessTo(&ks)
		gather(us[:], r.U, el.Nodes[:])
		for c, n := range el.Nodes {
			hold[n] -= rowForce(ks[:], us[:], 6*c+2)
		}
	}
	for i := range s.Beams {
		nodes, k := s.beamStiffness(i)
		ub := make([]float64, 6*len(nodes))
		gather(ub, r.U, nodes)
		for c, n := range nodes {
			if v := rowForce(k, ub, 6*c+2); s.Model.Beams[i].Part == PartBrace {
				f.Brace[n] += v
			} else {
				hold[n] -= v
			}
		}
	}
}

// touches tells whether an element hangs on the plate.
func (f *Flow) touches(nodes []int32) bool {
	for _, n := range nodes {
		if f.plan.local[n] >= 0 {
			return true
		}
	}
	return false
}

// rowForce is one entry of K u.
func rowForce(k, u []float64, row int) float64 {
	n := len(u)
	v := 0.0
	for j, c := range k[row*n : (row+1)*n] {
		v += c * u[j]
	}
	return v
}
