package answer

import (
	"math"
	"testing"

	"archload/cases/casetest"
)

// gaugesOf makes gauges of computed sinks and readings, mm; a reading of NaN
// is none.
func gaugesOf(pairs ...[2]float64) []GaugeReport {
	var out []GaugeReport
	for _, p := range pairs {
		out = append(out, GaugeReport{Name: "g", Sink: p[0], Measured: Num(p[1])})
	}
	return out
}

func TestBench(t *testing.T) {
	none := math.NaN()
	for _, c := range []struct {
		gauges                       []GaugeReport
		k, least, most, before, left float64
		source                       string
	}{
		{gaugesOf([2]float64{0.4, 0.5}, [2]float64{0.3, none}), 0.8, 0.8, 0.8, 0.1, 0, "one reading: 0.4/0.5"},
		{gaugesOf([2]float64{0.4, 0.5}, [2]float64{0.2, 0.25}), 0.8, 0.8, 0.8, math.Sqrt((0.01 + 0.0025) / 2), 0, "both ask for the same"},
		{gaugesOf([2]float64{0.3, 0.3}, [2]float64{0.4, 0.2}), 0.25 / 0.17, 1, 2, math.Sqrt(0.02), math.Sqrt((0.096*0.096 + 0.072*0.072) / 2), "0.25/0.17; 0.3·0.68 - 0.3 = -0.096, 0.4·0.68 - 0.2 = 0.072"},
	} {
		r := Bench(c.gauges)
		for _, v := range []struct {
			name string
			got  Num
			want float64
		}{{"factor", r.Stiffness, c.k}, {"least", r.Least, c.least}, {"most", r.Most, c.most}, {"off", r.Off, c.before}, {"left", r.Left, c.left}} {
			if !casetest.Near(float64(v.got), v.want, 1e-12) {
				t.Errorf("%s: %s = %.6f, want %.6f", c.source, v.name, float64(v.got), v.want)
			}
		}
	}
	if got := Bench(gaugesOf([2]float64{0.4, none})); got != nil {
		t.Errorf("without readings: %+v, want none", got)
	}
	if got := Bench(gaugesOf([2]float64{0.4, -0.1})); got == nil || got.Stiffness.Known() {
		t.Errorf("a reading upward: %+v, want no factor", got)
	}
}

// TestBenchFactorIsLeast wants any other factor to leave more.
func TestBenchFactorIsLeast(t *testing.T) {
	gauges := gaugesOf([2]float64{0.41, 0.5}, [2]float64{0.32, 0.36}, [2]float64{0.1, 0.2})
	r := Bench(gauges)
	left := func(k float64) float64 {
		sum := 0.0
		for _, g := range gauges {
			d := g.Sink/k - float64(g.Measured)
			sum += d * d
		}
		return math.Sqrt(sum / 3)
	}
	k := float64(r.Stiffness)
	if got := left(k); !casetest.Near(got, float64(r.Left), 1e-12) || left(0.99*k) <= got || left(1.01*k) <= got {
		t.Errorf("factor %.4f leaves %.5f mm, reported %.5f; 1 %% less %.5f, more %.5f", k, got, float64(r.Left), left(0.99*k), left(1.01*k))
	}
}
