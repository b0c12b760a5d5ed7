//go:build !purego

package avx

import (
	"os"
	"strings"
	"testing"
)

// TestHas: what the processor says of itself is what Linux lists of it.
func TestHas(t *testing.T) {
	text, err := os.ReadFile("/proc/cpuinfo")
	if err != nil {
		t.Fatal(err)
	}
	_, flags, _ := strings.Cut(string(text), "flags")
	flags, _, _ = strings.Cut(flags, "\n")
	has := func(flag string) bool { return strings.Contains(flags+" ", " "+flag+" ") }
	if want := has("avx2") && has("fma"); Has() != want {
		t.Errorf("AVX2 and FMA: got %v, want %v", Has(), want)
	}
}
