package verify

import (
	"context"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"
)

func TestJudge(t *testing.T) {
	for _, c := range []struct {
		name    string
		of      Check
		got     float64
		allowed float64
		want    float64 // deviation
		pass    bool
	}{
		{"relative", Check{Value: 2}, 2.02, 0.02, 0.01, true},
		{"relative, too far", Check{Value: 2}, 1.9, 0.02, -0.05, false},
		{"negative", Check{Value: -2}, -2.02, 0.02, 0.01, true},
		{"scaled", Check{Value: 0.1, Scale: 2}, 0.12, 0.02, 0.01, true},
		{"absolute", Check{Absolute: true}, 0.5, 1, 0.5, true},
		{"absolute, too far", Check{Absolute: true}, 1.5, 1, 1.5, false},
		{"at most", Check{Value: 2.5, Bound: "most"}, 1, 0, -1.5, true},
		{"at most, above", Check{Value: 2.5, Bound: "most"}, 3, 9, 0.5, false},
		{"at least", Check{Value: 2.5, Bound: "least"}, 3, 0, 0.5, true},
		{"at least, below", Check{Value: 2.5, Bound: "least"}, 2, 9, -0.5, false},
		{"no number", Check{Value: 2}, math.NaN(), 0.02, math.NaN(), false},
	} {
		r := c.of.judge(c.got, c.allowed, "")
		near := math.Abs(r.Deviation-c.want) < 1e-12 || math.IsNaN(r.Deviation) && math.IsNaN(c.want)
		if r.Pass != c.pass || !near {
			t.Errorf("%s: got pass %v, deviation %g, want %v, %g", c.name, r.Pass, r.Deviation, c.pass, c.want)
		}
	}
}

func TestOrder(t *testing.T) {
	steps := func(v ...float64) (s []Step) {
		for _, g := range v {
			s = append(s, Step{Got: g})
		}
		return s
	}
	for _, c := range []struct {
		name string
		of   []Step
		want float64
	}{
		{"second order", steps(1+1.0/16, 1+1.0/64, 1+1.0/256), 2},
		{"first order", steps(7, 1.5, 1.25, 1.125), 1},
		{"turns round", steps(1, 2, 1.5), math.NaN()},
		{"rounding", steps(1, 1+2e-9, 1+3e-9), math.NaN()},
		{"two meshes", steps(1, 2), math.NaN()},
		{"no change", steps(1, 1, 1), math.NaN()},
	} {
		got := float64(order(c.of))
		if !(math.Abs(got-c.want) < 1e-12) && !(math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("%s: order %g, want %g", c.name, got, c.want)
		}
	}
}

// TestRunSameBits: any number of workers gives the same rows.
func TestRunSameBits(t *testing.T) {
	var texts []string
	for _, workers := range []int{1, 3} {
		rows, err := Run(context.Background(), Options{Only: "scordelis|feet|membrane", Workers: workers})
		if err != nil {
			t.Fatal(err)
		}
		b, err := json.Marshal(rows)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, string(b))
	}
	if texts[0] != texts[1] {
		t.Errorf("one worker: %s\nthree workers: %s\nwant the same", texts[0], texts[1])
	}
}

func TestRunOnly(t *testing.T) {
	rows, err := Run(context.Background(), Options{Only: "COOK.* 16 "})
	if err != nil || len(rows) != 2 {
		t.Fatalf("%d rows, error %v, want the two kinds of mesh", len(rows), err)
	}
	for _, r := range rows {
		if r.Order.Known() || r.Trend != nil {
			t.Errorf("%s: order %v, trend %v, want none without Refine", r.Mesh, r.Order, r.Trend)
		}
	}
	if _, err := Run(context.Background(), Options{Only: "no such check"}); !errors.Is(err, ErrNothing) {
		t.Errorf("no match: error %v, want %v", err, ErrNothing)
	}
	if _, err := Run(context.Background(), Options{Only: "("}); err == nil || !strings.Contains(err.Error(), "pattern") {
		t.Errorf("faulty pattern: error %v, want one about the pattern", err)
	}
}

// TestRefine: the finest row carries the trend, monotone toward the reference,
// at second order.
func TestRefine(t *testing.T) {
	rows, err := Run(context.Background(), Options{Only: "square plate, supported, sink, uniform load .* regular", Refine: true})
	if err != nil || len(rows) != 2 {
		t.Fatalf("%d rows, error %v, want 2 and none", len(rows), err)
	}
	last := rows[1]
	if len(last.Trend) != 5 || last.Trend[0].Mesh != "4" || last.Trend[4].Mesh != "64" {
		t.Fatalf("trend %+v, want 4 to 64 divisions", last.Trend)
	}
	for i := 1; i < 5; i++ {
		if a, b := last.Trend[i-1].Deviation, last.Trend[i].Deviation; !(math.Abs(b) < math.Abs(a)) {
			t.Errorf("%s divisions: deviation %g after %g, want less", last.Trend[i].Mesh, b, a)
		}
	}
	if o := float64(last.Order); !(math.Abs(o-2) < 0.1) {
		t.Errorf("order %g, want 2 within 0.1", o)
	}
}
