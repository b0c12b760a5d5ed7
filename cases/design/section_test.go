package design

import (
	"math"
	"testing"

	"archload/fem/element"
)

// TestSectionOutlines: area, centroid and second moments read from the corners are
// those that a section tells; a round rod's twelve corners lie on its circle.
func TestSectionOutlines(t *testing.T) {
	law := sectionLaw{E: 12000, Gxy: 900, Gxz: 700}
	for _, s := range []element.Section{law.solid(13, 9).Section, law.hollowed(13, 9, 3, 4).Section} {
		if err := s.Check(); err != nil {
			t.Error(err)
		}
		ring := s.Outline()
		var area, first, iy, iz float64
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			c := p[0]*q[1] - q[0]*p[1]
			area += c / 2
			first += c * (p[1] + q[1]) / 6
			iy += c * (p[1]*p[1] + p[1]*q[1] + q[1]*q[1]) / 12
			iz += c * (p[0]*p[0] + p[0]*q[0] + q[0]*q[0]) / 12
		}
		r := s.Rigidity()
		for _, v := range [][2]float64{{area, s.Area()}, {12000 * area, r.EA}, {12000 * iy, r.EIy}, {12000 * iz, r.EIz}} {
			if math.Abs(v[0]-v[1]) > 1e-12*v[1] {
				t.Errorf("%T: the corners give %g, told %g", s, v[0], v[1])
			}
		}
		if math.Abs(first) > 1e-10 {
			t.Errorf("%T: the axis is %g mm off the centroid", s, first/area)
		}
	}
	rod := roundRod{diameter: 5, e: 1e5}
	for _, p := range rod.Outline() {
		if r := math.Hypot(p[0], p[1]); math.Abs(r-2.5) > 1e-12 {
			t.Errorf("a corner of the rod at %g mm from its axis, want 2.5", r)
		}
	}
	for _, bad := range []element.Section{law.hollowed(13, 9, 7, 4).Section, law.hollowed(13, 9, 3, 9).Section, roundRod{e: 1}} {
		if bad.Check() == nil {
			t.Errorf("%+v: want an error, found none", bad)
		}
	}
}
