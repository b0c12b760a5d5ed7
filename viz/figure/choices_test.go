package figure

import (
	"math"
	"strings"
	"testing"

	"archload/viz/canvas"
	"archload/viz/canvas/canvastest"
	"archload/viz/scale"
)

// wave is n values with gaps.
func wave(n int, a float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = a * math.Sin(float64(i)/3)
		if i%7 == 5 {
			out[i] = math.NaN()
		}
	}
	return out
}

func demoChart(words bool, n int) ChartInput {
	in := ChartInput{Caption: longCaption(), Across: "depth of a relief, mm", Names: []string{"parabola", "flat"}}
	for i := range n {
		in.X = append(in.X, float64(i)*0.01)
		if words {
			in.Words = append(in.Words, strings.Repeat("spruce from far away ", i%3+1))
		}
	}
	for k := range 5 {
		a := math.Pow10(k - 2)
		in.Panels = append(in.Panels, ChartPanel{Name: strings.Repeat("a long name of a quantity ", k), Unit: "N mm", Lines: [][]float64{wave(n, a), wave(n, -3*a)}})
	}
	none := []float64{}
	for range n {
		none = append(none, math.NaN())
	}
	in.Panels = append(in.Panels, ChartPanel{Name: "none", Lines: [][]float64{none, none}})
	return in
}

func demoMap(nx, ny int) ChoiceMapInput {
	in := ChoiceMapInput{Caption: longCaption(), Across: "plate.thickness", Up: "bridge.relief.depth, which is a long name for a key"}
	for i := range nx {
		in.X = append(in.X, scale.Reading(float64(i)*1.25))
	}
	for j := range ny {
		in.Y = append(in.Y, scale.Reading(float64(j))+" a word")
	}
	for k := range 3 {
		p := ChoicePanel{Name: "a quantity", Unit: "mm"}
		for range ny {
			p.V = append(p.V, wave(nx, 1234/math.Pow10(k)))
		}
		in.Panels = append(in.Panels, p)
	}
	return in
}

// TestChoicesStandClear: no text of these pages meets another.
func TestChoicesStandClear(t *testing.T) {
	for name, p := range map[string]func(*testing.T) *canvas.Picture{
		"lines":      made(Chart(demoChart(false, 21))),
		"many lines": made(Chart(demoChart(false, 300))),
		"words":      made(Chart(demoChart(true, 4))),
		"one":        made(Chart(demoChart(false, 1))),
		"map":        made(ChoiceMap(demoMap(5, 4))),
		"fine map":   made(ChoiceMap(demoMap(60, 70))),
		"one field":  made(ChoiceMap(demoMap(1, 1))),
	} {
		t.Run(name, func(t *testing.T) { canvastest.StandsClear(t, p(t)) })
	}
}

// TestMapColours: a field has the colour that the scale gives its value.
func TestMapColours(t *testing.T) {
	in := demoMap(12, 9)
	p, err := ChoiceMap(in)
	if err != nil {
		t.Fatal(err)
	}
	v := in.Panels[0].V
	lo, hi := v[0][0], v[0][0]
	for _, x := range v[0] {
		if !math.IsNaN(x) {
			lo, hi = math.Min(lo, x), math.Max(hi, x)
		}
	}
	img := p.Image(72)
	want := scale.New(lo, hi, map[bool]scale.Kind{true: scale.Signed}[lo < 0 && hi > 0]).Color(hi)
	found := 0
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			r, g, b, _ := img.At(x, y).RGBA()
			if uint8(r>>8) == want.R && uint8(g>>8) == want.G && uint8(b>>8) == want.B {
				found++
			}
		}
	}
	if found < 20 {
		t.Errorf("%d pixels of the greatest value's colour, want at least 20", found)
	}
}

func TestChoiceErrors(t *testing.T) {
	short := demoChart(false, 5)
	short.Panels[0].Lines[0] = short.Panels[0].Lines[0][:3]
	ragged := demoMap(3, 3)
	ragged.Panels[0].V[1] = nil
	for name, make := range map[string]func() (*canvas.Picture, error){
		"no places":      func() (*canvas.Picture, error) { return Chart(ChartInput{}) },
		"too few values": func() (*canvas.Picture, error) { return Chart(short) },
		"no fields":      func() (*canvas.Picture, error) { return ChoiceMap(ChoiceMapInput{}) },
		"ragged":         func() (*canvas.Picture, error) { return ChoiceMap(ragged) },
	} {
		if p, err := make(); err == nil || p != nil {
			t.Errorf("%s: %v, %v; want an error", name, p, err)
		}
	}
}
