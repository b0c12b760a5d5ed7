package design

import (
	"math"
	"slices"

	"archload/cases"
	"archload/fem/contact"
)

// padStep is the contact step along the foot, mm, and padRows the rows across
// a full face: finer than the 3 mm triangles under the foot, so that shares and
// closing loads follow the wood and not the grid.
const (
	padStep = 2.0
	padRows = 4
)

// Cell is one rectangle of the contact grid; x and y are its middle from the
// bridge's middle, mm.
type Cell struct {
	X, Y   float64
	Dx, Dy float64
	Foot   int
}

// Area is the cell's, mm².
func (c Cell) Area() float64 { return c.Dx * c.Dy }

// Cells lays the contact grid over the bearing area, foot by foot from the
// bass, column by column. A perimeter bearing, or a base hollowed through its
// face, bears on its walls alone: the same grid with a mask.
func Cells(b *cases.Bridge) []Cell {
	var out []Cell
	for i := range b.Feet {
		xs, ys := bearingEdges(b, i)
		for k := 1; k < len(xs); k++ {
			for j := 1; j < len(ys); j++ {
				c := Cell{X: (xs[k-1] + xs[k]) / 2, Y: (ys[j-1] + ys[j]) / 2,
					Dx: xs[k] - xs[k-1], Dy: ys[j] - ys[j-1], Foot: i}
				if !hollowAt(b, i, c.X, c.Y) {
					out = append(out, c)
				}
			}
		}
	}
	return out
}

// hollowAt says whether a place of foot i's face is cut away.
func hollowAt(b *cases.Bridge, i int, x, y float64) bool {
	w := b.Wall(i)
	f := b.Feet[i]
	return w > 0 && x > float64(f.From)+w && x < float64(f.To)-w && math.Abs(y) < float64(b.Width)/2-w
}

// bearingEdges are the grid's lines along and across foot i, mm.
func bearingEdges(b *cases.Bridge, i int) (xs, ys []float64) {
	f, w := b.Feet[i], b.Wall(i)
	half := float64(b.Width) / 2
	if w == 0 {
		return cases.Divide(padStep, float64(f.From), float64(f.To)), cases.Divide(2*half/padRows, -half, half)
	}
	xs = cases.Divide(padStep, float64(f.From), float64(f.From)+w, float64(f.To)-w, float64(f.To))
	ys = cases.Divide(2*half/padRows, -half, -half+w, half-w, half)
	return xs, ys
}

// columns are the middles along the bridge of a set of cells, rising.
func columns(cells []Cell) []float64 {
	var xs []float64
	for _, c := range cells {
		xs = append(xs, c.X)
	}
	slices.Sort(xs)
	return slices.Compact(xs)
}

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

// add adds one beam between two nodes of the body and counts its mass.
func (st *BridgeModel) add(sec bridgeSection, nodes [2]int32, density float64) {
	lift := [3]float64{0, 0, sec.lift}
	p, q := st.Body.Nodes[nodes[0]], st.Body.Nodes[nodes[1]]
	m := sec.Area() * math.Abs(q[0]-p[0]) * density * gramPerMM3
	st.Body.Beams = append(st.Body.Beams, contact.BodyBeam{Nodes: nodes, Offset: [2][3]float64{lift, lift},
		Up: [3]float64{0, 0, 1}, Section: sec.Section, Mass: m * tonnePerGram})
	st.weigh(m, [3]float64{(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2]+q[2])/2 + sec.lift})
}

// put puts a mass on the body at its nearest node of the range first..end, kg/m³ and mm³.
func (st *BridgeModel) put(volume, density float64, at [3]float64, first, end int) {
	m := volume * density * gramPerMM3
	st.Body.Masses = append(st.Body.Masses, contact.BodyMass{Node: st.nearestNode(at[0], first, end), At: at, Mass: m * tonnePerGram})
	st.weigh(m, at)
}

// weigh adds a mass at a place; centre holds the sum until it is divided.
func (st *BridgeModel) weigh(m float64, at [3]float64) {
	st.Mass += m
	for k := range 3 {
		st.Centre[k] += m * at[k]
	}
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

// bearsAlike says whether two bridges give the same contact problem: they may
// differ in gaps, in what the strings do and in weight; in grip also in their guides,
// which hold nothing there.
func (st *BridgeModel) bearsAlike(o *BridgeModel) bool {
	same := func(p, q contact.Pad) bool {
		return p.Node == q.Node && p.At == q.At && p.Dir == q.Dir && p.Area == q.Area && p.Bedding == q.Bedding && slices.Equal(p.Spread, q.Spread)
	}
	a, b := &st.Body, &o.Body
	return st.Hold == o.Hold && slices.EqualFunc(st.Pads, o.Pads, same) &&
		slices.Equal(a.Nodes, b.Nodes) && slices.EqualFunc(a.Beams, b.Beams, sameBeam) && (st.Hold == contact.Grip || slices.Equal(a.Guides, b.Guides))
}

// sameBeam says whether two beams are as stiff; they may differ in weight.
func sameBeam(p, q contact.BodyBeam) bool {
	p.Mass = q.Mass
	return p == q
}
