package verify

import (
	"context"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// TestPublished runs every check of testdata/verification, and compares the
// figures of its README with what came out.
func TestPublished(t *testing.T) {
	rows, err := Run(context.Background(), Options{Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		if !r.Pass {
			t.Errorf("%s, %s (%s): got %.7g %s, want %.7g (%s): deviation %.3g, allowed %.3g (%s)",
				r.Name, r.Quantity, r.Mesh, r.Got, r.Unit, r.Expected, r.By, r.Deviation, r.Allowed, r.Reason)
		}
	}
	compareReadme(t, rows)
}

// compareReadme checks the figures at 16 and 32 divisions, and at the default
// edges, to a hundredth of a percent.
func compareReadme(t *testing.T, rows []Row) {
	t.Helper()
	data, err := os.ReadFile("../../testdata/verification/README.md")
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	if want := fmt.Sprintf("%d rows take", len(rows)); !strings.Contains(text, want) {
		t.Errorf("README does not say %q", want)
	}
	cells := map[string]string{}
	for line := range strings.Lines(text) {
		c := strings.Split(strings.Trim(strings.TrimSpace(line), "|"), "|")
		for i := range c {
			c[i] = strings.TrimSpace(c[i])
		}
		switch len(c) {
		case 9: // problem, quantity, mesh, 4, 8, 16, 32, 64, order
			cells[c[0]+c[1]+"16 "+c[2]], cells[c[0]+c[1]+"32 "+c[2]] = c[5], c[6]
		case 6: // case, quantity, 24, 12, 6, 3 mm
			cells[c[0]+c[1]+"edges 6 mm"] = c[4]
		}
	}
	found := 0
	for _, r := range rows {
		cell, ok := cells[r.Name+r.Quantity+r.Mesh]
		if !ok || r.Bound != "" {
			continue
		}
		found++
		if v, err := strconv.ParseFloat(cell, 64); err != nil || !(math.Abs(v-100*r.Deviation) <= 0.011) {
			t.Errorf("README says %q of %s, %s (%s), the run %.3f %%", cell, r.Name, r.Quantity, r.Mesh, 100*r.Deviation)
		}
	}
	if found < 200 {
		t.Errorf("%d figures of the README found among the rows, want 200 at least", found)
	}
}
