package study

import (
	"context"
	"math"
	"strings"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/tree"
	"archload/fem/contact"
	"archload/materials"
)

// trier tries one relief after the other.
type trier struct {
	top     *design.Top
	moved   *Moved    // nil: linear
	circles [][]int32 // of the strength used; nil: not yet laid
}

// with returns the prepared top with another relief under the bridge.
func (t *trier) with(ctx context.Context, r cases.Relief) (*design.Top, error) {
	c := *t.top.Built.Case
	br := *c.Bridge
	br.Relief, c.Bridge = r, &br
	return design.Adapt(ctx, t.top, &c, design.Options{Workers: t.top.Workers})
}

// Scales says whether the gap under the foot is the depth times a shape.
func Scales(p *design.Top) bool {
	b := p.Built.Case.Bridge
	return len(b.Misfit) == 0 && b.Relief.Across == 0
}

// relief is the case's own with another depth and shape.
func relief(p *design.Top, shape string, depth float64) cases.Relief {
	r := p.Built.Case.Bridge.Relief
	r.Stations, r.Shape, r.Depth = nil, shape, tree.Length(depth)
	return r
}

// shape tries every depth of one shape.
func (t *trier) shape(ctx context.Context, shape string, depths []float64) ([]TrialPoint, error) {
	states, err := t.states(ctx, shape, depths)
	if err != nil {
		return nil, err
	}
	out := make([]TrialPoint, len(depths))
	every := (len(depths) + mostStrengths - 2) / max(1, mostStrengths-1)
	for i, d := range depths {
		q, err := t.with(ctx, relief(t.top, shape, d))
		if err != nil {
			return nil, err
		}
		out[i] = t.point(q, states[i], t.fit(q), i%max(1, every) == 0 || i == len(depths)-1)
		out[i].Shape, out[i].Depth = shape, d
	}
	return out, nil
}

// fit is the load on the bridge and the gaps under it.
func (t *trier) fit(q *design.Top) contact.LoadCase {
	fit := q.Fit()
	if t.moved != nil {
		fit.Loads = t.moved.Loads
	}
	return fit
}

// settled tries a relief on the moved shape, under a share of the load.
func (t *trier) settled(ctx context.Context, q *design.Top, share float64) (TrialPoint, error) {
	r, err := t.moved.Settle(ctx, q, share)
	if err != nil {
		return TrialPoint{}, err
	}
	p := t.told(&design.Solution{Top: q, Result: r}, r.PadSinks(), true)
	p.Checks = failedIn(r)
	return p, nil
}

// states follows the contact for every depth of one shape.
func (t *trier) states(ctx context.Context, shape string, depths []float64) ([]*contact.State, error) {
	out := make([]*contact.State, len(depths))
	var deeper []int // those that one path gives
	for i, d := range depths {
		if d > 0 && Scales(t.top) {
			deeper = append(deeper, i)
			continue
		}
		q, err := t.with(ctx, relief(t.top, shape, d))
		if err != nil {
			return nil, err
		}
		st, err := q.Stand.Follow(t.fit(q))
		if err != nil {
			return nil, design.Explain(t.top.Built.Case, err)
		}
		out[i] = st
	}
	if len(deeper) == 0 {
		return out, nil
	}
	least := depths[deeper[0]]
	q, err := t.with(ctx, relief(t.top, shape, least))
	if err != nil {
		return nil, err
	}
	fit := t.fit(q)
	fit.History = true
	path, err := q.Stand.Follow(fit)
	if err != nil {
		return nil, design.Explain(t.top.Built.Case, err)
	}
	for _, i := range deeper {
		out[i] = path.Likewise(depths[i]/least, 1, 1)
	}
	return out, nil
}

// point puts one contact, and the fit that gave it, in a maker's words.
func (t *trier) point(q *design.Top, st *contact.State, fit contact.LoadCase, strength bool) TrialPoint {
	s := &design.Solution{Top: q, Result: &contact.Result{State: st, Body: q.Stand.BodyMoves(st, fit)}}
	if strength {
		s.Result = q.Stand.Recover(st, fit)
	}
	return t.told(s, q.Stand.PadSinks(st), strength)
}

// told puts a solution in a maker's words; sinks are those of the pads.
func (t *trier) told(s *design.Solution, sinks []float64, strength bool) TrialPoint {
	var b answer.BridgeReport
	b.SetContact(s)
	b.SetEvents(s)
	out := TrialPoint{Share: b.Share, Feet: b.Feet, MiddleTouchesAt: b.MiddleTouchesAt, MiddleClosesAt: b.MiddleClosesAt,
		GapLeft: b.GapLeft, Sink: answer.Sink(s), StrengthUsed: answer.None()}
	card, err := s.Top.Built.Case.Wood("plate.wood")
	if err != nil {
		card.Strength = materials.Strength{}
	}
	r := answer.StrengthReport{FootPressure: answer.None(), FootUsed: answer.None()}
	r.SetFootPressure(s)
	out.FootPressure, out.FootUsed = r.FootPressure, r.FootUsed
	out.TopBend, out.TopCurvature = topUnderFoot(s, sinks)
	if strength {
		out.StrengthUsed = t.used(s, card.Strength)
		if t.moved == nil {
			out.Checks = failedIn(s.Result)
		}
	}
	return out
}

// failedIn names the built-in checks that a result does not pass.
func failedIn(r *contact.Result) string {
	ch := r.Checks
	return strings.Join(answer.ErrorReport{Equilibrium: ch.Force, Moment: ch.Moment, Energy: ch.Energy, Complementarity: r.Complementarity}.Failed(), "; ")
}

// topUnderFoot fits a parabola w = a + b x + c x² to what the top gives way by
// at each pad under the foot (least squares over the contact points, x from the middle of
// the bearing). It returns -c e², how much more the top gives way in the middle
// than at the ends (e half the bearing length), mm, and the curvature 2 c that
// this adds to the outer surface, 1/m, positive as the arch's own.
func topUnderFoot(s *design.Solution, w []float64) (bend, curvature float64) {
	from, to := s.Top.Built.Case.Bridge.Reach()
	mid, e := (from+to)/2, (to-from)/2
	var m [5]float64 // sums of u⁰..u⁴, u = (x - mid) / e
	var f [3]float64
	for i := range s.Top.Built.Bridge.Pads {
		u := (s.Top.Built.Bridge.Cells[i].X - mid) / e
		for k, v := 0, 1.0; k < 5; k, v = k+1, v*u {
			m[k] += v
			if k < 3 {
				f[k] += v * w[i]
			}
		}
	}
	c := square(m, f)
	return -c, 2 * c / e / e * 1000
}

// square returns the coefficient of u² of the least-squares parabola with the
// moments m of the places and f of the values (Cramer's rule).
func square(m [5]float64, f [3]float64) float64 {
	det := func(a [3][3]float64) float64 {
		return a[0][0]*(a[1][1]*a[2][2]-a[1][2]*a[2][1]) - a[0][1]*(a[1][0]*a[2][2]-a[1][2]*a[2][0]) + a[0][2]*(a[1][0]*a[2][1]-a[1][1]*a[2][0])
	}
	d := det([3][3]float64{{m[0], m[1], m[2]}, {m[1], m[2], m[3]}, {m[2], m[3], m[4]}})
	n := det([3][3]float64{{m[0], m[1], f[0]}, {m[1], m[2], f[1]}, {m[2], m[3], f[2]}})
	if d == 0 {
		return math.NaN()
	}
	return n / d
}

// used is StrengthReport's used with the circles laid once for all reliefs.
func (t *trier) used(s *design.Solution, st materials.Strength) answer.Num {
	if t.circles == nil {
		t.layCircles(s)
	}
	across, shear := answer.InPlane(s.Top.Built)
	most := answer.None()
	stress := make([][6]float64, len(s.Top.Built.Mesh.Tris))
	for _, face := range []float64{1, -1} {
		for i := range stress {
			stress[i] = s.Result.ShellStress(i, face)
		}
		for _, tris := range t.circles {
			most = most.Max(answer.HoffmanUsed(answer.MeanStress(stress, tris), across, shear, st))
		}
	}
	return most
}

// layCircles lists the triangles under every circle of the strength used.
func (t *trier) layCircles(s *design.Solution) {
	shape := design.Circle()
	add := func(tris []int32, whole bool) {
		if whole {
			t.circles = append(t.circles, tris)
		}
	}
	for i := range s.Top.Built.Mesh.Tris {
		add(s.Top.Built.CircleAt(i, shape))
	}
	for _, c := range answer.EdgePlaces(s.Top.Built) {
		add(s.Top.Built.CircleAbout(c, s.Top.Built.Plate.Thickness.At(c).Z, shape))
	}
}
