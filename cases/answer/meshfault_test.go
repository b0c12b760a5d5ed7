package answer

import (
	"strings"
	"testing"

	"archload/cases/casetest"
	"archload/cases/design"
)

// TestAnswerWithoutEstimate: a plate so thin that the coarser mesh finds no set
// of closed points keeps its answer, and says that the mesh's share is not
// known.
func TestAnswerWithoutEstimate(t *testing.T) {
	t.Parallel()
	c := casetest.Load(t, casetest.Files("thin.toml", "format = 1\nbase = \"first\"\n[plate]\nthickness = 0.3\n"), "thin.toml")
	sol, err := design.Solve(t.Context(), c, design.Options{Refine: 0.6})
	if err != nil {
		t.Fatal(err)
	}
	if sol.Coarse != nil || sol.CoarseFault == nil {
		t.Fatalf("the coarser solve ended with %v; this test wants one that fails", sol.CoarseFault)
	}
	r := Summarize(sol)
	if r.Error.Discretisation.Known() {
		t.Errorf("mesh error %v, want none", r.Error.Discretisation)
	}
	if all := strings.Join(r.Warnings, "\n"); !strings.Contains(all, "what the mesh costs is not known: no answer on triangles twice as large: contact: ") {
		t.Errorf("warnings %s", all)
	}
}
