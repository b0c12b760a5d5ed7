package mesh

import "testing"

// TestServes: a plan serves the surface that it was laid for, one that is bent less, and one
// that is bent more only where it is fine anyway.
func TestServes(t *testing.T) {
	bent := func(k, beyond float64) Domain {
		return Domain{Outline: guitarOutline(t), Size: 12, Fine: []Fine{{Along: []Point{{0, 0}}, Radius: 30, Size: 4}},
			Curvature: func(p Point) float64 {
				if p[0]*p[0]+p[1]*p[1] > 25*25 {
					return beyond
				}
				return k
			}}
	}
	plan, err := Triangulate(bent(0.01, 0.01))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name      string
		k, beyond float64
		want      bool
	}{
		{"its own surface", 0.01, 0.01, true},
		{"a flat one", 0, 0, true},
		{"one bent more where it is fine", 0.03, 0.01, true},
		{"one bent more", 0.01, 0.016, false},
	} {
		if got := bent(c.k, c.beyond).Serves(plan); got != c.want {
			t.Errorf("%s: serves %t, want %t", c.name, got, c.want)
		}
	}
}
