package element

import (
	"math"
	"testing"

	"archload/fem/vec3"
	"archload/materials"
)

// sloped is a triangle of a curved plate: corners on a sphere of radius 300 mm about a place that slopes by 12
// degrees.
func sloped(pressed bool) ShellInput {
	const r = 300.0
	card, err := materials.Find("sitka-spruce")
	if err != nil {
		panic(err)
	}
	in := ShellInput{H: 4, Wood: card.Wood.Compliance(), Axes: materials.PlateAxes(materials.Cut{}), Pressed: pressed}
	for i, p := range [3][2]float64{{60, 5}, {67, 6}, {63, 12}} {
		z := math.Sqrt(r*r - p[0]*p[0] - p[1]*p[1])
		in.X[i] = [3]float64{p[0], p[1], z}
		in.N[i] = vec3.Scale(in.X[i], 1/r)
	}
	return in
}

// TestFreeCarved moves a carved triangle as its wood stretches: it is the affine movement of the wood, each fibre turns as
// the wood along it does, and no force is left.
func TestFreeCarved(t *testing.T) {
	in := sloped(false)
	s, err := NewShell(in)
	if err != nil {
		t.Fatal(err)
	}
	f := s.Free(FreeStrain{Mean: [3]float64{0.0004, 0.006, 0.0105}})
	e := [3]float64{0.006, 0.0004, 0.0105} // quarter-cut: R across, L along, T up
	for i := range 3 {
		for k := range 3 {
			if want := e[k] * (in.X[i][k] - in.X[0][k]); math.Abs(f.Moves[6*i+k]-want) > 1e-15 {
				t.Errorf("corner %d moves by %.3g along axis %d, want %.3g", i, f.Moves[6*i+k], k, want)
			}
		}
		n := in.N[i]
		turn := vec3.Cross(n, [3]float64{e[0] * n[0], e[1] * n[1], e[2] * n[2]})
		if got := [3]float64(f.Moves[6*i+3 : 6*i+6]); vec3.Norm(vec3.Sub(got, turn)) > 1e-15 {
			t.Errorf("corner %d turns by %v, want %v", i, got, turn)
		}
	}
}

// TestFreePressed wants the free movement of a pressed triangle to stretch it by the strains in its plane, to bend it by
// what its thickness does, (e - e_n)/R, and not to shear it; and a gradient from face to face to bend it by 2 e/h more.
func TestFreePressed(t *testing.T) {
	const e, thick, half, r = 0.006, 0.0105, 0.002, 300.0
	s, err := NewShell(sloped(true))
	if err != nil {
		t.Fatal(err)
	}
	f := s.Free(FreeStrain{Mean: [3]float64{e, e, thick}, Half: [3]float64{half, half, 0}})
	got := s.Strains(&f.Moves)
	for k, want := range [3]float64{e, e, 0} {
		if math.Abs(got.Membrane[k]-want) > 1e-3*e {
			t.Errorf("stretches by %v, want %g along axis %d", got.Membrane, want, k)
		}
	}
	for k := range 2 {
		if math.Abs(got.Shear[k]) > 1e-15 {
			t.Errorf("shears by %v, want 0", got.Shear)
		}
		if want := (e-thick)/r + 2*half/s.Thickness(); math.Abs(got.Curvature[k]-want) > 1e-3*math.Abs(want) {
			t.Errorf("bends by %v, want %g", got.Curvature, want)
		}
	}
	stress := s.Stress(&[18]float64{}, 1)
	if stress != ([6]float64{}) {
		t.Errorf("an unmoved triangle bears %v", stress)
	}
}

// TestBeyond wants each place of a free carved triangle to move as its wood does, off the middle and off the facet's
// chords too.
func TestBeyond(t *testing.T) {
	in := sloped(false)
	s, err := NewShell(in)
	if err != nil {
		t.Fatal(err)
	}
	f := s.Free(FreeStrain{Mean: [3]float64{0.0004, 0.006, 0.0105}})
	x, l := [3]float64{63.5, 8, 293.1}, [3]float64{0.3, 0.4, 0.3}
	d, rows := s.Beyond(&f, x, l, 1), s.RowsAt(l, 1)
	for k, e := range [3]float64{0.006, 0.0004, 0.0105} {
		if got, want := d[k]+form(&rows[k], &f.Moves), e*(x[k]-in.X[0][k]); math.Abs(got-want) > 1e-15 {
			t.Errorf("moves by %.9g along axis %d, want %.9g", got, k, want)
		}
	}
}

// TestEased moves a triangle as its wood stretches: no force is left at movements of any size. Where it does not move
// the forces are those of the linear triangle, to the first order of the strain.
func TestEased(t *testing.T) {
	for _, pressed := range []bool{false, true} {
		s, err := NewShell(sloped(pressed))
		if err != nil {
			t.Fatal(err)
		}
		f := s.Free(FreeStrain{Mean: [3]float64{0.0004, 0.006, 0.0105}, Half: [3]float64{0, 0.001, 0}})
		q := s.Eased(&f)
		var force, still [18]float64
		if energy := q.PullTo(&force, &f.Moves); energy > 1e-20 || vec3.Norm([3]float64(force[:3])) > 1e-9 {
			t.Errorf("pressed %t: bears %g N·mm and %v where it is at ease", pressed, energy, force)
		}
		q.PullTo(&still, &[18]float64{})
		var k [324]float64
		s.StiffnessTo(&k)
		size, off := 0.0, 0.0
		for i := range still {
			linear := 0.0
			for j, v := range f.Moves {
				linear -= k[18*i+j] * v
			}
			size, off = math.Max(size, math.Abs(linear)), math.Max(off, math.Abs(still[i]-linear))
		}
		if off > 0.02*size {
			t.Errorf("pressed %t: forces off by %g of %g", pressed, off, size)
		}
	}
}
