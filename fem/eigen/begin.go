package eigen

import (
	"cmp"
	"fmt"

	"archload/fem/sparse"
)

// newLanczos makes room for a search and begins it; room is as in lowest.
func newLanczos(p *Problem, o Options, room int) (*lanczos, error) {
	l := &lanczos{p: p, o: o,
		mass: p.M.Octets(o.Workers), alg: sparse.NewOctetAlgebra(p.K.Nodes(), o.Workers)}
	l.free = make([]bool, sparse.Block*p.K.Nodes())
	for i := range l.free {
		l.free[i] = true
	}
	for _, d := range p.Fixed {
		l.free[d] = false
	}
	for _, is := range l.free {
		if is {
			l.dofs++
		}
	}
	l.most = cmp.Or(room, (3*(o.Count+o.Free)+96)/width)
	l.v = make([]float64, (l.most+1)*l.alg.Len())
	l.mv, l.work = make([]float64, l.alg.Len()), make([]float64, l.alg.Len())
	l.t = make([]float64, l.most*width*l.most*width)
	if o.Free == 0 {
		return l, l.begin(0)
	}
	return l, l.beginFree()
}

// begin factorises K + shift M and makes the first block.
func (l *lanczos) begin(shift float64) error {
	k := l.p.K
	if shift != 0 {
		k = l.shifted(shift)
	}
	var err error
	if l.f == nil {
		if l.f, err = sparse.Factorize(k, l.p.Plan, l.o.Workers); err != nil {
			return err
		}
		l.solve = l.f.Octets()
	} else if err = l.f.Refactor(k); err != nil {
		return err
	}
	l.shift, l.size, l.seed, l.whole = shift, 0, 0, false
	clear(l.t)
	l.fresh()
	return nil
}

// beginFree chooses the shift of a free body: small beside its lowest elastic eigenvalue,
// so that the spectrum is well spread, but not so small that the rigid motions drown it.
func (l *lanczos) beginFree() error {
	shift := l.o.Scale
	if !(shift > 0) {
		shift = 1
	}
	for range 12 {
		if err := l.begin(shift); err != nil {
			return err
		}
		for range firstBlocks {
			l.step()
		}
		l.project()
		if len(l.ritz.theta) <= l.o.Free {
			return nil // smaller than a few blocks
		}
		lowest := l.ritz.value(l.o.Free)
		if lowest > 0.3*shift && lowest < 1e4*shift {
			return nil
		}
		if lowest > 0 {
			shift = lowest / 10
		} else {
			shift *= 1e-3
		}
	}
	return fmt.Errorf("eigen: no shift fits a body with %d free motions: lowest other eigenvalue %.3g", l.o.Free, l.ritz.value(l.o.Free))
}
