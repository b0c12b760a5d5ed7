package answer

import (
	"context"
	"fmt"
	"math"
	"testing"

	"archload/cases/casetest"
	"archload/cases/design"
	"archload/mesh"
)

// meshRow is what a mesh density gives: the numbers whose convergence counts.
type meshRow struct {
	sink     float64    // of the bridge, mm
	share    [3]float64 // 1
	used     float64    // strength used, 1
	stress   []float64  // at the gauges, MPa: along, across, shear; outer, then inner face
	estimate float64    // error.discretisation, 1
}

// gaugeStress is the stress in wood axes at one face about a gauge, averaged
// over a circle as wide as the plate is thick: places spread evenly over it,
// each with the stress of its triangle. MPa: along, across, shear.
func gaugeStress(s *design.Solution, at mesh.Point, zeta float64) []float64 {
	h := s.Top.Built.Plate.Thickness.At(at).Z
	across, shear := InPlane(s.Top.Built)
	sum := make([]float64, 3)
	places := design.Circle()
	loc := mesh.NewLocator(s.Top.Built.Mesh.Plan)
	for _, p := range places {
		tri, _, _ := loc.Find(mesh.Point{at[0] + h*p[0], at[1] + h*p[1]})
		v := s.Result.ShellStress(int(tri), zeta)
		for k, c := range []int{0, across, shear} {
			sum[k] += v[c] / float64(len(places))
		}
	}
	return sum
}

func meshRowOf(s *design.Solution) meshRow {
	r := Summarize(s)
	row := meshRow{sink: r.Bridge.Sink, used: float64(r.Strength.Used), estimate: float64(r.Error.Discretisation),
		share: [3]float64{r.Bridge.Share.BassEnd, r.Bridge.Share.Middle, r.Bridge.Share.TrebleEnd}}
	for _, g := range s.Top.Built.Case.Gauges {
		row.stress = append(row.stress, gaugeStress(s, g.At, 1)...)
		row.stress = append(row.stress, gaugeStress(s, g.At, -1)...)
	}
	return row
}

// extrapolated is L. F. Richardson's extrapolation from values on meshes finer
// each by the same factor, with the order that they show; the finest value
// where they show none.
func extrapolated(a, b, c float64) float64 {
	ratio := (c - b) / (b - a)
	if !(ratio > 0 && ratio < 0.95) {
		return c
	}
	return c + (c-b)*ratio/(1-ratio)
}

// TestMeshConvergence compares the default mesh with the value extrapolated
// from densities 1, 1.41 and 2: the bridge's sink within 1.5 %, shares within
// a point, stress averages (strength used, and all stresses at the gauges of
// the largest there) within 6 %. The discretisation error reported must lie
// within a factor of three of the true one.
func TestMeshConvergence(t *testing.T) {
	t.Parallel()
	names := []string{"course-guitar", "course-guitar-relief"}
	rows := map[string][]meshRow{}
	for i, refine := range []float64{1, math.Sqrt2, 2} {
		ctx, o := context.Background(), design.Options{Workers: 2, Refine: refine}
		top, err := design.Prepare(ctx, casetest.Open(t, names[0]), o)
		if err != nil {
			t.Fatal(err)
		}
		var coarse *design.Top
		if i == 0 {
			half := o
			half.Refine = refine / 2
			if coarse, err = design.Prepare(ctx, casetest.Open(t, names[0]), half); err != nil {
				t.Fatal(err)
			}
		}
		for _, name := range names {
			s, err := refit(top, casetest.Open(t, name))
			if err != nil {
				t.Fatal(err)
			}
			if coarse != nil {
				if s.Coarse, err = refit(coarse, casetest.Open(t, name)); err != nil {
					t.Fatal(err)
				}
			}
			rows[name] = append(rows[name], meshRowOf(s))
		}
	}
	for _, name := range names {
		checkConvergence(t, name, rows[name])
	}
}

func checkConvergence(t *testing.T, name string, r []meshRow) {
	t.Helper()
	sink := extrapolated(r[0].sink, r[1].sink, r[2].sink)
	t.Logf("%s: sink %.6f, %.6f, %.6f mm, extrapolated %.6f; error %.2f %%, estimated %.2f %%", name,
		r[0].sink, r[1].sink, r[2].sink, sink, 100*casetest.Off(r[0].sink, sink), 100*r[0].estimate)
	casetest.Within(t, name+": sink of the bridge, mm", r[0].sink, sink, sink, 0.015)
	if e := math.Abs(casetest.Off(r[0].sink, sink)); !(r[0].estimate <= 3*e && r[0].estimate >= e/3) {
		t.Errorf("%s: estimated discretisation error %.3g, true %.3g: want it within a factor of three", name, r[0].estimate, e)
	}
	for k := range 3 {
		share := extrapolated(r[0].share[k], r[1].share[k], r[2].share[k])
		t.Logf("%s: share %d %.4f, %.4f, %.4f, extrapolated %.4f", name, k, r[0].share[k], r[1].share[k], r[2].share[k], share)
		casetest.Within(t, fmt.Sprintf("%s: share %d", name, k), r[0].share[k], share, 1, 0.01)
	}
	used := extrapolated(r[0].used, r[1].used, r[2].used)
	t.Logf("%s: strength used %.4f, %.4f, %.4f, extrapolated %.4f (%+.1f %%)", name, r[0].used, r[1].used, r[2].used, used, 100*casetest.Off(r[0].used, used))
	casetest.Within(t, name+": strength used", r[0].used, used, used, 0.06)
	for g := 0; g < len(r[0].stress); g += 6 {
		largest := 0.0
		for k := g; k < g+6; k++ {
			largest = math.Max(largest, math.Abs(r[2].stress[k]))
		}
		for k := g; k < g+6; k++ {
			want := extrapolated(r[0].stress[k], r[1].stress[k], r[2].stress[k])
			t.Logf("%s: gauge %d, stress %d: %.4f, %.4f, %.4f MPa (%+.1f %% of the largest)", name, g/6, k-g,
				r[0].stress[k], r[1].stress[k], r[2].stress[k], 100*(r[0].stress[k]-want)/largest)
			casetest.Within(t, fmt.Sprintf("%s: gauge %d, stress %d, MPa", name, g/6, k-g), r[0].stress[k], want, largest, 0.06)
		}
	}
}
