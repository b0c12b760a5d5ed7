package setup

import (
	"errors"
	"math"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/shape"
	"archload/cases/tree"
)

var quick = design.Options{Workers: 2, Refine: 0.3, NoFlow: true, NoError: true}

// sheetOf is the action sheet of the bundled guitar whose neck is set.
func sheetOf(t *testing.T, w *Wish) *Sheet {
	t.Helper()
	s, err := Of(t.Context(), casetest.Open(t, "course-guitar-neck"), w, quick)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestWaysFulfilTheWish solves each way's case anew, draws string, board and saddle in
// the plane, and measures the string's distance from the fret plane half way to the
// nut.
func TestWaysFulfilTheWish(t *testing.T) {
	t.Parallel()
	w := Wish{Bass: 2.5, Treble: 1.7, Downforce: 140}
	s := sheetOf(t, &w)
	if len(s.Ways) != 3 {
		t.Fatalf("%d ways, want 3", len(s.Ways))
	}
	for _, way := range s.Ways[1:] {
		c := casetest.Open(t, "course-guitar-neck")
		*c.Strings.Path.NeckAngle, *c.Strings.Path.FretPlane = tree.Angle(way.NeckAngle), tree.Length(way.FretPlane)
		c.Strings.Path.AnchorHeight, c.Bridge.SaddleHeight = tree.Length(way.AnchorHeight), tree.Length(way.SaddleHeight)
		sol, err := design.Solve(t.Context(), c, quick)
		if err != nil {
			t.Fatal(err)
		}
		forces := sol.Top.Built.Geometry.StringForces()
		if got := cases.SumStrings(forces).Downforce; math.Abs(got-140) > 1e-6 {
			t.Errorf("%s: presses %g N, want 140", way.Name, got)
		}
		bass, treble := octave(c, sol, forces[len(forces)-1], way.Slant/2), octave(c, sol, forces[0], -way.Slant/2)
		if mean := (bass + treble) / 2; math.Abs(mean-2.1) > 0.01 || math.Abs(bass-treble-0.8) > 0.01 {
			t.Errorf("%s: strings at %.3f and %.3f mm, want 2.5 and 1.7", way.Name, bass, treble)
		}
		if math.Abs(way.AtPitch[0]-2.5) > 1e-3 || math.Abs(way.AtPitch[1]-1.7) > 1e-3 {
			t.Errorf("%s: says %v", way.Name, way.AtPitch)
		}
	}
}

// octave measures the height of a string over the fret plane at half its speaking
// length, by coordinates (u toward the nut, z up).
func octave(c *cases.Case, sol *design.Solution, f cases.StringForce, raised float64) float64 {
	p := c.Strings.Path
	b := float64(*p.NeckAngle) * math.Pi / 180
	saddle := [2]float64{0, f.Height + raised - 2*answer.ActionChangeAt(sol, f.X)}
	on := func(u float64) [2]float64 { return [2]float64{u, float64(*p.FretPlane) - u*math.Tan(b)} }
	up := [2]float64{math.Sin(b), math.Cos(b)} // square to the plane
	// The nut stands a off the plane and the speaking length away.
	lo, hi := 0.0, 2000.0
	var nut [2]float64
	for range 80 {
		u := (lo + hi) / 2
		foot := on(u)
		nut = [2]float64{foot[0] + float64(*p.NutAction)*up[0], foot[1] + float64(*p.NutAction)*up[1]}
		if math.Hypot(nut[0]-saddle[0], nut[1]-saddle[1]) < float64(c.Strings.Scale) {
			lo = u
		} else {
			hi = u
		}
	}
	mid, foot := [2]float64{(saddle[0] + nut[0]) / 2, (saddle[1] + nut[1]) / 2}, on(0)
	return (mid[0]-foot[0])*up[0] + (mid[1]-foot[1])*up[1]
}

// TestNeckTurnsAtItsJoint: a steeper neck keeps the frets' height where it turns.
func TestNeckTurnsAtItsJoint(t *testing.T) {
	c := casetest.Open(t, "course-guitar-neck")
	g, err := shape.NewGeometry(c)
	if err != nil {
		t.Fatal(err)
	}
	b, err := newBoard(c, g)
	if err != nil {
		t.Fatal(err)
	}
	at := func(neck float64) float64 { return b.fretPlane(neck) - b.joint*math.Tan(neck*math.Pi/180) }
	if math.Abs(at(7)-at(4)) > 1e-12 {
		t.Errorf("the frets' plane at the joint goes from %g to %g mm", at(4), at(7))
	}
	if _, hi := g.Outline.Bounds(); math.Abs(b.joint+c.Bridge.At[1]-hi[1]) > 1e-6 {
		t.Errorf("the neck turns at %g mm, the outline ends at %g", b.joint+c.Bridge.At[1], hi[1])
	}
}

// TestChanges: the change of one millimetre is that of the geometry less what gives
// way, and the ways differ in what they keep.
func TestChanges(t *testing.T) {
	t.Parallel()
	s := sheetOf(t, &Wish{Bass: 2, Treble: 2, BreakAngle: 12})
	saddle := s.Changes[1]
	if saddle.Key != "saddle_height" || saddle.AtPitch[0] < 0.4 || saddle.AtPitch[0] > 0.5 || saddle.Downforce <= 0 {
		t.Errorf("a higher saddle: %+v, want something under half a millimetre, and more pressure", saddle)
	}
	was, neck, bridge := s.Ways[0], s.Ways[1], s.Ways[2]
	if neck.SaddleHeight != was.SaddleHeight || bridge.NeckAngle != was.NeckAngle {
		t.Errorf("the neck's way moves the saddle to %g, the bridge's way the neck to %g", neck.SaddleHeight, bridge.NeckAngle)
	}
	for _, w := range s.Ways[1:] {
		if math.Abs(w.BreakAngle-12) > 1e-6 {
			t.Errorf("%s: bends the strings by %g, want 12", w.Name, w.BreakAngle)
		}
	}
}

// TestRefusals: what cannot be had says so.
func TestRefusals(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]string{
		"course-guitar": "strings.path", "bench-plate": "strings",
	} {
		_, err := Of(t.Context(), casetest.Open(t, name), nil, quick)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want a fault at %s", name, err, want)
		}
	}
	for _, w := range []Wish{{Bass: 40, Treble: 40, Downforce: 140}, {Bass: 2, Treble: 2, Downforce: 4000}} {
		_, err := Of(t.Context(), casetest.Open(t, "course-guitar-neck"), &w, quick)
		if !errors.Is(err, errNone) {
			t.Errorf("%+v: %v, want that nothing in the range does it", w, err)
		}
	}
}
