package contact

import (
	"fmt"

	"archload/fem/element"
	"archload/fem/sparse"
)

// frame is a body with its first node held, factorised.
type frame struct {
	body   *Body
	beams  []element.Beam
	factor *sparse.Factor
}

// newFrame builds and factorises the body. The nodes listed in last stay in the root
// front, so that the flexibility between them is one dense product.
func newFrame(b *Body, last []int32, workers int) (*frame, error) {
	if len(b.Nodes) < 2 || len(b.Beams) == 0 {
		return nil, fmt.Errorf("body: want at least one beam between two nodes, found %d beams", len(b.Beams))
	}
	f := &frame{body: b, beams: make([]element.Beam, len(b.Beams))}
	elems := make([][]int32, len(b.Beams))
	for i := range b.Beams {
		elems[i] = b.Beams[i].Nodes[:]
	}
	k := sparse.NewMatrix(len(b.Nodes), elems)
	var ke [144]float64
	for i := range b.Beams {
		bb := &b.Beams[i]
		el, err := element.NewBeam(element.BeamInput{
			X:      [2][3]float64{b.Nodes[bb.Nodes[0]], b.Nodes[bb.Nodes[1]]},
			Offset: bb.Offset, Up: bb.Up, Section: bb.Section})
		if err != nil {
			return nil, fmt.Errorf("body beam %d: %w", i, err)
		}
		f.beams[i] = el
		el.StiffnessTo(&ke)
		k.Add(bb.Nodes[:], ke[:])
	}
	k.Fix([]int32{0, 1, 2, 3, 4, 5})
	xy := make([][2]float64, len(b.Nodes))
	for i, p := range b.Nodes {
		xy[i] = [2]float64{p[0], p[1]}
	}
	a, err := sparse.Analyse(k, xy, last)
	if err != nil {
		return nil, err
	}
	f.factor, err = sparse.Factorize(k, a, workers)
	return f, err
}

// flexibility is the movement of every freedom of some of the last nodes under
// a unit force on every one, row-major, the first node held.
func (f *frame) flexibility(nodes []int32) []float64 {
	var cols []sparse.Column
	for _, n := range nodes {
		for d := range int32(6) {
			cols = append(cols, sparse.Column{Dofs: []int32{6*n + d}, Vals: []float64{1}})
		}
	}
	if len(cols) == 0 {
		return nil
	}
	return f.factor.Compliance(cols)
}

// column spreads a node row over the body's freedoms; the held node's part is
// dropped.
func (f *frame) column(node int32, row [6]float64) sparse.Column {
	if node == 0 {
		return sparse.Column{}
	}
	c := sparse.Column{Dofs: make([]int32, 6), Vals: make([]float64, 6)}
	for k := range 6 {
		c.Dofs[k], c.Vals[k] = 6*node+int32(k), row[k]
	}
	return c
}

// loadVector returns the nodal loads of the body at full load, fixed part
// dropped, and their resultant at the first node.
func (f *frame) loadVector() (load []float64, rigid [6]float64) {
	load = make([]float64, 6*len(f.body.Nodes))
	for _, l := range f.body.Loads {
		for a, m := range l.M {
			rigid[3+a] += m
			if l.Node != 0 {
				load[6*int(l.Node)+3+a] += m
			}
		}
		for a := range 3 {
			if l.F[a] == 0 {
				continue
			}
			var d [3]float64
			d[a] = 1
			row := ArmRow(f.body.Nodes[l.Node], l.At, d)
			arm := ArmRow(f.body.Nodes[0], l.At, d)
			for k := range 6 {
				rigid[k] += arm[k] * l.F[a]
				if l.Node != 0 {
					load[6*int(l.Node)+k] += row[k] * l.F[a]
				}
			}
		}
	}
	return load, rigid
}

func dotColumn(c sparse.Column, u []float64) float64 {
	s := 0.0
	for k, d := range c.Dofs {
		s += c.Vals[k] * u[d]
	}
	return s
}
