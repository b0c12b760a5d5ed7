package flow

import (
	"math"
	"slices"

	"archload/fem"
	"archload/fem/element"
	"archload/mesh"
)

// carriedFlow is what the braces carry, as a flow in the triangles, N/mm.
type carriedFlow struct {
	lines  [][2]float64 // along the glue lines, in the triangles that they run through or along
	strips [][2]float64 // spread evenly over the braces' width
}

// braceFlow returns what the braces carry and fills Braces.
//
// A stretch of brace carries the vertical part V of its section force from one
// glue point to the next. As a line current along its chord it adds V l/A
// along the chord to a triangle of area A in which the chord is l long; along
// a common edge both triangles take half. For every hat function v that gives
// ∫ t·grad v = V (v(end) - v(start)), so the hand-over balances exactly.
func (f *Flow) braceFlow(r *fem.Result) *carriedFlow {
	out := &carriedFlow{make([][2]float64, len(f.plan.tris)), make([][2]float64, len(f.plan.tris))}
	s := r.Plate
	first := map[int32]int{}
	for i := range s.Model.Beams {
		b := &s.Model.Beams[i]
		if b.Part != f.braces {
			continue
		}
		k, seen := first[b.Group]
		if !seen {
			k = len(f.Braces)
			first[b.Group] = k
			f.Braces = append(f.Braces, Brace{Group: b.Group})
		}
		v := r.SectionForce(i)[2]
		ends := f.chord(s, b)
		if math.Abs(v) > math.Abs(f.Braces[k].Force) {
			f.Braces[k].Force = v
			f.Braces[k].At = [2]float64{(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2}
		}
		f.addCurrent(out.lines, v, ends, f.beside(b))
		f.addStrip(out.strips, v, ends, element.Width(b.Section))
	}
	f.handOvers(r, first)
	return out
}

// handOvers sums what each brace takes over from the plate: the steps of its
// vertical force from stretch to stretch, the rising ones.
func (f *Flow) handOvers(r *fem.Result, index map[int32]int) {
	s := r.Plate
	last := make([]float64, len(f.Braces))
	step := func(k int, v float64) {
		f.Braces[k].HandOver += math.Max(0, v-last[k])
		last[k] = v
	}
	for i := range s.Model.Beams {
		if b := &s.Model.Beams[i]; b.Part == f.braces {
			step(index[b.Group], r.SectionForce(i)[2])
		}
	}
	for k := range last {
		step(k, 0)
	}
}

// chord returns the ends of a stretch in plan: its glue points' shares of the
// corners, or its nodes.
func (f *Flow) chord(s *fem.System, b *fem.BeamElem) (ends [2][2]float64) {
	for e := range 2 {
		if !b.Glued {
			x := s.Model.Nodes[b.Nodes[e]].P
			ends[e] = [2]float64{x[0], x[1]}
			continue
		}
		at := b.Glue[e]
		for k, n := range s.Model.Shells[at.Shell].Nodes {
			x := s.Model.Nodes[n].P
			ends[e][0] += at.L[k] * x[0]
			ends[e][1] += at.L[k] * x[1]
		}
	}
	return ends
}

// beside lists the triangles about the nodes of a stretch, in order.
func (f *Flow) beside(b *fem.BeamElem) []int32 {
	var out []int32
	for _, n := range b.Nodes {
		for _, c := range f.plan.fan[f.plan.local[n]] {
			for _, m := range f.plan.tris[c.tri] {
				out = append(out, f.plan.around(m)...)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// addCurrent adds a line current of v newtons along the chord.
func (f *Flow) addCurrent(out [][2]float64, v float64, ends [2][2]float64, near []int32) {
	d := sub2(ends[1], ends[0])
	cuts := f.crossings(ends, near)
	for i := 1; i < len(cuts); i++ {
		part := cuts[i] - cuts[i-1]
		if part < 1e-12 {
			continue
		}
		u := (cuts[i] + cuts[i-1]) / 2
		hit := f.holding([2]float64{ends[0][0] + u*d[0], ends[0][1] + u*d[1]}, near)
		for _, t := range hit {
			w := v * part / (float64(len(hit)) * f.plan.area[t])
			out[t][0] += w * d[0]
			out[t][1] += w * d[1]
		}
	}
}

// crossings lists where a chord crosses the edges of the triangles near it, as
// shares of its length, rising from 0 to 1.
func (f *Flow) crossings(ends [2][2]float64, near []int32) []float64 {
	d := sub2(ends[1], ends[0])
	cuts := []float64{0, 1}
	for i := range 3 * len(near) {
		t, k := near[i/3], i%3
		a := f.plan.pts[f.plan.tris[t][k]]
		e := sub2(f.plan.pts[f.plan.tris[t][(k+1)%3]], a)
		u := cross2(sub2(a, ends[0]), e) / cross2(d, e)
		if u > 0 && u < 1 { // false if they are parallel
			cuts = append(cuts, u)
		}
	}
	slices.Sort(cuts)
	return cuts
}

// holding lists the triangles of near in which q lies, both at an edge.
func (f *Flow) holding(q [2]float64, near []int32) []int32 {
	var hit []int32
	for _, t := range near {
		least := math.Inf(1)
		for k := range 3 {
			a, b := f.plan.pts[f.plan.tris[t][k]], f.plan.pts[f.plan.tris[t][(k+1)%3]]
			least = math.Min(least, cross2(sub2(b, a), sub2(q, a))/(2*f.plan.area[t]))
		}
		if least >= -1e-9 {
			hit = append(hit, t)
		}
	}
	return hit
}

// addStrip adds v newtons spread over a width about the chord, in cells of
// about a millimetre.
func (f *Flow) addStrip(out [][2]float64, v float64, ends [2][2]float64, width float64) {
	d := sub2(ends[1], ends[0])
	l := math.Hypot(d[0], d[1])
	n, m := max(1, int(math.Ceil(l))), max(1, int(math.Ceil(width)))
	for i := range n {
		for j := range m {
			u, w := (float64(i)+0.5)/float64(n), ((float64(j)+0.5)/float64(m)-0.5)*width/l
			t, _, inside := f.loc.Find(mesh.Point{ends[0][0] + u*d[0] - w*d[1], ends[0][1] + u*d[1] + w*d[0]})
			if !inside {
				continue // over a hole or the edge: the plate beside it takes the rest
			}
			k := v / (float64(n*m) * f.plan.area[t])
			out[t][0] += k * d[0]
			out[t][1] += k * d[1]
		}
	}
}
