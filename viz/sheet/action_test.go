package sheet

import (
	"strings"
	"testing"

	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/setup"
)

// TestActionSheet: the sheet carries every line of the table, the cautions, and one
// template for each angle of the neck.
func TestActionSheet(t *testing.T) {
	c := casetest.Open(t, "course-guitar-neck")
	a, err := setup.Of(t.Context(), c, &setup.Wish{Bass: 2.4, Treble: 1.8, Downforce: 150},
		design.Options{Workers: 2, Refine: 0.3, NoFlow: true, NoError: true})
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	if err := Action(c, a, A4).Write(&out, "svg"); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"by the neck", "by the bridge", "anchor height, mm", "after decades", "neck angle 4.00 degrees", "Raise the tension in steps"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the sheet lacks %q", want)
		}
	}
	if n := strings.Count(out.String(), " mm on 150 mm"); n != 2 {
		t.Errorf("%d templates of the neck's angle, want 2", n)
	}
}
