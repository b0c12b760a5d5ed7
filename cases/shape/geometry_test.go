package shape

import (
	"math"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// TestCurvature looks at a sphere off its pole, where slopes matter: both
// principal curvatures are 1/R everywhere.
func TestCurvature(t *testing.T) {
	const radius = 80.0
	for _, p := range []mesh.Point{{0, 0}, {30, 0}, {-20, 50}} {
		x, y := p[0], p[1]
		z := math.Sqrt(radius*radius - x*x - y*y)
		j := surface.Jet{
			Z: z, Zx: -x / z, Zy: -y / z,
			Zxx: -(z*z + x*x) / (z * z * z), Zxy: -x * y / (z * z * z), Zyy: -(z*z + y*y) / (z * z * z),
		}
		if got, want := curvature(j), 1/radius; !casetest.Near(got, want, 1e-9) {
			t.Errorf("curvature of a sphere at %v = %.9f /mm, want %.9f", p, got, want)
		}
	}
	saddle := surface.Jet{Zxx: 0.02, Zyy: -0.05}
	if got, want := curvature(saddle), 0.05; !casetest.Near(got, want, 1e-15) {
		t.Errorf("curvature of a level saddle = %g /mm, want the greater of 0.02 and 0.05", got)
	}
}

// bowl is the surface z = x²/2r, of curvature 1/r at x = 0.
type bowl float64

func (r bowl) At(p mesh.Point) surface.Jet {
	return surface.Jet{Z: p[0] * p[0] / (2 * float64(r)), Zx: p[0] / float64(r), Zxx: 1 / float64(r)}
}

func TestBendMap(t *testing.T) {
	square, err := plane.NewCurve([]mesh.Point{{-30, -30}, {30, -30}, {30, 30}, {-30, 30}}, []bool{true, true, true, true})
	if err != nil {
		t.Fatal(err)
	}
	const radius = 1e4
	m := newBendMap(square, bowl(radius))
	for _, p := range []mesh.Point{{0, 0}, {12.3, -7.7}, {29, 29}} {
		if got := m.mean(p); !casetest.Near(got, 1/radius, 1e-3/radius) {
			t.Errorf("mean curvature at %v = %g /mm, want %g", p, got, 1/radius)
		}
	}
}

func TestCircumradius(t *testing.T) {
	on := func(deg float64) mesh.Point {
		s, c := math.Sincos(deg * math.Pi / 180)
		return mesh.Point{3 + 7*c, -2 + 7*s}
	}
	if got := circumradius(on(10), on(50), on(200)); !casetest.Near(got, 7, 1e-12) {
		t.Errorf("circumradius = %g mm, want 7", got)
	}
	if got := circumradius(mesh.Point{0, 0}, mesh.Point{1, 1}, mesh.Point{2, 2}); !math.IsInf(got, 1) {
		t.Errorf("circumradius of a line = %g mm, want +Inf", got)
	}
}

// TestHoleFine wants 0.4 of the eye's radius at the eyes of a slot and the
// usual size along its straight edges.
func TestHoleFine(t *testing.T) {
	var pts []mesh.Point
	for k := range 19 { // two half circles of radius 5, 60 mm apart
		s, c := math.Sincos(float64(k) * math.Pi / 18)
		pts = append(pts, mesh.Point{5 * c, 30 + 5*s})
	}
	for k := range 19 {
		s, c := math.Sincos(math.Pi + float64(k)*math.Pi/18)
		pts = append(pts, mesh.Point{5 * c, -30 + 5*s})
	}
	corner := make([]bool, len(pts))
	for _, k := range []int{0, 18, 19, 37} {
		corner[k] = true
	}
	slot, err := plane.NewCurve(pts, corner)
	if err != nil {
		t.Fatal(err)
	}
	sizeAt := func(p mesh.Point) float64 {
		best, size := math.Inf(1), 0.0
		for _, f := range holeFine(slot, cases.Mesh{Size: 6, Refine: 1}) {
			for _, q := range f.Along {
				if d := math.Hypot(q[0]-p[0], q[1]-p[1]); d < best {
					best, size = d, f.Size
				}
			}
		}
		return size
	}
	for _, c := range []struct {
		at   mesh.Point
		want float64 // mm
	}{{mesh.Point{0, 35}, 2}, {mesh.Point{0, -35}, 2}, {mesh.Point{5, 0}, 3}, {mesh.Point{-5, 10}, 3}} {
		if got := sizeAt(c.at); got != c.want {
			t.Errorf("edge size at %v = %g mm, want %g", c.at, got, c.want)
		}
	}
}

// mustShape makes the geometry of a case without faults.
func mustShape(t *testing.T, text string) *Geometry {
	t.Helper()
	c := casetest.Load(t, casetest.Files("a.toml", text), "a.toml")
	g, err := NewGeometry(c)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func TestGeometry(t *testing.T) {
	text := casetest.TopText + `[[plate.hole]]
at = [60, 120]
size = [30, 30]
mirrored = true
` + casetest.RestText + `foot = [{ from = -60, to = -40 }, { from = 40, to = 60 }]
[[brace]]
line = [[-30, 60], [-30, -60]]
width = 7
height = 9
[[support]]
at = [0, -200]
[[support]]
line = [[-20, -180], [20, -180]]
`
	notes := mustShape(t, text)
	d, plate := notes.Domain(), notes.Plate
	if len(d.Holes) != 2 || len(d.Lines) != 2 {
		t.Fatalf("%d holes, %d lines, want 2 (one mirrored) and 2 (a brace, a rail)", len(d.Holes), len(d.Lines))
	}
	if got, want := d.Holes[0].Area(), math.Pi*15*15; !casetest.Near(got, want, 1e-4*want) {
		t.Errorf("area of the round hole = %.3f mm², want %.3f", got, want)
	}
	if lo, hi := d.Holes[1].Bounds(); !casetest.Near(lo[0], -75, 0.01) || !casetest.Near(hi[0], -45, 0.01) {
		t.Errorf("mirrored hole from x = %g to %g mm, want -75 to -45", lo[0], hi[0])
	}
	if d.Lines[0][0] != (mesh.Point{-30, 60}) || d.Lines[1][0] != (mesh.Point{-20, -180}) {
		t.Errorf("lines begin at %v and %v, want the brace first, then the rail", d.Lines[0][0], d.Lines[1][0])
	}
	if notes.RimHeight != 5 || notes.Arch != nil || notes.Thickness != nil {
		t.Errorf("rim %g mm, fits %v %v, want 5 mm (the thickness) and none", notes.RimHeight, notes.Arch, notes.Thickness)
	}
	if got := plate.Outer.At(mesh.Point{0, 0}).Z; !casetest.Near(got, 20, 0.05) {
		t.Errorf("outer surface at the apex %.3f mm, want 20", got)
	}
	plan, err := mesh.Triangulate(d)
	if err != nil {
		t.Fatal(err)
	}
	if longest := longestNear(plan, mesh.Point{-50, 0}, 8); longest > 1.5*FootEdge {
		t.Errorf("longest edge under the foot %.2f mm, want at most 1.5 x %g", longest, FootEdge)
	}
}

// TestRefine wants mesh.size and mesh.refine to scale every wanted length.
func TestRefine(t *testing.T) {
	plain := mustShape(t, casetest.TopText+casetest.RestText).Domain()
	finer := mustShape(t, casetest.TopText+casetest.RestText+"[mesh]\nsize = 4\nrefine = 2\n").Domain()
	if plain.Size != 6 || finer.Size != 2 {
		t.Errorf("sizes %g and %g mm, want 6 (the default) and 4/2", plain.Size, finer.Size)
	}
	if got, want := finer.Fine[0].Size, FootEdge/2; got != want {
		t.Errorf("size under the foot %g mm, want %g", got, want)
	}
}

// longestNear is the longest triangle edge with both ends near a place, mm.
func longestNear(plan *mesh.Plan, at mesh.Point, within float64) float64 {
	longest := 0.0
	for _, tri := range plan.Tris {
		for k := range 3 {
			a, b := plan.Points[tri[k]], plan.Points[tri[(k+1)%3]]
			if math.Hypot(a[0]-at[0], a[1]-at[1]) < within && math.Hypot(b[0]-at[0], b[1]-at[1]) < within {
				longest = max(longest, math.Hypot(a[0]-b[0], a[1]-b[1]))
			}
		}
	}
	return longest
}

// TestFlatPlate wants a formula that rises nowhere to be flat.
func TestFlatPlate(t *testing.T) {
	plate := mustShape(t, strings.Replace(casetest.TopText, "height = 20", "height = 5", 1)+casetest.RestText).Plate
	if got := plate.Outer; got != surface.Flat(5) {
		t.Errorf("outer surface %v, want flat at 5 mm", got)
	}
}

// TestThicknessFromTable fits a graduation that is 4 mm everywhere and takes
// the rim height from it.
func TestThicknessFromTable(t *testing.T) {
	rows := "x_mm,y_mm,height_mm\n"
	for x := -120; x <= 120; x += 40 {
		for y := -200; y <= 200; y += 40 {
			rows += tree.WithUnit(float64(x), "") + "," + tree.WithUnit(float64(y), "") + ",4\n"
		}
	}
	text := strings.Replace(casetest.TopText, "thickness = 5", `thickness = { points = "t.csv" }`, 1) + casetest.RestText
	c := casetest.Load(t, casetest.Files("a.toml", text, "t.csv", rows), "a.toml")
	notes, err := NewGeometry(c)
	if err != nil {
		t.Fatal(err)
	}
	if got := notes.Plate.Thickness.At(mesh.Point{10, 20}).Z; !casetest.Near(got, 4, 1e-3) || !casetest.Near(notes.RimHeight, 4, 1e-2) {
		t.Errorf("thickness %.4f mm, rim height %.4f mm, want 4 and 4", got, notes.RimHeight)
	}
	if notes.Thickness == nil || notes.Thickness.Classes[0].Count != 77 {
		t.Errorf("thickness report %+v, want one of 77 points", notes.Thickness)
	}
}

// TestScaledSurface: a graduation is scaled as a whole.
func TestScaledSurface(t *testing.T) {
	tilted := tiltedPlane{}
	plain, thick := scaledSurface{tilted, 1}, scaledSurface{tilted, 1.25}
	for _, p := range [][2]float64{{0, 0}, {40, -60}} {
		a, b := plain.At(p), thick.At(p)
		for k, v := range [][2]float64{{a.Z, b.Z}, {a.Zx, b.Zx}, {a.Zy, b.Zy}, {a.Zxx, b.Zxx}, {a.Zxy, b.Zxy}, {a.Zyy, b.Zyy}} {
			if math.Abs(v[1]-1.25*v[0]) > 1e-15 {
				t.Errorf("at %v: term %d of the scaled surface is %g, want 1.25 times %g", p, k, v[1], v[0])
			}
		}
	}
}

// tiltedPlane is a surface whose six terms are all different.
type tiltedPlane struct{}

func (tiltedPlane) At(p mesh.Point) surface.Jet {
	return surface.Jet{Z: 4 + 0.01*p[0], Zx: 0.01, Zy: 0.02, Zxx: 0.003, Zxy: 0.004, Zyy: 0.005}
}
