package say

import (
	"fmt"
	"io"
	"strings"

	"archload/cases/glossary"
)

// WriteTerms prints terms with what they mean.
func WriteTerms(w io.Writer, terms []glossary.Term) error {
	var b strings.Builder
	for i, t := range terms {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(t.Name)
		if t.Unit != "" {
			fmt.Fprintf(&b, ", %s", t.Unit)
		}
		if len(t.Also) > 0 {
			fmt.Fprintf(&b, " (also: %s)", strings.Join(t.Also, ", "))
		}
		b.WriteString("\n" + folded(t.Means, 96) + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}
