package aging

import (
	"math"

	"archload/cases/design"
	"archload/fem/contact"
	"archload/fem/vec3"
)

// bridgeFree is how the bridge grows by itself when its wood takes up so many percentage points of
// moisture. Its base is cut of one piece, so that it grows without stress, by E (x - x0) from its first node x0. A
// saddle beam goes up with the base under its posts, which keep their length, and grows about its own middle; what
// the posts bend thereby is left out: a hundredth of a millimetre at most.
type bridgeFree struct {
	built *design.Built
	water float64
}

// strain is the free strain of a wood of the bridge along x, y and z, rings turned by an angle in degrees.
func (f bridgeFree) strain(key string, ringAngle float64) (e [3]float64) {
	card, err := f.built.Case.Wood(key)
	if err != nil {
		return e // the model of the bridge has told
	}
	s, c := math.Sincos(ringAngle * math.Pi / 180)
	w := card.Water.Swell
	return [3]float64{f.water * w[0], f.water * (w[1]*s*s + w[2]*c*c), f.water * (w[1]*c*c + w[2]*s*s)}
}

// base is how a place of the base moves, mm.
func (f bridgeFree) base(at [3]float64) (u [3]float64) {
	e, from := f.strain("bridge.wood", float64(f.built.Case.Bridge.RingAngle)), f.built.Bridge.Body.Nodes[0]
	for k := range u {
		u[k] = e[k] * (at[k] - from[k])
	}
	return u
}

// above is how a place above the posts moves, mm.
func (f bridgeFree) above(at [3]float64) [3]float64 {
	br := f.built.Case.Bridge
	if br.Build != "posts" {
		return f.base(at)
	}
	e := f.strain("bridge.saddle_beam.wood", 0)
	mid := [3]float64{br.At[0], br.At[1], f.built.Saddle(0)[2] - float64(br.SaddleBeam.Height)}
	var u [3]float64
	for _, x := range br.Posts.Places() {
		p := [3]float64{br.At[0] + x, br.At[1], f.built.Plate.Outer.At(br.At).Z + br.Height.Value(x)}
		low := f.base(p)
		for k := range u {
			u[k] += low[k] / 2
		}
	}
	for k := range u {
		u[k] += e[k] * (at[k] - mid[k])
	}
	return u
}

// rows is how each row of the contact moves by it, as contact.LoadCase asks for.
func (f bridgeFree) rows() []float64 {
	st, rows := f.built.Bridge, 3
	if st.Hold == contact.Slip {
		rows = 1
	}
	out := make([]float64, 0, rows*len(st.Pads)+len(st.Body.Guides))
	for i := range st.Pads {
		u := f.base(st.Pads[i].At)
		for a := range rows {
			out = append(out, vec3.Dot(u, st.Pads[i].Dir[a]))
		}
	}
	if st.Hold == contact.Grip {
		return out
	}
	for i := range st.Body.Guides {
		g := &st.Body.Guides[i]
		if g.Turn {
			out = append(out, 0)
			continue
		}
		out = append(out, vec3.Dot(f.above(g.At), g.Dir))
	}
	return out
}

// addTo adds it to the movements of the bridge's nodes.
func (f bridgeFree) addTo(moves []float64) {
	for i, p := range f.built.Bridge.Body.Nodes {
		u := f.base(p)
		if i >= f.built.Bridge.Base {
			u = f.above(p)
		}
		for k := range u {
			moves[6*i+k] += u[k]
		}
	}
}

// saddle is how much more the place of the string at x moves than the node that carries it, mm.
func (f bridgeFree) saddle(x float64) (u [3]float64) {
	b := f.built
	node := b.SaddleNode(x)
	low, high := f.base(b.Bridge.Body.Nodes[node]), f.above(b.Saddle(x))
	if int(node) >= b.Bridge.Base {
		low = f.above(b.Bridge.Body.Nodes[node])
	}
	for k := range u {
		u[k] = high[k] - low[k]
	}
	return u
}

// saddleRise is how much more the places of the strings rise than the nodes that carry them, in the
// mean, mm.
func (f bridgeFree) saddleRise() float64 {
	strings, sum := f.built.Geometry.StringForces(), 0.0
	for _, s := range strings {
		sum += f.saddle(s.X)[2]
	}
	return sum / float64(len(strings))
}
