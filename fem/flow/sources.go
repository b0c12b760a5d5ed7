package flow

import "archload/fem"

// sources fills what loads, braces, rim and supports give to the plate's nodes
// or take from them, all from the parts around the plate and not from its own
// element forces: that both agree is the check of the balance.
func (f *Flow) sources(r *fem.Result) {
	s := r.Plate
	n := len(s.Model.Nodes)
	f.Load, f.Brace = make([]float64, n), make([]float64, n)
	f.Rim, f.Support = make([]float64, n), make([]float64, n)
	hold := make([]float64, n)
	for i := range n {
		f.Load[i] = -r.Load[6*i+2]
	}
	for _, re := range r.Reactions {
		if re.Node >= 0 {
			hold[re.Node] += re.F[2]
		}
	}
	f.parts(r, hold)
	for i := range s.Model.Springs {
		nodes, push := s.SpringPush(i, r.U)
		for c, node := range nodes {
			hold[node] += push[6*c+2]
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

// parts adds what the elements beside the plate take from its nodes.
func (f *Flow) parts(r *fem.Result, hold []float64) {
	for _, e := range r.Plate.Elements {
		if e.Part() == 0 || !f.touches(e.Nodes()) {
			continue
		}
		take := fem.Pull(e, r.U)
		for c, n := range e.Nodes() {
			if v := take[6*c+2]; e.Part() == f.braces {
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
