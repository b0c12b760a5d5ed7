package surface

// RimRaised is a fitted surface over a rim that is by mm higher than Data.Rim said: what the data then
// ask for, as smooth as before and every datum believed as much as before. The fit is linear in
// that height, so that another one costs no other fit. It panics if the surface was not made by Fit.
func (s *Spline) RimRaised(by float64) *Spline {
	f := s.AsFitted()
	if by == 0 {
		return f
	}
	q := &Spline{grid: f.grid, coef: make([]float64, len(f.coef)), ground: f.ground, fitted: f}
	for i, rise := range f.lift() {
		q.coef[i] = f.coef[i] + by*rise
	}
	return q
}

// CanRise says whether RimRaised serves: whether the surface was fitted to data and a rim's height; false of none.
func (s *Spline) CanRise() bool { return s != nil && s.AsFitted().lift != nil }

// AsFitted is the surface as it was fitted, before its rim was raised.
func (s *Spline) AsFitted() *Spline {
	if s.fitted != nil {
		return s.fitted
	}
	return s
}
