package stability

import (
	"context"
	"errors"
	"math"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/moved"
)

// Raised is a load followed on the moved shape until the top gives way, or to a factor.
type Raised struct {
	Points []PathPoint
	Limit  float64 // factor at which no more load is borne; 0: not reached
}

// PathPoint is the state at a factor on the load.
type PathPoint struct {
	Factor float64 `json:"factor"`
	Sink   float64 `json:"sink"` // mm: of the bridge, without one of the deepest place
}

// pathParts are the parts in which a load is raised.
const pathParts = 12

// Raise follows the load of a linear solution on its moved shape to a factor. A bare plate is followed by arc
// length, over its limit point and a little beyond; under a bridge, whose contact is followed too, the load
// rises in parts, and the limit is met to half a percent from below.
func Raise(ctx context.Context, linear *design.Solution, to float64) (*Raised, error) {
	r := &Raised{}
	p := problem(linear.Top)
	if p.Stand == nil {
		return r, r.follow(ctx, p, linear, to)
	}
	err := p.Raise(to, pathParts, func(share float64, at *contact.Result) { r.add(linear, share, at) })
	if share, is := GivesWay(err); is {
		r.Limit = share
		return r, nil
	}
	return r, errors.Join(err, ctx.Err())
}

// add notes a point.
func (r *Raised) add(linear *design.Solution, share float64, at *contact.Result) {
	s := *linear
	s.Result, s.Coarse, s.Flow = at, nil, nil
	r.Points = append(r.Points, PathPoint{share, answer.Sink(&s)})
}

// follow goes by arc length.
func (r *Raised) follow(ctx context.Context, p *moved.Problem, linear *design.Solution, to float64) error {
	most := 0.0
	points, err := p.Path(moved.PathOptions{First: to / pathParts, Stop: func(q moved.Point) bool {
		most = math.Max(most, q.Share)
		return q.Share >= to || q.Negative > 0 && q.Share < fallen*most || ctx.Err() != nil
	}})
	for _, q := range points {
		r.add(linear, q.Share, &contact.Result{Result: fem.Result{Plate: linear.Result.Plate, U: q.U, Large: true}})
	}
	r.Limit, _ = moved.Limit(points)
	return errors.Join(err, ctx.Err())
}

// fallen is the share of the greatest load at which a path over its limit point is left.
const fallen = 0.97
