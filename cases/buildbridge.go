package cases

import (
	"math"
	"slices"

	"archload/fem"
	"archload/fem/contact"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/surface"
)

// bridgeModel is the bridge as a body with its pads.
type bridgeModel struct {
	body   contact.Body
	pads   []contact.Pad
	cells  []cell
	along  []float64 // place of each pad along the bearing length, 0 bass end to 1 treble end
	mid    int32     // node of the base at its middle
	base   int       // nodes of the base; those of the saddle beam come after
	saddle [2]int    // range of the nodes that carry the strings
	mass   float64   // g
	centre [3]float64
	hold   contact.Hold
}

// newBridgeModel builds the bridge of a case on its built plate: the body, its
// pads and its guides.
func newBridgeModel(plate *Built) (*bridgeModel, error) {
	b := *plate
	card, err := b.Case.wood("bridge.wood")
	if err != nil {
		return nil, err
	}
	st := &bridgeModel{hold: contact.Grip, cells: b.Case.Bridge.cells(), body: contact.Body{Part: partBridge, BeddingPart: partBedding}}
	if b.Case.Bridge.Hold == "slip" {
		st.hold = contact.Slip
	}
	b.Bridge = st
	b.base(b.baseStations(), card)
	st.saddle = [2]int{0, st.base}
	if b.Case.Bridge.Build == "posts" {
		if err := b.postsAndSaddle(); err != nil {
			return nil, err
		}
	}
	st.centre = scale(st.centre, 1/st.mass)
	b.pads(card)
	st.body.Loads = b.stringLoads()
	b.guides()
	return st, nil
}

// regapped is the bridge under the strings of another case, fitted as that case
// says; all else is the same.
func (st *bridgeModel) regapped(b *Built) *bridgeModel {
	q := *st
	q.pads = slices.Clone(st.pads)
	for i := range q.pads {
		q.pads[i].Gap = b.Case.Bridge.meanGap(q.cells[i]) * q.pads[i].Dir[0][2]
	}
	on := *b
	on.Bridge = &q
	q.body.Loads = on.stringLoads()
	return &q
}

// bearsAlike says whether two bridges give the same contact problem: they may
// differ in gaps, in what the strings do and in weight.
func (st *bridgeModel) bearsAlike(o *bridgeModel) bool {
	same := func(p, q contact.Pad) bool {
		return p.Node == q.Node && p.At == q.At && p.Dir == q.Dir && p.Area == q.Area && p.Bedding == q.Bedding && slices.Equal(p.Spread, q.Spread)
	}
	a, b := &st.body, &o.body
	return st.hold == o.hold && slices.EqualFunc(st.pads, o.pads, same) &&
		slices.Equal(a.Nodes, b.Nodes) && slices.Equal(a.Beams, b.Beams) && slices.Equal(a.Guides, b.Guides)
}

// baseStations are the places along the base that need a node: its ends, the
// posts or strings, the middle, the pads, and nowhere more than 4 mm apart.
func (b *Built) baseStations() []float64 {
	br := b.Case.Bridge
	half := float64(br.Length) / 2
	xs := append([]float64{-half, 0, half}, columns(b.Bridge.cells)...)
	if br.Build == "posts" {
		xs = append(xs, br.Posts.places()...)
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

// base lays the beam on the arch: its underside is the fitted surface, its
// nodes lie half the base's height above it.
func (b *Built) base(xs []float64, card materials.Card) {
	br, st := b.Case.Bridge, b.Bridge
	law := woodLaw(card.Wood, float64(br.RingAngle))
	for i, x := range xs {
		p := mesh.Point{br.At[0] + x, br.At[1]}
		z := b.Plate.Outer.At(p).Z + br.Height.Value(x)/2
		st.body.Nodes = append(st.body.Nodes, [3]float64{p[0], p[1], z})
		if math.Abs(x) < math.Abs(xs[st.mid]) {
			st.mid = int32(i)
		}
		if i == 0 {
			continue
		}
		mid := (xs[i-1] + x) / 2
		sec := law.solid(float64(br.Width), br.Height.Value(mid))
		if wall, depth := br.hollowOf(mid); depth > 0 {
			sec = law.hollowed(float64(br.Width), br.Height.Value(mid), wall, depth)
		}
		st.add(sec, [2]int32{int32(i - 1), int32(i)}, card.Wood.Density)
	}
	st.base = len(xs)
}

// hollowOf returns wall and depth of the hollow at x, zero where the base is
// solid: between the feet, and within a wall of their ends.
func (b *Bridge) hollowOf(x float64) (wall, depth float64) {
	if b.Hollow == nil {
		return 0, 0
	}
	for i := range b.Feet {
		if b.hollowAt(i, x, 0) {
			return float64(b.Hollow.Wall), float64(b.Hollow.Depth)
		}
	}
	return 0, 0
}

// add adds one beam between two nodes of the body and counts its mass.
func (st *bridgeModel) add(sec bridgeSection, nodes [2]int32, density float64) {
	lift := [3]float64{0, 0, sec.lift}
	st.body.Beams = append(st.body.Beams, contact.BodyBeam{Nodes: nodes, Offset: [2][3]float64{lift, lift},
		Up: [3]float64{0, 0, 1}, Section: sec.Section})
	p, q := st.body.Nodes[nodes[0]], st.body.Nodes[nodes[1]]
	m := sec.Area() * math.Abs(q[0]-p[0]) * density * gramPerMM3
	st.weigh(m, [3]float64{(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2]+q[2])/2 + sec.lift})
}

// weigh adds a mass at a place; centre holds the sum until it is divided.
func (st *bridgeModel) weigh(m float64, at [3]float64) {
	st.mass += m
	for k := range 3 {
		st.centre[k] += m * at[k]
	}
}

// pads lays the contact points on the bearing area.
func (b *Built) pads(card materials.Card) {
	br, st := b.Case.Bridge, b.Bridge
	total := 0.0
	var before []float64
	for _, f := range br.Feet {
		before = append(before, total)
		total += float64(f.To - f.From)
	}
	bed := b.bedding(card)
	for _, c := range st.cells {
		st.pads = append(st.pads, b.pad(c, bed))
		st.along = append(st.along, (before[c.foot]+c.x-float64(br.Feet[c.foot].From))/total)
	}
}

// pad is the contact point of one cell.
func (b *Built) pad(c cell, bed bedding) contact.Pad {
	br := b.Case.Bridge
	mid := mesh.Point{br.At[0] + c.x, br.At[1] + c.y}
	p := contact.Pad{Node: b.Bridge.nearestNode(mid[0], 0, b.Bridge.base), Area: c.area(), Spread: b.under(br, c)}
	p.Dir = surfaceFrame(b.Plate.Outer.At(mid))
	p.At = b.Model.Middle(p.Spread)
	p.Gap = br.meanGap(c) * p.Dir[0][2] // relief is taken off upright; a gap is square to the surface
	n, t := bed.per(p.Dir, br.Height.Value(c.x), b.Plate.Thickness.At(mid).Z)
	p.Bedding = [2]float64{n / p.Area, t / p.Area}
	return p
}

// under are the places of the plate on which a cell of a bridge presses.
func (b *Built) under(br *Bridge, c cell) []fem.SurfacePoint {
	mid := mesh.Point{br.At[0] + c.x, br.At[1] + c.y}
	lo := mesh.Point{mid[0] - c.dx/2, mid[1] - c.dy/2}
	hi := mesh.Point{mid[0] + c.dx/2, mid[1] + c.dy/2}
	return b.place.spread(lo, hi, 2, 2)
}

// meanGap is the gap's mean along a cell, by Simpson's rule, mm.
func (b *Bridge) meanGap(c cell) float64 {
	return (b.Gap(c.x-c.dx/2, c.y) + 4*b.Gap(c.x, c.y) + b.Gap(c.x+c.dx/2, c.y)) / 6
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
	node, at := b.saddleNode(0), b.saddle(0)
	for _, g := range []contact.Guide{{Dir: [3]float64{1, 0, 0}}, {Dir: [3]float64{0, 1, 0}},
		{Dir: [3]float64{0, 0, 1}, Turn: true}} {
		g.Node, g.At = node, at
		st.body.Guides = append(st.body.Guides, g)
	}
}

// saddle is the place of string contact at x from the bridge's middle, mm, on
// the saddle's arc.
func (b *Built) saddle(x float64) [3]float64 {
	br := b.Case.Bridge
	h := float64(br.SaddleHeight) - b.Case.Strings.crownFall(x)
	return [3]float64{br.At[0] + x, br.At[1], b.Plate.Outer.At(br.At).Z + h}
}

// saddleNode is the body node that carries string contact at x.
func (b *Built) saddleNode(x float64) int32 {
	return b.Bridge.nearestNode(b.Case.Bridge.At[0]+x, b.Bridge.saddle[0], b.Bridge.saddle[1])
}

// stringLoads puts each string's forces on the saddle, carried by the nearest
// station through a rigid arm.
func (b *Built) stringLoads() []contact.BodyLoad {
	var loads []contact.BodyLoad
	for _, s := range b.Geometry.StringForces() {
		loads = append(loads, contact.BodyLoad{Node: b.saddleNode(s.X), At: b.saddle(s.X),
			F: [3]float64{0, s.Along, -s.Downforce}})
	}
	return loads
}

// nearestNode is the node of the range first..end nearest to x, mm.
func (st *bridgeModel) nearestNode(x float64, first, end int) int32 {
	best := first
	for i := first; i < end; i++ {
		if math.Abs(st.body.Nodes[i][0]-x) < math.Abs(st.body.Nodes[best][0]-x) {
			best = i
		}
	}
	return int32(best)
}

// contactNodes are the nodes of the triangles that the pads press on, rising.
func (b *Built) contactNodes(st *bridgeModel) []int32 {
	var out []int32
	for i := range st.pads {
		for _, at := range st.pads[i].Spread {
			out = append(out, b.Model.Shells[at.Shell].Nodes[:]...)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}
