package design

import (
	"math"
	"slices"

	"archload/cases"
	"archload/fem/contact"
)

// Saddle is the place of string contact at x from the bridge's middle, mm, on
// the saddle's arc.
func (b *Built) Saddle(x float64) [3]float64 {
	br := b.Case.Bridge
	h := float64(br.SaddleHeight) - b.Case.Strings.CrownFall(x)
	return [3]float64{br.At[0] + x, br.At[1], b.Plate.Outer.At(br.At).Z + h}
}

// SaddleNode is the body node that carries string contact at x.
func (b *Built) SaddleNode(x float64) int32 {
	return b.Bridge.nearestNode(b.Case.Bridge.At[0]+x, b.Bridge.saddle[0], b.Bridge.saddle[1])
}

// stringLoads puts each string's forces on the saddle, carried by the nearest
// station through a rigid arm.
func (b *Built) stringLoads() []contact.BodyLoad {
	var loads []contact.BodyLoad
	for _, s := range b.Geometry.StringForces() {
		loads = append(loads, contact.BodyLoad{Node: b.SaddleNode(s.X), At: b.Saddle(s.X),
			F: [3]float64{0, s.Along, -s.Downforce}})
	}
	for i := range b.Case.Loads {
		if l := &b.Case.Loads[i]; l.On == cases.OnBridge {
			x := l.At[0] - b.Case.Bridge.At[0]
			loads = append(loads, contact.BodyLoad{Node: b.SaddleNode(x), At: b.Saddle(x), F: [3]float64{float64(l.Force[0]), float64(l.Force[1]), float64(l.Force[2])}})
		}
	}
	return loads
}

// guides hold the saddle across, along and about the upright: what the
// strings do when the foot slips. In a body they hang on the blocks, as the strings
// do: each length of a string holds by its stiffness, the more the shorter it is.
func (b *Built) guides() {
	st := b.Bridge
	on := b.guideShares()
	node, at := b.SaddleNode(0), b.Saddle(0)
	for _, g := range []contact.Guide{{Dir: [3]float64{1, 0, 0}}, {Dir: [3]float64{0, 1, 0}},
		{Dir: [3]float64{0, 0, 1}, Turn: true}} {
		g.Node, g.At, g.On = node, at, on
		st.Body.Guides = append(st.Body.Guides, g)
	}
}

// guideShares are the blocks' shares of what the guides hold; none without a body.
func (b *Built) guideShares() (on [2]contact.Share) {
	if b.Back == nil {
		return on
	}
	front, back := 0.0, 0.0
	for _, s := range StringSpans(b.Case, b.Geometry.TopAtBridge) {
		front, back = front+s.EA/s.Front, back+s.EA/s.Back
	}
	return [2]contact.Share{{Body: b.blockBody("neck"), Part: front / (front + back)}, {Body: b.blockBody("tail"), Part: back / (front + back)}}
}

// guidedAlike says whether other strings leave the guides of the bridge their shares; in grip there is nothing to
// guide.
func (b *Built) guidedAlike() bool {
	const rounding = 1e-12
	st := b.Bridge
	return st.Hold == contact.Grip || math.Abs(st.Body.Guides[0].On[0].Part-b.guideShares()[0].Part) < rounding
}

func (b *Built) stringPlaces() []float64 {
	var xs []float64
	for _, s := range b.Geometry.StringForces() {
		xs = append(xs, s.X)
	}
	return xs
}

// stations sorts places, drops doubles and fills in so that none are more than
// most apart, mm.
func stations(xs []float64, most float64) []float64 {
	slices.Sort(xs)
	out := []float64{xs[0]}
	for _, x := range xs[1:] {
		last := out[len(out)-1]
		if x-last < 1e-9 {
			continue
		}
		for n, k := math.Ceil((x-last)/most), 1.0; k < n; k++ {
			out = append(out, last+(x-last)*k/n)
		}
		out = append(out, x)
	}
	return out
}
