package element

import (
	"fmt"
	"math"

	"archload/fem/vec3"
)

// BeamInput describes one straight stretch of a prismatic beam between two
// nodes, which carry it by rigid arms.
type BeamInput struct {
	X       [2][3]float64 // nodes, mm
	Offset  [2][3]float64 // rigid arms from the nodes to the beam's axis, mm
	Up      [3]float64    // height direction of the section (need not be square to the axis)
	Section Section
}

// Rows of strain kept by a Beam.
const (
	beamAxial  = iota // extension, 1
	beamTwist         // twist, 1/mm
	beamCurvY         // theta_y,x, 1/mm
	beamCurvZ         // theta_z,x, 1/mm
	beamShearY        // shear strain xy, 1
	beamShearZ        // shear strain xz, 1
	numBeamRows
)

// Beam is a straight two-node Timoshenko beam with rigid arms. Rotations are
// linear and the shear strain constant, taken at the middle; its compliance
// 1/(k G A) is raised by L²/(12 E I), the bending that the linear rotation
// misses, which turns the element into the exact Timoshenko beam: nodal values
// are exact for loads at the nodes, and there is no shear locking.
type Beam struct {
	axes   [3][3]float64 // x, y, z of the beam in global axes (rows)
	length float64       // mm
	arms   [2][3]float64 // from the nodes to the axis, mm
	rows   [numBeamRows][12]float64
	law    [numBeamRows]float64

	eased [numBeamRows]float64 // strains at which the wood is at ease, see Eased
}

// BeamForces are the section forces of a beam in its own axes. N, Vy, Vz and T
// are constant. N is positive in tension; moments are right-handed and act on
// the face toward the second node, so that sigma = N/A + My z/Iy - Mz y/Iz.
type BeamForces struct {
	N, Vy, Vz float64    // N
	T         float64    // N mm
	My, Mz    [3]float64 // at the first node, the middle and the second node, N mm
}

// NewBeam prepares the beam's axes, strain rows and laws.
func NewBeam(in BeamInput) (Beam, error) {
	var b Beam
	if err := in.Section.Check(); err != nil {
		return b, err
	}
	if err := b.setAxes(&in); err != nil {
		return b, err
	}
	b.setRows(&in)
	b.setLaw(in.Section.Rigidity())
	return b, nil
}

// setAxes computes the beam's length and axes.
func (b *Beam) setAxes(in *BeamInput) error {
	d := vec3.Sub(vec3.Add(in.X[1], in.Offset[1]), vec3.Add(in.X[0], in.Offset[0]))
	b.length, b.arms = vec3.Norm(d), in.Offset
	if !(b.length > 0) || math.IsInf(b.length, 1) {
		return fmt.Errorf("beam: want a length > 0 mm, found %g between %v and %v", b.length, in.X[0], in.X[1])
	}
	x := vec3.Scale(d, 1/b.length)
	z := projected(in.Up, x)
	if l := vec3.Norm(z); l > 1e-6*vec3.Norm(in.Up) {
		z = vec3.Scale(z, 1/l)
		b.axes = [3][3]float64{x, vec3.Cross(z, x), z}
		return nil
	}
	return fmt.Errorf("beam: height direction: want not along the axis %v, found %v", x, in.Up)
}

// setRows fills the strain rows. The end of an arm a moves by u + theta x a.
func (b *Beam) setRows(in *BeamInput) {
	l := b.length
	for e, sign := range [2]float64{-1, 1} {
		for k := range 3 { // displacement along axis k of the beam
			row := [3]int{beamAxial, beamShearY, beamShearZ}[k]
			b.addMotion(row, e, b.axes[k], vec3.Cross(in.Offset[e], b.axes[k]), sign/l)
		}
		for k := range 3 { // rotation about axis k
			b.addMotion(beamTwist+k, e, [3]float64{}, b.axes[k], sign/l)
		}
		// gamma_xy = v,x - theta_z, gamma_xz = w,x + theta_y, at the middle
		b.addMotion(beamShearY, e, [3]float64{}, b.axes[2], -0.5)
		b.addMotion(beamShearZ, e, [3]float64{}, b.axes[1], 0.5)
	}
}

// addMotion adds c (u.force + theta.moment) of end e to a strain row.
func (b *Beam) addMotion(row, e int, force, moment [3]float64, c float64) {
	for k := range 3 {
		b.rows[row][6*e+k] += c * force[k]
		b.rows[row][6*e+3+k] += c * moment[k]
	}
}

// setLaw fills the stiffness of each strain row, N or N mm².
func (b *Beam) setLaw(own Rigidity) {
	b.law = [numBeamRows]float64{
		beamAxial: own.EA, beamTwist: own.GJ, beamCurvY: own.EIy, beamCurvZ: own.EIz,
		beamShearY: b.shearLaw(own.GAy, own.EIz), beamShearZ: b.shearLaw(own.GAz, own.EIy),
	}
}

// shearLaw returns 1/(1/GA + L²/(12 EI)), N; zero if either is zero.
func (b *Beam) shearLaw(ga, ei float64) float64 {
	if ga == 0 || ei == 0 {
		return 0
	}
	return 1 / (1/ga + b.length*b.length/(12*ei))
}

// Length returns the length of the beam's axis, mm.
func (b *Beam) Length() float64 { return b.length }

// Axes returns the beam's x, y (width) and z (height) in global axes (rows, 1).
func (b *Beam) Axes() [3][3]float64 { return b.axes }

// StiffnessTo sets k to the 12x12 stiffness, row-major, global degrees of
// freedom node by node. It is symmetric to the last bit.
func (b *Beam) StiffnessTo(k *[144]float64) {
	*k = [144]float64{}
	for r, law := range b.law {
		row := &b.rows[r]
		for i := range 12 {
			c := law * b.length * row[i]
			for j := i; j < 12; j++ {
				k[12*i+j] += c * row[j]
			}
		}
	}
	for i := range 12 {
		for j := range i {
			k[12*i+j] = k[12*j+i]
		}
	}
}

// strain returns strain row r under u.
func (b *Beam) strain(r int, u *[12]float64) float64 {
	var v float64
	for i, c := range b.rows[r] {
		v += c * u[i]
	}
	return v
}

// Forces returns the section forces under the global displacements u of the
// nodes (mm, rad). Moments vary linearly: My,x = Vz, Mz,x = -Vy.
func (b *Beam) Forces(u *[12]float64) BeamForces {
	var s [numBeamRows]float64
	for r := range s {
		s[r] = b.strain(r, u)
	}
	return b.forcesOf(&s)
}

// forcesOf returns the section forces of some strains.
func (b *Beam) forcesOf(strain *[numBeamRows]float64) BeamForces {
	var s [numBeamRows]float64
	for r := range s {
		s[r] = b.law[r] * strain[r]
	}
	f := BeamForces{N: s[beamAxial], T: s[beamTwist], Vy: s[beamShearY], Vz: s[beamShearZ]}
	for i := range f.My {
		x := (float64(i) - 1) * b.length / 2
		f.My[i] = s[beamCurvY] + x*f.Vz
		f.Mz[i] = s[beamCurvZ] - x*f.Vy
	}
	return f
}

// Energy returns the beam's strain energy under u, N mm.
func (b *Beam) Energy(u *[12]float64) float64 {
	var e float64
	for r, law := range b.law {
		v := b.strain(r, u)
		e += law * v * v
	}
	return e * b.length / 2
}
