package element

import "archload/fem/vec3"

// movedBeam is a beam at movements u of its two nodes. Its strains are measures like those of a
// shell: Green's strain of the chord, the turn of one end against the other over the length, and
// the chord against the sections' mean axes.
type movedBeam struct {
	b      *Beam
	turns  [2]attitude
	axes   [2][3][3]float64 // the beam's axes, turned with each end
	arms   [2][3]float64    // turned arms
	nodes  [3]float64       // from the first node to the second, after movement
	chord  [3]float64       // likewise from axis to axis
	strain [numBeamRows]float64
}

// at moves the beam.
func (b *Beam) at(u *[12]float64) *movedBeam {
	w := &movedBeam{b: b}
	start := vec3.Scale(b.axes[0], b.length)
	d := vec3.Sub([3]float64(u[6:9]), [3]float64(u[0:3])) // change of the chord
	w.nodes = vec3.Add(vec3.Add(start, vec3.Sub(b.arms[0], b.arms[1])), d)
	var shift [2][3][3]float64
	for e, sign := range [2]float64{-1, 1} {
		w.turns[e] = newAttitude([3]float64(u[6*e+3 : 6*e+6]))
		shift[e] = w.turns[e].shifts(b.axes)
		for k := range 3 {
			w.axes[e][k] = vec3.Add(b.axes[k], shift[e][k])
		}
		move := w.turns[e].shift(b.arms[e])
		w.arms[e] = vec3.Add(b.arms[e], move)
		d = vec3.Add(d, vec3.Scale(move, sign))
	}
	w.chord = vec3.Add(start, d)
	l := b.length
	w.strain[beamAxial] = vec3.Dot(b.axes[0], d)/l + vec3.Dot(d, d)/(2*l*l)
	for k, row := range [2]int{beamShearY, beamShearZ} {
		w.strain[row] = vec3.Dot(d, b.axes[1+k])/l + vec3.Dot(w.chord, vec3.Add(shift[0][1+k], shift[1][1+k]))/(2*l)
	}
	for a := range 3 {
		p, q, e := (a+1)%3, (a+2)%3, &b.axes
		w.strain[beamTwist+a] = (vec3.Dot(e[q], vec3.Sub(shift[1][p], shift[0][p])) - vec3.Dot(e[p], vec3.Sub(shift[1][q], shift[0][q])) +
			vec3.Dot(shift[0][q], shift[1][p]) - vec3.Dot(shift[0][p], shift[1][q])) / (2 * l)
	}
	w.strain[beamAxial] += w.bow(w.strain[beamCurvY])/2*w.strain[beamCurvY] + w.bow(w.strain[beamCurvZ])/2*w.strain[beamCurvZ]
	return w
}

// bow is the derivative by a curvature of the axial strain that it brings: the mean of half the
// slope's square against the chord is κ² L²/24.
func (w *movedBeam) bow(curvature float64) float64 { return w.b.length * w.b.length / 12 * curvature }

// vary adds t times the strains to a variation.
func (w *movedBeam) vary(v *variation, t *[numBeamRows]float64) {
	l, sign := w.b.length, []float64{-1, 1}
	if c := t[beamAxial] / (l * l); c != 0 { // ½ |chord|²/L², chord = nodes + arm 2 - arm 1
		v.xx(c/2, sign, sign, w.nodes, w.nodes)
		v.xv(-c, sign, w.nodes, 0, w.arms[0])
		v.xv(c, sign, w.nodes, 1, w.arms[1])
		v.vv(-c, 0, w.arms[0], 1, w.arms[1])
	}
	turn := [3]float64{
		t[beamTwist] / l,
		(t[beamCurvY] + t[beamAxial]*w.bow(w.strain[beamCurvY])) / l,
		(t[beamCurvZ] + t[beamAxial]*w.bow(w.strain[beamCurvZ])) / l,
	}
	v.relative(turn, 0, &w.axes[0], 1, &w.axes[1])
	for k, row := range [2]int{beamShearY, beamShearZ} {
		c := t[row] / (2 * l)
		if c == 0 {
			continue
		}
		p, q := w.axes[0][1+k], w.axes[1][1+k]
		v.xv(c, sign, w.nodes, 0, p)
		v.xv(c, sign, w.nodes, 1, q)
		v.vv(-c, 0, w.arms[0], 1, q)
		v.vv(c, 0, p, 1, w.arms[1])
	}
}

// beyond are the strains beyond those of ease.
func (w *movedBeam) beyond() (e [numBeamRows]float64) {
	for r, v := range w.strain {
		e[r] = v - w.b.eased[r]
	}
	return e
}

// forces are those conjugate to the strains, times the length.
func (w *movedBeam) forces() (t [numBeamRows]float64) {
	e := w.beyond()
	for r, law := range w.b.law {
		t[r] = law * w.b.length * e[r]
	}
	return t
}

// row is the derivative of a strain by movements and spins.
func (w *movedBeam) row(r int) [18]float64 {
	var t [numBeamRows]float64
	t[r] = 1
	v := variation{width: 12}
	w.vary(&v, &t)
	return v.g
}

// stress adds forces times the second derivatives of their strains.
func (w *movedBeam) stress(v *variation, t *[numBeamRows]float64) {
	w.vary(v, t)
	for _, r := range [2]int{beamCurvY, beamCurvZ} {
		row := w.row(r)
		v.addRow(t[beamAxial]*w.b.length*w.b.length/12, &row)
	}
}

// PullTo sets f to the derivative of the strain energy by the movements u of the nodes, N and
// N·mm, and returns the energy, N·mm. u are movements of any size and rotation vectors below a
// full turn, as for a shell.
func (b *Beam) PullTo(f, u *[12]float64) (energy float64) {
	w := b.at(u)
	t := w.forces()
	v := variation{width: 12}
	w.vary(&v, &t)
	v.byVectors(w.turns[:])
	copy(f[:], v.g[:])
	for r, e := range w.beyond() {
		energy += t[r] * e / 2
	}
	return energy
}

// TangentTo sets k to the second derivative of the strain energy at u, row-major, symmetric to
// the last bit.
func (b *Beam) TangentTo(k *[144]float64, u *[12]float64) {
	w := b.at(u)
	t := w.forces()
	v := variation{width: 12, second: true}
	w.stress(&v, &t)
	for r, law := range b.law {
		row := w.row(r)
		v.addRow(law*b.length, &row)
	}
	v.byVectors(w.turns[:])
	v.stiffnessTo(k[:])
}

// StressedTo sets k to what the forces of small movements u lend to the stiffness of the
// unmoved beam, row-major.
func (b *Beam) StressedTo(k *[144]float64, u *[12]float64) {
	var t [numBeamRows]float64
	for r, law := range b.law {
		t[r] = law * b.length * (b.strain(r, u) - b.eased[r])
	}
	v := variation{width: 12, second: true}
	b.at(new([12]float64)).stress(&v, &t)
	v.stiffnessTo(k[:])
}

// MovedForces returns the section forces under movements u of any size, in the beam's own axes,
// which go with it.
func (b *Beam) MovedForces(u *[12]float64) BeamForces {
	e := b.at(u).beyond()
	return b.forcesOf(&e)
}

// MovedAxes returns the mean of the beam's axes at both ends under movements u of any size, in
// global axes (rows).
func (b *Beam) MovedAxes(u *[12]float64) (axes [3][3]float64) {
	w := b.at(u)
	for k := range axes {
		axes[k] = vec3.Scale(vec3.Add(w.axes[0][k], w.axes[1][k]), 0.5)
	}
	return axes
}
