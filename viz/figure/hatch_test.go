package figure

import (
	"math"
	"testing"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// The lines of a hatch lie within the region and are together as long as its area asks for.
func TestHatchWithin(t *testing.T) {
	ring := func(r float64) []canvas.Point {
		var out []canvas.Point
		for i := range 400 {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / 400)
			out = append(out, canvas.At(100+r*cos, 90+r*sin))
		}
		return out
	}
	const step = 2.0
	long := 0.0
	for _, l := range hatchWithin([][]canvas.Point{ring(60), ring(25)}, step) {
		for _, p := range l {
			if r := math.Hypot(p.X-100, p.Y-90); r > 60.01 || r < 24.9 {
				t.Fatalf("a line ends at %v, %g from the middle", p, r)
			}
		}
		mid := canvas.At((l[0].X+l[1].X)/2, (l[0].Y+l[1].Y)/2)
		if math.Hypot(mid.X-100, mid.Y-90) < 24 {
			t.Fatalf("a line runs through the hole at %v", mid)
		}
		long += math.Hypot(l[1].X-l[0].X, l[1].Y-l[0].Y)
	}
	want := math.Pi * (60*60 - 25*25) / (step / math.Sqrt2)
	if math.Abs(long-want) > 0.01*want {
		t.Errorf("the lines are %g long, the area asks for %g", long, want)
	}
}

// Without colours pull and push, up and down are told apart: one side of zero is hatched,
// in the plan as in the legend, and the legend says which. What only counts has no sides.
func TestOneSideIsHatched(t *testing.T) {
	for _, c := range []struct {
		kind   scale.Kind
		lo, hi float64
		want   []bool // of the lowest band and the highest
		words  string
	}{
		{scale.Signed, -3, 2, []bool{false, true}, "hatched: above zero"},
		{scale.Signed, -3, -1, []bool{false, false}, ""},
		{scale.Sinking, -0.1, 0.4, []bool{true, false}, "hatched: has come up"},
		{scale.Sinking, 0, 0.4, []bool{false, false}, ""},
		{scale.Counting, 0, 5, []bool{false, false}, ""},
	} {
		v := &planView{in: PlanInput{Field: &Field{}}, scale: scale.New(c.lo, c.hi, c.kind)}
		if v.hatched(0) != c.want[0] || v.hatched(v.scale.Bands()-1) != c.want[1] || v.hatchWords() != c.words {
			t.Errorf("from %g to %g: lowest hatched %v, highest %v, %q", c.lo, c.hi, v.hatched(0), v.hatched(v.scale.Bands()-1), v.hatchWords())
		}
	}
}
