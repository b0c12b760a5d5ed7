package say

import (
	"strings"
	"testing"

	"archload/cases/answer"
)

func TestBenchWords(t *testing.T) {
	for _, c := range []struct {
		gauges []answer.GaugeReport
		want   []string
	}{
		{gaugesOf([2]float64{0.4, 0.5}), []string{"the one reading would agree if every stiffness were 0.80 times", "One reading is one reading"}},
		{gaugesOf([2]float64{0.4, 0.5}, [2]float64{0.3, 0.3}), []string{"the 2 readings", "single gauges ask for 0.80 to 1.00"}},
		{gaugesOf([2]float64{0.4, 0.1}), []string{"more than boards differ"}},
		{gaugesOf([2]float64{0.4, -0.1}), []string{"no stiffness reconciles"}},
	} {
		var b strings.Builder
		sayBench(&b, answer.Bench(c.gauges))
		for _, want := range c.want {
			if !strings.Contains(b.String(), want) {
				t.Errorf("no %q in %q", want, b.String())
			}
		}
	}
}

// gaugesOf makes gauges of computed sinks and readings, mm; a reading of NaN
// is none.
func gaugesOf(pairs ...[2]float64) []answer.GaugeReport {
	var out []answer.GaugeReport
	for _, p := range pairs {
		out = append(out, answer.GaugeReport{Name: "g", Sink: p[0], Measured: answer.Num(p[1])})
	}
	return out
}
