package spelling

import "testing"

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"kitten", "sitting", 3}, {"", "", 0}, {"", "arch", 4}, {"arch", "", 4},
		{"spruce", "spruce", 0}, {"spurce", "spruce", 2}, {"cedar", "cedr", 1}, {"Oak", "oak", 1},
	} {
		if got := Distance(c.a, c.b); got != c.want {
			t.Errorf("from %q to %q: %d letters, want %d", c.a, c.b, got, c.want)
		}
	}
}
