package answer

import (
	"math"

	"archload/cases/design"
	"archload/mesh"
)

// BackSinkField is how far the back's outer surface goes down, which is out of the body, at each node of its
// mesh, mm; nil without a body.
func BackSinkField(s *design.Solution) []float64 {
	k := s.Top.Built.Back
	if k == nil {
		return nil
	}
	out := make([]float64, len(k.Mesh.Nodes))
	for i := range out {
		at := k.First + int32(i)
		n := s.Top.Built.Model.Nodes[at]
		u := s.Result.U[6*at : 6*at+6]
		out[i] = -(u[2] + n.H/2*(u[3]*n.N[1]-u[4]*n.N[0]))
	}
	return out
}

// BackStressFields are StressFields of the back: in each triangle of its mesh; zeta is 1 for the outer face, the
// one seen from behind. Nil without a body.
func BackStressFields(s *design.Solution, zeta float64) (along, across []float64) {
	k := s.Top.Built.Back
	if k == nil {
		return nil, nil
	}
	along, across = make([]float64, len(k.Mesh.Tris)), make([]float64, len(k.Mesh.Tris))
	s.Top.Each(len(along), func(i int) {
		f := faceStress(s, int(k.Shell)+i, zeta)
		along[i], across[i] = f.Along, f.Across
	})
	return along, across
}

// BackStrengthField is the share of the back's strength used at each triangle of its mesh at the worse face,
// percent, as StrengthFields tells it of the top, and the worst place. NaN where a circle of one thickness would
// cross an edge, and all along if a strength of its wood is not known; nil without a body.
func BackStrengthField(s *design.Solution) (used []float64, worst Spot) {
	b := s.Top.Built
	k := b.Back
	if k == nil {
		return nil, Spot{}
	}
	card, err := b.Case.Wood("body.back.wood")
	if err != nil {
		return nil, Spot{} // the model has told
	}
	across, shear := lying(b.Model.Sections[b.Model.Shells[k.Shell].Section].Axes)
	n := len(k.Mesh.Tris)
	faces := [2][][6]float64{make([][6]float64, n), make([][6]float64, n)}
	s.Top.Each(n, func(i int) { faces[0][i], faces[1][i], _ = s.Result.ShellStresses(int(k.Shell) + i) })
	used = make([]float64, n)
	circle := design.Circle()
	s.Top.Each(n, func(i int) {
		used[i] = math.NaN()
		if tris, whole := k.CircleAt(i, circle); whole {
			o, in := MeanStress(faces[0], tris), MeanStress(faces[1], tris)
			used[i] = 100 * max(HoffmanUsed(o, across, shear, card.Strength), HoffmanUsed(in, across, shear, card.Strength))
		}
	})
	for i, v := range used {
		if v > worst.Value {
			c := middleOf(k.Mesh, i)
			worst = Spot{Value: v, X: c[0], Y: c[1]}
		}
	}
	return used, worst
}

// middleOf is the middle of a triangle in plan, mm.
func middleOf(m *mesh.Mesh, i int) (c mesh.Point) {
	for _, n := range m.Tris[i] {
		c[0], c[1] = c[0]+m.Points[n][0]/3, c[1]+m.Points[n][1]/3
	}
	return c
}
