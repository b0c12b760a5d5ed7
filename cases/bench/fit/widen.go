package fit

import "math"

// doubtful widens what is held of the unknowns by what the readings and the model leave open beyond the stated
// deviations. If the readings lie farther from what was expected than those say, all are taken to be off by so
// much more (R. T. Birge, Phys. Rev. 40 (1932) 207). And what shear through the thickness of blanks that were
// taken for thin would change, the shift of the mean if their tones were those of plates that strain in
// shear, is taken for one standard deviation more along that shift.
func (t *fitter) doubtful(a *rest) {
	count := 0
	for _, as := range a.took {
		if as != leftOut {
			count++
		}
	}
	wider := math.Sqrt(math.Max(1, a.far/math.Max(float64(count), 1)))
	same := t.again(a, nil, wider)
	offs := t.shear(a)
	copy(a.p, same.p)
	a.otherwise()
	if len(offs) == 0 {
		return
	}
	deep := t.again(a, offs, wider)
	n := len(a.x)
	for i := range n {
		for j := range n {
			a.p[n*i+j] += (deep.x[i] - same.x[i]) * (deep.x[j] - same.x[j])
		}
	}
}

// again takes the readings in once more as a does, with deviations so many times wider, and less what shear takes
// off each tone of a setup.
func (t *fitter) again(a *rest, offs map[*setup][]float64, wider float64) *belief {
	b := newBelief(t.priorAt(a.at))
	m := matcher{readings: t.readings, states: a.states, at: a.at}
	for i, as := range a.took {
		r := &t.readings[i]
		if as == leftOut {
			continue
		}
		value, sd, unit := r.measured()
		g := m.guessAs(r, as)
		if off := offs[r.setup]; off != nil && r.kind == tone {
			value -= off[as]
		}
		b = b.taking(g, a.at, value, wider*sd, unit, as)
	}
	return b
}

// shear is what shear changes in the logarithm of each tone of the setups that were taken for thin.
func (t *fitter) shear(a *rest) map[*setup][]float64 {
	offs := map[*setup][]float64{}
	for _, s := range t.setups {
		if s.mend.shear == nil {
			continue
		}
		own := a.states[s].tones
		offs[s] = make([]float64, len(own))
		for k, shape := range s.mend.shapes {
			if i := likest(shape, own); i >= 0 {
				offs[s][i] = s.mend.shear[k]
			}
		}
	}
	return offs
}
