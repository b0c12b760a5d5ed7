package canvas

import "testing"

// TestCompactSVG traces a path by hand and checks that letters return.
func TestCompactSVG(t *testing.T) {
	var tr tracer
	tr.to('m', [2]int{10, 20})
	tr.to('l', [2]int{15, 20})
	tr.to('l', [2]int{15, 12})
	tr.to('l', [2]int{15, 12})
	tr.close()
	tr.to('m', [2]int{12, 22})
	if got, want := tr.b.String(), "m10 20l5 0 0-8zm2 2"; got != want {
		t.Errorf("traced %q, want %q: from the start of a closed loop on", got, want)
	}
}
