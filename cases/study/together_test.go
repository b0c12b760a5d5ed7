package study

import (
	"math"
	"testing"

	"archload/materials"
)

// TestTogether: two shifts of one plank that go together by ρ scatter by sqrt(a² + b² + 2 ρ a b), and drawn ones show ρ.
func TestTogether(t *testing.T) {
	const by = -0.8
	card, err := materials.FromTable("mine", map[string]any{"like": "sitka-spruce", "together": []any{[]any{"EL", "ER", by}}})
	if err != nil {
		t.Fatal(err)
	}
	p := plank{role: "top", card: card}
	of := []scattered{{p, "EL"}, {p, "ER"}, {p, "GLR"}}
	shifts := []float64{3, 4, 2}
	want := math.Sqrt(9 + 16 + 4 + 2*by*12)
	if got := float64(norm(shifts, of)); math.Abs(got-want) > 1e-12 {
		t.Errorf("scatter %g, want %g", got, want)
	}
	sum := 0.0
	for _, v := range parts(shifts, of) {
		sum += v
	}
	if math.Abs(sum-want*want) > 1e-12 {
		t.Errorf("the shares sum to %g, want %g", sum, want*want)
	}
	n := 400
	drawn := draws([]plank{p}, n, 1)
	var a, b []float64
	for _, d := range drawn {
		a, b = append(a, math.Log(d[0]["EL"])), append(b, math.Log(d[0]["ER"]))
	}
	if got := correlationOf(a, b); math.Abs(got-by) > 0.03 {
		t.Errorf("drawn planks go together by %.3f, want %g", got, by)
	}
}

func correlationOf(a, b []float64) float64 {
	var ma, mb float64
	for i := range a {
		ma, mb = ma+a[i]/float64(len(a)), mb+b[i]/float64(len(b))
	}
	var ab, aa, bb float64
	for i := range a {
		ab, aa, bb = ab+(a[i]-ma)*(b[i]-mb), aa+(a[i]-ma)*(a[i]-ma), bb+(b[i]-mb)*(b[i]-mb)
	}
	return ab / math.Sqrt(aa*bb)
}
