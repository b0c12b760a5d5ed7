package contact

import (
	"errors"
	"math"
	"slices"

	"archload/fem/vec3"
)

// ErrOverturns says that the load's resultant falls outside the bearing area.
var ErrOverturns = errors.New("contact: the load's resultant falls outside the bearing area: the body would overturn")

// slackGap is the gap of a pad once the slack body lies on its pads, mm.
func (p *lcp) slackGap(i int, rest [6]float64) float64 {
	pl := p.plane[i]
	g := p.gap[i] + p.nz[i]*(pl[0]*rest[2]+pl[1]*rest[3]+pl[2]*rest[4])
	if math.Abs(g) < max(1e-12, p.snap) {
		return 0
	}
	return g
}

// restGap is the gap of a pad from which its movement counts, mm: that at rest,
// whose overlaps are rounding. The path and the clean solution at its end must
// begin from the same.
func (p *lcp) restGap(i int, rest [6]float64) float64 { return math.Max(0, p.slackGap(i, rest)) }

// slackRest finds where the slack body comes to rest when it is lowered straight
// down on an uneven bearing area: the plane under which no pad overlaps and which the
// load's resultant holds, (6). It is a linear programme in three unknowns, solved
// over a small set of pads that grows by the worst overlap until none is left.
func (p *lcp) slackRest() (rest [6]float64, err error) {
	if p.pads == 0 {
		return rest, nil
	}
	even := true
	for _, g := range p.gap {
		even = even && g == p.gap[0]
	}
	if even {
		rest[2] = -p.gap[0] / p.nz[0]
		if p.gap[0] == 0 {
			return rest, p.checkSupported()
		}
	}
	set := p.corners()
	for range 4*p.pads + 10 {
		q, ok := p.slackRestOn(set)
		if !ok {
			return rest, ErrOverturns
		}
		worst, least := -1, -1e-12
		for i := range p.pads {
			if g := p.slackGap(i, q); g < least {
				worst, least = i, g
			}
		}
		if worst < 0 || slices.Contains(set, worst) { // in the set: clear but for rounding
			return q, nil
		}
		set = append(p.touching(set, q), worst)
	}
	return rest, errors.New("contact: the slack body finds no rest on its pads")
}

// checkSupported checks that the resultant lies within the bearing area.
func (p *lcp) checkSupported() error {
	if _, ok := p.slackRestOn(p.corners()); !ok {
		return ErrOverturns
	}
	return nil
}

// corners returns the four outermost pads.
func (p *lcp) corners() []int {
	var set []int
	for _, s := range [][2]float64{{1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
		best, top := 0, math.Inf(-1)
		for i, pl := range p.plane {
			if v := s[0]*pl[1] + s[1]*pl[2]; v > top {
				best, top = i, v
			}
		}
		set = append(set, best)
	}
	return set
}

// touching keeps the pads of a set that touch, and the corners, so that the next
// round stays bounded.
func (p *lcp) touching(set []int, q [6]float64) []int {
	keep := p.corners()
	for _, i := range set {
		if p.slackGap(i, q) < 1e-9 && !slices.Contains(keep, i) {
			keep = append(keep, i)
		}
	}
	return keep
}

// slackRestOn solves the programme over a small set by trying its triples: the
// right one overlaps nowhere in the set and carries the load without pulling.
// Under a shallow relief a wrong one may overlap by no more than what still
// passes for rounding: the first with no overlap is taken, without such a one
// that with the least.
//
// Pads that all stand in one line across hold no rocking fore and aft: there
// two pads carry, and the rocking is left at zero.
func (p *lcp) slackRestOn(set []int) (rest [6]float64, ok bool) {
	if p.inLine() {
		set = append(set[:len(set):len(set)], noPad)
	}
	least := mostOverlap
	for a := range set {
		for b := a + 1; b < len(set); b++ {
			for c := b + 1; c < len(set); c++ {
				q, fine := p.onThree([3]int{set[a], set[b], set[c]})
				if !fine {
					continue
				}
				over := p.overlap(set, q)
				if over == 0 {
					return q, true
				}
				if over < least {
					least, rest, ok = over, q, true
				}
			}
		}
	}
	return rest, ok
}

// mostOverlap is how far, mm, the pads of a rest may overlap by rounding.
const mostOverlap = 1e-10

// overlap is the greatest overlap within a set of pads, mm; 0: none.
func (p *lcp) overlap(set []int, q [6]float64) float64 {
	most := 0.0
	for _, i := range set {
		if i != noPad {
			most = math.Max(most, -p.slackGap(i, q))
		}
	}
	return most
}

// noPad stands for "no rocking" where a pad's number is wanted.
const noPad = -1

// inLine says that all pads lie in one line across.
func (p *lcp) inLine() bool {
	for _, pl := range p.plane {
		if math.Abs(pl[1]-p.plane[0][1]) > 1e-9 {
			return false
		}
	}
	return true
}

// onThree lays the body on three pads; fine says that they push.
func (p *lcp) onThree(tri [3]int) (q [6]float64, fine bool) {
	var m [3][3]float64
	var g [3]float64
	for k, i := range tri {
		if i == noPad {
			m[k] = [3]float64{0, 1, 0}
			continue
		}
		m[k] = p.plane[i]
		g[k] = -p.gap[i] / p.nz[i]
	}
	x, ok := solve3(m, g)
	if !ok {
		return q, false
	}
	var mt [3][3]float64
	for i := range 3 {
		for j := range 3 {
			mt[i][j] = m[j][i]
		}
	}
	mu, ok := solve3(mt, [3]float64{-p.down[0], -p.down[1], -p.down[2]})
	if !ok {
		return q, false
	}
	for k, v := range mu {
		if tri[k] != noPad && v < -1e-9*math.Abs(p.down[0]) {
			return q, false
		}
	}
	return [6]float64{0, 0, x[0], x[1], x[2], 0}, true
}

// solve3 solves a 3×3 system by Cramer's rule.
func solve3(m [3][3]float64, b [3]float64) (x [3]float64, ok bool) {
	c0, c1 := vec3.Cross(m[0], m[1]), vec3.Cross(m[1], m[2])
	c2 := vec3.Cross(m[2], m[0])
	det := vec3.Dot(m[0], c1)
	scale := math.Sqrt(vec3.Dot(m[0], m[0]) * vec3.Dot(m[1], m[1]) * vec3.Dot(m[2], m[2]))
	if math.Abs(det) < 1e-12*scale {
		return x, false
	}
	for k := range 3 {
		x[k] = (b[0]*c1[k] + b[1]*c2[k] + b[2]*c0[k]) / det
	}
	return x, true
}
