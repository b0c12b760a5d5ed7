package materials

import (
	"math"
	"testing"
)

func TestAxesAreRightHanded(t *testing.T) {
	for name, a := range map[string]Axes{
		"quarter":           PlateAxes(Cut{}),
		"flat":              PlateAxes(Cut{Flat: true}),
		"turned":            PlateAxes(Cut{RingAngle: 33, GrainAngle: -7}),
		"flat turned":       PlateAxes(Cut{Flat: true, RingAngle: -12, GrainAngle: 95}),
		"bridge":            BridgeAxes(20),
		"global":            GlobalAxes(),
		"seen, of a bridge": BridgeAxes(20).seen(PlateAxes(Cut{RingAngle: 5})),
	} {
		for i := range a {
			for j := range a {
				dot := a[i][0]*a[j][0] + a[i][1]*a[j][1] + a[i][2]*a[j][2]
				want := 0.0
				if i == j {
					want = 1
				}
				if !(math.Abs(dot-want) < 1e-15) {
					t.Errorf("%s: row %d . row %d = %g, want %g", name, i, j, dot, want)
				}
			}
		}
		if c := cross(a[0], a[1]); math.Abs(c[0]-a[2][0])+math.Abs(c[1]-a[2][1])+math.Abs(c[2]-a[2][2]) > 1e-15 {
			t.Errorf("%s: L x R = %v, want T = %v", name, c, a[2])
		}
	}
}

func TestAxesPoint(t *testing.T) {
	h := math.Sqrt(0.5)
	for _, c := range []struct {
		name string
		got  Axes
		want Axes // up to the sign of R and T
	}{
		{"quarter: R across, T through", PlateAxes(Cut{}), Axes{{0, 1, 0}, {1, 0, 0}, {0, 0, 1}}},
		{"flat: R through, T across", PlateAxes(Cut{Flat: true}), Axes{{0, 1, 0}, {0, 0, 1}, {1, 0, 0}}},
		{"quarter turned by 90 is flat", PlateAxes(Cut{RingAngle: 90}), PlateAxes(Cut{Flat: true})},
		{"flat turned by 90 is quarter", PlateAxes(Cut{Flat: true, RingAngle: 90}), PlateAxes(Cut{})},
		{"half way is the same from both", PlateAxes(Cut{Flat: true, RingAngle: 45}), PlateAxes(Cut{RingAngle: 45})},
		{"grain 90 anticlockwise points to bass", PlateAxes(Cut{GrainAngle: 90}), Axes{{-1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
		{"grain 45 anticlockwise", PlateAxes(Cut{GrainAngle: 45}), Axes{{-h, h, 0}, {h, h, 0}, {0, 0, 1}}},
		{"bridge, R upright", BridgeAxes(0), Axes{{1, 0, 0}, {0, 0, 1}, {0, 1, 0}}},
		{"bridge, T upright", BridgeAxes(90), Axes{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
	} {
		for i := range c.got {
			dot := c.got[i][0]*c.want[i][0] + c.got[i][1]*c.want[i][1] + c.got[i][2]*c.want[i][2]
			if i > 0 {
				dot = math.Abs(dot)
			}
			if !(math.Abs(dot-1) < 1e-15) {
				t.Errorf("%s: row %d = %v, want along %v", c.name, i, c.got[i], c.want[i])
			}
		}
	}
}

func TestSincosDegrees(t *testing.T) {
	for _, c := range []struct{ deg, sin, cos float64 }{
		{0, 0, 1}, {90, 1, 0}, {180, 0, -1}, {270, -1, 0}, {360, 0, 1}, {-90, -1, 0}, {-180, 0, -1}, {-270, 1, 0}, {450, 1, 0},
	} {
		if s, co := sincosDegrees(c.deg); s != c.sin || co != c.cos {
			t.Errorf("sine, cosine of %g degrees = %g, %g, want %g, %g exactly", c.deg, s, co, c.sin, c.cos)
		}
	}
	for deg := -400.0; deg < 400; deg += 7 {
		s, c := sincosDegrees(deg)
		ws, wc := math.Sincos(deg * math.Pi / 180)
		if math.Abs(s-ws) > 1e-14 || math.Abs(c-wc) > 1e-14 {
			t.Errorf("sine, cosine of %g degrees = %g, %g, want %g, %g", deg, s, c, ws, wc)
		}
	}
}
