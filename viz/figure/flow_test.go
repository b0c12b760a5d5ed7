package figure

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/scale"
)

// demoHold is a hold that is strongest at neck and tail and pulls down at the
// sides.
func demoHold() *RimHold {
	h := &RimHold{Neck: 20, Tail: 30, Bass: 26, Treble: 24, Load: 100}
	for i, q := range guitarOutline(180) {
		a := 2 * math.Pi * float64(i) / 180
		b := EdgeForce{At: q, PerMM: 0.1 - 0.14*math.Cos(2*a), Sector: "bass"}
		if math.Cos(a) > 0 {
			b.Sector = "treble"
		}
		h.Bars = append(h.Bars, b)
	}
	return h
}

func demoFootPressure(feet int) FootPressureInput {
	in := FootPressureInput{Caption: demoCaption(), Limit: 3, Names: []string{"bass foot", "treble foot"}[:feet]}
	for i := range feet {
		for x := -60.0 + 80*float64(i); x < -20+80*float64(i); x += 2 {
			for y := -4.5; y < 6; y += 3 {
				in.Cells = append(in.Cells, FootCell{Foot: i, X: x + 1, Y: y, DX: 2, DY: 3, Pressure: math.Max(0, 0.01*(x+60)-0.05*y-0.1)})
			}
			in.Means = append(in.Means, FootMean{Foot: i, X: x + 1, Pressure: 0.01 * (x + 60)})
		}
	}
	return in
}

// addFlow adds the pictures of the load flow, the edge and the foot.
func addFlow(out map[string]func(*testing.T) *canvas.Picture) {
	p := guitarPlan(24)
	d := demoDrawing()
	d.Flow = [][]mesh.Point{{{-40, 10}, {-60, 90}, {-80, 160}}, {{-40, 10}, {-62, 90}, {-84, 160}}, {{40, -10}, {80, -120}}}
	d.FlowNote = "line of force: each carries 3.90 N, 2.5 % of the load"
	d.Rim = &RimHold{Neck: 14.5, Tail: 28.4, Bass: 56.5, Treble: -56.4, Load: 155.9}
	d.Gauges = append(d.Gauges, Mark{Name: "post holds up", At: mesh.Point{44, -20}, Value: 63.2, Unit: "N", Post: true})
	field := &Field{Name: "vertical force through plate and braces", Unit: "N/mm", Nodal: nodal(p, demoSink), Plain: true, Range: &[2]float64{0, 0.2}}
	rim := demoDrawing()
	rim.Gauges, rim.Rim = nil, demoHold()
	out["load-flow"] = made(PlanView(PlanInput{Caption: demoCaption(), Plan: p, Field: field, Drawing: d}))
	out["rim-reaction"] = made(PlanView(PlanInput{Caption: demoCaption(), Drawing: rim}))
	out["foot-pressure"] = made(FootPressure(demoFootPressure(1)))
	out["foot-pressure-two"] = made(FootPressure(demoFootPressure(2)))
}

// TestRimHoldWidths: at a place of the edge the band is as wide as its hold
// over the greatest, blue where the edge holds up, rust where it holds down.
func TestRimHoldWidths(t *testing.T) {
	h := demoHold()
	pic := mustPlan(t, PlanInput{Drawing: Drawing{Outline: guitarOutline(360), Rim: h}})
	most := h.greatest()
	if math.Abs(most-0.24) > 1e-6 {
		t.Fatalf("greatest hold %g N/mm, want 0.24", most)
	}
	bare := canvas.Wood()
	for _, i := range []int{0, 45, 90, 135} { // treble, neck, bass, tail
		left, top := pic.Where(h.Bars[i].At)
		in := mesh.Point{-h.Bars[i].At[0], -h.Bars[i].At[1]}
		l := math.Hypot(in[0], in[1])
		w := longestBar * math.Abs(h.Bars[i].PerMM) / most
		near := [2]float64{left + 0.6*w*in[0]/l, top - 0.6*w*in[1]/l}
		far := [2]float64{left + (1.25*w+4)*in[0]/l, top - (1.25*w+4)*in[1]/l}
		got := pixel(pic.Picture, 150, [][2]float64{near, far})
		blue := int(got[0].B)-int(bare.B) > int(got[0].R)-int(bare.R)
		if got[0] == bare || blue != (h.Bars[i].PerMM > 0) {
			t.Errorf("bar %d of %.2f N/mm: colour %v inside its band, want blue for up, rust for down", i, h.Bars[i].PerMM, got[0])
		}
		if got[1] != bare {
			t.Errorf("bar %d: colour %v beyond its band, want bare wood", i, got[1])
		}
	}
}

func TestRimWords(t *testing.T) {
	pic := mustPlan(t, PlanInput{Drawing: Drawing{Outline: guitarOutline(90), Rim: demoHold()}})
	var b bytes.Buffer
	if err := pic.Write(&b, "svg", 0); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"neck: 20.0 N, 20 %", "tail: 30.0 N, 30 %", "bass side: 26.0 N, 26 %", "treble side: 24.0 N, 24 %", "widest: 0.24 N/mm"} {
		if !strings.Contains(b.String(), strings.Fields(want)[0]) || !strings.Contains(b.String(), want) {
			t.Errorf("the picture does not say %q", want)
		}
	}
}

// TestFootPressureColors: a cell has its band's colour, one without contact is
// white.
func TestFootPressureColors(t *testing.T) {
	in := demoFootPressure(1)
	p := made(FootPressure(in))(t)
	most, white := 0.0, 0
	for _, c := range in.Cells {
		most = math.Max(most, c.Pressure)
		if c.Pressure == 0 {
			white++
		}
	}
	img := p.Image(72)
	count := map[[3]uint32]int{}
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			r, g, b, _ := img.At(x, y).RGBA()
			count[[3]uint32{r >> 8, g >> 8, b >> 8}]++
		}
	}
	s := scale.New(0, most, scale.Counting)
	pixels := func(v float64) int {
		c := s.Color(v)
		return count[[3]uint32{uint32(c.R), uint32(c.G), uint32(c.B)}]
	}
	cell := 40.0 / 20 * 10 // points across a cell of this page, roughly, times its height
	if n := float64(count[[3]uint32{255, 255, 255}]); white == 0 || n < cell*float64(white) {
		t.Errorf("%d cells without contact fill %.0f white pixels", white, n)
	}
	if pixels(most) < 100 || pixels(most/2) < 100 {
		t.Errorf("%d pixels in the colour of the greatest pressure, %d of half of it, want 100 each", pixels(most), pixels(most/2))
	}
	if _, err := FootPressure(FootPressureInput{}); err == nil {
		t.Error("no contact points: no error")
	}
}

func TestSmooth(t *testing.T) {
	straight := Smoothed([][2]float64{{0, 0}, {3, 4}, {30, 40}})
	for _, p := range straight {
		if math.Abs(p[1]*3-p[0]*4) > 1e-9 {
			t.Errorf("a straight line bends to %v", p)
		}
	}
	if a, b := straight[0], straight[len(straight)-1]; a != (mesh.Point{0, 0}) || math.Hypot(b[0]-30, b[1]-40) > 1e-9 {
		t.Errorf("ends %v and %v, want (0, 0) and (30, 40)", a, b)
	}
	var zigzag [][2]float64
	for i := range 41 {
		zigzag = append(zigzag, [2]float64{2.5 * float64(i), float64(i%2) * 0.5})
	}
	for _, p := range Smoothed(zigzag)[4:36] {
		if math.Abs(p[1]-0.25) > 0.1 {
			t.Errorf("a zigzag of 0.5 mm is still off its middle at %v", p)
		}
	}
}

// TestQuantile: of a field equal to x on a square, nine tenths of the area lie
// below 0.9.
func TestQuantile(t *testing.T) {
	p := guitarPlan(30)
	v := make([]float64, len(p.Tris))
	whole, below := 0.0, 0.0
	for i, tri := range p.Tris {
		for _, n := range tri {
			v[i] += p.Points[n][0] / 3
		}
	}
	q := Quantile(p, v, 0.9)
	for i, tri := range p.Tris {
		whole += area(p, tri)
		if v[i] <= q {
			below += area(p, tri)
		}
	}
	if share := below / whole; math.Abs(share-0.9) > 0.002 {
		t.Errorf("%.4f of the area lie below the quantile of 0.9", share)
	}
}
