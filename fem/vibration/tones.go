package vibration

import (
	"errors"
	"math"

	"archload/fem"
	"archload/fem/eigen"
	"archload/fem/sparse"
)

// Tones are the lowest tones of a structure, ascending and complete below a bound.
type Tones struct {
	List  []Tone
	Free  int     // motions without a tone that come before them
	To    float64 // Hz: as many tones as are listed lie below this, by the count
	Proof eigen.Proof

	of    *Structure
	modes *eigen.Modes
}

// Tone is one of them.
type Tone struct {
	Hz    float64
	Shape []float64 // movements of all nodes, six each, of modal mass 1 tonne: φᵀ M φ = 1
	Bound float64   // of the relative error of Hz that the search leaves, 1
}

// Square is the square of its circular frequency, 1/s².
func (t *Tone) Square() float64 { return 4 * math.Pi * math.Pi * t.Hz * t.Hz }

// Tones finds the count lowest tones. free is the number of motions that nothing holds; 0 for a
// structure that is held.
func (s *Structure) Tones(count, free int) (*Tones, error) {
	m, err := eigen.Lowest(&eigen.Problem{K: s.K, M: s.M, Fixed: s.fixed, Plan: s.plan},
		eigen.Options{Count: count, Free: free, Scale: firstGuess, Workers: s.in.Workers})
	if err != nil {
		return nil, s.explain(err)
	}
	t := &Tones{Free: free, To: hertz(m.Proof.Bound), Proof: m.Proof, of: s, modes: m}
	for i := free; i < len(m.Values); i++ {
		t.List = append(t.List, Tone{Hz: hertz(m.Values[i]), Shape: m.Vectors[i], Bound: m.Residuals[i] / 2})
	}
	return t, nil
}

// explain puts a pivot that vanishes at its place.
func (s *Structure) explain(err error) error {
	var pe *sparse.PivotError
	if !errors.As(err, &pe) {
		return err
	}
	u := &fem.UnsupportedError{Dof: pe.Dof, Err: err}
	if n := int(s.first); pe.Node < n {
		u.At = s.in.Plate.Model.Nodes[pe.Node].P
	} else {
		u.At = s.in.Body.Nodes[pe.Node-n]
	}
	return u
}

// firstGuess is omega² of the lowest tone of a free plate, 1/s²: 50 Hz. A wrong guess costs time.
const firstGuess = 1e5

func hertz(omega2 float64) float64 { return math.Sqrt(max(omega2, 0)) / (2 * math.Pi) }

// Shares is how the movement of a tone, its kinetic energy, is shared out.
type Shares struct {
	Parts  []float64 // by label of the plate's parts, 1
	Masses float64   // point masses
	Body   float64
}

// Shares sums the kinetic energy of shapes by part, over all of it.
func (s *Structure) Shares(shapes [][]float64) []Shares {
	out := make([]Shares, len(shapes))
	s.plateShares(out, shapes)
	var m [144]float64
	var u [12]float64
	for i := range s.beams {
		s.beams[i].MassTo(&m, s.in.Body.Beams[i].Mass)
		for k, shape := range shapes {
			fem.Gather(u[:], shape, s.bodyNodes(i))
			out[k].Body += square(m[:], u[:])
		}
	}
	for i := range s.bodyMasses() {
		p := &s.in.Body.Masses[i]
		m := s.bodyMass(p)
		for k, shape := range shapes {
			out[k].Body += square(m, shape[6*(s.first+p.Node):][:6])
		}
	}
	for i := range s.in.Plate.Model.Masses {
		p := &s.in.Plate.Model.Masses[i]
		for _, at := range p.At {
			for k, shape := range shapes {
				d := s.in.Plate.MoveAt(shape, at)
				out[k].Masses += p.Mass / float64(len(p.At)) * (d[0]*d[0] + d[1]*d[1] + d[2]*d[2])
			}
		}
	}
	for k := range out {
		out[k].normalise()
	}
	return out
}

// plateShares sums over the plate's elements, each mass once for all shapes.
func (s *Structure) plateShares(out []Shares, shapes [][]float64) {
	var m, u []float64
	for _, e := range s.in.Plate.Elements {
		h, ok := e.(fem.Massive)
		if !ok {
			continue
		}
		n := 6 * len(e.Nodes())
		if cap(m) < n*n {
			m, u = make([]float64, n*n), make([]float64, n)
		}
		h.MassTo(m[:n*n])
		for k, shape := range shapes {
			o := &out[k]
			for int(e.Part()) >= len(o.Parts) {
				o.Parts = append(o.Parts, 0)
			}
			fem.Gather(u[:n], shape, e.Nodes())
			o.Parts[e.Part()] += square(m[:n*n], u[:n])
		}
	}
}

// normalise makes the shares sum to 1.
func (o *Shares) normalise() {
	sum := o.Body + o.Masses
	for _, v := range o.Parts {
		sum += v
	}
	for i := range o.Parts {
		o.Parts[i] /= sum
	}
	o.Body /= sum
	o.Masses /= sum
}

// square is uᵀ m u.
func square(m, u []float64) float64 {
	sum := 0.0
	for i, a := range u {
		for j, b := range u {
			sum += a * m[i*len(u)+j] * b
		}
	}
	return sum
}

// Node is the place of a node, mm.
func (s *Structure) Node(n int32) [3]float64 {
	if n < s.first {
		return s.in.Plate.Model.Nodes[n].P
	}
	return s.in.Body.Nodes[n-s.first]
}

// Most returns the node that moves most and how far, mm: of the plate's nodes and the body's.
func (s *Structure) Most(shape []float64) (node int32, move float64) {
	for i := range s.nodes() {
		v := shape[6*i:][:3]
		if d := math.Sqrt(v[0]*v[0] + v[1]*v[1] + v[2]*v[2]); d > move {
			node, move = int32(i), d
		}
	}
	return node, move
}
