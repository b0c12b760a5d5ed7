package tone

import (
	"archload/cases/answer"
	"archload/cases/design"
	"archload/mesh"
	"archload/mesh/plane"
)

// alikeEnough is how much two movements must have in common to be called one tone: more than half,
// so that no third may have as much.
const alikeEnough = 0.5

// lattice is how many places across the larger plate's width movements are compared at.
const lattice = 60

// Match sets the tones of a design beside those of the first one by their shapes, not by their
// numbers: the pairs that are most alike first, each tone in one pair. Alike is
//
//	(Σ u v)² / (Σ u² Σ v²),
//
// the modal assurance criterion (R. J. Allemang, D. L. Brown, A correlation coefficient for modal
// vector analysis, 1982; from memory), over places spread evenly in plan where both plates are, u and
// v the movements square to them.
func (r *Report) Match(own *Shapes, first *Report, of *Shapes) {
	u, v := own.sampled(of)
	n, f := len(r.Tones), len(first.Tones)
	alike := make([][]float64, n)
	for i := range alike {
		alike[i] = make([]float64, f)
		for j := range f {
			uv := dot(u[i], v[j])
			if d := dot(u[i], u[i]) * dot(v[j], v[j]); d > 0 {
				alike[i][j] = uv * uv / d
			}
		}
	}
	r.Like = make([]Likeness, n)
	taken := make([]bool, f)
	for i := range r.Like {
		r.Like[i] = Likeness{Tone: i + 1, Rise: answer.None()}
	}
	for range min(n, f) {
		best, bi, bj := alikeEnough, -1, -1
		for i := range n {
			for j := range f {
				if r.Like[i].First == 0 && !taken[j] && alike[i][j] > best {
					best, bi, bj = alike[i][j], i, j
				}
			}
		}
		if bi < 0 {
			break
		}
		taken[bj] = true
		r.Like[bi] = Likeness{Tone: bi + 1, First: bj + 1, Alike: best, Rise: answer.Num(r.Tones[bi].Hz/first.Tones[bj].Hz - 1)}
	}
}

// sampled are the movements of all tones of two designs square to their plates at the same places.
func (s *Shapes) sampled(o *Shapes) (u, v [][]float64) {
	u, v = make([][]float64, len(s.Normal)), make([][]float64, len(o.Normal))
	lo, hi := plane.Bounds(s.Moving.Built.Mesh.Points)
	step := (hi[0] - lo[0]) / lattice
	for x := lo[0] + step/2; x < hi[0]; x += step {
		for y := lo[1] + step/2; y < hi[1]; y += step {
			a, in := placeAt(s.Moving, mesh.Point{x, y})
			b, both := placeAt(o.Moving, mesh.Point{x, y})
			if !in || !both {
				continue
			}
			for i, w := range s.Normal {
				u[i] = append(u[i], a.of(w))
			}
			for j, w := range o.Normal {
				v[j] = append(v[j], b.of(w))
			}
		}
	}
	return u, v
}

// place is a place of a plate by the corners of its triangle.
type place struct {
	nodes [3]int32
	share [3]float64
}

// placeAt finds a place in plan; false off the plate.
func placeAt(m *design.Moving, q mesh.Point) (place, bool) {
	at, inside := m.Built.OnOuter(q)
	if !inside {
		return place{}, false
	}
	return place{m.Built.Model.Shells[at.Shell].Nodes, at.L}, true
}

// of is a field of the plate's nodes there.
func (p place) of(w []float64) float64 {
	sum := 0.0
	for k, n := range p.nodes {
		if int(n) < len(w) {
			sum += p.share[k] * w[n]
		}
	}
	return sum
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, x := range a {
		sum += x * b[i]
	}
	return sum
}
