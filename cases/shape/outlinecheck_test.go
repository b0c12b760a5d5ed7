package shape

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"archload/cases/casetest"
	"archload/cases/tree"
	"archload/mesh"
)

// TestOutlineIsBlamed gives readings of a whole plate to an outline that is not its own:
// the fault is told of the outline, with what may have happened to it. One reading
// beside a sound outline is the reading's own fault.
func TestOutlineIsBlamed(t *testing.T) {
	rows := "x_mm,y_mm,thickness_mm\n"
	for x := -130; x <= 130; x += 26 {
		for y := -200; y <= 200; y += 40 {
			rows += fmt.Sprintf("%d,%d,4\n", x, y)
		}
	}
	whole := []mesh.Point{{0, -250}, {200, -130}, {140, 0}, {150, 150}, {0, 240}, {-150, 150}, {-140, 0}, {-200, -130}}
	outline := func(change func(mesh.Point) mesh.Point) string {
		var all []string
		for _, p := range whole {
			q := change(p)
			all = append(all, fmt.Sprintf("[%g, %g]", q[0], q[1]))
		}
		return "outline = [" + strings.Join(all, ", ") + "]"
	}
	same := func(p mesh.Point) mesh.Point { return p }
	for _, c := range []struct {
		outline, rows string
		want          []string
	}{
		{outline(func(p mesh.Point) mesh.Point { return mesh.Point{p[1], p[0]} }), rows, []string{"a.toml:4: plate.outline: ", "were its x and y changed about?"}},
		{outline(func(p mesh.Point) mesh.Point { return mesh.Point{p[0] / 10, p[1] / 10} }), rows, []string{"a.toml:4: plate.outline: ", "was it written in cm?"}},
		{outline(same), rows + "190,200,4\n", []string{"t.csv:123: plate.thickness.points: ", "outside the outline"}},
	} {
		text := strings.Replace(casetest.TopText, "thickness = 5", `thickness = { points = "t.csv" }`, 1)
		text = strings.Replace(text, outline(same), c.outline, 1) + casetest.RestText
		fsys := casetest.Files("a.toml", text, "t.csv", c.rows)
		_, err := NewGeometry(casetest.Load(t, fsys, "a.toml"))
		var faults tree.Faults
		if !errors.As(err, &faults) || len(faults) != 1 {
			t.Errorf("%s: %v, want one fault", c.outline, err)
			continue
		}
		for _, w := range c.want {
			if !strings.Contains(faults[0].Error(), w) {
				t.Errorf("%s: said %q, want %q in it", c.outline, faults[0], w)
			}
		}
	}
}
