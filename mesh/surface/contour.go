package surface

import (
	"cmp"
	"math"
	"strconv"

	"archload/mesh/plane"
)

// ContourOptions steers Contours and EdgeProfiles; the zero value is usable.
type ContourOptions struct {
	Grid    float64 // edge of the squares searched, mm; 0 means 2
	Spacing float64 // between the points of a line, mm; 0 means 5
	Round   float64 // step to which coordinates and heights are rounded, mm; 0: not rounded
}

// Contours returns the lines of equal height of a surface inside a region, as
// a maker would read them off a known arch: marching squares, even spacing,
// and the points brought onto the level along the gradient. A line that leaves
// the region is cut there.
func Contours(s Surface, r plane.Region, levels []float64, o ContourOptions) ([]ContourLine, error) {
	rim, err := rimOf(r)
	if err != nil {
		return nil, err
	}
	m := sampleOn(s, rim, cmp.Or(o.Grid, 2))
	var out []ContourLine
	for _, level := range levels {
		for _, chain := range m.march(level) {
			pts := onto(s, level, chain.spaced(cmp.Or(o.Spacing, 5)))
			if len(pts) < 3 {
				continue
			}
			for i := range pts {
				pts[i] = plane.Point{roundTo(pts[i][0], o.Round), roundTo(pts[i][1], o.Round)}
			}
			out = append(out, ContourLine{ID: strconv.Itoa(len(out) + 1), Height: level, Points: pts})
		}
	}
	return out, nil
}

// EdgeProfiles returns spot heights square to the outline at the given
// distances from it, mm, along count lines spread evenly over its length,
// each spot as a contour line of one point.
func EdgeProfiles(s Surface, r plane.Region, count int, distances []float64, o ContourOptions) ([]ContourLine, error) {
	rim, err := rimOf(r)
	if err != nil {
		return nil, err
	}
	var out []ContourLine
	for k := range count {
		at, in := rim.placeAt(rim.length() * float64(k) / float64(count))
		for j, d := range distances {
			p := plane.Point{roundTo(at[0]+d*in[0], o.Round), roundTo(at[1]+d*in[1], o.Round)}
			out = append(out, ContourLine{
				ID:     "p" + strconv.Itoa(k+1) + "." + strconv.Itoa(j+1),
				Height: roundTo(s.At(p).Z, o.Round), Points: []plane.Point{p},
			})
		}
	}
	return out, nil
}

// roundTo rounds v to whole steps; a step of 0 leaves it.
func roundTo(v, step float64) float64 {
	if step == 0 {
		return v
	}
	per := math.Round(1 / step) // so that 0.1 gives the decimal nearest to it
	if per >= 1 && math.Abs(per*step-1) < 1e-9 {
		return math.Round(v*per) / per
	}
	return math.Round(v/step) * step
}

// samples are heights on a square grid; NaN outside the region.
type samples struct {
	lo     plane.Point
	size   float64
	nx, ny int // grid points
	z      []float64
}

func sampleOn(s Surface, rim *rimLine, size float64) *samples {
	m := &samples{lo: rim.lo, size: size}
	m.nx = int((rim.hi[0]-rim.lo[0])/size) + 2
	m.ny = int((rim.hi[1]-rim.lo[1])/size) + 2
	m.z = make([]float64, m.nx*m.ny)
	for j := range m.ny {
		for i := range m.nx {
			p := m.at(i, j)
			if !rim.contains(p) {
				m.z[j*m.nx+i] = math.NaN()
				continue
			}
			m.z[j*m.nx+i] = s.At(p).Z
		}
	}
	return m
}

func (m *samples) at(i, j int) plane.Point {
	return plane.Point{m.lo[0] + float64(i)*m.size, m.lo[1] + float64(j)*m.size}
}

// crossing names the grid edge on which a line crosses: from grid point n to
// its neighbour on the right (up = false) or above.
type crossing struct {
	n  int
	up bool
}

// march returns the chains of crossings of a level, the first to be found by
// rows first.
func (m *samples) march(level float64) []chain {
	next := map[crossing][]crossing{} // neighbours along the line; looked up only, never ranged over
	var order []crossing
	link := func(a, b crossing) {
		for _, c := range [2][2]crossing{{a, b}, {b, a}} {
			if _, seen := next[c[0]]; !seen {
				order = append(order, c[0])
			}
			next[c[0]] = append(next[c[0]], c[1])
		}
	}
	for j := range m.ny - 1 {
		for i := range m.nx - 1 {
			m.square(j*m.nx+i, level, link)
		}
	}
	var out []chain
	used := map[crossing]bool{}
	for _, ends := range []bool{true, false} { // open lines first, then closed ones
		for _, c := range order {
			if !used[c] && (len(next[c]) == 1) == ends {
				out = append(out, m.follow(c, next, used, level))
			}
		}
	}
	return out
}

// square links the crossings on the sides of the square at grid point n.
func (m *samples) square(n int, level float64, link func(a, b crossing)) {
	corners := [4]int{n, n + 1, n + 1 + m.nx, n + m.nx}
	sides := [4]crossing{{n, false}, {n + 1, true}, {n + m.nx, false}, {n, true}}
	var above [4]bool
	mean := 0.0
	for k, c := range corners {
		if math.IsNaN(m.z[c]) {
			return
		}
		above[k] = m.z[c] > level
		mean += m.z[c] / 4
	}
	var cut []crossing
	for k := range 4 {
		if above[k] != above[(k+1)%4] {
			cut = append(cut, sides[k])
		}
	}
	switch {
	case len(cut) == 2:
		link(cut[0], cut[1])
	case len(cut) == 4 && above[0] == (mean > level): // saddle: corners 0 and 2 join
		link(cut[0], cut[1])
		link(cut[2], cut[3])
	case len(cut) == 4:
		link(cut[3], cut[0])
		link(cut[1], cut[2])
	}
}

// chain is a line of points, closed or not.
type chain struct {
	pts    []plane.Point
	closed bool
}

// follow walks a line from one crossing to its other end or round.
func (m *samples) follow(c crossing, next map[crossing][]crossing, used map[crossing]bool, level float64) chain {
	var out chain
	for {
		used[c] = true
		out.pts = append(out.pts, m.place(c, level))
		onward := false
		for _, d := range next[c] {
			if !used[d] {
				c, onward = d, true
				break
			}
		}
		if !onward {
			break
		}
	}
	out.closed = len(out.pts) > 3 && plane.Dist(out.pts[0], out.pts[len(out.pts)-1]) < 1.5*m.size
	return out
}

// place returns the point where the level crosses a grid edge.
func (m *samples) place(c crossing, level float64) plane.Point {
	d, p := c.n+1, m.at(c.n%m.nx, c.n/m.nx)
	axis := 0
	if c.up {
		d, axis = c.n+m.nx, 1
	}
	p[axis] += m.size * (level - m.z[c.n]) / (m.z[d] - m.z[c.n])
	return p
}

// onto brings the points onto the level by Newton's method along the
// gradient; a point that would move by more than 2 mm stays.
func onto(s Surface, level float64, pts []plane.Point) []plane.Point {
	for i, start := range pts {
		p := start
		for range 4 {
			j := s.At(p)
			g2 := j.Zx*j.Zx + j.Zy*j.Zy
			if g2 < 1e-8 {
				break
			}
			k := (level - j.Z) / g2
			p = plane.Point{p[0] + k*j.Zx, p[1] + k*j.Zy}
		}
		if plane.Dist(p, start) < 2 {
			pts[i] = p
		}
	}
	return pts
}

// spaced returns points at even distances along the chain, near spacing.
func (c chain) spaced(spacing float64) []plane.Point {
	pts := c.pts
	if c.closed {
		pts = append(pts[:len(pts):len(pts)], pts[0])
	}
	along := make([]float64, len(pts))
	for i := 1; i < len(pts); i++ {
		along[i] = along[i-1] + plane.Dist(pts[i-1], pts[i])
	}
	total := along[len(along)-1]
	n := max(1, int(math.Round(total/spacing)))
	var out []plane.Point
	edge := 0
	for k := range n + 1 {
		if k == n && c.closed {
			break
		}
		s := total * float64(k) / float64(n)
		for edge < len(pts)-2 && along[edge+1] < s {
			edge++
		}
		u := (s - along[edge]) / max(along[edge+1]-along[edge], 1e-300)
		out = append(out, plane.Point{pts[edge][0] + u*(pts[edge+1][0]-pts[edge][0]), pts[edge][1] + u*(pts[edge+1][1]-pts[edge][1])})
	}
	return out
}
