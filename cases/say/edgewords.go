package say

import (
	"fmt"
	"slices"
	"strings"

	"archload/cases/answer"
	"archload/cases/quantity"
	"archload/cases/study"
)

// edgeAssumed is how far what holds the edge is taken to scatter.
const edgeAssumed = "8 %, lining with its glue 15 %, a back 5 % thinner or thicker than said"

// edgeText is what the edge leaves open of the numbers that matter most; "" if that is not
// known.
func edgeText(r *answer.Report) string {
	var words []string
	for _, key := range []string{"bridge_sink", "action_change", "strength_used"} {
		q := quantity.Of(key)
		v, known := r.Error.Edge[key]
		if !known {
			continue
		}
		words = append(words, fmt.Sprintf("%s ± %s %s", q.Name, widthText(q, v), q.Unit))
	}
	return strings.Join(words, ", ")
}

// edgeKnown says whether some number of a comparison has a range by its edge.
func edgeKnown(c *study.Comparison) bool {
	return slices.ContainsFunc(c.Rows, func(r study.Row) bool {
		return slices.ContainsFunc(r.Ranges, func(g study.Range) bool { return g.Edge.Known() })
	})
}

// writeEdge says what the making of sides, lining and back leaves open of the numbers
// that decide; nothing where none are modelled.
func writeEdge(b *strings.Builder, c *study.Comparison) {
	if !edgeKnown(c) {
		return
	}
	b.WriteString("  ± edge: sides " + edgeAssumed + "\n" +
		"  (one standard deviation; common practice, no published source). Their wood is in ± wood.\n")
	for i := range c.Rows {
		r := &c.Rows[i]
		if r.Quantity().Compare != quantity.UnderDecides {
			continue
		}
		var words []string
		for k, g := range r.Ranges {
			if text := widthText(r.Quantity(), g.Edge); g.Edge.Known() && text != "" {
				words = append(words, Letter(k)+" "+text)
			}
		}
		if len(words) > 0 {
			fmt.Fprintf(b, "    %-48s %s\n", r.Name+", "+r.Unit, strings.Join(words, "   "))
		}
	}
}
