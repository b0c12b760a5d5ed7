package sliding

import (
	"archload/cases/verify/problem"
	"archload/fem/element"
)

// slab is an elastic bar on rough ground, pressed on it by p a length, that swells by the strain e, shrinks back and
// swells again. Its middle sticks and its ends slide, over EA e/(μp) from each, since friction must bring up the
// force EA e; an end moves by EA e²/(2μp). Shrunk again by e the drag has to turn round, by 2μp: the
// zone is half as long, the end comes back by EA e²/(4μp), and half of the movement stays; swollen once more it goes
// as far as it came back (balance of an element, integrated twice; for a change of the drag's sign G. Masing's rule
// of 1926, from memory: the law of the way there, doubled in both measures). Pads stand a apart, the
// outermost for half a; with EA e/(2μpa) whole all movements are those of the bar exactly.
func slab() (problem.Readings, error) {
	const half, slides, a, mu, p = 20, 12, 5.0, 0.4, 0.5 // pads on each side of the middle, of them that slide, mm, 1, N/mm
	sec := element.Rectangle{Width: 8, Height: 6, E: 1e4, Gxy: 1e3, Gxz: 1e3}
	ea := sec.E * sec.Area()
	e := slides * mu * p * a / ea
	s := &stand{}
	var xs []float64
	for i := -half; i <= half; i++ {
		xs = append(xs, a*float64(i))
	}
	s.bar(sec, 0, xs)
	for i, x := range xs {
		share := 1.0
		if i == 0 || i == 2*half {
			share = 0.5
		}
		at := [3]float64{x, 0, 0}
		s.pad(int32(i), at, level())
		s.load(int32(i), at, [3]float64{0, 0, -share * p * a})
	}
	s.guide(half, [3]float64{1, 0, 0}, true) // all pads lie in one line
	c, err := s.settle(mu, make([]float64, len(xs)))
	if err != nil {
		return nil, err
	}
	grown := make([]float64, 3*len(xs)+1)
	end := func(e float64) (float64, error) { // how far an end comes out
		for i, x := range xs {
			grown[3*i+1] = e * x
		}
		if _, err := c.swell(grown); err != nil {
			return 0, err
		}
		last := int32(2 * half)
		return (c.now.BodyMove(last, s.body.Nodes[last])[0]-c.now.BodyMove(0, s.body.Nodes[0])[0])/2 + e*xs[last], nil
	}
	out := problem.Readings{}
	want := ea * e * e / (2 * mu * p)
	for _, step := range []struct {
		name string
		e    float64
	}{{"out", e}, {"back", 0}, {"out again", e}, {"shrunk", -e}} {
		u, err := end(step.e)
		if err != nil {
			return nil, err
		}
		out[step.name] = u / want
		most := 0.0
		for _, v := range c.now.State.Slid {
			most = max(most, v)
		}
		out[step.name+" slid"] = most / want
		zone := 0
		for _, v := range c.now.State.Slides[half:] {
			if v {
				zone++
			}
		}
		out[step.name+" zone"] = (float64(zone) - 0.5) / slides
	}
	return out, nil
}
