package cases

import (
	"math"
	"slices"

	"archload/fem"
	"archload/materials"
	"archload/mesh"
)

// padStep is the contact step along the foot, mm, and padRows the rows across
// it: finer than the 3 mm triangles under the foot, so that shares and closing
// loads follow the wood and not the grid.
const (
	padStep = 2.0
	padRows = 4
)

// standing is the bridge as a body with its pads.
type standing struct {
	body  fem.Body
	pads  []fem.Pad
	x, y  []float64 // of each pad from the bridge's middle, mm
	foot  []int     // foot of each pad
	along []float64 // place of each pad along the bearing length, 0 bass end to 1 treble end
	mass  float64   // g
	mid   int32     // body node at the middle
	hold  fem.Hold
}

// bridge builds the body, its pads and its guides.
func (b *Built) bridge() error {
	card, err := b.Case.wood("bridge.wood")
	if err != nil {
		return err
	}
	st := &standing{hold: fem.Grip}
	if b.Case.Bridge.Hold == "slip" {
		st.hold = fem.Slip
	}
	b.Bridge = st
	xs := b.stations()
	b.base(xs, card)
	b.pads(xs, card)
	st.body.Loads = b.stringLoads()
	b.guides()
	b.zone()
	return nil
}

// feet are the bearing stretches, bass first; the whole length by default.
func (br *Bridge) feet() [][2]float64 {
	if len(br.Feet) == 0 {
		return [][2]float64{{-float64(br.Length) / 2, float64(br.Length) / 2}}
	}
	var out [][2]float64
	for _, f := range br.Feet {
		out = append(out, [2]float64{float64(f.From), float64(f.To)})
	}
	slices.SortFunc(out, func(a, b [2]float64) int { return int(math.Copysign(1, a[0]-b[0])) })
	return out
}

// columns are the pads' middles along a foot.
func columns(foot [2]float64) []float64 {
	n := cells(foot[1]-foot[0], padStep)
	xs := make([]float64, n)
	for i := range xs {
		xs[i] = foot[0] + (foot[1]-foot[0])*(float64(i)+0.5)/float64(n)
	}
	return xs
}

// stations are the places along the base that need a node: its ends, the
// strings, the middle, the pads, and nowhere more than 4 mm apart.
func (b *Built) stations() []float64 {
	br := b.Case.Bridge
	half := float64(br.Length) / 2
	xs := []float64{-half, 0, half}
	for _, f := range br.feet() {
		xs = append(xs, columns(f)...)
	}
	for _, s := range b.Case.StringForces() {
		xs = append(xs, s.X)
	}
	slices.Sort(xs)
	out := xs[:1]
	for _, x := range xs[1:] {
		last := out[len(out)-1]
		if x-last < 1e-9 {
			continue
		}
		for n, k := math.Ceil((x-last)/4), 1.0; k < n; k++ {
			out = append(out[:len(out):len(out)], last+(x-last)*k/n)
		}
		out = append(out[:len(out):len(out)], x)
	}
	return out
}

// base lays the beam on the arch: its underside is the fitted surface, its
// axis half the base's height above it.
func (b *Built) base(xs []float64, card materials.Card) {
	br, st := b.Case.Bridge, b.Bridge
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
		h := br.Height.Value((xs[i-1] + x) / 2)
		sec := bridgeSection(float64(br.Width), h, card.Wood, float64(br.RingAngle))
		st.body.Beams = append(st.body.Beams, fem.BodyBeam{Nodes: [2]int32{int32(i - 1), int32(i)},
			Up: [3]float64{0, 0, 1}, Section: sec})
		st.mass += float64(br.Width) * h * (x - xs[i-1]) * card.Wood.Density * gramPerMM3
	}
}

// bridgeSection is a rectangle with L along the bridge and the rings turned
// by ringAngle, deg: 0 has R upright, 90 has T upright.
func bridgeSection(width, height float64, w materials.Orthotropic, ringAngle float64) fem.RectSection {
	s := w.Compliance().Between(materials.BridgeAxes(ringAngle), materials.GlobalAxes())
	return fem.RectSection{Width: width, Height: height, E: w.EL, Gxy: 1 / s[5][5], Gxz: 1 / s[4][4]}
}

// pads lays the contact grid on the bearing area.
func (b *Built) pads(xs []float64, card materials.Card) {
	br, st := b.Case.Bridge, b.Bridge
	feet := br.feet()
	total, done := 0.0, 0.0
	for _, f := range feet {
		total += f[1] - f[0]
	}
	bed := b.bedding(card)
	for k, f := range feet {
		cols := columns(f)
		dx := (f[1] - f[0]) / float64(len(cols))
		for _, x := range cols {
			node, _ := slices.BinarySearch(xs, x-1e-9)
			for row := range padRows {
				dy := float64(br.Width) / padRows
				y := (float64(row)+0.5)*dy - float64(br.Width)/2
				st.pads = append(st.pads, b.pad(int32(node), [2]float64{x, y}, [2]float64{dx, dy}, bed))
				st.x, st.y, st.foot = append(st.x, x), append(st.y, y), append(st.foot, k)
				st.along = append(st.along, (done+x-f[0])/total)
			}
		}
		done += f[1] - f[0]
	}
}

// pad is one cell of the contact grid about the place c of the foot.
func (b *Built) pad(node int32, c, size [2]float64, bed bedding) fem.Pad {
	br := b.Case.Bridge
	mid := mesh.Point{br.At[0] + c[0], br.At[1] + c[1]}
	lo := mesh.Point{mid[0] - size[0]/2, mid[1] - size[1]/2}
	hi := mesh.Point{mid[0] + size[0]/2, mid[1] + size[1]/2}
	p := fem.Pad{Node: node, Area: size[0] * size[1], Spread: b.place.spread(lo, hi, 2, 2)}
	j := b.Plate.Outer.At(mid)
	p.Dir = surfaceFrame(j)
	p.Gap = br.Gap(c[0], c[1])
	n, t := bed.per(p.Dir, br.Height.Value(c[0]), b.Plate.Thickness.At(mid).Z)
	p.Bedding = [2]float64{n / p.Area, t / p.Area}
	return p
}

// surfaceFrame is the outward normal of the outer surface, then the tangent
// across and the tangent along.
func surfaceFrame(j mesh.Jet) [3][3]float64 {
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
	at := b.saddle(0)
	for _, g := range []fem.Guide{{Dir: [3]float64{1, 0, 0}}, {Dir: [3]float64{0, 1, 0}},
		{Dir: [3]float64{0, 0, 1}, Turn: true}} {
		g.Node, g.At = st.mid, at
		st.body.Guides = append(st.body.Guides, g)
	}
}

// saddle is the place of string contact at x from the bridge's middle, mm.
func (b *Built) saddle(x float64) [3]float64 {
	br := b.Case.Bridge
	return [3]float64{br.At[0] + x, br.At[1], b.Plate.Outer.At(br.At).Z + float64(br.SaddleHeight)}
}

// stringLoads puts each string's forces on the saddle, carried by the nearest
// station through a rigid arm.
func (b *Built) stringLoads() []fem.BodyLoad {
	var loads []fem.BodyLoad
	for _, s := range b.Case.StringForces() {
		loads = append(loads, fem.BodyLoad{Node: b.Bridge.nearestNode(b.Case.Bridge.At[0] + s.X), At: b.saddle(s.X),
			F: [3]float64{0, s.Along, -s.Downforce}})
	}
	return loads
}

// zone marks the nodes of the triangles that the pads press on.
func (b *Built) zone() {
	seen := map[int32]bool{}
	for i := range b.Bridge.pads {
		for _, at := range b.Bridge.pads[i].Spread {
			for _, n := range b.Model.Shells[at.Shell].Nodes {
				if !seen[n] {
					seen[n] = true
					b.Model.Zone = append(b.Model.Zone, n)
				}
			}
		}
	}
	slices.Sort(b.Model.Zone)
}
