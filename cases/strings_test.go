package cases

import (
	"math"
	"testing"

	"archload/cases/gauge"
	"archload/cases/tree"
)

// Exact by definition, kg and m/s².
const (
	pound   = 0.45359237
	gravity = 9.80665
)

// near reports whether got is want to the last digit given.
func near(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

func TestPlainStringMass(t *testing.T) {
	got := gauge.PlainWeight(tree.Length(0.012*25.4), 7850)
	if want := 5.7278e-4; !near(float64(got), want, 5e-9) {
		t.Errorf("mass per length of 0.012 in steel = %.6g kg/m, want %.5g (rho pi d²/4 by hand)", got, want)
	}
}

// TestTension compares with an independent evaluation of T = mu (2 L f)², and
// in pound and inch with T = UW (2 L f)²/386.09, at a scale of 25 in.
func TestTension(t *testing.T) {
	const scale = 25 * 25.4
	for _, c := range []struct {
		name   string
		freq   float64 // Hz, as rounded there
		plain  float64 // in
		weight float64 // lb/in
		want   float64 // N
		tol    float64 // N, half the last digit given
	}{
		{"E4", 329.628, 0.012, 0, 100.38, 0.005},
		{"E4", 329.628, 0.011, 0, 84.35, 0.005},
		{"E4", 329.628, 0.010, 0, 69.71, 0.005},
		{"B3", 246.942, 0.016, 0, 100.15, 0.005},
		{"B3", 246.942, 0.015, 0, 88.03, 0.005},
		{"G3", 195.998, 0, 1.0e-4, 110.6, 0.05},
		{"D3", 146.832, 0, 1.85e-4, 114.9, 0.05},
		{"A2", 110, 0, 3.1e-4, 108.0, 0.05},
		{"E2", 82.407, 0, 4.9e-4, 95.8, 0.05},
	} {
		f := tree.Frequency(c.freq)
		if note, err := ParseNote(c.name); err != nil || !near(float64(note), c.freq, 5e-4) {
			t.Errorf("%s = %.4f Hz, %v, want %g", c.name, note, err, c.freq)
		}
		s := Strings{Scale: scale, TensionScale: 1, Each: []String{{Note: Note{Freq: f}, Plain: tree.Length(c.plain * tree.Inch)}}}
		s.Each[0].UnitWeight = tree.LineMass(c.weight * pound / tree.Inch * 1000)
		if got := float64(s.tension(0)); !near(got, c.want, c.tol) {
			t.Errorf("%s, %g in or %g lb/in: tension %.3f N, want %g", c.name, c.plain, c.weight, got, c.want)
		}
		if c.weight == 0 {
			continue
		}
		v := 2 * 25 * float64(f) // in/s
		lbf := c.weight * v * v / 386.09
		if got := float64(s.tension(0)) / (pound * gravity); !near(got, lbf, 2e-5*lbf) {
			t.Errorf("%s: tension %.5f lbf, want UW (2 L f)²/386.09 = %.5f", c.name, got, lbf)
		}
	}
}

func TestPush(t *testing.T) {
	for _, c := range []struct {
		tension, front, back float64 // N, deg, deg
		down, along          float64 // N
	}{
		{750, 4, 10, 182.553, 9.567},
		{700, 5, 9, 170.513, 5.954},
		{800, 3, 11, 194.516, 13.602},
	} {
		down, along := Push(tree.Force(c.tension), tree.Force(c.tension), tree.Angle(c.front), tree.Angle(c.back))
		if !near(down, c.down, 5e-4) || !near(along, c.along, 5e-4) {
			t.Errorf("%g N, %g and %g deg: %.4f N down, %.4f N along, want %g, %g (T (sin + sin), T (cos - cos) by hand)",
				c.tension, c.front, c.back, down, along, c.down, c.along)
		}
		half := (c.front + c.back) / 2 * math.Pi / 180
		if got, want := math.Hypot(down, along), 2*c.tension*math.Sin(half); !near(got, want, 1e-9*want) {
			t.Errorf("resultant %.6f N, want 2 T sin((a1+a2)/2) = %.6f", got, want)
		}
		tilt := math.Atan2(along, down) * 180 / math.Pi
		if want := (c.back - c.front) / 2; !near(tilt, want, 1e-9) {
			t.Errorf("tilt %.6f deg, want (a2-a1)/2 = %g", tilt, want)
		}
	}
}

func TestStringPlaces(t *testing.T) {
	at := tree.Length(3)
	s := Strings{Spread: 50, Each: []String{{}, {}, {X: &at}}}
	for i, want := range []float64{25, 0, 3} {
		if got := s.x(i); got != want {
			t.Errorf("string %d at %g mm, want %g (spread 50, treble first)", i+1, got, want)
		}
	}
	one := Strings{Spread: 50, Each: []String{{}}}
	if got := one.x(0); got != 0 {
		t.Errorf("single string at %g mm, want 0", got)
	}
}

// TestGrip checks the capstan formula T (exp(mu a) - 1) by hand: 100 N, mu
// 0.2, 14 deg: exp(0.048869) - 1 = 0.050083.
func TestGrip(t *testing.T) {
	f, b := tree.Angle(5), tree.Angle(9)
	c := Case{Strings: &Strings{TensionScale: 1, SaddleFriction: 0.2, FrontAngle: &f, BackAngle: &b, Each: []String{{Tension: 100, Rise: 10}}}}
	got := c.force(0, 0)
	if !near(got.Grip, 5.0083, 1e-4) {
		t.Errorf("grip = %.5f N, want 5.0083", got.Grip)
	}
	wantAlong := 110*math.Cos(5*math.Pi/180) - 100*math.Cos(9*math.Pi/180)
	if !near(got.Along, wantAlong, 1e-12*wantAlong) {
		t.Errorf("along with a rise of 10 N = %.6f N, want %.6f", got.Along, wantAlong)
	}
}
