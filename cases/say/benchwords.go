package say

import (
	"fmt"
	"math"
	"strings"

	"archload/cases/answer"
	"archload/materials"
)

// sayBench prints the comparison and how far it reaches.
func sayBench(b *strings.Builder, r *answer.BenchReport) {
	if r == nil {
		return
	}
	verdict, cautions := BenchWords(r)
	line(b, "against the bench", "%s", verdict)
	for _, c := range cautions {
		b.WriteString(folded(c, 96) + "\n")
	}
}

// BenchWords says what the gauges' readings ask of the computed stiffness, and how far
// that reaches.
func BenchWords(r *answer.BenchReport) (verdict string, cautions []string) {
	if !r.Stiffness.Known() {
		return fmt.Sprintf("no stiffness reconciles %s: they go against the computed sink; look at signs, zero and load", readingsText(r)), nil
	}
	k := float64(r.Stiffness)
	verdict = fmt.Sprintf("%s would agree if every stiffness were %.2f times the computed", readingsText(r), k)
	if r.Readings > 1 {
		verdict += fmt.Sprintf("; off by %.3f mm before, %.3f after (single gauges ask for %.2f to %.2f)", float64(r.Off), float64(r.Left), float64(r.Least), float64(r.Most))
	}
	if math.Abs(math.Log(k)) > 2*materials.StiffnessScatter {
		cautions = append(cautions, "That is more than boards differ (22 %): look first at the load, the thickness and the gauge's foot.")
	}
	if r.Readings == 1 {
		return verdict, append(cautions, "One reading is one reading: it cannot tell stiff wood from a wrong load or a gauge that slipped. "+
			"Read it again, and at other places, before a number is changed for it.")
	}
	return verdict, append(cautions, "A factor that fits one top under one load is not yet a property of the wood: load it another way, "+
		"read again, and see whether the same factor serves.")
}

// readingsText names the readings.
func readingsText(r *answer.BenchReport) string {
	if r.Readings == 1 {
		return "the one reading"
	}
	return fmt.Sprintf("the %d readings", r.Readings)
}
