package answer

import (
	"fmt"
	"math"
	"testing"

	"archload/cases/casetest"
	"archload/cases/design"
)

// TestFootMeansReachBothEnds wants the first 8 mm of every foot and the last
// among its means, also where the contact grid does not fit into them: walls of
// a hollowed foot, feet of odd lengths, a foot shorter than that.
func TestFootMeansReachBothEnds(t *testing.T) {
	foot := func(length, wall float64) string {
		f := fmt.Sprintf("foot = [{ from = %g, to = %g", -length/2, length/2)
		if wall > 0 {
			f += fmt.Sprintf(`, bearing = "perimeter", wall = %g`, wall)
		}
		return f + " }]\n"
	}
	for _, c := range []struct {
		feet     string
		from, to float64
	}{
		{foot(108, 3), -54, 54}, {foot(116, 3), -58, 58}, {foot(120, 3), -60, 60}, {foot(132, 3), -66, 66},
		{foot(120, 2.5), -60, 60}, {foot(120, 4), -60, 60}, {foot(107, 0), -53.5, 53.5}, {foot(132, 0), -66, 66},
		{"foot = [{ from = -62, to = -40 }, { from = 41, to = 60 }]\n", -62, 60},
		{"foot = [{ from = -63, to = -58 }, { from = 58, to = 62.5 }]\n", -63, 62.5},
	} {
		s := solvedText(t, casetest.TopText+casetest.RestText+c.feet, 0.3)
		means := FootMeans(s)
		first, last := means[0], means[len(means)-1]
		b := s.Top.Built.Case.Bridge
		half := func(i int) float64 { return min(FootWindow, float64(b.Feet[i].To-b.Feet[i].From)) / 2 }
		end := len(b.Feet) - 1
		if got := first.X - half(0); math.Abs(got-c.from) > 1e-9 {
			t.Errorf("%s: the first mean begins at %g mm, want %g", c.feet, got, c.from)
		}
		if got := last.X + half(end); math.Abs(got-c.to) > 1e-9 || last.Foot != end {
			t.Errorf("%s: the last mean ends at %g mm of foot %d, want %g", c.feet, got, last.Foot, c.to)
		}
	}
}

// TestFootMeanIsForceOverArea compares the mean over the last 8 mm of a hollowed
// foot with the sum over its cells by hand, and wants that of the whole foot, taken
// over all windows, to be none greater than the answer's.
func TestFootMeanIsForceOverArea(t *testing.T) {
	s := solvedText(t, casetest.TopText+casetest.RestText+`foot = [{ from = -54, to = 54, bearing = "perimeter" }]`+"\n", 0.3)
	force, area := 0.0, 0.0
	for _, c := range FootCells(s) {
		share := max(0, min(c.X+c.DX/2, 54)-max(c.X-c.DX/2, 46)) / c.DX
		force += share * c.Pressure * c.DX * c.DY
		area += share * c.DX * c.DY
	}
	means := FootMeans(s)
	if got, want := means[len(means)-1].Pressure, force/area; math.Abs(got-want) > 1e-12*want {
		t.Errorf("mean pressure at the treble end %.12g MPa, want %.12g", got, want)
	}
	most := 0.0
	for _, m := range means {
		most = max(most, m.Pressure)
	}
	if got := float64(Strength(s).FootPressure); got != most {
		t.Errorf("foot pressure %g MPa, want the greatest mean %g", got, most)
	}
}

// TestCrushingMirrors wants the same crushing of strings and of their mirror
// image on a hollowed foot. The strings press hard near one end.
func TestCrushingMirrors(t *testing.T) {
	answer := func(sign float64) StrengthReport {
		return Strength(solvedText(t, casetest.TopText+fmt.Sprintf(`[strings]
each = [{ tension = 500, x = %g, front_angle = 4, back_angle = 8 }, { tension = 100, x = %g, front_angle = 4, back_angle = 8 }]
[bridge]
foot = [{ from = -54, to = 54, bearing = "perimeter" }]
`, 30*sign, -20*sign), 0.5))
	}
	treble, bass := answer(1), answer(-1)
	if g, w := float64(bass.FootPressure), float64(treble.FootPressure); math.Abs(g-w) > 1e-9*w {
		t.Errorf("foot pressure %.9g MPa, mirrored %.9g", w, g)
	}
	if g, w := float64(bass.FootUsed), float64(treble.FootUsed); math.Abs(g-w) > 1e-9*w || !(w > 0) {
		t.Errorf("crushing %.9g, mirrored %.9g", w, g)
	}
}

// solvedText solves a case given as text at a mesh density.
func solvedText(t *testing.T, text string, refine float64) *design.Solution {
	t.Helper()
	return answered(t, casetest.Load(t, casetest.Files("a.toml", text), "a.toml"), refine)
}
