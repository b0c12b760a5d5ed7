package problem

import (
	"errors"
	"math"

	"archload/cases/verify/reference"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/element"
	"archload/mesh"
)

// rigidGround reads the relieved bar on rigid supports: under a force in the
// middle and under a uniform load, spread over the nodes by Simpson's rule,
// which is exact for the middle's influence line, a cubic on each half.
func rigidGround() (Readings, error) {
	out := Readings{}
	one := relieved(math.Inf(1), math.Inf(1))
	one.press(0, 20)
	m, err := one.follow()
	if err != nil {
		return nil, err
	}
	out["force"] = m.closes(1) * 20
	all := relieved(math.Inf(1), math.Inf(1))
	for k, weight := range [9]float64{1, 4, 2, 4, 2, 4, 2, 4, 1} {
		all.press(-150+37.5*float64(k), 0.1*weight*37.5/3)
	}
	if m, err = all.follow(); err != nil {
		return nil, err
	}
	out["even"] = m.closes(1) * 100 // N/m
	return out, nil
}

// The strip of the checks below: 300 mm long, 20 mm wide, 10 mm thick, E 10 GPa,
// nu 0, without shear strain, pressed upward against a bar that lies across two
// firm blocks.
const (
	stripLong = 300.0
	stripWide = 20.0
	stripEI   = 1e4 * stripWide * 1000 / 12 // N mm²
)

// strip is a trestle over a strip.
type strip struct {
	trestle
	n int
}

// newStrip lays a strip of n stretches, held at x = 0 and, if both, at its other
// end. It bends in one plane alone.
func newStrip(n int, both bool) *strip {
	s := &strip{n: n}
	s.model.Sections = groundWood()
	s.model.Sections[0].Wood = reference.RigidInShear(reference.Isotropic(1e4, 0)).Compliance()
	for i := range n + 1 {
		for j := range 3 {
			x := stripLong * float64(i) / float64(n)
			s.model.Nodes = append(s.model.Nodes, mesh.Node{P: [3]float64{x, stripWide * (float64(j)/2 - 0.5), 0}, H: 10})
			for d := range 6 {
				held := d != 2 && d != 4
				if held || i == 0 || both && i == n {
					s.model.Fixed = append(s.model.Fixed, fem.Fix{Node: int32(3*i + j), Dof: d})
				}
			}
		}
	}
	for i := range n {
		for j := range 2 {
			a := int32(3*i + j)
			for _, t := range [2][3]int32{{a, a + 3, a + 4}, {a, a + 4, a + 1}} {
				s.model.Shells = append(s.model.Shells, fem.ShellElem{Nodes: t})
			}
		}
	}
	return s
}

// across returns places over the strip's width at station i.
func (s *strip) across(i int) []fem.SurfacePoint {
	at := func(i, j int) fem.SurfacePoint {
		if i < s.n {
			return fem.SurfacePoint{Shell: int32(4*i + 2*min(j, 1)), L: [3]float64{1, 0, 0}}
		}
		return fem.SurfacePoint{Shell: int32(4*(i-1) + 2*min(j, 1)), L: [3]float64{0, 1, 0}}
	}
	edge := at(i, 1)
	edge.Shell++ // the second triangle of the pair has the node beyond
	edge.L = [3]float64{0, 0, 1}
	if i == s.n {
		edge.L = [3]float64{0, 1, 0}
	}
	return []fem.SurfacePoint{at(i, 0), at(i, 1), at(i, 1), edge}
}

// lift adds an upward load q per length, N/mm, on the whole strip.
func (s *strip) lift(q float64) {
	for e := range 4 * s.n {
		for _, l := range midpoints {
			f := q / stripWide * stripLong / float64(s.n) * stripWide / 4 / 3
			s.loads = append(s.loads, loadOnPlate{fem.SurfacePoint{Shell: int32(e), L: l}, [3]float64{0, 0, f}})
		}
	}
}

// liftAt adds an upward force at station i.
func (s *strip) liftAt(i int, force float64) {
	on := s.across(i)
	for _, at := range on {
		s.loads = append(s.loads, loadOnPlate{at, [3]float64{0, 0, force / float64(len(on))}})
	}
}

// under lays the rigid bar over the strip's stations from i0 to i1 with a gap,
// on a firm block beyond each end, and holds it down.
func (s *strip) under(i0, i1 int, gap, hold float64) {
	xs := []float64{-40}
	for i := i0; i <= i1; i++ {
		x := stripLong * float64(i) / float64(s.n)
		s.bear(x, s.across(i), gap)
		xs = append(xs, x)
	}
	xs = append(xs, stripLong+40)
	s.stand(-40, math.Inf(1), 0)
	s.stand(stripLong+40, math.Inf(1), 0)
	s.lay(element.Rectangle{Width: 1e3, Height: 1e3, E: 1e6, Gxy: 1e6, Gxz: 1e6}, xs)
	s.press(-40, hold)
	s.press(stripLong+40, hold)
}

// total is the force on the first count pads.
func (m *met) total(count int) (sum float64) {
	for i := range count {
		sum += m.Lambda[i]
	}
	return sum
}

// cantileverStop reads a cantilever under a rigid stop at its tip, 2 mm away:
// loaded at the tip, evenly, and in the middle.
func cantileverStop() (Readings, error) {
	const n, gap = 64, 2.0
	out := Readings{}
	for _, c := range []struct {
		name string
		full float64 // N, or N/mm
		load func(s *strip, full float64)
	}{
		{"tip", 8, func(s *strip, f float64) { s.liftAt(n, f) }},
		{"even", 2 * 8 * stripEI * gap / math.Pow(stripLong, 4), func(s *strip, f float64) { s.lift(f) }},
		{"half", 2 * 48 * stripEI * gap / (5 * math.Pow(stripLong, 3)), func(s *strip, f float64) { s.liftAt(n/2, f) }},
	} {
		s := newStrip(n, false)
		c.load(s, c.full)
		s.under(n, n, gap, 1000)
		m, err := s.follow()
		if err != nil {
			return nil, err
		}
		out[c.name+" closes"] = m.closes(0) * c.full
		out[c.name+" force"] = m.Lambda[0]
	}
	out["even closes"] *= 1000 // N/m
	return out, nil
}

// clampedStop reads a strip clamped at both ends that is lifted evenly against
// a flat stop 1 mm away: the load at which it touches, the force on the point
// of contact at twice that load, and at six times that load the force on the
// zone of contact, its edge, and the moment at the clamp. The strip's own nodes
// are the points of contact.
func clampedStop() (Readings, error) {
	const n, gap = 192, 1.0
	touch := 384 * stripEI * gap / math.Pow(stripLong, 4)
	out := Readings{}
	for _, times := range []float64{2, 6} {
		s := newStrip(n, true)
		s.lift(times * touch)
		i0, i1 := n/3, 2*n/3
		s.under(i0, i1, gap, 2000)
		m, err := s.follow()
		if err != nil {
			return nil, err
		}
		pads := i1 - i0 + 1
		if times == 2 {
			out["touches"] = m.closes(pads/2) * times * touch * 1000
			out["point"] = m.total(pads)
			continue
		}
		out["zone"] = m.total(pads)
		out["clamp"] = m.clampMoment() / 1000
	}
	return out, nil
}

// clampMoment sums the reactions about y at x = 0, N mm.
func (m *met) clampMoment() (sum float64) {
	for _, r := range m.res.Reactions {
		if m.res.Plate.Model.Nodes[r.Node].P[0] == 0 {
			sum += r.F[4]
		}
	}
	return sum
}

// twoFeet reads a stiff bar on two equal feet 100 mm apart, loaded 20 mm off
// the middle, and how far off the middle it tips.
func twoFeet() (Readings, error) {
	bar := func(x float64) *trestle {
		t := &trestle{}
		t.stand(-50, 100, 0)
		t.stand(50, 100, 0)
		t.lay(element.Rectangle{Width: 13, Height: 30, E: 1e5, Gxy: 1e5, Gxz: 1e5}, []float64{-60, -50, 0, 50, 60})
		t.press(x, 80)
		return t
	}
	m, err := bar(20).follow()
	if err != nil {
		return nil, err
	}
	out := Readings{"near": m.Lambda[1], "far": m.Lambda[0]}
	lo, hi := 40.0, 60.1
	for hi-lo > 1e-3 {
		mid := (lo + hi) / 2
		_, err := bar(mid).follow()
		switch {
		case err == nil:
			lo = mid
		case errors.Is(err, contact.ErrOverturns):
			hi = mid
		default:
			return nil, err
		}
	}
	out["tips"] = lo
	return out, nil
}

// threePoint bends the bridge's beam between two rigid supports by a force in
// its middle: P L³/(48 E I) + P L/(4 k G A), k = 5/6.
func threePoint() (Readings, error) {
	sec := element.Rectangle{Width: 13, Height: 12, E: 17000, Gxy: 1200, Gxz: 1200}
	t := &trestle{}
	t.stand(-60, math.Inf(1), 0)
	t.stand(60, math.Inf(1), 0)
	t.lay(sec, []float64{-60, 0, 60})
	t.press(0, 100)
	m, err := t.follow()
	if err != nil {
		return nil, err
	}
	return Readings{"sink": -m.res.BodyMove(1, [3]float64{})[2]}, nil
}
