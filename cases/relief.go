package cases

import (
	"math"

	"archload/mesh"
)

// Gap returns the gap between foot and top before loading at a place of the
// foot, mm: the relief and the measured misfit. x runs along the bridge and y
// across it (toward the neck), both mm from its middle.
//
// With u = |x| / e, e the distance of the outer end of the foot on that side
// and d the depth, the shapes are
//
//	parabola  d (1 - u²)
//	cosine    d (1 + cos pi u) / 2
//	wedge     d (1 - u)
//	flat      d where |x| < e - ends, else 0
//
// or stations give the depth, straight in between. `across` adds
// a (1 - (2 y / width)²).
func (b *Bridge) Gap(x, y float64) float64 {
	v := 2 * y / float64(b.Width)
	across := float64(b.Relief.Across) * max(0, 1-v*v)
	return b.ReliefAlong(x) + across + b.Misfit.Value(x)
}

// ReliefAlong returns the relief on the bridge's middle line, mm.
func (b *Bridge) ReliefAlong(x float64) float64 {
	r := &b.Relief
	if len(r.Stations) > 0 {
		return r.Stations.Value(x)
	}
	from, to := b.Reach()
	e := to
	if x < 0 {
		e = -from
	}
	d := float64(r.Depth)
	u := math.Abs(x) / e
	switch {
	case e <= 0 || u >= 1:
		return 0
	case r.Shape == "cosine":
		return d * (1 + math.Cos(math.Pi*u)) / 2
	case r.Shape == "wedge":
		return d * (1 - u)
	case r.Shape == "flat":
		if math.Abs(x) >= e-float64(r.Ends) {
			return 0
		}
		return d
	}
	return d * (1 - u*u)
}

// Reach returns the outer ends of the feet, mm from the bridge's middle.
func (b *Bridge) Reach() (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	for _, f := range b.Feet {
		from, to = min(from, float64(f.From)), max(to, float64(f.To))
	}
	return from, to
}

// maxRelief returns the deepest wood taken from under the foot, mm.
func (b *Bridge) maxRelief() float64 {
	deepest := float64(b.Relief.Depth)
	for _, s := range b.Relief.Stations {
		deepest = max(deepest, s.Value)
	}
	return deepest + float64(b.Relief.Across)
}

// FootRect returns the bearing rectangle of foot i in plan, mm.
func (b *Bridge) FootRect(i int) (lo, hi mesh.Point) {
	half := float64(b.Width) / 2
	lo = mesh.Point{b.At[0] + float64(b.Feet[i].From), b.At[1] - half}
	hi = mesh.Point{b.At[0] + float64(b.Feet[i].To), b.At[1] + half}
	return lo, hi
}
