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
	if !r.Stiffness.Known() {
		line(b, "against the bench", "no stiffness reconciles %s: they go against the computed sink; look at signs, zero and load", readingsText(r))
		return
	}
	k := float64(r.Stiffness)
	text := fmt.Sprintf("%s would agree if every stiffness were %.2f times the computed", readingsText(r), k)
	if r.Readings > 1 {
		text += fmt.Sprintf("; off by %.3f mm before, %.3f after (single gauges ask for %.2f to %.2f)", float64(r.Off), float64(r.Left), float64(r.Least), float64(r.Most))
	}
	line(b, "against the bench", "%s", text)
	if math.Abs(math.Log(k)) > 2*materials.StiffnessScatter {
		b.WriteString("  That is more than boards differ (22 %): look first at the load, the thickness and the gauge's foot.\n")
	}
	if r.Readings == 1 {
		b.WriteString("  One reading is one reading: it cannot tell stiff wood from a wrong load or a gauge that slipped.\n" +
			"  Read it again, and at other places, before a number is changed for it.\n")
		return
	}
	b.WriteString("  A factor that fits one top under one load is not yet a property of the wood: load it another way,\n" +
		"  read again, and see whether the same factor serves.\n")
}

// readingsText names the readings.
func readingsText(r *answer.BenchReport) string {
	if r.Readings == 1 {
		return "the one reading"
	}
	return fmt.Sprintf("the %d readings", r.Readings)
}
