package shape

import (
	"errors"
	"math"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// Block is a block of wood behind a stretch of the edge, at the neck or the tail.
type Block struct {
	Name   string        // "neck" or "tail"
	Toward float64       // 1 toward the neck, -1 toward the tail
	Half   float64       // of its width, mm
	Depth  float64       // how far it reaches inward from the outermost place of the edge, mm; 0: it holds the edge alone
	Ends   [2]mesh.Point // where the outline leaves it on the bass and the treble side, mm
	Edge   mesh.Point    // the outline on the centre line, mm
	inner  float64       // y of its inner face, mm
}

// onBlock is how far beyond its measures a block still holds a node, mm.
const onBlock = 1e-3

// HoldsEdge says whether a place of the outline lies before the block, mm.
func (k *Block) HoldsEdge(p mesh.Point) bool {
	least := min(k.Toward*k.Ends[0][1], k.Toward*k.Ends[1][1])
	return math.Abs(p[0]) <= k.Half+onBlock && k.Toward*p[1] >= least-onBlock
}

// Holds says whether a place inside the outline is glued to the block, mm.
func (k *Block) Holds(p mesh.Point) bool {
	return k.Depth > 0 && math.Abs(p[0]) <= k.Half+onBlock && k.Toward*(p[1]-k.inner) >= -onBlock
}

// lines are chains of edges that the mesh keeps so that nodes stand where the block
// ends: about its glue face, or short ones inward from its two ends.
func (k *Block) lines() [][]mesh.Point {
	if k.Depth > 0 {
		return [][]mesh.Point{{k.Ends[0], {-k.Half, k.inner}, {k.Half, k.inner}, k.Ends[1]}}
	}
	const inward = 15 // mm
	return [][]mesh.Point{
		{k.Ends[0], {k.Ends[0][0], k.Ends[0][1] - k.Toward*inward}},
		{k.Ends[1], {k.Ends[1][0], k.Ends[1][1] - k.Toward*inward}},
	}
}

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

// outermost is the place of the outline at x that lies farthest toward an end, mm.
func outermost(o *plane.Curve, x, toward float64) (p mesh.Point, ok bool) {
	const steps = 4000
	last, step := o.At(0), o.Total()/steps
	for i := 1; i <= steps; i++ {
		u := step * float64(i)
		next := o.At(o.Wrap(u))
		if (last[0] < x) != (next[0] < x) {
			q := crossing(o, x, u-step, u, last[0] < x)
			if !ok || toward*q[1] > toward*p[1] {
				p, ok = q, true
			}
		}
		last = next
	}
	return p, ok
}

// crossing halves the stretch of a curve on which it comes to x, from below or
// from above.
func crossing(o *plane.Curve, x, from, to float64, rising bool) mesh.Point {
	for range 60 {
		mid := (from + to) / 2
		if (o.At(o.Wrap(mid))[0] < x) == rising {
			from = mid
		} else {
			to = mid
		}
	}
	p := o.At(o.Wrap((from + to) / 2))
	return mesh.Point{x, p[1]}
}

// back fits the back, as a top is fitted, in the same outline. It is made anew
// with every key of its own, and with those of the top that it is made after.
func (f *fitter) back() {
	if !f.c.Bodied() {
		return
	}
	if f.old != nil && f.old.Back != nil && !f.touched("body", "rim", "plate.outline", "plate.arch", "plate.thickness", "plate.thickness_scale", "mesh") {
		f.made.Back, f.made.told[ofBack] = f.old.Back, f.old.told[ofBack]
		return
	}
	alone := f.c.BackAlone()
	b := fitter{c: alone, rep: fresh(alone.Rep), made: &Geometry{Case: alone, isBack: true}, top: f.made}
	for _, step := range []func(){b.plan, b.surfaces, b.check} {
		if step(); len(b.rep.Faults) > 0 {
			break
		}
	}
	var faults tree.Faults
	if errors.As(b.rep.Err(), &faults) {
		for _, e := range faults {
			f.rep.Add(placeOf(f.rep, e), cases.BackKey(e.Key), e.Err)
		}
		return
	}
	for _, told := range b.made.told {
		for _, e := range told {
			f.made.told[ofBack] = append(f.made.told[ofBack], backFault(e))
		}
	}
	f.made.Back = b.made
}

// backFault is a fault of the back under its own key.
func backFault(e *tree.FileError) *tree.FileError {
	return &tree.FileError{File: e.File, Line: e.Line, Key: cases.BackKey(e.Key), Err: e.Err}
}

// placeOf is where a fault was found.
func placeOf(r *tree.FaultLog, e *tree.FileError) tree.Place {
	for _, src := range r.Order {
		if src.Label == e.File {
			return tree.Place{Src: src, Line: e.Line}
		}
	}
	return r.Find(cases.BackKey(e.Key))
}

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
