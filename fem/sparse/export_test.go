package sparse

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
)

// The file says every value of the lower triangle once, in order, to the last bit.
func TestWriteMatrixMarket(t *testing.T) {
	m := NewMatrix(3, [][]int32{{0, 1}, {1, 2}})
	rng := rand.New(rand.NewPCG(12, 5))
	for i := range int32(2) {
		m.Add([]int32{i, i + 1}, randomElement(rng, 2))
	}
	var text bytes.Buffer
	if err := m.WriteMatrixMarket(&text); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(&text)
	for _, want := range []string{"%%MatrixMarket matrix coordinate real symmetric", "% blocks of 6 x 6", "18 18 135"} {
		if lines.Scan(); lines.Text() != want {
			t.Fatalf("got %q, want %q", lines.Text(), want)
		}
	}
	want, seen, before := m.toDense(), 0, -1
	for ; lines.Scan(); seen++ {
		var r, c int
		var v float64
		if _, err := fmt.Sscan(lines.Text(), &r, &c, &v); err != nil {
			t.Fatal(err)
		}
		at := (r-1)*18 + c - 1
		if c > r || at <= before || v != want[at] {
			t.Errorf("got %g at row %d, column %d after place %d, want %g", v, r, c, before, want[at])
		}
		before = at
	}
	if seen != 135 { // three diagonal blocks of 21 and two of 36
		t.Errorf("got %d values, want 135", seen)
	}
}

// brokenWriter takes no byte.
type brokenWriter struct{}

func (brokenWriter) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestWriteMatrixMarketSaysThatItFailed(t *testing.T) {
	m := NewMatrix(2000, nil) // more text than the buffer holds
	if err := m.WriteMatrixMarket(brokenWriter{}); err == nil || !strings.Contains(err.Error(), "disk full") {
		t.Errorf("got error %v, want the writer's", err)
	}
}
