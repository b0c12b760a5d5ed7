package figure

import (
	"cmp"
	"math"
	"slices"

	"archload/mesh"
	"archload/viz/scale"
)

// Field is one quantity over the plate.
type Field struct {
	Name        string      // in the maker's words: "sink of the outer surface"
	Unit        string      // "mm", "MPa", "N/mm", "" for a pure number
	Nodal       []float64   // one value per node of the plan, in Unit; NaN: no value there
	PerTriangle []float64   // or one per triangle; drawn as the mean at the nodes weighted by area
	Kind        scale.Kind  // what its colours mean
	Plain       bool        // bands without lines between them
	Range       *[2]float64 // ends of the legend, in Unit, so that pictures share a scale; nil: from the values
}

// Extent returns the least and greatest value, NaN left out; ok is false if
// there is no value at all.
func (f Field) Extent() (lo, hi float64, ok bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, list := range [][]float64{f.Nodal, f.PerTriangle} {
		for _, v := range list {
			if !math.IsNaN(v) && !math.IsInf(v, 0) {
				lo, hi, ok = math.Min(lo, v), math.Max(hi, v), true
			}
		}
	}
	if !ok {
		return 0, 0, false
	}
	return lo, hi, true
}

// Scale returns the bands of the field's legend: Range if given, else the
// extent of the values.
func (f Field) Scale() scale.Scale {
	lo, hi, _ := f.Extent()
	if f.Range != nil {
		lo, hi = f.Range[0], f.Range[1]
	}
	return scale.New(lo, hi, f.Kind)
}

// SharedRange returns the range that holds the values of all fields, so that
// their pictures can be compared colour by colour.
func SharedRange(fields ...Field) [2]float64 {
	r, found := [2]float64{}, false
	for _, f := range fields {
		lo, hi, ok := f.Extent()
		switch {
		case ok && !found:
			r, found = [2]float64{lo, hi}, true
		case ok:
			r = [2]float64{math.Min(r[0], lo), math.Max(r[1], hi)}
		}
	}
	return r
}

// carried is over how many rings of triangles values are carried on to an edge
// beside which none is known.
const carried = 2

// NodeMeans returns the area-weighted mean of the triangles around each
// node; triangles without a value do not count. A node with none takes the mean
// of its neighbours, so that a strip along an edge where nothing is known reads
// as what lies beside it; farther off it has NaN.
func NodeMeans(p *mesh.Plan, v []float64) []float64 {
	sum, weight := make([]float64, len(p.Points)), make([]float64, len(p.Points))
	for i, t := range p.Tris {
		if math.IsNaN(v[i]) || math.IsInf(v[i], 0) {
			continue
		}
		a := math.Abs(area(p, t))
		for _, n := range t {
			sum[n] += a * v[i]
			weight[n] += a
		}
	}
	for n := range sum {
		sum[n] /= weight[n] // 0/0 = NaN: no value
	}
	for range carried {
		carryOn(p, sum)
	}
	return sum
}

// carryOn gives each node without a value the mean of the corners with one of
// the triangles about it.
func carryOn(p *mesh.Plan, v []float64) {
	sum, n := make([]float64, len(v)), make([]float64, len(v))
	for _, t := range p.Tris {
		for k, a := range t {
			for _, b := range [2]int32{t[(k+1)%3], t[(k+2)%3]} {
				if math.IsNaN(v[a]) && !math.IsNaN(v[b]) {
					sum[a] += v[b]
					n[a]++
				}
			}
		}
	}
	for i := range v {
		if n[i] > 0 {
			v[i] = sum[i] / n[i]
		}
	}
}

// Quantile is the value of a field of the triangles that a share q of the plan's area does not exceed.
func Quantile(p *mesh.Plan, v []float64, q float64) float64 {
	order := make([]int, len(v))
	all := 0.0
	for i := range order {
		order[i] = i
		all += area(p, p.Tris[i])
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(v[a], v[b]) })
	sum := 0.0
	for _, i := range order {
		if sum += area(p, p.Tris[i]); sum >= q*all {
			return v[i]
		}
	}
	return v[order[len(order)-1]]
}

// area returns the signed area of a triangle, mm².
func area(p *mesh.Plan, t [3]int32) float64 {
	a, b, c := p.Points[t[0]], p.Points[t[1]], p.Points[t[2]]
	return 0.5 * ((b[0]-a[0])*(c[1]-a[1]) - (c[0]-a[0])*(b[1]-a[1]))
}
