package shape

import (
	"math"

	"archload/cases"
	"archload/mesh"
	"archload/mesh/surface"
)

// blocks finds where the outline leaves the blocks.
func (f *fitter) blocks() {
	if !f.c.Bodied() {
		return
	}
	if !f.touched("plate.outline", "rim", "body") {
		f.made.Blocks = f.old.Blocks
		return
	}
	rim, body := &f.c.Rim, f.c.Body
	for _, b := range []Block{
		{Name: "neck", Toward: 1, Half: float64(rim.NeckBlock) / 2, Depth: float64(body.NeckBlockDepth)},
		{Name: "tail", Toward: -1, Half: float64(rim.TailBlock) / 2, Depth: float64(body.TailBlockDepth)},
	} {
		if f.place(&b) {
			f.made.Blocks = append(f.made.Blocks, b)
		}
	}
}

// place finds the ends of one block, and whether it fits.
func (f *fitter) place(b *Block) bool {
	o := f.made.Outline
	lo, hi := o.Bounds()
	middle, width := (lo[1]+hi[1])/2, "rim."+b.Name+"_block"
	found := true
	at := func(x float64) mesh.Point {
		p, ok := outermost(o, x, b.Toward)
		found = found && ok && b.Toward*(p[1]-middle) > 0
		return p
	}
	b.Ends, b.Edge = [2]mesh.Point{at(-b.Half), at(b.Half)}, at(0)
	if !found {
		f.rep.AddKey(width, "want a block narrower than the body where it stands, found %g mm in a body of %.4g", 2*b.Half, hi[0]-lo[0])
		return false
	}
	far := b.Toward * b.Edge[1]
	for _, p := range o.Polyline(0.02) {
		if math.Abs(p[0]) <= b.Half && b.Toward*(p[1]-middle) > 0 {
			far = max(far, b.Toward*p[1])
		}
	}
	b.inner = b.Toward * (far - b.Depth)
	depth, key := b.Depth, "body."+b.Name+"_block_depth"
	fall := far - min(b.Toward*b.Ends[0][1], b.Toward*b.Ends[1][1])
	switch {
	case depth > 0 && depth <= fall+onBlockLeast:
		f.rep.AddKey(key, "want 0, or more than %.3g mm, by which the edge runs back across the block, found %g", fall+onBlockLeast, depth)
		return false
	case depth >= (hi[1]-lo[1])/2:
		f.rep.AddKey(key, "want less than half the body's length of %.4g mm, found %g", hi[1]-lo[1], depth)
		return false
	}
	return true
}

// onBlockLeast is the least that a block of some depth covers at its ends, mm.
const onBlockLeast = 2.0

// likeTop is a back's outer surface made after the top's: what that rises above its
// rim, times a number, above the back's own rim.
type likeTop struct {
	surface.Surface
	by, rim, topRim float64 // 1, mm, mm
}

// At returns height and derivatives at a place.
func (s likeTop) At(p mesh.Point) surface.Jet {
	j := s.Surface.At(p)
	return surface.Jet{Z: s.rim + s.by*(j.Z-s.topRim), Zx: s.by * j.Zx, Zy: s.by * j.Zy, Zxx: s.by * j.Zxx, Zxy: s.by * j.Zxy, Zyy: s.by * j.Zyy}
}

// archOfBack makes the outer surface of a back that has no arch of its own.
func (f *fitter) archOfBack() {
	if f.c.Body.Back.Flat {
		f.made.Plate.Outer = surface.Flat(f.made.RimHeight)
		return
	}
	f.made.Plate.Outer = likeTop{f.top.Plate.Outer, cases.BackRise, f.made.RimHeight, f.top.RimHeight}
}

// leastSide is the least free height of a side between the plates' inner faces, mm.
const leastSide = 1.0

// checkSides wants the inner faces of top and back apart all along the edge.
func (f *fitter) checkSides() {
	room, at := math.Inf(1), mesh.Point{}
	for _, p := range f.made.Outline.Polyline(0.5) {
		over, under := f.made.Plate.Mid(p), f.made.Back.Plate.Mid(p)
		if free := over.P[2] - over.H/2 + float64(f.c.Rim.SideHeight) + under.P[2] - under.H/2; free < room {
			room, at = free, p
		}
	}
	if room < leastSide {
		f.rep.AddKey("rim.side_height", "want sides that keep top and back apart, found %g mm: at (%.4g, %.4g) their inner faces are %.3g mm apart",
			float64(f.c.Rim.SideHeight), at[0], at[1], room)
	}
}

// checkJoint wants a neck's joint below the strings.
func (f *fitter) checkJoint() {
	if !f.c.Bodied() || f.c.Bridge == nil || len(f.made.Blocks) == 0 {
		return
	}
	away := f.made.Blocks[0].Edge[1] - f.c.Bridge.At[1]
	for _, s := range f.made.StringForces() {
		height := f.made.TopAtBridge + s.Height - away*math.Tan(s.FrontAngle*math.Pi/180)
		if joint := f.c.NeckJoint(); joint >= height {
			f.rep.AddKey("body.neck_joint", "want it below the strings, which pass the neck's end of the body %.3g mm above the rim's gluing surface, found %g", height, joint)
			return
		}
	}
}
