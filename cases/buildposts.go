package cases

import (
	"math"
	"slices"

	"archload/fem/contact"
)

// brassDensity is that of brass rod, kg/m³ (handbook value, from memory).
const brassDensity = 8500

// places are the posts along the bridge, bass first, mm.
func (p *BridgePosts) places() []float64 {
	xs := []float64{float64(p.At[0]), float64(p.At[1])}
	slices.Sort(xs)
	return xs
}

// postsAndSaddle adds the saddle beam and the two posts that carry it.
func (b *Built) postsAndSaddle() error {
	card, err := b.Case.wood("bridge.saddle_beam.wood")
	if err != nil {
		return err
	}
	br, st := b.Case.Bridge, b.Bridge
	sb := &br.SaddleBeam
	half := float64(sb.Length) / 2
	xs := append([]float64{-half, 0, half}, br.Posts.places()...)
	xs = stations(append(xs, b.stringPlaces()...), 6)
	z := b.saddle(0)[2] - float64(sb.Height)/2
	law := woodLaw(card.Wood, 0)
	first := len(st.body.Nodes)
	for i, x := range xs {
		st.body.Nodes = append(st.body.Nodes, [3]float64{br.At[0] + x, br.At[1], z})
		if i > 0 {
			n := int32(first + i)
			st.add(law.solid(float64(sb.Width), float64(sb.Height)), [2]int32{n - 1, n}, card.Wood.Density)
		}
	}
	st.saddle = [2]int{first, len(st.body.Nodes)}
	for _, x := range br.Posts.places() {
		b.postUnder(x)
	}
	return nil
}

// postUnder stands one post between the top of the base and the underside of
// the saddle beam.
func (b *Built) postUnder(x float64) {
	br, st := b.Case.Bridge, b.Bridge
	lower := st.nearestNode(br.At[0]+x, 0, st.base)
	upper := b.saddleNode(x)
	arm := [2][3]float64{{0, 0, br.Height.Value(x) / 2}, {0, 0, -float64(br.SaddleBeam.Height) / 2}}
	d := float64(br.Posts.Diameter)
	rod := roundRod{diameter: d, e: float64(br.Posts.Modulus)}
	st.body.Beams = append(st.body.Beams, contact.BodyBeam{Nodes: [2]int32{lower, upper}, Offset: arm,
		Up: [3]float64{0, 1, 0}, Section: rod})
	p, q := st.body.Nodes[lower], st.body.Nodes[upper]
	low, high := p[2]+arm[0][2], q[2]+arm[1][2]
	st.weigh(math.Pi*d*d/4*(high-low)*brassDensity*gramPerMM3, [3]float64{p[0], p[1], (low + high) / 2})
}

// checkPosts wants the posts on the base, the strings and posts under the
// saddle beam, and room for the posts between the two.
func (c *Case) checkPosts(r *report) {
	b := c.Bridge
	if b.Build != "posts" || !r.clean("bridge.posts", "bridge.saddle_beam", "bridge.length", "bridge.height", "bridge.saddle_height") {
		return
	}
	half, beam := float64(b.Length)/2, float64(b.SaddleBeam.Length)/2
	for _, x := range b.Posts.places() {
		if math.Abs(x) > half || math.Abs(x) > beam {
			r.addKey("bridge.posts.at", "want posts on the base (to ±%g mm) and under the saddle beam (to ±%g mm), found %g", half, beam, x)
			return
		}
		if room := float64(b.SaddleHeight-b.SaddleBeam.Height) - b.Height.Value(x); room < 1 {
			r.addKey("bridge.saddle_height", "want at least 1 mm of post between base and saddle beam, found %.3g mm at x = %g", room, x)
			return
		}
	}
	if p := b.Posts.places(); p[1]-p[0] < float64(b.Posts.Diameter) {
		r.addKey("bridge.posts.at", "want two posts beside each other, found %g and %g mm with a diameter of %g", p[0], p[1], b.Posts.Diameter)
	}
	if c.Strings == nil {
		return
	}
	for i := range c.Strings.Each {
		if x := c.Strings.x(i); math.Abs(x) > beam {
			r.addKey(entryKey("strings.each", i+1), "%s lies at x = %.4g mm, beyond the saddle beam (to ±%g mm)", c.Strings.Each[i].Name, x, beam)
		}
	}
}

// checkHollow wants walls left standing and a roof above the hollow.
func (b *Bridge) checkHollow(r *report) {
	if !r.clean("bridge.width", "bridge.hollow", "bridge.foot", "bridge.height", "bridge.length") {
		return
	}
	for i := range b.Feet {
		w := b.wall(i)
		f := b.Feet[i]
		if w > 0 && (2*w >= float64(b.Width) || 2*w >= float64(f.To-f.From)) {
			key := "bridge.hollow.wall"
			if b.Hollow == nil {
				key = entryKey("bridge.foot", i+1) + ".wall"
			}
			r.addKey(key, "want two walls that leave a hollow between them in a foot of %g by %g mm, found %g", f.To-f.From, b.Width, w)
			return
		}
	}
	if b.Hollow == nil {
		return
	}
	for i := range b.Feet {
		lo, hi := float64(b.Feet[i].From)+float64(b.Hollow.Wall), float64(b.Feet[i].To)-float64(b.Hollow.Wall)
		for _, x := range divide(2, lo, hi) {
			if h := b.Height.Value(x); float64(b.Hollow.Depth) > h-1 {
				r.addKey("bridge.hollow.depth", "want at least 1 mm of roof above the hollow, found %g mm deep in a base %.3g mm high at x = %.4g", b.Hollow.Depth, h, x)
				return
			}
		}
	}
}
