package problem

import (
	"math"

	"archload/fem/vec3"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// ellipse returns count points of an ellipse with half axes a and b about c.
func ellipse(c mesh.Point, a, b float64, count int) []mesh.Point {
	pts := make([]mesh.Point, count)
	for i := range pts {
		s, co := math.Sincos(2 * math.Pi * float64(i) / float64(count))
		pts[i] = mesh.Point{c[0] + a*co, c[1] + b*s}
	}
	return pts
}

// Dome is a sphere of radius R, mm, its top at (0, 0, 0).
type Dome struct{ R float64 }

// At returns the height, mm, and its derivatives.
func (d Dome) At(p mesh.Point) surface.Jet {
	x, y := p[0], p[1]
	z := math.Sqrt(d.R*d.R - x*x - y*y)
	return surface.Jet{Z: z - d.R, Zx: -x / z, Zy: -y / z,
		Zxx: -(z*z + x*x) / (z * z * z), Zxy: -x * y / (z * z * z), Zyy: -(z*z + y*y) / (z * z * z)}
}

// triangles meshes an ellipse of 200 x 150 mm with two oval holes and a line,
// and lifts a disc on a dome; areas and volume over the exact ones, and the
// shapes of the triangles.
func triangles() (Readings, error) {
	out := Readings{}
	outline, err := plane.NewCurve(ellipse(mesh.Point{}, 200, 150, 64), nil)
	if err != nil {
		return nil, err
	}
	d := mesh.Domain{Outline: outline, Lines: [][]mesh.Point{{{-40, 110}, {-30, -100}}}}
	out["outline"] = outline.Area() / (math.Pi * 200 * 150)
	area := math.Pi * 200 * 150
	for _, x := range []float64{-100, 100} {
		hole, err := plane.NewCurve(ellipse(mesh.Point{x, -20}, 12, 35, 32), nil)
		if err != nil {
			return nil, err
		}
		d.Holes = append(d.Holes, hole)
		area -= math.Pi * 12 * 35
	}
	plan, err := mesh.Triangulate(d)
	if err != nil {
		return nil, err
	}
	q := plan.Quality()
	out["area"], out["angle"], out["thin share"] = q.Area/area, q.MinAngle, q.ShareBelow25
	return out, out.domeVolume()
}

// domeVolume lifts a disc of radius 100 mm on a dome of radius 300 mm, 5 mm
// thick: the mid-surface is a cap of radius R - h/2 over the disc, and the
// volume between parallel spheres h A (1 + h²/(12 R²)).
func (out Readings) domeVolume() error {
	const r, a, h = 300.0, 100.0, 5.0 // mm
	disc, err := plane.NewCurve(ellipse(mesh.Point{}, a, a, 64), nil)
	if err != nil {
		return err
	}
	plan, err := mesh.Triangulate(mesh.Domain{Outline: disc})
	if err != nil {
		return err
	}
	m := mesh.Lift(plan, mesh.Plate{Outer: Dome{r}, Thickness: surface.Flat(h)})
	mid := r - h/2
	surface := 2 * math.Pi * mid * (mid - math.Sqrt(mid*mid-a*a))
	out["volume"] = m.Volume() / (surface * h * (1 + h*h/(12*mid*mid)))
	worst := 0.0
	for _, n := range m.Nodes {
		worst = max(worst, math.Abs(vec3.Norm(vec3.Add(n.P, [3]float64{0, 0, r}))-mid))
	}
	out["mid-surface"] = worst
	return nil
}

// pillow is the known arch of the contour check: z = 5 + 16 (1 - s)² (1 + 0.3 x/a)
// with s = (x/a)² + (y/b)², level along the outline, its top off the middle.
type pillow struct{ a, b float64 }

// At returns the height and its derivatives.
func (p pillow) At(q mesh.Point) surface.Jet {
	const rise, lean = 16.0, 0.3
	x, y := q[0]/p.a, q[1]/p.b
	g := 1 - x*x - y*y
	t := 1 + lean*x
	return surface.Jet{
		Z:   5 + rise*g*g*t,
		Zx:  rise * (-4*x*g*t + lean*g*g) / p.a,
		Zy:  rise * (-4 * y * g * t) / p.b,
		Zxx: rise * ((8*x*x-4*g)*t - 8*lean*x*g) / (p.a * p.a),
		Zxy: rise * (8*x*y*t - 4*lean*y*g) / (p.a * p.b),
		Zyy: rise * (8*y*y - 4*g) * t / (p.b * p.b),
	}
}

// contours reads contour lines off a known arch every 3 mm, points every 5 mm
// rounded to 0.1 mm, as a maker would, fits a surface to them and compares: mm,
// degrees.
func contours() (Readings, error) {
	arch := pillow{150, 200}
	outline, err := plane.NewCurve(ellipse(mesh.Point{}, 150, 200, 64), nil)
	if err != nil {
		return nil, err
	}
	var levels []float64
	for z := 6.0; z < 21; z += 3 {
		levels = append(levels, z)
	}
	lines, err := surface.Contours(arch, outline, levels, surface.ContourOptions{Round: 0.1})
	if err != nil {
		return nil, err
	}
	rim := 5.0
	top := mesh.Point{21.2, 0}
	lines = append(lines, surface.ContourLine{ID: "top", Height: math.Round(10*arch.At(top).Z) / 10, Points: []mesh.Point{top}})
	fit, rep, err := surface.Fit(surface.Data{Outline: outline, Lines: lines, Rim: &rim})
	if err != nil {
		return nil, err
	}
	out := Readings{"height": 0, "slope": 0, "data": 0}
	for _, c := range rep.Classes {
		out["data"] = max(out["data"], math.Abs(c.Worst.Error))
	}
	for x := -150.0; x <= 150; x += 5 {
		for y := -200.0; y <= 200; y += 5 {
			p := mesh.Point{x, y}
			if !outline.Contains(p) || outline.Distance(p) < 10 {
				continue
			}
			want, got := arch.At(p), fit.At(p)
			out["height"] = max(out["height"], math.Abs(got.Z-want.Z))
			out["slope"] = max(out["slope"], math.Atan(math.Hypot(got.Zx-want.Zx, got.Zy-want.Zy))/degree)
		}
	}
	return out, nil
}

// discPlate is a circular plate of radius 100, t 0.1, nu 0.3, on the program's
// own mesh with n edges across, clamped or supported, under a uniform load or a
// force in the middle: w D/(q a⁴) and w D/(P a²).
func discPlate(clamped bool) func(d Density) (Readings, error) {
	return func(d Density) (Readings, error) {
		const a = 100.0
		plan, err := discPlan(d, a)
		if err != nil {
			return nil, err
		}
		of := unitPlate(0.1, 0.3)
		p := &panel{}
		for _, q := range plan.Points {
			p.Nodes = append(p.Nodes, mesh.Node{P: [3]float64{q[0], q[1], 0}, H: of.h})
		}
		p.make(plan.Tris, of)
		p.hold("xyZ", everywhere)
		what := "z"
		if clamped {
			what = "zXY"
		}
		rim := map[[3]float64]bool{}
		for _, n := range plan.Rim {
			rim[p.Nodes[n].P] = true
		}
		p.hold(what, func(x [3]float64) bool { return rim[x] })
		if err := p.build(); err != nil {
			return nil, err
		}
		return p.discReadings(a)
	}
}

func (p *panel) discReadings(a float64) (Readings, error) {
	middle, ok := p.inPlan(0, 0)
	if !ok {
		return nil, errOddMesh
	}
	p.spread(uniform(0, 0, -1/(a*a*a*a)))
	even, err := p.solve()
	if err != nil {
		return nil, err
	}
	clear(p.load)
	p.press(middle, [3]float64{0, 0, -1 / (a * a)})
	one, err := p.solve()
	if err != nil {
		return nil, err
	}
	return Readings{"sink": -even.moveAt(middle)[2], "point": -one.moveAt(middle)[2]}, nil
}

// discPlan is the program's own mesh of a disc of radius a, with n edges across.
func discPlan(d Density, a float64) (*mesh.Plan, error) {
	disc, err := plane.NewCurve(ellipse(mesh.Point{}, a, a, 128), nil)
	if err != nil {
		return nil, err
	}
	return mesh.Triangulate(mesh.Domain{Outline: disc, Size: 2 * a / float64(d.N)})
}
