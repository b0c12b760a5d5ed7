package figure

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"testing"

	"archload/mesh"
	"archload/viz/canvas"
)

// samples is a folder that receives the pictures of the tests; empty: none.
var samples = flag.String("samples", "", "folder for the pictures drawn by the tests")

// keep writes a picture into the samples folder, if one was named.
func keep(t *testing.T, p *canvas.Picture, name string) {
	t.Helper()
	if *samples == "" {
		return
	}
	for _, format := range canvas.Formats() {
		f, err := os.Create(filepath.Join(*samples, name+"."+format))
		if err != nil {
			t.Fatal(err)
		}
		if err := p.Write(f, format, 0); err != nil {
			t.Fatal(err)
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// guitarRadius is the distance (mm) from the middle to the edge of an
// invented guitar-like plate in direction a (radians from treble).
func guitarRadius(a float64) float64 {
	s, c := math.Sincos(a)
	egg := 1 / math.Sqrt(c*c/(185*185)+s*s/(245*245))
	waist := 1 - 0.22*math.Exp(-math.Pow((math.Abs(s)-0.13)/0.24, 2))
	return egg * waist * (1 - 0.07*s + 0.03*math.Cos(2*a+1.2*s))
}

// guitarOutline is the plate's edge, anticlockwise, n points.
func guitarOutline(n int) []mesh.Point {
	l := make([]mesh.Point, n)
	for i := range l {
		a := 2 * math.Pi * float64(i) / float64(n)
		s, c := math.Sincos(a)
		l[i] = mesh.Point{guitarRadius(a) * c, guitarRadius(a) * s}
	}
	return l
}

// guitarPlan is a plan of about 3·rings² nodes: rings of 6, 12, 18 ... nodes,
// shifted by a fixed irregular amount.
func guitarPlan(rings int) *mesh.Plan {
	p := &mesh.Plan{Points: []mesh.Point{{0, 0}}}
	first := []int{0}
	seed := uint32(7)
	jitter := func() float64 {
		seed = seed*1664525 + 1013904223
		return (float64(seed>>8)/float64(1<<24) - 0.5) * 0.5
	}
	for k := 1; k <= rings; k++ {
		first = append(first, len(p.Points))
		for i := 0; i < 6*k; i++ {
			a, r := float64(i), float64(k)
			if k < rings {
				a, r = a+jitter(), r+jitter()
			}
			a *= 2 * math.Pi / float64(6*k)
			s, c := math.Sincos(a)
			q := r / float64(rings) * guitarRadius(a)
			p.Points = append(p.Points, mesh.Point{q * c, q * s})
			if k == rings {
				p.Rim = append(p.Rim, int32(len(p.Points)-1))
			}
		}
	}
	for k := 1; k <= rings; k++ {
		ringTriangles(p, first, k)
	}
	return p
}

// ringTriangles joins ring k-1 to ring k.
func ringTriangles(p *mesh.Plan, first []int, k int) {
	node := func(ring, i int) int32 {
		if ring == 0 {
			return 0
		}
		return int32(first[ring] + i%(6*ring))
	}
	for side := 0; side < 6; side++ {
		for i := 0; i < k; i++ {
			out, in := side*k+i, side*(k-1)+i
			p.Tris = append(p.Tris, [3]int32{node(k-1, in), node(k, out), node(k, out+1)})
			if i < k-1 {
				p.Tris = append(p.Tris, [3]int32{node(k-1, in), node(k, out+1), node(k-1, in+1)})
			}
		}
	}
}

// bump is a smooth hill of height 1 about (x, y).
func bump(q mesh.Point, x, y, wx, wy float64) float64 {
	return math.Exp(-math.Pow((q[0]-x)/wx, 2) - math.Pow((q[1]-y)/wy, 2))
}

// edgeShare is 0 at the middle and 1 at the edge.
func edgeShare(q mesh.Point) float64 {
	return math.Hypot(q[0], q[1]) / guitarRadius(math.Atan2(q[1], q[0]))
}

// demoSink is a made-up sink, mm: two feet, a slight rise near the edge.
func demoSink(q mesh.Point) float64 {
	r := edgeShare(q)
	feet := 0.30*bump(q, -43, 0, 70, 80) + 0.34*bump(q, 43, 0, 66, 74) + 0.12*bump(q, 0, -40, 120, 130)
	return feet*(1-math.Pow(r, 3)) - 0.03*math.Sin(math.Pi*r)*bump(q, 0, 190, 200, 90)
}

// demoStress is a made-up stress along the grain, MPa.
func demoStress(q mesh.Point) float64 {
	return -6.2*bump(q, -43, 0, 40, 60) - 6.9*bump(q, 43, 0, 36, 60) + 3.4*bump(q, 0, 150, 130, 60) + 2.8*bump(q, 0, -150, 150, 60) + 0.4
}

// nodal samples a function at the nodes.
func nodal(p *mesh.Plan, f func(mesh.Point) float64) []float64 {
	v := make([]float64, len(p.Points))
	for i, q := range p.Points {
		v[i] = f(q)
	}
	return v
}

// slot is an f-shaped opening with round eyes; side -1 bass, +1 treble.
func slot(side float64) []mesh.Point {
	var l []mesh.Point
	spine := func(u float64) (x, y, half float64) { // u from -1 (tail) to 1 (neck)
		half = 3.2 + 5*math.Exp(-math.Pow((math.Abs(u)-0.88)/0.10, 2))
		return 92 + 9*math.Sin(2.4*u), 8 + 66*u, half
	}
	for i := 0; i <= 40; i++ {
		x, y, h := spine(-1 + float64(i)/20)
		l = append(l, mesh.Point{side * (x + h), y})
	}
	for i := 40; i >= 0; i-- {
		x, y, h := spine(-1 + float64(i)/20)
		l = append(l, mesh.Point{side * (x - h), y})
	}
	return l
}

// foot is a rectangle in plan.
func foot(x0, x1, half float64) []mesh.Point {
	return []mesh.Point{{x0, -half}, {x1, -half}, {x1, half}, {x0, half}}
}

func demoDrawing() Drawing {
	bench := 0.31
	return Drawing{
		Outline: guitarOutline(360),
		Holes:   [][]mesh.Point{slot(-1), slot(1)},
		Braces: []Strip{
			{"bass bar", []mesh.Point{{-36, 170}, {-44, -175}}, []float64{3.5}},
			{"treble bar", []mesh.Point{{36, 170}, {44, -175}}, []float64{3.5}},
		},
		Feet: [][]mesh.Point{foot(-66, -20, 6.5), foot(20, 66, 6.5)},
		Gauges: []Mark{
			{Name: "over the bass foot", At: mesh.Point{-43, 0}, Value: 0.334, Unit: "mm", Measured: &bench},
			{Name: "over the treble foot", At: mesh.Point{43, 0}, Value: 0.372, Unit: "mm"},
			{Name: "apex, on the centre line", At: mesh.Point{0, 10}, Value: 0.298, Unit: "mm"},
			{Name: "neck block", At: mesh.Point{0, 214}, Value: -0.004, Unit: "mm"},
			{Name: "strength used, inner surface", At: mesh.Point{58, -12}, Value: 0.41, Worst: true},
		},
	}
}

func demoCaption() canvas.Caption {
	return canvas.Caption{
		Title:    "Course guitar, apex 22 mm to the treble",
		Subtitle: "Sink of the top at full string load: 148 N down, six strings",
		Facts: []string{"top engelmann-spruce, carved, quarter-cut, 5.0 mm", "bridge ebony, one piece, relief 0.12 mm",
			"foot holds by grip", "rim elastic, sides 80 mm", "indication for seasoned wood"},
		Warnings: []string{"the foot must drag 0.87 times as hard as it presses, and wood gives 0.3 to 0.5, so that parts of it will slide where it is least loaded"},
		Footer:   "archload  ·  equilibrium error 2e-11  ·  estimated error of the bridge sink 0.8 %",
	}
}

func demoPlanInput(p *mesh.Plan) PlanInput {
	return PlanInput{
		Caption: demoCaption(), Plan: p, Drawing: demoDrawing(),
		Field: &Field{Name: "Sink of the outer surface", Unit: "mm", Nodal: nodal(p, demoSink)},
	}
}
