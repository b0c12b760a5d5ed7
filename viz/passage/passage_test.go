package passage

import (
	"math"
	"testing"

	"archload/viz/scene"
)

func TestFlight(t *testing.T) {
	from := scene.Camera{Yaw: 170, Pitch: 80, Distance: 400, Lens: 30}
	goal := scene.Camera{Yaw: -170, Pitch: 0, Distance: 1600, Target: [3]float64{10, 0, -4}, Lens: 30}
	f := Flight{From: from, Since: 5, On: true}
	if c, on := f.At(goal, 5); c != (scene.Camera{Yaw: 170, Pitch: 80, Distance: 400, Lens: 30}) || !on {
		t.Errorf("it starts from %+v, %v", c, on)
	}
	mid, on := f.At(goal, 5+FlightTime/2)
	if !on || math.Abs(math.Abs(mid.Yaw)-180) > 1e-9 || math.Abs(mid.Pitch-40) > 1e-9 || math.Abs(mid.Distance-800) > 1e-9 || math.Abs(mid.Target[0]-5) > 1e-9 {
		t.Errorf("half way it is at %+v, %v; want yaw 180 by the shorter way, pitch 40, distance 800, half the shift", mid, on)
	}
	if c, on := f.At(goal, 5+FlightTime); c != goal || on {
		t.Errorf("it ends at %+v, %v, want the goal", c, on)
	}
	if c, on := (Flight{}).At(goal, 0); c != goal || on {
		t.Error("without a flight the camera is not at its goal")
	}
}

func TestFade(t *testing.T) {
	last := -1.0
	for _, at := range []float64{0, 0.1, 0.4, 0.7} {
		s, on := Fade(at)
		if !on || s <= last || s >= 1 {
			t.Errorf("after %g s the new picture has %g, %v", at, s, on)
		}
		last = s
	}
	if s, on := Fade(FadeTime); s != 1 || on {
		t.Errorf("at the end it has %g, %v", s, on)
	}
}

// The load rises without a jump, stands where something happens, and is slower before it.
func TestCourse(t *testing.T) {
	c := Course{From: 0, To: 1, Halts: []float64{0.18, 0.16, 1.2}}
	const step = 1e-3
	stood := map[int]float64{}
	was, slowest, fastest := 0.0, math.Inf(1), 0.0
	for k := 0; ; k++ {
		load, halt, done := c.At(step * float64(k))
		if d := load - was; d < 0 || d > 1.5*step/WholeTime {
			t.Fatalf("at %g s the load goes from %g to %g", step*float64(k), was, load)
		} else if halt < 0 && d > 0 && !done {
			if load > 0.13 && load < 0.1599 {
				slowest = math.Min(slowest, d)
			} else if load > 0.2 {
				fastest = math.Max(fastest, d)
			}
		}
		if halt >= 0 {
			stood[halt] += step
			if load != c.Halts[halt] {
				t.Fatalf("halt %d at a load of %g, want %g", halt, load, c.Halts[halt])
			}
		}
		was = load
		if done {
			break
		}
	}
	if was != 1 || math.Abs(stood[0]-HaltTime) > 2*step || math.Abs(stood[1]-HaltTime) > 2*step || len(stood) != 2 {
		t.Errorf("it ends at %g and stood %v s; want 1, and %g s at two places", was, stood, HaltTime)
	}
	if r := fastest / slowest; math.Abs(r-slowBy) > 0.05 {
		t.Errorf("before a halt it is %g times as slow, want %g", r, slowBy)
	}
}
