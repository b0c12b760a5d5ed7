package design

import (
	"math"

	"archload/fem/contact"
	"archload/materials"
	"archload/mesh"
)

// brassDensity is that of brass rod, kg/m³ (handbook value, from memory).
const brassDensity = 8500

// postsAndSaddle adds the saddle beam and the two posts that carry it.
func (b *Built) postsAndSaddle() error {
	card, err := b.Case.Wood("bridge.saddle_beam.wood")
	if err != nil {
		return err
	}
	br, st := b.Case.Bridge, b.Bridge
	sb := &br.SaddleBeam
	half := float64(sb.Length) / 2
	xs := append([]float64{-half, 0, half}, br.Posts.Places()...)
	xs = stations(append(xs, b.stringPlaces()...), 6)
	z := b.Saddle(0)[2] - float64(sb.Height)/2
	law := woodLaw(card.Wood, 0)
	first := len(st.Body.Nodes)
	for i, x := range xs {
		st.Body.Nodes = append(st.Body.Nodes, [3]float64{br.At[0] + x, br.At[1], z})
		if i > 0 {
			n := int32(first + i)
			st.add(law.solid(float64(sb.Width), float64(sb.Height)), [2]int32{n - 1, n}, card.Wood.Density)
		}
	}
	st.saddle = [2]int{first, len(st.Body.Nodes)}
	for _, x := range br.Posts.Places() {
		b.postUnder(x)
	}
	return nil
}

// postUnder stands one post between the top of the base and the underside of
// the saddle beam.
func (b *Built) postUnder(x float64) {
	br, st := b.Case.Bridge, b.Bridge
	lower := st.nearestNode(br.At[0]+x, 0, st.Base)
	upper := b.SaddleNode(x)
	arm := [2][3]float64{{0, 0, br.Height.Value(x) / 2}, {0, 0, -float64(br.SaddleBeam.Height) / 2}}
	d := float64(br.Posts.Diameter)
	rod := roundRod{diameter: d, e: float64(br.Posts.Modulus)}
	p, q := st.Body.Nodes[lower], st.Body.Nodes[upper]
	low, high := p[2]+arm[0][2], q[2]+arm[1][2]
	m := math.Pi * d * d / 4 * (high - low) * brassDensity * gramPerMM3
	st.Body.Beams = append(st.Body.Beams, contact.BodyBeam{Nodes: [2]int32{lower, upper}, Offset: arm,
		Up: [3]float64{0, 1, 0}, Section: rod, Mass: m * tonnePerGram})
	st.weigh(m, [3]float64{p[0], p[1], (low + high) / 2})
	wheel, thick := float64(br.Posts.Wheel[0]), float64(br.Posts.Wheel[1])
	rim := math.Pi / 4 * math.Max(0, wheel*wheel-d*d) * thick // around the post
	st.put(rim, brassDensity, [3]float64{p[0], p[1], high - thick/2}, st.saddle[0], st.saddle[1])
}

// saddlePart weighs what of a one-piece bridge stands on its base and carries the strings: as
// high as they lie. It is taken as stiff, its grain as the base's.
func (b *Built) saddlePart(card materials.Card) {
	br, st := b.Case.Bridge, b.Bridge
	long, wide := b.saddlePartLength(), float64(br.SaddlePart.Width)
	const parts = 16
	for i := range parts {
		x := (float64(i)+0.5)*long/parts - long/2
		p := mesh.Point{br.At[0] + x, br.At[1]}
		low, high := b.Plate.Outer.At(p).Z+br.Height.Value(x), b.Saddle(x)[2]
		if high > low {
			st.put((high-low)*wide*long/parts, card.Wood.Density, [3]float64{p[0], p[1], (low + high) / 2}, 0, st.Base)
		}
	}
}

// saddlePartLength is that given, or what reaches beyond the outer strings on both sides, not beyond the base, mm.
func (b *Built) saddlePartLength() float64 {
	br := b.Case.Bridge
	if l := float64(br.SaddlePart.Length); l > 0 {
		return l
	}
	const beyond = 8 // mm (common practice, no published source)
	most := 0.0
	for _, x := range b.stringPlaces() {
		most = math.Max(most, math.Abs(x))
	}
	return math.Min(2*(most+beyond), float64(br.Length))
}
