package drawing

import (
	"archload/mesh"
)

// svgSegment is a straight line (from p[0] to p[3]) or a cubic Bezier curve.
type svgSegment struct {
	p    [4]mesh.Point
	line bool
}

// svgChain is one subpath: segments that run into each other.
type svgChain struct {
	start  mesh.Point
	segs   []svgSegment
	closed bool // by the command Z or by its shape
}

// end is where the chain ends.
func (c *svgChain) end() mesh.Point {
	if n := len(c.segs); n > 0 {
		return c.segs[n-1].p[3]
	}
	return c.start
}

func (c *svgChain) lineTo(q mesh.Point) {
	p := c.end()
	c.segs = append(c.segs, svgSegment{[4]mesh.Point{p, p, q, q}, true})
}

func (c *svgChain) curveTo(a, b, q mesh.Point) {
	c.segs = append(c.segs, svgSegment{[4]mesh.Point{c.end(), a, b, q}, false})
}
