package fem

import "archload/fem/element"

// Element is what assembly and recovery ask of a finite element in its place in a
// model. Its freedoms are its nodes', six each, in the order of Nodes. A new kind
// is a type here that ties an element to its nodes, a list in Model, and a line in
// System.tieElements.
type Element interface {
	// Nodes lists the nodes that it couples.
	Nodes() []int32
	// Part is the label of the part that it belongs to.
	Part() Part
	// StiffnessTo sets k to the symmetric stiffness, row-major, N/mm, N and
	// N·mm. len(k) is the square of the number of freedoms.
	StiffnessTo(k []float64)
	// Energy returns the strain energy under the movements u of its freedoms.
	Energy(u []float64) Strain
}

// Massive is an element that has mass, which vibration asks for.
type Massive interface {
	Element
	// MassTo sets m to the symmetric mass, row-major, tonne, tonne·mm and tonne·mm²,
	// over the freedoms of Nodes.
	MassTo(m []float64)
}

// Strain is the strain energy of one element, N·mm, by kind.
type Strain struct {
	Membrane, Bending, Shear float64 // of a shell
	Other                    float64 // of what is not told by kind
}

// stiffnessOf returns an element's stiffness, in buf if it has room.
func stiffnessOf(e Element, buf []float64) []float64 {
	n := 6 * len(e.Nodes())
	if cap(buf) < n*n {
		buf = make([]float64, n*n)
	}
	e.StiffnessTo(buf[:n*n])
	return buf[:n*n]
}

// movesOf returns the movements of an element's freedoms, in buf if it has room.
func movesOf(e Element, u, buf []float64) []float64 {
	nodes := e.Nodes()
	if cap(buf) < 6*len(nodes) {
		buf = make([]float64, 6*len(nodes))
	}
	buf = buf[:6*len(nodes)]
	Gather(buf, u, nodes)
	return buf
}

// Gather sets dst to the movements u of some nodes, six each, in their order.
func Gather(dst, u []float64, nodes []int32) {
	for k, n := range nodes {
		copy(dst[6*k:6*k+6], u[6*int(n):6*int(n)+6])
	}
}

// Pull returns the forces K u by which an element pulls at its nodes' freedoms
// under the movements u of the system, N and N·mm.
func Pull(e Element, u []float64) []float64 {
	k, ue := stiffnessOf(e, nil), movesOf(e, u, nil)
	out := make([]float64, len(ue))
	for i := range out {
		for j, c := range k[i*len(ue) : (i+1)*len(ue)] {
			out[i] += c * ue[j]
		}
	}
	return out
}

// OwnNodes lists an element's own nodes, which may follow rigid bodies.
func OwnNodes(e Element) []int32 { return unled(e).Nodes() }

// PullOwn is Pull of element i of System.Elements at its own nodes, of which some may follow rigid
// bodies, beyond what its wood does by itself.
func (r *Result) PullOwn(i int) []float64 {
	e := unled(r.Plate.Elements[i])
	if r.Large {
		u := movesOf(e, r.U, nil)
		f := make([]float64, len(u))
		e.(Movable).PullTo(f, u)
		return f
	}
	if r.Swollen != nil {
		if f, swells := r.Swollen.pullOwn(i, r.U); swells {
			return f
		}
	}
	return Pull(e, r.U)
}

// unled is the element itself of one that is hung on rigid bodies.
func unled(e Element) Element {
	switch led := e.(type) {
	case *ledElement:
		return led.Element
	case *ledMassive:
		return led.Element
	}
	return e
}

// beamTie is a beam in its place: it gives the movements of the beam's two ends
// from those of the nodes that it is tied to, and the forces on the nodes from those on the ends.
type beamTie interface {
	Element
	ends(u []float64) [12]float64
	movedEnds(u []float64) [12]float64 // at movements of any size
	with(b *element.Beam) beamTie      // another beam in the same place
	onNodes(f *[12]float64) []float64
}
