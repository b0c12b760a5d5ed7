package design

import (
	"math"

	"archload/mesh"
)

// LineCut is the plate cut upright along a straight line in plan, with what the
// line cuts through under it. All lists but Braces have one value per station.
type LineCut struct {
	From, To     mesh.Point   // mm
	Along        []float64    // place of each station from From toward To, mm
	At           []mesh.Point // the same in plan, mm
	Outer, Inner []float64    // heights above z = 0, mm; NaN over a hole
	Sink         []float64    // of the outer surface, mm
	Drift        []float64    // movement of the outer surface along the line, toward To, mm
	Braces       []BraceCut   // in the order of the line
}

// BraceCut is the rectangle in which a line cuts a brace, mm.
type BraceCut struct {
	Name        string
	Brace       int     // of the case, from 0
	From, To    float64 // along the line
	Top, Bottom float64 // heights above z = 0, unloaded
	Sink        float64 // of the inner face above its middle
}

// CutAlong cuts the plate along the line between two places in plan, a station
// every millimetre or so. Stations beyond the outline are left out.
func (s *Solution) CutAlong(from, to mesh.Point) LineCut {
	c := LineCut{From: from, To: to}
	length := math.Hypot(to[0]-from[0], to[1]-from[1])
	if length == 0 {
		return c
	}
	dir := Unit2(to[0]-from[0], to[1]-from[1])
	for _, t := range evenStations(0, 1, 1/length) {
		q := mesh.Point{from[0] + (to[0]-from[0])*t, from[1] + (to[1]-from[1])*t}
		if !s.Top.Built.Geometry.Outline.Contains(q) {
			continue
		}
		at, inside := s.Top.Built.OnOuter(q)
		u := s.Result.MoveAt(at)
		z := s.Top.Built.Plate.Outer.At(q).Z
		in := z - s.Top.Built.Plate.Thickness.At(q).Z
		if !inside && s.overHole(q) {
			z, in = math.NaN(), math.NaN()
		}
		c.Along, c.At = append(c.Along, length*t), append(c.At, q)
		c.Outer, c.Inner = append(c.Outer, z), append(c.Inner, in)
		c.Sink, c.Drift = append(c.Sink, -u[2]), append(c.Drift, u[0]*dir[0]+u[1]*dir[1])
	}
	c.Braces = s.braceCuts(from, to)
	return c
}

// CutAcross cuts the plate across at one y, mm, from edge to edge.
func (s *Solution) CutAcross(y float64) LineCut {
	lo, hi := s.Top.Built.Geometry.Outline.Bounds()
	return s.CutAlong(mesh.Point{lo[0], y}, mesh.Point{hi[0], y})
}

// braceCuts finds where a line crosses the braces, in the order of the line.
func (s *Solution) braceCuts(from, to mesh.Point) []BraceCut {
	var out []BraceCut
	for _, b := range s.Top.Built.Bars {
		i := b.Brace
		chain := s.Top.Built.Mesh.Lines[i]
		along := fractions(s.Top.Built.Model.Nodes, chain)
		for k := 1; k < len(chain); k++ {
			p, q := s.Top.Built.Mesh.Points[chain[k-1]], s.Top.Built.Mesh.Points[chain[k]]
			t, u, ok := crossing(from, to, p, q)
			if !ok || u == 0 && k > 1 { // the piece before has it
				continue
			}
			out = append(out, s.braceCut(i, from, to, t, along[k-1]+u*(along[k]-along[k-1]), Unit2(q[0]-p[0], q[1]-p[1])))
		}
	}
	for i := range out { // few: sorted by insertion, equal ones keep their order
		for k := i; k > 0 && out[k].From < out[k-1].From; k-- {
			out[k], out[k-1] = out[k-1], out[k]
		}
	}
	return out
}

// braceCut is the rectangle of brace i, which runs along dir where the line
// meets it at its share t, at the share u of the brace's length.
func (s *Solution) braceCut(i int, from, to mesh.Point, t, u float64, dir [2]float64) BraceCut {
	br := &s.Top.Built.Case.Braces[i]
	length := math.Hypot(to[0]-from[0], to[1]-from[1])
	line := Unit2(to[0]-from[0], to[1]-from[1])
	// An oblique cut through a bar is wider than the bar.
	half := br.Width.Value(u) / 2 / math.Max(0.1, math.Abs(line[0]*dir[1]-line[1]*dir[0]))
	q := mesh.Point{from[0] + (to[0]-from[0])*t, from[1] + (to[1]-from[1])*t}
	at, _ := s.Top.Built.OnInner(q)
	top := s.Top.Built.Model.Place(at)[2]
	return BraceCut{Name: br.Name, Brace: i, From: length*t - half, To: length*t + half,
		Top: top, Bottom: top - br.HeightAt(u), Sink: -s.Result.MoveAt(at)[2]}
}

// crossing returns where the pieces a b and p q cross, as shares of their
// lengths.
func crossing(a, b, p, q mesh.Point) (t, u float64, ok bool) {
	dx, dy := b[0]-a[0], b[1]-a[1]
	ex, ey := q[0]-p[0], q[1]-p[1]
	det := dx*ey - dy*ex
	if det == 0 {
		return 0, 0, false
	}
	fx, fy := p[0]-a[0], p[1]-a[1]
	t, u = (fx*ey-fy*ex)/det, (fx*dy-fy*dx)/det
	return t, u, t >= 0 && t <= 1 && u >= 0 && u <= 1
}

func evenStations(lo, hi, step float64) []float64 {
	n := max(2, int(math.Round((hi-lo)/step)))
	xs := make([]float64, n+1)
	for i := range xs {
		xs[i] = lo + (hi-lo)*float64(i)/float64(n)
	}
	return xs
}

func (s *Solution) overHole(q mesh.Point) bool {
	for _, h := range s.Top.Built.Geometry.Holes {
		if h.Contains(q) {
			return true
		}
	}
	return false
}
