package mesh

import (
	"math"
	"testing"

	"archload/mesh/surface"
)

// ball is the upper half of a sphere of radius r about the origin, lowered.
type ball struct{ r, down float64 }

func (b ball) At(p Point) surface.Jet {
	z := math.Sqrt(b.r*b.r - p[0]*p[0] - p[1]*p[1])
	z3 := z * z * z
	return surface.Jet{
		Z: z - b.down, Zx: -p[0] / z, Zy: -p[1] / z,
		Zxx: -(b.r*b.r - p[1]*p[1]) / z3, Zxy: -p[0] * p[1] / z3, Zyy: -(b.r*b.r - p[0]*p[0]) / z3,
	}
}

// slope is a plane.
type slope struct{ z, zx, zy float64 }

func (s slope) At(p Point) surface.Jet {
	return surface.Jet{Z: s.z + s.zx*p[0] + s.zy*p[1], Zx: s.zx, Zy: s.zy}
}

// hills are wavy enough that every derivative matters.
type hills struct{ high, wide float64 } // mm

func (h hills) At(p Point) surface.Jet {
	k := 1 / h.wide
	sx, cx, sy, cy := math.Sin(k*p[0]), math.Cos(k*p[0]), math.Sin(k*p[1]+0.4), math.Cos(k*p[1]+0.4)
	return surface.Jet{
		Z: h.high * (2 + sx*cy), Zx: h.high * k * cx * cy, Zy: -h.high * k * sx * sy,
		Zxx: -h.high * k * k * sx * cy, Zxy: -h.high * k * k * cx * sy, Zyy: -h.high * k * k * sx * cy,
	}
}

func TestMidOfKnownPlates(t *testing.T) {
	tilt := math.Sqrt(1 + 0.3*0.3 + 0.2*0.2)
	for _, c := range []struct {
		name   string
		plate  Plate
		q      Point
		z      float64    // mm
		n      [3]float64 // unit normal
		source string
	}{
		{"level", Plate{surface.Flat(20), surface.Flat(6)}, Point{3, 4}, 17, [3]float64{0, 0, 1}, "20 − 6/2"},
		{"tilted", Plate{slope{10, 0.3, -0.2}, surface.Flat(4)}, Point{7, -2}, 10 + 2.1 + 0.4 - 2*tilt,
			[3]float64{-0.3 / tilt, 0.2 / tilt, 1 / tilt}, "parallel plane 2 mm below along the normal"},
		{"ball", Plate{ball{300, 250}, surface.Flat(6)}, Point{80, 60}, math.Sqrt(297*297-1e4) - 250,
			[3]float64{80. / 297, 60. / 297, math.Sqrt(297*297-1e4) / 297}, "concentric sphere of radius 300 − 3"},
	} {
		got := c.plate.Mid(c.q)
		for k, want := range [3]float64{c.q[0], c.q[1], c.z} {
			if math.Abs(got.P[k]-want) > 1e-9 {
				t.Errorf("%s: P[%d] = %.10g mm, want %.10g (%s)", c.name, k, got.P[k], want, c.source)
			}
			if math.Abs(got.N[k]-c.n[k]) > 1e-9 {
				t.Errorf("%s: N[%d] = %.10g, want %.10g (%s)", c.name, k, got.N[k], c.n[k], c.source)
			}
		}
	}
}

// TestMidWithChangingThickness checks place and normal for a plate of changing
// thickness against the definition and against differences of the mid-surface.
func TestMidWithChangingThickness(t *testing.T) {
	const step = 1e-4 // mm
	plate := Plate{hills{8, 45}, hills{2.2, 30}}
	for _, q := range []Point{{0, 0}, {31, 17}, {-60, 44}, {100, -80}} {
		n := plate.Mid(q)
		outer := plate.OuterOf(q)
		f, h := plate.Outer.At(outer), plate.Thickness.At(outer).Z
		w := math.Sqrt(1 + f.Zx*f.Zx + f.Zy*f.Zy)
		for k, want := range [3]float64{outer[0] + h/2*f.Zx/w, outer[1] + h/2*f.Zy/w, f.Z - h/2/w} {
			if math.Abs(n.P[k]-want) > 1e-9 {
				t.Errorf("P[%d] at %v = %.10g mm, want %.10g (outer point less half the thickness along the normal)", k, q, n.P[k], want)
			}
		}
		zx := (plate.Mid(Point{q[0] + step, q[1]}).P[2] - plate.Mid(Point{q[0] - step, q[1]}).P[2]) / (2 * step)
		zy := (plate.Mid(Point{q[0], q[1] + step}).P[2] - plate.Mid(Point{q[0], q[1] - step}).P[2]) / (2 * step)
		for k, want := range [3]float64{-zx, -zy, 1} {
			if want /= math.Sqrt(1 + zx*zx + zy*zy); math.Abs(n.N[k]-want) > 1e-6 {
				t.Errorf("N[%d] at %v = %.8f, want %.8f (differences of the mid-surface)", k, q, n.N[k], want)
			}
		}
		if back := plate.FromOuter(outer); math.Abs(back.P[0]-q[0])+math.Abs(back.P[1]-q[1]) > 1e-9 {
			t.Errorf("FromOuter(OuterOf(%v)) = %v, want the place back", q, back.P)
		}
	}
}

// discPlan is a disc of radius r cut into rings of triangles.
func discPlan(r float64, rings int) *Plan {
	p := &Plan{Points: []Point{{0, 0}}}
	const spokes = 48
	for k := 1; k <= rings; k++ {
		for s := range spokes {
			a := 2 * math.Pi * float64(s) / spokes
			p.Points = append(p.Points, Point{r * float64(k) / float64(rings) * math.Cos(a), r * float64(k) / float64(rings) * math.Sin(a)})
		}
	}
	at := func(k, s int) int32 { return int32(1 + (k-1)*spokes + s%spokes) }
	for s := range spokes {
		p.Tris = append(p.Tris, [3]int32{0, at(1, s), at(1, s+1)})
		for k := 1; k < rings; k++ {
			p.Tris = append(p.Tris, [3]int32{at(k, s), at(k+1, s), at(k+1, s+1)}, [3]int32{at(k, s), at(k+1, s+1), at(k, s+1)})
		}
	}
	return p
}

func TestVolumeAndMassOfADome(t *testing.T) {
	const r, h, edge = 300.0, 6.0, 150.0 // mm
	m := Lift(discPlan(edge, 25), Plate{ball{r, 250}, surface.Flat(h)})
	mid := r - h/2
	crown := 2 * math.Pi * mid * (mid - math.Sqrt(mid*mid-edge*edge)) // mm², Archimedes
	want := crown * h * (1 + h*h/(12*mid*mid))                        // shell between concentric spheres
	// The 48-sided rim leaves 0.29 % of the disc out: sin(2π/48)/(2π/48).
	want *= math.Sin(2*math.Pi/48) / (2 * math.Pi / 48)
	if got := m.Volume(); math.Abs(got/want-1) > 1e-3 {
		t.Errorf("volume = %.1f mm³, want %.1f within 0.1 %% (spherical shell)", got, want)
	}
	if got, want := m.Mass(400), m.Volume()*400e-9*1000; math.Abs(got-want) > 1e-9*want {
		t.Errorf("mass = %g g, want %g (volume times 400 kg/m³)", got, want)
	}
}

func TestExtremes(t *testing.T) {
	plate := Plate{ball{300, 250}, slope{5, 0.01, 0}}
	e := plate.Extremes(Lift(discPlan(150, 10), plate))
	outer := 150 * 300 / (300 - e.Thinnest.Value/2) // about: the outer plan lies further out
	for _, c := range []struct {
		name           string
		got, want, tol float64
		source         string
	}{
		{"thinnest, mm", e.Thinnest.Value, 5 - 0.01*outer, 0.02, "plane at the bass edge"},
		{"thickest, mm", e.Thickest.Value, 5 + 0.01*outer, 0.02, "plane at the treble edge"},
		{"thickest at x, mm", e.Thickest.At[0], outer, 1, "treble edge"},
		{"highest, mm", e.Highest.Value, 50, 1e-9, "top of the ball"},
		{"steepest, degrees", e.Steepest.Value, math.Asin(outer/300) * 180 / math.Pi, 0.3, "edge of the ball"},
	} {
		if math.Abs(c.got-c.want) > c.tol {
			t.Errorf("%s = %.4f, want %.4f ± %g (%s)", c.name, c.got, c.want, c.tol, c.source)
		}
	}
}
