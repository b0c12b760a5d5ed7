package moved

import (
	"errors"
	"math"

	"archload/fem/sparse"
)

// Point is an equilibrium on a path.
type Point struct {
	Share    float64   // of the load, 1; may fall again beyond a limit point
	U        []float64 // movements, mm and rad
	Negative int       // negative pivots of the tangent there: 0 where it is stable
}

// PathOptions steer Path; the zero value serves.
type PathOptions struct {
	First float64            // share of the load of the first step; 0 means 1/8
	Stop  func(p Point) bool // told each point; true ends the path. nil: it ends at the full load, exactly
	Most  int                // points; 0 means 200
}

// ErrHasBody says that a path was asked of a plate on which a body stands: its contact is followed by
// load steps alone.
var ErrHasBody = errors.New("moved: a path by arc length is for a plate without a body")

// Path follows the equilibrium of a plate without a body by arc length, over limit points and beyond. A step
// goes along the tangent K δ = F, forward as the step before; Newton's iteration returns to the path in
// the plane square to the way so far (E. Ramm, Strategies for tracing the nonlinear response near limit
// points, 1981; E. Riks 1979; from memory). The tangent is factorised with its signs.
func (p *Problem) Path(o PathOptions) (points []Point, err error) {
	if p.Stand != nil {
		return nil, ErrHasBody
	}
	w := &arc{p: p, load: p.Cond.Loads(1), at: Point{U: make([]float64, 6*len(p.Plate.Model.Nodes))}}
	for _, d := range p.Plate.FixedDofs() {
		w.load[d] = 0
	}
	first, most := o.First, o.Most
	if first == 0 {
		first = 1.0 / 8
	}
	if most == 0 {
		most = 200
	}
	stop := o.Stop
	if stop == nil {
		stop = func(p Point) bool { return p.Share >= 1 }
		defer func() { err = errors.Join(err, w.land(points, 1)) }()
	}
	for len(points) < most {
		if err := w.step(first); err != nil {
			return points, err
		}
		points = append(points, w.at)
		if n := len(points); n >= 3 && w.fine == 0 && points[n-1].Share < points[n-2].Share && points[n-3].Share < points[n-2].Share {
			points = points[:n-2] // once more over the limit, in small arcs
			w.goBack(points)
			continue
		}
		if stop(w.at) {
			break
		}
	}
	return points, nil
}

// goBack stands at the last of some points, to go on in arcs so much shorter that a limit point just
// ahead is met closely.
func (w *arc) goBack(points []Point) {
	n := len(points)
	w.way = points[n-1].U
	if n > 1 {
		w.way = less(points[n-1].U, points[n-2].U)
	}
	w.at = points[n-1]
	w.fine, w.length = arcFine, w.length/arcFiner
}

// land moves the last point to a share of the load by Newton's iteration at that load.
func (w *arc) land(points []Point, share float64) error {
	if len(points) == 0 || points[len(points)-1].Share < share {
		return nil
	}
	q := &points[len(points)-1]
	q.Share = share
	for range arcSteps {
		rest := w.rest(q)
		f, err := w.factor(q.U)
		if err != nil {
			return err
		}
		f.Solve(rest)
		u := sum(q.U, rest)
		done := apart(u, q.U) <= settled
		if q.U, q.Negative = u, f.Negative(); done {
			return nil
		}
	}
	return errLost
}

// arc is a path on its way.
type arc struct {
	p      *Problem
	load   []float64 // at full load
	at     Point
	length float64   // of the next step; 0 before the first
	way    []float64 // of the last step
	fine   int       // short arcs still to come about a limit point
}

// Limits of an arc.
const (
	arcSteps  = 12 // of Newton's iteration, then the arc is halved
	arcWished = 5
	arcHalved = 12 // times in turn
	arcFiner  = 4  // times shorter over a limit point
	arcFine   = 14 // arcs
)

// step goes one arc on.
func (w *arc) step(first float64) error {
	f, err := w.factor(w.at.U)
	if err != nil {
		return err
	}
	w.at.Negative = f.Negative()
	along := append([]float64(nil), w.load...)
	f.Solve(along)
	size := math.Sqrt(dot(along, along))
	if w.length == 0 {
		w.length = first * size
	}
	sign := 1.0
	if w.way != nil && dot(along, w.way) < 0 {
		sign = -1
	}
	for range arcHalved {
		next, count, err := w.settle(along, sign*w.length/size)
		if err == nil {
			w.way = less(next.U, w.at.U)
			w.at = next
			if w.fine > 0 {
				w.fine--
			} else {
				w.length *= math.Min(2, math.Sqrt(arcWished/float64(count)))
			}
			return nil
		}
		w.length /= 2
	}
	return errLost
}

// settle returns to the path from a step of the load's share along a tangent.
func (w *arc) settle(along []float64, share float64) (Point, int, error) {
	way := make([]float64, len(along))
	for i, v := range along {
		way[i] = share * v
	}
	q := Point{Share: w.at.Share + share, U: sum(w.at.U, way)}
	for k := range arcSteps {
		rest := w.rest(&q)
		f, err := w.factor(q.U)
		if err != nil {
			return q, k, err
		}
		q.Negative = f.Negative()
		f.Solve(rest)
		ahead := append([]float64(nil), w.load...)
		f.Solve(ahead)
		d := -dot(way, rest) / dot(way, ahead)
		if math.IsNaN(d) {
			return q, k, errLost
		}
		q.Share += d
		u := append([]float64(nil), q.U...)
		for i := range q.U {
			q.U[i] += rest[i] + d*ahead[i]
		}
		if apart(q.U, u) <= settled {
			return q, k + 1, nil
		}
		way = less(q.U, w.at.U)
	}
	return q, arcSteps, errLost
}

// rest is what is out of balance where nothing is held.
func (w *arc) rest(q *Point) []float64 {
	f := make([]float64, len(q.U))
	w.p.Plate.PullTo(f, q.U, w.p.Workers)
	acts := w.p.acting(q.Share, q.U, standing{})
	for i, v := range acts.plate {
		f[i] = v - f[i]
	}
	for _, d := range w.p.Plate.FixedDofs() {
		f[d] = 0
	}
	return f
}

// factor is the signed one of the tangent.
func (w *arc) factor(u []float64) (*sparse.Factor, error) {
	sys := w.p.Plate.WithTangent(u, w.p.Workers)
	return sparse.FactorizeSigned(sys.K, w.p.Plate.Factor.Analysis(), w.p.Workers)
}

// Limit returns the greatest share of the load among the points that is followed by a lesser one: by a
// parabola through the three about it, over their distance along the path. It is not known (0) where the
// load never falls.
func Limit(points []Point) (share float64, at int) {
	for i := 1; i+1 < len(points); i++ {
		a, b, c := &points[i-1], &points[i], &points[i+1]
		if b.Share < a.Share || b.Share < c.Share || b.Share < share {
			continue
		}
		x, y := -between(a.U, b.U), between(b.U, c.U)
		p, q := (a.Share-b.Share)/x, (c.Share-b.Share)/y
		bend := (q - p) / (y - x)
		slope := p - bend*x
		share, at = b.Share-slope*slope/(4*bend), i
	}
	return share, at
}

func sum(a, b []float64) []float64 {
	out := make([]float64, len(a))
	for i, v := range a {
		out[i] = v + b[i]
	}
	return out
}

func less(a, b []float64) []float64 {
	out := make([]float64, len(a))
	for i, v := range a {
		out[i] = v - b[i]
	}
	return out
}
