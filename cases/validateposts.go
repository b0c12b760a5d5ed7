package cases

import (
	"math"

	"archload/cases/tree"
)

// checkSaddlePart wants it no longer than the base that it stands on.
func (c *Case) checkSaddlePart(r *tree.FaultLog) {
	if b := c.Bridge; b.SaddlePart.Length > b.Length && r.Clean("bridge.length", "bridge.saddle_part") {
		r.AddKey("bridge.saddle_part.length", "want no more than the base's length, %g mm, found %g", b.Length, b.SaddlePart.Length)
	}
}

// checkPosts wants the posts on the base, the strings and posts under the
// saddle beam, and room for the posts between the two.
func (c *Case) checkPosts(r *tree.FaultLog) {
	b := c.Bridge
	if b.Build != "posts" || !r.Clean("bridge.posts", "bridge.saddle_beam", "bridge.length", "bridge.height", "bridge.saddle_height") {
		return
	}
	half, beam := float64(b.Length)/2, float64(b.SaddleBeam.Length)/2
	for _, x := range b.Posts.Places() {
		if math.Abs(x) > half || math.Abs(x) > beam {
			r.AddKey("bridge.posts.at", "want posts on the base (to ±%g mm) and under the saddle beam (to ±%g mm), found %g", half, beam, x)
			return
		}
		if room := float64(b.SaddleHeight-b.SaddleBeam.Height) - b.Height.Value(x); room < 1 {
			r.AddKey("bridge.saddle_height", "want at least 1 mm of post between base and saddle beam, found %.3g mm at x = %g", room, x)
			return
		}
	}
	if p := b.Posts.Places(); p[1]-p[0] < float64(b.Posts.Diameter) {
		r.AddKey("bridge.posts.at", "want two posts beside each other, found %g and %g mm with a diameter of %g", p[0], p[1], b.Posts.Diameter)
	}
	if c.Strings == nil {
		return
	}
	for i := range c.Strings.Each {
		if x := c.Strings.x(i); math.Abs(x) > beam {
			r.AddKey(tree.EntryKey("strings.each", i+1), "%s lies at x = %.4g mm, beyond the saddle beam (to ±%g mm)", c.Strings.Each[i].Name, x, beam)
		}
	}
}

// checkHollow wants walls left standing and a roof above the hollow.
func (b *Bridge) checkHollow(r *tree.FaultLog) {
	if !r.Clean("bridge.width", "bridge.hollow", "bridge.foot", "bridge.height", "bridge.length") {
		return
	}
	for i := range b.Feet {
		w := b.Wall(i)
		f := b.Feet[i]
		if w > 0 && (2*w >= float64(b.Width) || 2*w >= float64(f.To-f.From)) {
			key := "bridge.hollow.wall"
			if b.Hollow == nil {
				key = tree.EntryKey("bridge.foot", i+1) + ".wall"
			}
			r.AddKey(key, "want two walls that leave a hollow between them in a foot of %g by %g mm, found %g", f.To-f.From, b.Width, w)
			return
		}
	}
	if b.Hollow == nil {
		return
	}
	for i := range b.Feet {
		lo, hi := float64(b.Feet[i].From)+float64(b.Hollow.Wall), float64(b.Feet[i].To)-float64(b.Hollow.Wall)
		for _, x := range Divide(2, lo, hi) {
			if h := b.Height.Value(x); float64(b.Hollow.Depth) > h-1 {
				r.AddKey("bridge.hollow.depth", "want at least 1 mm of roof above the hollow, found %g mm deep in a base %.3g mm high at x = %.4g", b.Hollow.Depth, h, x)
				return
			}
		}
	}
}
