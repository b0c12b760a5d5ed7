package answer

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/design"
)

// The facts below are common practice: no published source.

// tradeRefine makes these tests quick; they ask for directions, not for digits.
const tradeRefine = 0.5

// tradeCase is the course guitar with changes: a case that starts from it.
func tradeCase(t *testing.T, changes string) *cases.Case {
	t.Helper()
	fsys := casetest.Files("a.toml", "format = 1\nbase = \"course-guitar\"\n"+changes)
	return casetest.Load(t, fsys, "a.toml")
}

// TestReliefMakesTheEndsBearFirst wants a relieved bridge to bear on its ends
// alone until, at some part of the load, the middle joins in, and to press more
// on its ends at full load than a tight one. Common practice.
func TestReliefMakesTheEndsBearFirst(t *testing.T) {
	t.Parallel()
	top, err := design.Prepare(context.Background(), tradeCase(t, ""), design.Options{Workers: 2, Refine: tradeRefine})
	if err != nil {
		t.Fatal(err)
	}
	lastTouch, lastMiddle := 0.0, math.Inf(1)
	for _, depth := range []float64{0, 0.06, 0.12, 0.24} {
		s, err := refit(top, tradeCase(t, fmt.Sprintf("[bridge.relief]\ndepth = %g\n", depth)))
		if err != nil {
			t.Fatal(err)
		}
		passed(t, fmt.Sprintf("relief %g mm", depth), s)
		b := Summarize(s).Bridge
		touch := float64(b.MiddleTouchesAt)
		t.Logf("relief %g mm: middle touches at %.4f and has closed at %.4f of the load; shares %.4f %.4f %.4f",
			depth, touch, float64(b.MiddleClosesAt), b.Share.BassEnd, b.Share.Middle, b.Share.TrebleEnd)
		if depth == 0 && touch != 0 {
			t.Errorf("tight: middle touches at %.4f of the load, want 0", touch)
		}
		if depth > 0 && !(touch > lastTouch && touch < 1) {
			t.Errorf("relief %g mm: middle touches at %.4f of the load, want later than %.4f and before 1", depth, touch, lastTouch)
		}
		if !(b.Share.Middle < lastMiddle) {
			t.Errorf("relief %g mm: middle carries %.4f, want less than %.4f", depth, b.Share.Middle, lastMiddle)
		}
		for _, l := range b.ByLoad {
			if depth > 0 && l.Load < touch && l.Thirds[1] > 1e-9 {
				t.Errorf("relief %g mm: middle third carries %.3g N at %.4f of the load, before it touches", depth, l.Thirds[1], l.Load)
			}
		}
		lastTouch, lastMiddle = touch, b.Share.Middle
	}
}

// TestPluckRollsTowardTheNeck raises the tension of the speaking lengths, as
// a plucked string does: the bridge leans further toward the nut. In slip the
// strings hold the saddle along, so only grip can show it. Common practice.
func TestPluckRollsTowardTheNeck(t *testing.T) {
	t.Parallel()
	last := math.Inf(-1)
	for _, rise := range []float64{0, 1.5, 3} {
		text := "[strings]\nfront_angle = 5\nback_angle = 9\nspread = 52\neach = ["
		for _, tension := range []float64{100, 100, 111, 115, 108, 96} {
			text += fmt.Sprintf("{ tension = %g, rise = %g }, ", tension, rise)
		}
		s := answered(t, tradeCase(t, strings.TrimSuffix(text, ", ")+"]\n"), tradeRefine)
		r := Summarize(s)
		t.Logf("rise %g N a string: push %.2f N, leans %.5f degrees toward the neck", rise, r.Strings.Along, r.Bridge.Tilt.ForeAft)
		if !(r.Bridge.Tilt.ForeAft > last) {
			t.Errorf("rise %g N a string: leans %.5f degrees toward the neck, want more than %.5f", rise, r.Bridge.Tilt.ForeAft, last)
		}
		last = r.Bridge.Tilt.ForeAft
	}
}

// TestStifferBaseSpreadsTheLoad makes the base of stiffer and stiffer wood:
// the foot presses further out. Common practice.
func TestStifferBaseSpreadsTheLoad(t *testing.T) {
	t.Parallel()
	for _, relief := range []float64{0, 0.12} {
		last := 0.0
		for _, factor := range []float64{0.5, 1, 2} {
			s := answered(t, tradeCase(t, fmt.Sprintf("[bridge]\nwood = \"base\"\n[bridge.relief]\ndepth = %g\n"+
				"[wood.base]\nlike = \"ebony\"\nEL = %g\n", relief, 16000*factor)), tradeRefine)
			b := Summarize(s).Bridge
			t.Logf("relief %g mm, EL %g MPa: spreading %.3f mm, shares %.4f %.4f %.4f", relief, 16000*factor, b.Spreading, b.Share.BassEnd, b.Share.Middle, b.Share.TrebleEnd)
			if !(b.Spreading > last) {
				t.Errorf("relief %g mm, EL %g MPa: foot presses %.3f mm out in the mean, want more than %.3f", relief, 16000*factor, b.Spreading, last)
			}
			last = b.Spreading
		}
	}
}

// TestFittedBridgeSparesTheTop presses the top with the same force through the
// fitted bridge and spread evenly over the same foot: the stiff bridge leads it
// toward its ends, and the plate with its braces stores less. Common practice.
func TestFittedBridgeSparesTheTop(t *testing.T) {
	t.Parallel()
	with := answered(t, tradeCase(t, ""), tradeRefine)
	forces := with.Top.Built.Geometry.StringForces()
	down := 0.0
	for _, f := range forces {
		down += f.Downforce
	}
	even := answered(t, tradeBare(t, down), tradeRefine)
	bridge, bare := with.Result.Energy, even.Result.Energy
	plate := bridge.Membrane + bridge.Bending + bridge.Shear + bridge.Of(design.PartBraces)
	alone := bare.Membrane + bare.Bending + bare.Shear + bare.Of(design.PartBraces)
	t.Logf("under the bridge %.4f N·mm, under even pressure %.4f N·mm (%+.1f %%)", plate, alone, 100*casetest.Off(plate, alone))
	if !(plate < alone) {
		t.Errorf("plate and braces store %.4f N·mm under the bridge, want less than %.4f under even pressure", plate, alone)
	}
}

// tradeBare is the course guitar without strings and bridge, a force spread
// evenly over where its foot stands.
func tradeBare(t *testing.T, down float64) *cases.Case {
	t.Helper()
	text, err := cases.BundledFiles.ReadFile(cases.BundledDir + "/course-guitar.toml")
	if err != nil {
		t.Fatal(err)
	}
	head, _, _ := strings.Cut(string(text), "[strings]")
	head = head[:strings.LastIndex(head, "\n\n")]
	head += fmt.Sprintf("\n[[load]]\nat = [0, 0]\nsize = [132, 13]\nforce = [0, 0, %g]\n", -down)
	names := []string{"a.toml", head}
	for _, table := range []string{"outline.csv", "arch-contours.csv", "f-hole.csv"} {
		data, err := cases.BundledFiles.ReadFile(cases.BundledDir + "/" + table)
		if err != nil {
			t.Fatal(err)
		}
		names = append(names, table, string(data))
	}
	return casetest.Load(t, casetest.Files(names...), "a.toml")
}
