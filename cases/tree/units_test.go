package tree

import (
	"math"
	"testing"
)

func TestUnits(t *testing.T) {
	for _, c := range []struct {
		kind   any
		text   string
		want   float64 // in the unit of a bare number
		source string
	}{
		{Length(0), "0.5 in", 12.7, "1 in = 25.4 mm exactly"},
		{Length(0), "12.7mm", 12.7, "no space needed"},
		{Length(0), "-1.5e1 cm", -150, "by hand"},
		{Length(0), "7", 7, "bare number in quotes"},
		{Length(0), "25 1/2 in", 647.7, "25.5 x 25.4"},
		{Length(0), "-3/64\"", -1.190625, "25.4 x 3 / 64"},
		{Length(0), "1-1/4 inches", 31.75, "1.25 x 25.4"},
		{Length(0), "56 thou", 1.4224, "0.056 x 25.4"},
		{Force(0), "24 lbs", 106.7573175, "24 x 4.4482216152605"},
		{Force(0), "11 lb", 48.9304377, "1 lbf = 4.4482216152605 N"},
		{Force(0), "2 kg", 19.6133, "2 kg at 9.80665 m/s²"},
		{Force(0), "500 g", 4.903325, "0.5 kg at 9.80665 m/s²"},
		{Angle(0), "0.1 rad", 5.729577951, "18/pi"},
		{Stress(0), "11.5 GPa", 11500, "by hand"},
		{Stress(0), "1000 psi", 6.894757293, "1 psi = 6894.757293 Pa"},
		{Density(0), "0.41 g/cm3", 410, "by hand"},
		{Density(0), "25 lb/ft3", 400.4615843, "1 lb/ft³ = 16.01846337 kg/m³"},
		{LineMass(0), "4.9e-4 lb/in", 8.750404e-3, "4.9e-4 x 0.45359237 / 0.0254"},
		{Stiffness(0), "20 lb/in", 3.502536701, "1 lbf/in = 0.1751268 N/mm"},
		{Frequency(0), "0.44 kHz", 440, "by hand"},
	} {
		d, ok := DimensionOf(c.kind)
		if !ok {
			t.Fatalf("%T has no dimension", c.kind)
		}
		got, err := d.Parse(c.text)
		if err != nil || math.Abs(got-c.want) > 2e-7*math.Abs(c.want) {
			t.Errorf("%T %q = %.9g %s, %v, want %.9g (%s)", c.kind, c.text, got, d.Base(), err, c.want, c.source)
		}
	}
}

func TestUnitsRefused(t *testing.T) {
	for _, c := range []struct {
		kind any
		text string
	}{
		{Length(0), ""}, {Length(0), "in"}, {Length(0), "1 lb"}, {Length(0), "1 2 mm"}, {Length(0), "NaN"}, {Length(0), "inf mm"},
		{Length(0), "1e999 mm"}, {Length(0), "20 m"}, {Length(0), "0x1p3 mm"}, {Length(0), "1,5 mm"}, {Length(0), "1/0 in"}, {Length(0), "1/ in"}, {Length(0), "1 1/2/3 in"}, {Force(0), "3 mm"}, {float64(0), "3 mm"},
	} {
		d, _ := DimensionOf(c.kind)
		if got, err := d.Parse(c.text); err == nil {
			t.Errorf("%T %q = %g, want an error", c.kind, c.text, got)
		}
	}
}

func TestRange(t *testing.T) {
	d, _ := DimensionOf(Length(0))
	for _, c := range []struct {
		x    float64
		tag  string
		want string // message; "" admitted
	}{
		{-3, ">0", "want > 0 mm, found -3"},
		{0, ">0", "want > 0 mm, found 0"},
		{0, ">=0", ""},
		{0.5, "0..1", ""},
		{1, "0..1", ""},
		{1.5, "0..1", "want 0 to 1 mm, found 1.5"},
	} {
		got := ""
		if err := d.inRange(c.x, c.tag); err != nil {
			got = err.Error()
		}
		if got != c.want {
			t.Errorf("%g in %q: %q, want %q", c.x, c.tag, got, c.want)
		}
	}
}
