package buckling

import (
	"errors"

	"archload/fem/contact"
	"archload/fem/eigen"
	"archload/fem/sparse"
	"archload/fem/vec3"
	"archload/fem/vibration"
)

// Input is a structure under its load.
type Input struct {
	vibration.Input           // plate, body, the pads that bear; of its springs those that hold under load
	U               []float64 // movements of the plate's nodes under the load, small, mm and rad
	Foot            float64   // mm, how far the contact plane lies below the body's nodes
	Guided          bool      // the body's guides hold it
}

// Modes are the lowest positive factors, ascending, none missing below Proof.Bound.
type Modes struct {
	Factors []float64   // of the load, 1
	Shapes  [][]float64 // movements of all nodes, six each; the greatest displacement is 1
	Proof   eigen.Proof // of ν of (2)
	Below   float64     // as many factors as are listed lie below this one, by the count; 0: no more are known
	Most    float64     // where no factor was found: there is none below this
	Of      *vibration.Structure
}

// mostFactor is the factor up to which one is looked for.
const mostFactor = 1 << 12

// Find finds the count lowest factors. There may be fewer, or none below mostFactor. Errors are
// those of a structure that is not stable by itself, and of the search.
func Find(in Input, count int) (*Modes, error) {
	s, err := vibration.New(in.Input)
	if err != nil {
		return nil, err
	}
	k := s.K
	if in.Guided {
		in.hold(s, k)
	}
	g := k.Like()
	in.Plate.AddStressed(g, in.U, in.Workers)
	in.lean(s, g)
	p := s.Problem(k.Like(), k) // fixes k
	g.Fix(p.Fixed)
	sum := p.K
	below := func(factor float64) (bool, error) {
		sum.SetSum(1, k, factor, g)
		sum.Fix(p.Fixed)
		_, err := sparse.Factorize(sum, p.Plan, in.Workers)
		var pivot *sparse.PivotError
		if errors.As(err, &pivot) {
			return false, nil
		}
		return err == nil, err
	}
	trial, err := bracket(below)
	if err != nil {
		return nil, err
	}
	if trial == 0 {
		return nil, errors.New("buckling: the structure is not stable without load")
	}
	if trial >= mostFactor {
		return &Modes{Most: trial, Of: s}, nil
	}
	sum.SetSum(1, k, trial, g)
	sum.Fix(p.Fixed)
	found, err := eigen.Lowest(p, eigen.Options{Count: count, Workers: in.Workers})
	if err != nil {
		return nil, err
	}
	return modesOf(s, found, trial, count), nil
}

// bracket returns the largest power of two below the lowest factor; 0 if there is none.
func bracket(below func(factor float64) (bool, error)) (float64, error) {
	trial := 1.0
	is, err := below(trial)
	for ; err == nil && !is && trial > 1.0/mostFactor; is, err = below(trial) {
		trial /= 2
	}
	if err != nil || !is {
		return 0, err
	}
	for trial >= 1 && trial < mostFactor {
		if is, err = below(2 * trial); err != nil || !is {
			return trial, err
		}
		trial *= 2
	}
	return trial, nil
}

// modesOf turns eigenvalues of (2) into factors.
func modesOf(s *vibration.Structure, found *eigen.Modes, trial float64, count int) *Modes {
	m := &Modes{Proof: found.Proof, Of: s}
	if found.Proof.Bound < 1 {
		m.Below = trial / (1 - found.Proof.Bound)
	}
	for i, v := range found.Values {
		if v >= 1 {
			break
		}
		factor := trial / (1 - v)
		if len(m.Factors) == count { // the search found more than it was asked for
			m.Below = factor
			break
		}
		m.Factors = append(m.Factors, factor)
		shape := found.Vectors[i]
		_, most := s.Most(shape)
		for j := range shape {
			shape[j] /= most
		}
		m.Shapes = append(m.Shapes, shape)
	}
	return m
}

// lean adds the work of the dead forces on the body.
func (in *Input) lean(s *vibration.Structure, g *sparse.Matrix) {
	if in.Body == nil {
		return
	}
	for _, l := range in.Body.Loads {
		r := vec3.Sub(l.At, in.Body.Nodes[l.Node])
		r[2] += in.Foot
		k := make([]float64, 36)
		for a := range 3 {
			k[6*(3+a)+3+a] = vec3.Dot(l.F, r)
			for b := range 3 {
				k[6*(3+a)+3+b] -= (l.F[a]*r[b] + r[a]*l.F[b]) / 2
			}
		}
		g.Add([]int32{s.BodyNode(l.Node)}, k)
	}
}

// Stiffness of a guide, which holds as good as rigidly: some thousand times that of a foot's pads.
const (
	guideMove = 1e7  // N/mm
	guideTurn = 1e11 // N·mm
)

// hold adds the guides.
func (in *Input) hold(s *vibration.Structure, k *sparse.Matrix) {
	for _, guide := range in.Body.Guides {
		row, stiff := contact.ArmRow(in.Body.Nodes[guide.Node], guide.At, guide.Dir), guideMove
		if guide.Turn {
			row, stiff = [6]float64{3: guide.Dir[0], 4: guide.Dir[1], 5: guide.Dir[2]}, guideTurn
		}
		add := make([]float64, 36)
		for i, a := range row {
			for j, b := range row {
				add[6*i+j] = stiff * a * b
			}
		}
		k.Add([]int32{s.BodyNode(guide.Node)}, add)
	}
}
