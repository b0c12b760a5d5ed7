package contact

import "math"

// residual solves the final set of closed pads once more from scratch, so that
// the state carries no rounding of the path, and measures what is left of the
// contact conditions.
func (w *tracer) residual() (*State, error) {
	p, s := w.p, w.state
	v := make([]float64, len(p.b))
	for j := range int32(len(v)) {
		v[j] = p.b[j] - w.offset[j]
		if p.isNormal(j) {
			v[j] = p.b[j] + p.restGap(p.padOf(j), s.SlackRest)
		}
	}
	var f [6]float64
	for m := range 6 {
		f[m] = -p.f[m]
	}
	lam, rho, err := w.active.solve(equations{v: v, f: f}, make([]float64, p.pads), make([]bool, p.pads))
	if err != nil {
		return nil, err
	}
	s.Lambda = lam
	s.Rho, s.Closed, s.Slides = rho, w.closed, w.slides
	s.Gap = make([]float64, p.pads)
	for i := range s.Gap {
		j := p.normal(i)
		if w.closed[i] {
			s.Residual = math.Max(s.Residual, -s.Lambda[j]/w.force)
			if s.Lambda[j] < 0 && s.Lambda[j] > -1e-9*w.force {
				s.Lambda[j] = 0
			}
			continue
		}
		s.Gap[i] = p.restGap(i, s.SlackRest) + p.movement(j, 1, s.Lambda, rho)
		s.Residual = math.Max(s.Residual, -s.Gap[i]/w.length)
	}
	w.addDrift()
	return s, nil
}

// addDrift adds the distance between the path's own forces and the clean
// solution to the residual: they must agree but for rounding.
func (w *tracer) addDrift() {
	s := w.state
	for j, v := range s.Lambda {
		s.Residual = math.Max(s.Residual, math.Abs(v-w.lambda[j])/w.force)
	}
	if n := len(s.Trace); n > 0 {
		for i := range s.Trace[n-1].Force {
			s.Trace[n-1].Force[i] = s.Lambda[w.p.normal(i)]
		}
	}
}
