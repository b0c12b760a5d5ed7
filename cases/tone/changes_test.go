package tone

import (
	"context"
	"math"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/design"
)

// A domed plate with a bar.
const domed = `format = 1
[plate]
wood = "sitka-spruce"
outline = [[0, -120], [85, -70], [70, 60], [0, 110], [-70, 60], [-85, -70]]
thickness = 4
arch = { formula = { height = 14, apex = [5, -10] } }
[rim]
support = "free"
[[brace]]
line = [[-20, 80], [-25, -80]]
width = 6
height = [[0, 3], [0.3, 9], [1, 3]]
`

// quick finds the lowest tones on coarse triangles.
func quick(t *testing.T, c *cases.Case, state design.State, count int) (*Report, *Shapes) {
	t.Helper()
	r, s, err := FindTones(context.Background(), c, state, count, design.Options{Workers: 1, NoError: true, Refine: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	return r, s
}

// TestChanges: each derivative is that of the tones themselves, found again for a case a little
// changed to both sides; and a plate whose moduli all grow by one percent rises by half a percent.
func TestChanges(t *testing.T) {
	c := casetest.Load(t, casetest.Files("dome.toml", domed), "dome.toml")
	const count = 3
	r, s := quick(t, c, design.Free, count)
	if err := r.FindChanges(context.Background(), s, design.Options{Workers: 1}); err != nil {
		t.Fatal(err)
	}
	levers := leversOf(s.Moving)
	moduli := make([]float64, count)
	for k, l := range levers {
		if r.Changes[k].Key != l.key {
			t.Fatalf("change %d is of %s, want %s", k, r.Changes[k].Key, l.key)
		}
		for i := range count {
			if l.set == nil && l.constants[0] != "density" {
				moduli[i] += float64(r.Changes[k].PerPercent[i])
			}
		}
		if l.key != "plate.wood: GLR" && l.key != "plate.thickness_scale" && l.key != "brace[1].height_scale" {
			continue
		}
		const step = 0.01
		more, _ := quick(t, l.with(c, 1+step), design.Free, count)
		less, _ := quick(t, l.with(c, 1-step), design.Free, count)
		for i := range count {
			want := (more.Tones[i].Hz - less.Tones[i].Hz) / (2 * step * r.Tones[i].Hz)
			if got := float64(r.Changes[k].PerPercent[i]); math.Abs(got-want) > 2e-3*math.Abs(want)+2e-4 {
				t.Errorf("%s moves tone %d by %.5f, found again by %.5f", l.key, i+1, got, want)
			}
		}
	}
	for i, sum := range moduli {
		if math.Abs(sum-0.5) > 1e-5 {
			t.Errorf("all moduli together move tone %d by %.7f, want 0.5", i+1, sum)
		}
	}
}

// TestMatch: a plate of half the stiffness along the grain has its tones in another order; they are
// told by their shapes. A plate beside itself is itself.
func TestMatch(t *testing.T) {
	c := casetest.Open(t, "bench-plate")
	a, of := quick(t, c, design.Free, 5)
	a.Match(of, a, of)
	for i, l := range a.Like {
		if l.First != i+1 || math.Abs(l.Alike-1) > 1e-12 || l.Rise != 0 {
			t.Errorf("tone %d beside itself: %+v", i+1, l)
		}
	}
	l := lever{woods: []string{"plate.wood"}, constants: []string{"EL"}}
	b, own := quick(t, l.with(c, 0.25), design.Free, 5)
	b.Match(own, a, of)
	for i, m := range b.Like {
		if m.First == 0 {
			continue
		}
		if p, q := b.Tones[i].Pattern, a.Tones[m.First-1].Pattern; m.First <= 2 && p != q {
			t.Errorf("tone %d, %s, is taken for tone %d, %s", i+1, p, m.First, q)
		}
	}
	if b.Like[0].First == 0 || float64(b.Like[0].Rise) >= 0 {
		t.Errorf("the lowest tone of the softer plate: %+v, want one that is lower than before", b.Like[0])
	}
}
