package fit

import (
	"context"
	"math"

	"archload/cases/answer"
)

// mostThinner is by how much a thickness is changed at most for a target: a quarter.
const mostThinner = 0.25

// meet finds the thickness of a flat piece with which a gauge that was asked shows its target, by the slope that is known and a
// fresh solve or two. It returns nil without a target.
func (t *fitter) meet(ctx context.Context, a *rest, r *reading, now float64) (*Thinner, error) {
	if r.value <= 0 {
		return nil, nil
	}
	s := r.setup
	out := &Thinner{Target: r.value, Sink: answer.None()}
	m := matcher{states: a.states}
	y := now
	power := m.guessOf(r).row[s.thickness] / m.guessOf(r).y // of the sink by the thickness
	by := 0.0                                               // of its logarithm
	for range 3 {
		by += math.Log(r.value/y) / power
		out.Times = math.Exp(by)
		if math.Abs(out.Times-1) > mostThinner || math.IsNaN(by) {
			out.Far = true
			return out, nil
		}
		x := append([]float64(nil), a.x...)
		x[s.thickness] += by
		st, err := s.evaluate(ctx, s.rough, &t.f.Card, x, t.o.workers(), false, nil)
		if err != nil {
			return nil, err
		}
		s.mend.apply(st)
		y = st.sinks[r.order].y
		out.Sink = answer.Num(y)
		if math.Abs(math.Log(r.value/y)) < 0.002 {
			break
		}
	}
	return out, nil
}

// tell says what the gauges that were not read will show, and what would meet their targets.
func (t *fitter) tell(ctx context.Context, r *Report, a *rest) error {
	for i := range t.asked {
		m := matcher{states: a.states}
		y, v := a.expects(m.guessOf(&t.asked[i]), a.at)
		thinner, err := t.meet(ctx, a, &t.asked[i], y)
		if err != nil {
			return err
		}
		r.Expected = append(r.Expected, Expected{Words: t.asked[i].words, Value: y, SD: math.Sqrt(v), Thickness: thinner})
	}
	return nil
}
