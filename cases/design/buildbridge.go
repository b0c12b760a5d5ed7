package design

import (
	"math"
	"slices"

	"archload/cases"
	"archload/fem"
	"archload/fem/contact"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/surface"
)

// BridgeModel is the bridge as a body with its pads.
type BridgeModel struct {
	Body   contact.Body
	Pads   []contact.Pad
	Cells  []Cell
	Along  []float64 // place of each pad along the bearing length, 0 bass end to 1 treble end
	Mid    int32     // node of the base at its middle
	Base   int       // nodes of the base; those of the saddle beam come after
	saddle [2]int    // range of the nodes that carry the strings
	Mass   float64   // g
	Centre [3]float64
	Hold   contact.Hold
}

// newBridgeModel builds the bridge of a case on its built plate: the body, its
// pads and its guides.
func newBridgeModel(plate *Built) (*BridgeModel, error) {
	b := *plate
	card, err := b.Case.Wood("bridge.wood")
	if err != nil {
		return nil, err
	}
	st := &BridgeModel{Hold: contact.Grip, Cells: Cells(b.Case.Bridge), Body: contact.Body{Part: PartBridge, BeddingPart: PartBedding}}
	if b.Case.Bridge.Hold == "slip" {
		st.Hold = contact.Slip
	}
	b.Bridge = st
	b.base(b.baseStations(), card)
	st.saddle = [2]int{0, st.Base}
	if b.Case.Bridge.Build == "posts" {
		if err := b.postsAndSaddle(); err != nil {
			return nil, err
		}
	}
	st.Centre = scale(st.Centre, 1/st.Mass)
	b.pads(card)
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

// bearsAlike says whether two bridges give the same contact problem: they may
// differ in gaps, in what the strings do and in weight.
func (st *BridgeModel) bearsAlike(o *BridgeModel) bool {
	same := func(p, q contact.Pad) bool {
		return p.Node == q.Node && p.At == q.At && p.Dir == q.Dir && p.Area == q.Area && p.Bedding == q.Bedding && slices.Equal(p.Spread, q.Spread)
	}
	a, b := &st.Body, &o.Body
	return st.Hold == o.Hold && slices.EqualFunc(st.Pads, o.Pads, same) &&
		slices.Equal(a.Nodes, b.Nodes) && slices.EqualFunc(a.Beams, b.Beams, sameBeam) && slices.Equal(a.Guides, b.Guides)
}

// sameBeam says whether two beams are as stiff; they may differ in weight.
func sameBeam(p, q contact.BodyBeam) bool {
	p.Mass = q.Mass
	return p == q
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

// Base lays the beam on the arch: its underside is the fitted surface, its
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

// Add adds one beam between two nodes of the body and counts its mass.
func (st *BridgeModel) add(sec bridgeSection, nodes [2]int32, density float64) {
	lift := [3]float64{0, 0, sec.lift}
	p, q := st.Body.Nodes[nodes[0]], st.Body.Nodes[nodes[1]]
	m := sec.Area() * math.Abs(q[0]-p[0]) * density * gramPerMM3
	st.Body.Beams = append(st.Body.Beams, contact.BodyBeam{Nodes: nodes, Offset: [2][3]float64{lift, lift},
		Up: [3]float64{0, 0, 1}, Section: sec.Section, Mass: m * tonnePerGram})
	st.weigh(m, [3]float64{(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2]+q[2])/2 + sec.lift})
}

// weigh adds a mass at a place; centre holds the sum until it is divided.
func (st *BridgeModel) weigh(m float64, at [3]float64) {
	st.Mass += m
	for k := range 3 {
		st.Centre[k] += m * at[k]
	}
}

// Pads lays the contact points on the bearing area.
func (b *Built) pads(card materials.Card) {
	br, st := b.Case.Bridge, b.Bridge
	total := 0.0
	var before []float64
	for _, f := range br.Feet {
		before = append(before, total)
		total += float64(f.To - f.From)
	}
	bed := b.bedding(card)
	for _, c := range st.Cells {
		st.Pads = append(st.Pads, b.pad(c, bed))
		st.Along = append(st.Along, (before[c.Foot]+c.X-float64(br.Feet[c.Foot].From))/total)
	}
}

// pad is the contact point of one cell.
func (b *Built) pad(c Cell, bed bedding) contact.Pad {
	br := b.Case.Bridge
	mid := mesh.Point{br.At[0] + c.X, br.At[1] + c.Y}
	p := contact.Pad{Node: b.Bridge.nearestNode(mid[0], 0, b.Bridge.Base), Area: c.Area(), Spread: b.under(br, c)}
	p.Dir = surfaceFrame(b.Plate.Outer.At(mid))
	p.At = b.Model.Middle(p.Spread)
	p.Gap = MeanGap(br, c) * p.Dir[0][2] // relief is taken off upright; a gap is square to the surface
	n, t := bed.per(p.Dir, br.Height.Value(c.X), b.Plate.Thickness.At(mid).Z)
	p.Bedding = [2]float64{n / p.Area, t / p.Area}
	return p
}

// under are the places of the plate on which a cell of a bridge presses.
func (b *Built) under(br *cases.Bridge, c Cell) []fem.SurfacePoint {
	mid := mesh.Point{br.At[0] + c.X, br.At[1] + c.Y}
	lo := mesh.Point{mid[0] - c.Dx/2, mid[1] - c.Dy/2}
	hi := mesh.Point{mid[0] + c.Dx/2, mid[1] + c.Dy/2}
	return b.Place.spread(lo, hi, 2, 2)
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

// guides hold the saddle across, along and about the upright: what the
// strings do when the foot slips.
func (b *Built) guides() {
	st := b.Bridge
	node, at := b.SaddleNode(0), b.Saddle(0)
	for _, g := range []contact.Guide{{Dir: [3]float64{1, 0, 0}}, {Dir: [3]float64{0, 1, 0}},
		{Dir: [3]float64{0, 0, 1}, Turn: true}} {
		g.Node, g.At = node, at
		st.Body.Guides = append(st.Body.Guides, g)
	}
}

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
	return loads
}

// nearestNode is the node of the range first..end nearest to x, mm.
func (st *BridgeModel) nearestNode(x float64, first, end int) int32 {
	best := first
	for i := first; i < end; i++ {
		if math.Abs(st.Body.Nodes[i][0]-x) < math.Abs(st.Body.Nodes[best][0]-x) {
			best = i
		}
	}
	return int32(best)
}

// contactNodes are the nodes of the triangles that the pads press on, rising.
func (b *Built) contactNodes(st *BridgeModel) []int32 {
	var out []int32
	for i := range st.Pads {
		for _, at := range st.Pads[i].Spread {
			out = append(out, b.Model.Shells[at.Shell].Nodes[:]...)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}
