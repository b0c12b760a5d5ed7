package fit

import "context"

// shearDoubt widens what is held of the unknowns by what shear through the thickness of blanks that were taken for
// thin would change: the shift of the mean if their tones were those of plates that strain in shear, as one
// standard deviation more along that shift.
func (t *fitter) shearDoubt(ctx context.Context, a *rest) error {
	offs := map[*setup][]float64{}
	for _, s := range t.setups {
		if !s.rough.thin || s.count == 0 {
			continue
		}
		thick := *s.rough
		thick.thin = false
		st, err := s.evaluate(ctx, &thick, &t.f.Card, a.at, t.o.workers(), false)
		if err != nil {
			return err
		}
		own, err := s.evaluate(ctx, s.rough, &t.f.Card, a.at, t.o.workers(), false)
		if err != nil {
			return err
		}
		offs[s] = make([]float64, len(own.tones))
		for k := range own.tones {
			best, most := -1, surelyAlike
			for i := range st.tones {
				if m := alike(own.tones[k].shape, st.tones[i].shape); m > most {
					best, most = i, m
				}
			}
			if best >= 0 {
				offs[s][k] = st.tones[best].y - own.tones[k].y
			}
		}
	}
	if len(offs) == 0 {
		return nil
	}
	b := newBelief(t.prior)
	m := matcher{readings: t.readings, states: a.states, at: a.at}
	for i, as := range a.took {
		r := &t.readings[i]
		if as == leftOut {
			b = b.leaving()
			continue
		}
		value, sd, unit := r.measured()
		g := m.guessOf
		if r.kind != tone {
			b = b.taking(g(r), a.at, value, sd, unit, as)
			continue
		}
		if off := offs[r.setup]; off != nil {
			value -= off[as]
		}
		b = b.taking(&a.states[r.setup].tones[as].guess, a.at, value, sd, unit, as)
	}
	n := len(b.x)
	for i := range n {
		for j := range n {
			a.p[n*i+j] += (b.x[i] - a.x[i]) * (b.x[j] - a.x[j])
		}
	}
	return nil
}
