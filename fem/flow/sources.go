package flow

import (
	"slices"

	"archload/fem"
)

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

// parts adds what the elements beside the plate take from its nodes. What a rigid
// body gives to the nodes that follow it no element beside them tells: there it
// is what the plate itself asks for.
func (f *Flow) parts(r *fem.Result, hold []float64) {
	led := map[int32]bool{}
	for _, b := range r.Plate.Model.Bodies {
		for _, n := range b.Nodes {
			led[n] = true
			hold[n] = f.Load[n]
		}
	}
	for i, e := range r.Plate.Elements {
		own := fem.OwnNodes(e)
		plate, brace := e.Part() == 0, e.Part() == f.braces
		wanted := func(n int32) bool { return f.plan.local[n] >= 0 && (!plate || led[n]) }
		if !slices.ContainsFunc(own, wanted) {
			continue
		}
		take := r.PullOwn(i)
		for c, n := range own {
			v := take[6*c+2]
			if brace {
				f.Brace[n] += v
			}
			switch {
			case !wanted(n):
			case led[n] && (plate || brace):
				hold[n] += v
			case !led[n] && !brace:
				hold[n] -= v
			}
		}
	}
}
