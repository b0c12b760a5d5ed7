package design

import (
	"math"
	"slices"

	"archload/cases"
	"archload/cases/tree"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/parallel"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/surface"
)

// newBridgeModel builds the bridge of a case on its built plate: the body, its
// pads and its guides. like is the same plate under another bridge, whose pads may
// stand on the same places; nil: none is known.
func newBridgeModel(plate, like *Built, workers int) (*BridgeModel, error) {
	b := *plate
	card, err := b.Case.Wood("bridge.wood")
	if err != nil {
		return nil, err
	}
	st := &BridgeModel{Hold: contact.Grip, Cells: Cells(b.Case.Bridge), Body: contact.Body{Part: PartBridge, BeddingPart: PartBedding}}
	switch b.Case.Bridge.Hold {
	case "slip":
		st.Hold = contact.Slip
	case "friction":
		st.Hold = contact.Rough
	}
	b.Bridge = st
	b.base(b.baseStations(), card)
	st.saddle = [2]int{0, st.Base}
	if b.Case.Bridge.Build == "posts" {
		if err := b.postsAndSaddle(); err != nil {
			return nil, err
		}
	} else {
		b.saddlePart(card)
	}
	st.Centre = scale(st.Centre, 1/st.Mass)
	b.pads(card, b.sameCells(like), workers)
	st.Body.Loads = b.stringLoads()
	b.guides()
	return st, nil
}

// regapped is the bridge under the strings of another case, fitted as that case
// says; all else is the same.
func (st *BridgeModel) regapped(b *Built) *BridgeModel {
	q := *st
	q.Pads = slices.Clone(st.Pads)
	for i := range q.Pads {
		q.Pads[i].Gap = MeanGap(b.Case.Bridge, q.Cells[i]) * q.Pads[i].Dir[0][2]
	}
	on := *b
	on.Bridge = &q
	q.Body.Loads = on.stringLoads()
	return &q
}

// baseStations are the places along the base that need a node: its ends, the
// posts or strings, the middle, the pads, and nowhere more than 4 mm apart.
func (b *Built) baseStations() []float64 {
	br := b.Case.Bridge
	half := float64(br.Length) / 2
	xs := append([]float64{-half, 0, half}, columns(b.Bridge.Cells)...)
	if br.Build == "posts" {
		xs = append(xs, br.Posts.Places()...)
	} else {
		xs = append(xs, b.stringPlaces()...)
	}
	return stations(xs, 4)
}

// base lays the beam on the arch: its underside is the fitted surface, its
// nodes lie half the base's height above it.
func (b *Built) base(xs []float64, card materials.Card) {
	br, st := b.Case.Bridge, b.Bridge
	law := woodLaw(card.Wood, float64(br.RingAngle))
	for i, x := range xs {
		p := mesh.Point{br.At[0] + x, br.At[1]}
		z := b.Plate.Outer.At(p).Z + br.Height.Value(x)/2
		st.Body.Nodes = append(st.Body.Nodes, [3]float64{p[0], p[1], z})
		if math.Abs(x) < math.Abs(xs[st.Mid]) {
			st.Mid = int32(i)
		}
		if i == 0 {
			continue
		}
		mid := (xs[i-1] + x) / 2
		sec := law.solid(float64(br.Width), br.Height.Value(mid))
		if wall, depth := hollowOf(br, mid); depth > 0 {
			sec = law.hollowed(float64(br.Width), br.Height.Value(mid), wall, depth)
		}
		st.add(sec, [2]int32{int32(i - 1), int32(i)}, card.Wood.Density)
	}
	st.Base = len(xs)
}

// hollowOf returns wall and depth of the hollow at x, zero where the base is
// solid: between the feet, and within a wall of their ends.
func hollowOf(b *cases.Bridge, x float64) (wall, depth float64) {
	if b.Hollow == nil {
		return 0, 0
	}
	for i := range b.Feet {
		if hollowAt(b, i, x, 0) {
			return float64(b.Hollow.Wall), float64(b.Hollow.Depth)
		}
	}
	return 0, 0
}

// sameCells are the pads of another bridge on the same plate, if it bears on the same
// cells at the same place; else nil.
func (b *Built) sameCells(like *Built) []contact.Pad {
	if like == nil || like.Bridge == nil || like.Case.Bridge.At != b.Case.Bridge.At || !slices.Equal(like.Bridge.Cells, b.Bridge.Cells) {
		return nil
	}
	return like.Bridge.Pads
}

// pads lays the contact points on the bearing area; known are those that stand on the
// same cells, or none.
func (b *Built) pads(card materials.Card, known []contact.Pad, workers int) {
	br, st := b.Case.Bridge, b.Bridge
	total := 0.0
	var before []float64
	for _, f := range br.Feet {
		before = append(before, total)
		total += float64(f.To - f.From)
	}
	bed := b.bedding(card)
	st.Pads, st.Along = make([]contact.Pad, len(st.Cells)), make([]float64, len(st.Cells))
	parallel.Chunks(workers, len(st.Cells), someCells, func(from, to int) {
		for i, c := range st.Cells[from:to] {
			i += from
			p := contact.Pad{Area: c.Area()}
			if known != nil {
				p = known[i]
			} else {
				b.press(&p, c)
			}
			b.fit(&p, c, bed)
			st.Pads[i], st.Along[i] = p, (before[c.Foot]+c.X-float64(br.Feet[c.Foot].From))/total
		}
	})
}

// someCells is how many contact points one worker lays at a time.
const someCells = 32

// press finds where the contact point of a cell presses on the plate.
func (b *Built) press(p *contact.Pad, c Cell) {
	br := b.Case.Bridge
	p.Spread = b.under(br, c)
	p.Dir = surfaceFrame(b.Plate.Outer.At(mesh.Point{br.At[0] + c.X, br.At[1] + c.Y}))
	p.At = b.Model.Middle(p.Spread)
}

// fit finds on which node of the bridge the contact point of a cell hangs, its gap and its bedding.
func (b *Built) fit(p *contact.Pad, c Cell, bed bedding) {
	br := b.Case.Bridge
	mid := mesh.Point{br.At[0] + c.X, br.At[1] + c.Y}
	p.Node = b.Bridge.nearestNode(mid[0], 0, b.Bridge.Base)
	p.Gap = MeanGap(br, c) * p.Dir[0][2] // relief is taken off upright; a gap is square to the surface
	n, t := bed.per(p.Dir, br.Height.Value(c.X), b.Plate.Thickness.At(mid).Z)
	p.Bedding = [2]float64{n / p.Area, t / p.Area}
}

// under are the places of the plate on which a cell of a bridge presses.
func (b *Built) under(br *cases.Bridge, c Cell) []fem.SurfacePoint {
	mid := mesh.Point{br.At[0] + c.X, br.At[1] + c.Y}
	lo := mesh.Point{mid[0] - c.Dx/2, mid[1] - c.Dy/2}
	hi := mesh.Point{mid[0] + c.Dx/2, mid[1] + c.Dy/2}
	return b.place.spread(lo, hi, 2, 2)
}

// MeanGap is the gap's mean along a cell, by Simpson's rule, mm.
func MeanGap(b *cases.Bridge, c Cell) float64 {
	return (b.Gap(c.X-c.Dx/2, c.Y) + 4*b.Gap(c.X, c.Y) + b.Gap(c.X+c.Dx/2, c.Y)) / 6
}

// surfaceFrame is the outward normal of the outer surface, then the tangent
// across and the tangent along.
func surfaceFrame(j surface.Jet) [3][3]float64 {
	w := math.Sqrt(1 + j.Zx*j.Zx + j.Zy*j.Zy)
	n := [3]float64{-j.Zx / w, -j.Zy / w, 1 / w}
	l := math.Hypot(1, j.Zx)
	t := [3]float64{1 / l, 0, j.Zx / l}
	u := [3]float64{n[1]*t[2] - n[2]*t[1], n[2]*t[0] - n[0]*t[2], n[0]*t[1] - n[1]*t[0]}
	return [3][3]float64{n, t, u}
}

// footing is where the base of a bridge stands in plan; the zero value is none.
type footing struct {
	at            mesh.Point
	length, width tree.Length
}

func baseOf(br *cases.Bridge) footing { return footing{br.At, br.Length, br.Width} }

// underBase are the nodes of the triangles under the whole base of the bridge, over which a
// hand may draw its feet. A corner of a triangle thinner than half a millimetre may be left out.
func (b *Built) underBase() []int32 {
	const step = 0.5 // mm
	br := b.Case.Bridge
	half := mesh.Point{float64(br.Length) / 2, float64(br.Width) / 2}
	lo, hi := mesh.Point{br.At[0] - half[0], br.At[1] - half[1]}, mesh.Point{br.At[0] + half[0], br.At[1] + half[1]}
	var out []int32
	last := int32(-1)
	for _, at := range b.place.spread(lo, hi, int(2*half[0]/step)+1, int(2*half[1]/step)+1) {
		if at.Shell != last {
			out = append(out, b.Model.Shells[at.Shell].Nodes[:]...)
		}
		last = at.Shell
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// contactNodes are the nodes of the triangles that the pads press on, and those of
// the blocks, rising.
func (b *Built) contactNodes(st *BridgeModel) []int32 {
	var out []int32
	for i := range st.Pads {
		for _, at := range st.Pads[i].Spread {
			out = append(out, b.Model.Shells[at.Shell].Nodes[:]...)
		}
	}
	for _, k := range b.Model.Bodies { // on which guides hang
		out = append(out, k.Ref)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// bedding is the wood's own squash between the foot's face and the middle of
// the plate, and between the face and the base's axis: what a shell and a
// beam, stiff through their depth, leave out.
type bedding struct {
	plate     materials.Compliance // 1/MPa, in the plate's wood axes
	plateAxes materials.Axes
	base      materials.Compliance // of the bridge, in its wood axes
	baseAxes  materials.Axes
	width     float64 // of the base, mm
}

func (b *Built) bedding(card materials.Card) bedding {
	sec := &b.Model.Sections[0]
	return bedding{
		plate: sec.Wood, plateAxes: sec.Axes,
		base: card.Wood.Compliance(), baseAxes: materials.BridgeAxes(float64(b.Case.Bridge.RingAngle)),
		width: float64(b.Case.Bridge.Width),
	}
}

// per returns the squash under 1 MPa, normal and tangential, mm/MPa: half the
// plate and half the base (at most half its width) in series, with the moduli
// along the contact normal; tangentially the same depths in shear, the mean of
// the two directions. dir holds the normal and two tangents.
func (bd bedding) per(dir [3][3]float64, height, thickness float64) (normal, tangential float64) {
	frame := materials.Axes{dir[1], dir[2], dir[0]} // the normal is axis 3
	p := bd.plate.Between(bd.plateAxes, frame)
	q := bd.base.Between(bd.baseAxes, frame)
	dp, dq := thickness/2, math.Min(height, bd.width)/2
	normal = dp*p[2][2] + dq*q[2][2]
	tangential = dp*(p[3][3]+p[4][4])/2 + dq*(q[3][3]+q[4][4])/2
	return normal, tangential
}
