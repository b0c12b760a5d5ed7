package stage

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/tree"
	"archload/viz/scene"
)

// A design stands beside itself in two airs: one top in hand, two movements by one scale; its foot bears
// less in the middle in dry air than in damp air, and each title names its air.
func TestOneDesignInTwoAirs(t *testing.T) {
	a := NewAnswerer(nil, design.Options{Workers: 2, Refine: 0.3, NoError: true})
	of := Design{Name: "course-guitar"}
	w := Want{Designs: []Design{of, of}, Display: Display{Load: 1, Field: scene.FootPressure, InAir: true, Air: 70, AirA: 30}}
	s, err := a.Answer(t.Context(), w, nil)
	if err != nil {
		t.Fatal(err)
	}
	dry, damp := s.Designs[0], s.Designs[1]
	if dry.Live != damp.Live || dry.Air.Of != damp.Air.Of || dry.Air.Humidity != 30 || damp.Air.Humidity != 70 {
		t.Errorf("in air of %g and %g %%, one top %v; want 30 and 70 of one", dry.Air.Humidity, damp.Air.Humidity, dry.Live == damp.Live)
	}
	middle := func(d *Answered) (sum float64) {
		is, _ := d.drawn(w)
		for i, c := range answer.FootCells(is) {
			if v := s.values[map[*Answered]int{dry: 0, damp: 1}[d]][i]; v > 0 && math.Abs(c.X) < 15 {
				sum += v
			}
		}
		return sum
	}
	if m, n := middle(dry), middle(damp); !(m < n) {
		t.Errorf("the middle of the foot bears %g in dry air and %g in damp air, want more", m, n)
	}
	if x, y := s.Scenes[0].Title, s.Scenes[1].Title; !strings.HasSuffix(x, "in air of 30 %") || !strings.HasSuffix(y, "in air of 70 %") {
		t.Errorf("the drawings are %q and %q", x, y)
	}
	s.Want.Field = scene.StrengthUsed
	if m, r := s.worst(damp), damp.Air.Report.Strength; m == nil || !strings.HasPrefix(m.Text, fmt.Sprintf("most: %.0f %%", 100*float64(r.Used))) || m.At[1] != float64(r.Y) {
		t.Errorf("in damp air the worst place is marked %+v, want that of %+v", m, r)
	}
}

// Where a difference is drawn so many times as large, the picture moves as its colours say: of twice the
// same design it stands still.
func TestDifferenceMovesByItself(t *testing.T) {
	a := NewAnswerer(nil, design.Options{Workers: 2, Refine: 0.3, NoError: true})
	heights := func(enlarge float64, b Design) (most float64) {
		w := Want{Designs: []Design{{Name: "first"}, b}, Display: Display{Load: 1, Field: scene.Sink, Enlarge: enlarge, Arrange: Difference}}
		s, err := a.Answer(t.Context(), w, nil)
		if err != nil {
			t.Fatal(err)
		}
		d := s.Designs[0]
		for i, p := range s.Scenes[0].Solids[0].Points {
			n := d.Full.Top.Built.Mesh.Nodes[i]
			most = math.Max(most, math.Abs(p[2]-n.P[2]-n.H/2*n.N[2]))
		}
		return most
	}
	if m := heights(100, Design{Name: "first"}); m > 1e-9 {
		t.Errorf("of a design and itself the picture moves %g mm", m)
	}
	thin := Design{Name: "first"}.With(tree.KeyValue{Key: "plate.thickness", Value: tree.Valued(4.5)})
	if m := heights(100, thin); !(m > 5 && m < 20) {
		t.Errorf("half a millimetre less wood moves the picture by %g mm at a hundred times, want some 10", m)
	}
}

// A design follows the slider of the humidity once the hand has let go, down in dry air
// and up in damp air; while it drags the last picture stands and says what it is of.
func TestAirFollowsTheSlider(t *testing.T) {
	a := NewAnswerer(nil, design.Options{Workers: 2, Refine: 0.3, NoError: true})
	w := Want{Designs: []Design{{Name: "course-guitar"}}, Display: Display{Load: 1, Field: scene.Humidity, Air: 30}}
	var last *Shown
	ask := func() *Answered {
		t.Helper()
		s, err := a.Answer(t.Context(), w, last)
		if err != nil {
			t.Fatal(err)
		}
		last = s
		if s.Designs[0].Air == nil {
			t.Fatalf("no answer in other air: %q", s.Designs[0].Airless)
		}
		return s.Designs[0]
	}
	w.Cut.Kind, w.Forces = LongArch, true
	one := ask()
	dry := one.Air
	if at := one.Cut.Sink[len(one.Cut.Sink)/2]; one.Drawn == one.Now || !(at > 1) {
		t.Errorf("the section has gone down %g mm in dry air, want what the air does, some 2 mm", at)
	}
	if last.arrows(one) != nil {
		t.Error("forces are drawn on a movement between two states of one load")
	}
	w.Air, w.Held = 70, true
	if got := ask().Air; got != dry {
		t.Errorf("while the hand drags the picture is of %g %%, want that of %g %%", got.Humidity, dry.Humidity)
	}
	w.Held = false
	damp := ask().Air
	if !(dry.Report.ArchRise < 0 && damp.Report.ArchRise > 0) {
		t.Errorf("the arch rises %g mm in dry air and %g mm in damp air", dry.Report.ArchRise, damp.Report.ArchRise)
	}
	if s := last.Scenes[0].Scale; damp.Skeleton != dry.Skeleton || s == nil || !(s.Lo < 0) {
		t.Errorf("in damp air the legend is %+v; want one that rises too", s)
	}
}
