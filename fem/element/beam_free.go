package element

import "archload/fem/vec3"

// Free returns the movement of the nodes, mm and rad, under which the beam bears no
// force when its wood stretches by itself by the given strains along its axis, its
// width and its height, 1. Its rigid arms are of the same wood and stretch with it;
// beyond is how much more than the nodes the places move from which they go, mm.
func (b *Beam) Free(strain [3]float64, beyond [2][3]float64) (u [12]float64) {
	for k := range 3 {
		u[6+k] = strain[0] * b.length * b.axes[0][k]
	}
	for e := range 2 {
		d := beyond[e]
		for k, v := range strain {
			d = vec3.Add(d, vec3.Scale(b.axes[k], v*vec3.Dot(b.axes[k], b.arms[e])))
		}
		for k, v := range d {
			u[6*e+k] -= v
		}
	}
	return u
}

// Eased returns the beam whose wood has stretched by itself: at movements of any size its strains count from those
// that it has at its free movements, as Free returns them. What is linear stays as it was.
func (b *Beam) Eased(free *[12]float64) Beam {
	q := *b
	q.eased = b.at(free).strain
	return q
}
