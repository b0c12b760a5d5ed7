package pages

import "testing"

// TestWide: an array keeps its values, whatever its length and place.
func TestWide(t *testing.T) {
	type triple [3]float64
	for _, n := range []int{0, 1, 1000, 1 << 20} {
		v := make([]triple, n)
		for i := range v {
			v[i][i%3] = float64(i)
		}
		Wide(v)
		Wide(v[n/3:])
		for i := range v {
			if v[i][i%3] != float64(i) || v[i][(i+1)%3] != 0 {
				t.Fatalf("%d of %d: %v", i, n, v[i])
			}
		}
	}
}
