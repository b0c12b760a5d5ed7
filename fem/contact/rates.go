package contact

import "gonum.org/v1/gonum/blas/gonum"

// rates solves (7) for the derivatives along a direction with the present set of
// closed pads.
func (w *tracer) rates(d direction) (*rates, error) {
	p := w.p
	r := &rates{w: make([]float64, p.pads)}
	open := make([]bool, p.pads)
	for i, c := range w.closed {
		open[i] = !c
	}
	var err error
	r.all, r.rho, err = w.active.solve(equations{dt: d.dt, v: w.unheldMovement(d), f: w.resultant(d)}, r.w, open)
	if err != nil {
		return nil, err
	}
	r.lambda = make([]float64, len(w.active.rows))
	for k, j := range w.active.rows {
		r.lambda[k] = r.all[j]
	}
	for m, j := range d.fade {
		if w.fadesIn(d, j) {
			r.all[j] = d.rate[m]
		}
	}
	return r, nil
}

// resultant is the resultant that the active rows must hold, with what fades taken
// off.
func (w *tracer) resultant(d direction) (f [6]float64) {
	for m := range 6 {
		f[m] = -w.p.f[m] * d.dt
		for k, j := range d.fade {
			if w.fadesIn(d, j) {
				f[m] -= w.p.r[j][m] * d.rate[k]
			}
		}
	}
	return f
}

// unheldMovement is the movement of every row while rows fade, were nothing to carry; nil
// if none fades.
func (w *tracer) unheldMovement(d direction) []float64 {
	if len(d.fade) == 0 {
		return nil
	}
	var bl gonum.Implementation
	n := len(w.p.b)
	v := make([]float64, n)
	bl.Daxpy(n, d.dt, w.p.b, 1, v, 1)
	for m, j := range d.fade {
		if w.fadesIn(d, j) {
			bl.Daxpy(n, d.rate[m], w.p.a[int(j)*n:int(j+1)*n], 1, v, 1)
		}
	}
	return v
}

// slope is dw/ds of any row.
func (w *tracer) slope(i int32, d direction, r *rates) float64 {
	var bl gonum.Implementation
	p, n := w.p, len(w.p.b)
	v := p.b[i]*d.dt + bl.Ddot(n, p.a[int(i)*n:int(i+1)*n], 1, r.all, 1)
	for m := range 6 {
		v += p.r[i][m] * r.rho[m]
	}
	return v
}

type rates struct {
	lambda []float64 // of the active rows, in their order
	all    []float64 // of all rows, those that fade among them; nil of a stretch that was guessed, where none fades
	rho    [6]float64
	w      []float64 // of each pad's normal row
}

// ratesOf are the rates, those at hand if no pad has come or gone since.
func (w *tracer) ratesOf(d direction) (*rates, error) {
	if w.lastRates != nil && w.lastID == d.id && w.lastDt == d.dt {
		return w.lastRates, nil
	}
	r, err := w.rates(d)
	w.lastRates, w.lastID, w.lastDt = r, d.id, d.dt
	return r, err
}
