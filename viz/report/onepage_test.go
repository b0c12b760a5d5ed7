package report

import (
	"bytes"
	"strings"
	"testing"
)

// TestWritePage wants the answers, both pictures and every caution of a design on
// its page, and nothing of a title that a browser would run.
func TestWritePage(t *testing.T) {
	in, whole := reportOf(t, "first")
	in.Reports[0].Warnings = []string{"look at a", "look at b", "look at c", "look at d"}
	var b bytes.Buffer
	if err := WritePage(&b, in); err != nil {
		t.Fatal(err)
	}
	page := b.String()
	if n := strings.Count(page, "<img "); n != 2 {
		t.Errorf("%d pictures, want the sink and the cross-arch", n)
	}
	for _, want := range []string{"bridge sinks", "from plank to plank", "look at a", "look at c", "and 1 more", "The maker"[4:]} {
		if !strings.Contains(page, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if strings.Contains(page, "<script>") {
		t.Error("the title is run as a script")
	}
	if b.Len() > len(whole)/2 {
		t.Errorf("a page of %d bytes beside a report of %d", b.Len(), len(whole))
	}
}
