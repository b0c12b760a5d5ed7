package figure

import (
	"image/color"
	"math"
	"strings"
	"testing"

	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/scale"
)

// pixel returns the colour at a place given in points from the left and top.
func pixel(p *canvas.Picture, dpi int, places [][2]float64) []color.NRGBA {
	img := p.Image(dpi)
	out := make([]color.NRGBA, len(places))
	for i, q := range places {
		k := float64(dpi) / 72
		out[i] = color.NRGBAModel.Convert(img.At(int(q[0]*k), int(q[1]*k))).(color.NRGBA)
	}
	return out
}

// TestPixelsTellTheValue looks at the picture at many places of the plate:
// the pixel must have the colour of its value, and so must the legend.
func TestPixelsTellTheValue(t *testing.T) {
	p := guitarPlan(40)
	for name, f := range map[string]Field{
		"sink":   {Name: "sink", Unit: "mm", Nodal: nodal(p, demoSink)},
		"stress": {Name: "stress", Unit: "MPa", Nodal: nodal(p, demoStress), Kind: scale.Signed},
		"ranged": {Name: "sink", Unit: "mm", Nodal: nodal(p, demoSink), Range: &[2]float64{0, 0.3}},
	} {
		pic := mustPlan(t, PlanInput{Plan: p, Field: &f, Drawing: Drawing{Outline: guitarOutline(360)}})
		s := f.Scale()
		var places, legend [][2]float64
		var want []color.NRGBA
		for i, q := range p.Points {
			v := f.Nodal[i]
			if edgeShare(q) > 0.95 || math.Abs(v-s.Step*math.Round(v/s.Step)) < 0.3*s.Step {
				continue // too near a line for one pixel to decide
			}
			x, y := pic.Where(q)
			lx, ly := pic.LegendAt(v)
			if pic.v.hatched(s.Band(v)) {
				if math.Abs(pic.offHatch(x, y)) < 0.25 {
					continue // on a line of the hatch
				}
				lx += (0.5 - pic.offHatch(lx, ly)) * sideStep
			}
			places, legend, want = append(places, [2]float64{x, y}), append(legend, [2]float64{lx, ly}), append(want, s.Color(v))
		}
		if len(places) < 500 {
			t.Fatalf("%s: only %d places to look at", name, len(places))
		}
		got, shown := pixel(pic.Picture, 150, places), pixel(pic.Picture, 150, legend)
		wrong := 0
		for i := range got {
			if got[i] != want[i] {
				wrong++
			}
			if shown[i] != want[i] {
				t.Fatalf("%s: legend shows %v, want %v", name, shown[i], want[i])
			}
		}
		if share := float64(wrong) / float64(len(got)); share > 0.02 { // names of lines cover a few
			t.Errorf("%s: %d of %d places have another colour than their value", name, wrong, len(got))
		}
	}
}

// shownPlan is a plan picture that tells where things lie on its page.
type shownPlan struct {
	*canvas.Picture
	v *planView
}

// Where is the place of a point of the plate: points from the left edge and
// from the top edge.
func (p shownPlan) Where(q mesh.Point) (left, top float64) {
	at := p.v.lay.frame.At(q)
	return at.X, p.Height - at.Y
}

// offHatch is how far a place lies from the nearest line of the hatch, from -0.5 to 0.5 of
// their distance.
func (p shownPlan) offHatch(left, top float64) float64 {
	u := (left + p.Height - top) / sideStep
	return u - math.Round(u)
}

// LegendAt is a place inside the legend's patch for the value v.
func (p shownPlan) LegendAt(v float64) (left, top float64) {
	c := p.v.bar.patch(p.v.bar.scale.Band(v))
	return (c.X0 + c.X1) / 2, p.Height - (c.Y0+c.Y1)/2
}

func mustPlan(t *testing.T, in PlanInput) shownPlan {
	t.Helper()
	v, err := newPlanView(in)
	if err != nil {
		t.Fatal(err)
	}
	return shownPlan{canvas.NewPicture(planWidth, v.height, "", v.draw), v}
}

// TestOrientation: neck up, treble right.
func TestOrientation(t *testing.T) {
	pic := mustPlan(t, demoPlanInput(guitarPlan(6)))
	x0, y0 := pic.Where(mesh.Point{0, 0})
	x1, y1 := pic.Where(mesh.Point{50, 100})
	if x1 <= x0 || y1 >= y0 {
		t.Errorf("from the origin, treble and neck lie %g right and %g down; want right and up", x1-x0, y1-y0)
	}
	if math.Abs((y0-y1)-2*(x1-x0)) > 1e-9 {
		t.Errorf("50 mm across is %g points and 100 mm along %g: not one scale", x1-x0, y0-y1)
	}
}

func TestHolesAreWhite(t *testing.T) {
	pic := mustPlan(t, demoPlanInput(guitarPlan(20)))
	x, y := pic.Where(mesh.Point{92, 8})
	if got := pixel(pic.Picture, 150, [][2]float64{{x, y}})[0]; got != canvas.White() {
		t.Errorf("colour in the treble sound hole = %v, want white", got)
	}
}

func TestNoValueIsGrey(t *testing.T) {
	p := guitarPlan(20)
	v := nodal(p, demoSink)
	for i, q := range p.Points {
		if q[1] < -60 {
			v[i] = math.NaN()
		}
	}
	pic := mustPlan(t, PlanInput{Plan: p, Field: &Field{Name: "sink", Unit: "mm", Nodal: v}, Drawing: Drawing{Outline: guitarOutline(360)}})
	keep(t, pic.Picture, "plan-no-value")
	var places [][2]float64
	for y := -180.0; y < -100; y += 2 {
		a, b := pic.Where(mesh.Point{5, y})
		places = append(places, [2]float64{a, b})
	}
	grey := 0
	for _, c := range pixel(pic.Picture, 150, places) {
		if c == scale.NoValue() {
			grey++
		}
	}
	if grey < 15 { // the rest is hatching
		t.Errorf("%d of 40 places without a value are grey, want at least 15", grey)
	}
}

func TestPlanErrors(t *testing.T) {
	p := guitarPlan(3)
	n, m := len(p.Points), len(p.Tris)
	for _, c := range []struct {
		name string
		in   PlanInput
		want string
	}{
		{"nothing", PlanInput{}, "outline"},
		{"no plan", PlanInput{Field: &Field{Name: "sink", Nodal: make([]float64, 3)}}, "plan with triangles"},
		{"no values", PlanInput{Plan: p, Field: &Field{Name: "sink"}}, "no values"},
		{"few values", PlanInput{Plan: p, Field: &Field{Name: "sink", Nodal: make([]float64, 3)}}, "3 values for 37 nodes"},
		{"few triangle values", PlanInput{Plan: p, Field: &Field{Name: "q", PerTriangle: make([]float64, 3)}}, "3 values for 54 triangles"},
		{"both", PlanInput{Plan: p, Field: &Field{Name: "q", Nodal: make([]float64, n), PerTriangle: make([]float64, m)}}, "one kind"},
		{"flat outline", PlanInput{Drawing: Drawing{Outline: []mesh.Point{{0, 0}, {1, 0}}}}, "outline"},
		{"node out of range", PlanInput{Plan: &mesh.Plan{Points: p.Points, Tris: [][3]int32{{0, 1, 99}}},
			Field: &Field{Name: "q", Nodal: make([]float64, n)}}, "node 99"},
	} {
		_, err := PlanView(c.in)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", c.name, err, c.want)
		}
	}
}

func BenchmarkPlanView(b *testing.B) {
	p := guitarPlan(52) // 8269 nodes, 16224 triangles
	in := demoPlanInput(p)
	b.ReportMetric(float64(len(p.Points)), "nodes")
	for _, format := range canvas.Formats() {
		b.Run(format, func(b *testing.B) {
			for b.Loop() {
				pic, err := PlanView(in)
				if err != nil {
					b.Fatal(err)
				}
				if err := pic.Write(discard{}, format, 150); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

type discard struct{}

func (discard) Write(b []byte) (int, error) { return len(b), nil }
